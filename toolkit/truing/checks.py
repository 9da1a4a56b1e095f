"""What an experienced maker would say of a rough board, of parts and planes, and of ridges."""

from __future__ import annotations

from typing import TYPE_CHECKING

from toolkit.planes import Plane
from toolkit.results import CUSTOM, GEOMETRY, Finding, above
from toolkit.truing.jobs import Clearing
from toolkit.truing.saving import Yield, longest_piece
from toolkit.truing.tolerances import Tolerances
from toolkit.truing.warp import Warp

if TYPE_CHECKING:
    from toolkit.measures import Rule

SHORTEST = 50.0  # custom, no source: a shorter piece is too short to plane by hand [mm]


def check_thickness(found: Yield, *, wanted: float, rule: Rule, where: str = "board") -> Finding:
    """Whether a warped board still gives the thickness wanted of the true part. [mm]"""
    show = rule.exact
    if above(wanted, found.program):
        length = longest_piece(
            found.warp, thickness=found.thickness, wanted=wanted, saw_marks=found.saw_marks
        )
        remedy = (
            "No piece of this width long enough to be of use gives it: choose a thicker board, or "
            "rip it narrower first."
            if length < SHORTEST
            else f"Crosscut it to {show(float(int(length)))} or shorter first, or choose another."
        )
        left = f"it gives {show(found.program)}" if found.program > 0 else "it gives nothing"
        return Finding(
            "wont_work",
            "board-too-warped",
            where,
            f"{show(wanted)} is wanted, but at {show(found.warp.length)} long {left} once it is "
            f"true on both faces: the warp takes {show(found.flattening)}.",
            remedy,
            GEOMETRY,
        )
    if above(wanted, found.bound.value):
        return Finding(
            "care",
            "board-barely-thick",
            where,
            f"{show(wanted)} is wanted and {show(found.program)} can be had, but only with the "
            "wood taken where it costs least; the sum on paper promises "
            f"{show(max(found.bound.value, 0.0))}.",
            "Take the twist off both high corners alike and test often, or crosscut it first.",
            GEOMETRY,
        )
    spare = found.bound.value - wanted
    return Finding(
        "good",
        "good-thickness",
        where,
        f"{show(wanted)} can be had with {show(spare)} to spare.",
        "",
        GEOMETRY,
    )


def check_twist(
    warp: Warp, *, rule: Rule, where: str = "part", limits: Tolerances | None = None
) -> Finding:
    """Whether a part is out of winding enough to lay out joints on it. [mm]"""
    most = (limits or Tolerances()).twist_over(warp.length, width=warp.width)
    twist = abs(warp.twist)
    over = f"over {rule.exact(warp.length)}"
    if above(twist, most):
        return Finding(
            "care",
            "twist-before-layout",
            where,
            f"it is twisted {twist:.2g} mm {over}, more than {most:.2g} mm: a box built on it "
            "would wind too.",
            f"Do not lay out joints yet: plane the {' and '.join(warp.high_corners)} corners down, "
            "both alike.",
            CUSTOM,
        )
    message = f"twisted {twist:.2g} mm {over}, within {most:.2g} mm."
    return Finding("good", "good-twist", where, message, "", CUSTOM)


def check_scallops(found: Clearing) -> Finding:
    """Whether one plane's ridges will show after the next: ``scallops-show-through``."""
    if found.shows:
        remedy = f"Make {found.needed} passes, or lay the strokes before it closer."
        return Finding(
            "care", "scallops-show-through", "scallops", found.sentence, remedy, GEOMETRY
        )
    return Finding("good", "good-scallops", "scallops", found.sentence, "", GEOMETRY)


def check_iron(plane: Plane) -> Finding:
    """Whether the corners of a plane's iron stay clear of the wood: ``iron-corners-track``."""
    said = f"it takes a shaving {plane.shaving:.3g} mm deep and {plane.shaving_width:.3g} mm wide"
    if plane.iron_width < plane.arc_width * (1 - 1e-6):
        dig = plane.corner_depth
        return Finding(
            "care",
            "iron-corners-track",
            plane.name,
            f"{said}, the full width of its iron: the corners dig in and leave tracks {dig:.2g} mm "
            "deep.",
            f"Set it finer than {plane.shaving - dig:.2g} mm, or grind more camber.",
            GEOMETRY,
        )
    said += f", within its iron of {plane.iron_width:.3g} mm."
    return Finding("good", "good-iron", plane.name, said, "", GEOMETRY)
