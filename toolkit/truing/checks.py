"""What an experienced maker would say of a rough board, of parts and planes, and of ridges."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from toolkit.planes import Plane
from toolkit.results import Finding, Findings, above
from toolkit.truing.jobs import Clearing
from toolkit.truing.saving import Yield, longest_piece
from toolkit.truing.tolerances import Tolerances
from toolkit.truing.warp import Warp

if TYPE_CHECKING:
    from toolkit.measures import Rule

SHORTEST = 50.0  # custom, no source: a shorter piece is too short to plane by hand [mm]


def _one(
    name: str, *, where: str = "", write: Callable[[float], str] = str, **values: Any
) -> Finding:
    return Findings("truing/findings.csv", write=write).say(name, where=where, **values)[0]


def check_thickness(found: Yield, *, wanted: float, rule: Rule, where: str = "board") -> Finding:
    """Whether a warped board still gives the thickness wanted of the true part. [mm]"""
    show, promised = rule.exact, found.bound.value
    if above(wanted, found.program):
        length = longest_piece(
            found.warp, thickness=found.thickness, wanted=wanted, saw_marks=found.saw_marks
        )
        name = "board-too-warped, at any length" if length < SHORTEST else "board-too-warped"
    elif above(wanted, promised):
        name, length = "board-barely-thick", 0.0
    else:
        name, length = "good-thickness", 0.0
    return _one(
        name,
        where=where,
        write=show,
        found=found,
        wanted=wanted,
        left=f"it gives {show(found.program)}" if found.program > 0 else "it gives nothing",
        short=float(int(length)),
        promised=max(promised, 0.0),
        spare=promised - wanted,
    )


def check_twist(
    warp: Warp, *, rule: Rule, where: str = "part", limits: Tolerances | None = None
) -> Finding:
    """Whether a part is out of winding enough to lay out joints on it. [mm]"""
    most = (limits or Tolerances()).twist_over(warp.length, width=warp.width)
    twist, high = abs(warp.twist), " and ".join(warp.high_corners)
    name = "twist-before-layout" if above(twist, most) else "good-twist"
    values = {"twist": twist, "most": most, "length": warp.length, "high": high}
    return _one(name, where=where, write=rule.exact, **values)


def check_scallops(found: Clearing, *, rule: Rule) -> Finding:
    """Whether one plane's ridges will show after the next: ``scallops-show-through``."""
    name = "scallops-show-through" if found.shows else "good-scallops"
    return _one(name, found=found, said=found.sentence(rule))


def check_iron(plane: Plane, *, rule: Rule) -> Finding:
    """Whether the corners of a plane's iron stay clear of the wood: ``iron-corners-track``."""
    dig = plane.corner_depth
    tracks = plane.iron_width < plane.arc_width * (1 - 1e-6)
    name = "iron-corners-track" if tracks else "good-iron"
    values = {"plane": plane, "dig": dig, "finer": plane.shaving - dig}
    return _one(name, where=plane.name, write=rule.fine, **values)
