"""What an experienced maker would say of a rough board, and of parts being planed true."""

from __future__ import annotations

from collections.abc import Mapping
from math import isfinite
from typing import TYPE_CHECKING

from toolkit.results import CUSTOM, GEOMETRY, Finding, above
from toolkit.truing.edges import Remaining
from toolkit.truing.limits import Limits
from toolkit.truing.saving import Yield, longest_piece
from toolkit.truing.warp import Warp

if TYPE_CHECKING:
    from toolkit.measures import Rule

SHORTEST = 50.0  # custom, no source: a shorter piece is too short to plane by hand [mm]


def check_thickness(found: Yield, *, wanted: float, rule: Rule, where: str = "board") -> Finding:
    """Whether a warped board still gives the thickness wanted.

    Parameters
    ----------
    found : Yield
        What it gives. [mm]
    wanted : float
        Thickness of the true part. [mm]
    rule : Rule
        Whose rule the sentence is written for.
    where : str
        Name of the board or part.

    Returns
    -------
    Finding
        ``board-too-warped``, ``board-barely-thick`` or ``good-thickness``.

    Source
    ------
    Geometry.
    """
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
    warp: Warp, *, rule: Rule, where: str = "part", limits: Limits | None = None
) -> Finding:
    """Whether a part is out of winding enough to lay out joints on it.

    Parameters
    ----------
    warp : Warp
        What is left in the part. [mm]
    rule : Rule
        Whose rule the sentence is written for.
    where : str
        Name of the part.
    limits : Limits or None
        How true is true enough. [mm]

    Returns
    -------
    Finding
        ``twist-before-layout`` or ``good-twist``.

    Source
    ------
    A custom: common practice, no source.
    """
    most = (limits or Limits()).twist_over(warp.length, width=warp.width)
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


def check_walls(
    thicknesses: Mapping[str, float], *, rule: Rule, limits: Limits | None = None
) -> Finding:
    """Whether the walls of a box are alike enough in thickness for one setting of the gauges.

    Parameters
    ----------
    thicknesses : mapping of str to float
        Thickness by the name of the wall. [mm]
    rule : Rule
        Whose rule the sentence is written for.
    limits : Limits or None
        How true is true enough. [mm]

    Returns
    -------
    Finding
        ``walls-uneven`` or ``good-walls``.

    Raises
    ------
    ValueError
        There are no walls, or one has no thickness.

    Source
    ------
    A custom: common practice, no source.
    """
    if not thicknesses:
        raise ValueError("no wall was measured; give the thickness of each by its name")
    for name, value in thicknesses.items():
        if not (isfinite(value) and value > 0):
            raise ValueError(f"{name} was measured as {value:g} mm; measure it again")
    thick = max(thicknesses, key=thicknesses.__getitem__)
    thin = min(thicknesses, key=thicknesses.__getitem__)
    spread, most = thicknesses[thick] - thicknesses[thin], (limits or Limits()).spread
    if above(spread, most):
        return Finding(
            "care",
            "walls-uneven",
            "walls",
            f"{thick} is {rule.exact(thicknesses[thick])} and {thin} "
            f"{rule.exact(thicknesses[thin])} thick, {spread:.2g} mm apart, more than "
            f"{most:.2g} mm: lines from one gauge setting would be wrong on one of them.",
            f"Plane the others down to {thin}, or set the gauge anew for each.",
            CUSTOM,
        )
    alike = "alike" if spread < 0.01 else f"within {spread:.2g} mm of one another"
    message = f"{alike}; one gauge setting serves them all."
    return Finding("good", "good-walls", "walls", message, "", CUSTOM)


def check_gauge_line(found: Remaining, *, rule: Rule, where: str = "part") -> Finding:
    """Whether a part has fallen below its gauge line.

    Parameters
    ----------
    found : Remaining
        What is left above the line. [mm]
    rule : Rule
        Whose rule the sentence is written for.
    where : str
        Name of the part.

    Returns
    -------
    Finding
        ``below-gauge-line`` or ``good-gauge-line``.

    Source
    ------
    Geometry.
    """
    if found.undersize:
        return Finding("care", "below-gauge-line", where, found.sentence(rule), "", GEOMETRY)
    return Finding("good", "good-gauge-line", where, found.sentence(rule), "", GEOMETRY)
