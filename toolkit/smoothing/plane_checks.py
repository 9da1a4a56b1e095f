"""What an experienced maker would say of a plane's setting before it touches the wood."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from math import radians, sin
from typing import Literal

from toolkit.measures import Rule
from toolkit.planes import Plane
from toolkit.results import (
    Finding,
    Findings,
    Source,
    above,
    above_zero,
    below,
    between,
    number,
    one_of,
    read_table,
)
from toolkit.smoothing.customs import CUSTOMS, cite

Grain = Literal["straight", "interlocked", "curly"]
GRAINS: tuple[Grain, ...] = ("straight", "interlocked", "curly")


def check_plane(plane: Plane, *, rule: Rule, grain: Grain = "straight") -> tuple[Finding, ...]:
    """Everything there is to say of a plane's setting for a piece of wood."""
    one_of(grain, name="grain", allowed=GRAINS)
    low, high = setback_to_begin(plane.shaving)
    setback = plane.setback or 0.0
    found = Findings(
        "smoothing/findings.csv",
        write=rule.fine,
        cite=cite,
        customs=CUSTOMS,
        plane=plane,
        grain=grain,
        held=f", skewed {plane.skew:g}°" if plane.skew else "",
        begin=f"Begin at {rule.fine(low, unit=False)} to {rule.fine(high)}",
        thickest=thickest_shaving(setback, bed=plane.bed) if setback else 0.0,
        thin=CUSTOMS.curly_setback_most / CUSTOMS.setback_shavings_low,
        shavings=setback / plane.shaving,
    )
    for names, good in (
        (_angle(plane, grain), "good-angle"),
        (_cap_iron(plane, grain), "good-cap-iron" if setback else ""),
        (_edge(plane), "good-edge"),
    ):
        for name in [*names] or [good]:
            if name:
                found.say(name)
    return tuple(found)


def _angle(plane: Plane, grain: Grain) -> Iterator[str]:
    clearance, angle = plane.cutting.clearance, plane.working_angle
    if not above(clearance, 0.0):
        yield "no-clearance"
    elif below(clearance, CUSTOMS.clearance_least):
        yield "clearance-small"
    if grain != "straight" and below(angle, CUSTOMS.awkward_angle_least):
        yield "angle-low"
    if above(angle, CUSTOMS.cutting_angle_most):
        yield "angle-steep"


def _cap_iron(plane: Plane, grain: Grain) -> Iterator[str]:
    setback = plane.setback
    lower = below(plane.working_angle, CUSTOMS.curly_angle_wanted)
    if setback is None:
        if grain != "straight" and lower:
            yield "no-cap-iron"
    elif not above(thickest_shaving(setback, bed=plane.bed), plane.shaving):
        yield "cap-iron-in-the-wood"
    elif below(setback, CUSTOMS.setback_shavings_least * plane.shaving):
        yield "cap-iron-chokes"
    elif plane.finishing and above(setback, CUSTOMS.finishing_setback_most):
        yield "cap-iron-far"
    elif grain == "curly" and lower and above(setback, CUSTOMS.curly_setback_most):
        yield "cap-iron-far-for-curly"


def _edge(plane: Plane) -> Iterator[str]:
    if above(plane.corner_depth, 0.0):
        yield "corners-dig"
    if plane.finishing and above(plane.scallops.depth, CUSTOMS.ridge_most):
        yield "ridge-high"


@dataclass(frozen=True, slots=True)
class Setback:
    """One authority on how far back the cap iron sits, the range open where it gives none. [mm]"""

    plane: str  # or the work that it is said of
    least: float | None
    most: float | None
    printed: str  # as it stands in print
    source: Source
    note: str

    def sentence(self, rule: Rule) -> str:
        """The range in words, with who says so."""
        if self.least is None or self.most is None:
            limit = self.most if self.least is None else self.least
            assert limit is not None
            said = f"{'under' if self.least is None else 'over'} {rule.fine(limit)}"
        elif self.least == self.most:
            said = rule.fine(self.least)
        else:
            said = f"{rule.fine(self.least, unit=False)} to {rule.fine(self.most)}"
        printed = f", printed {self.printed}" if self.printed else ""
        note = f"; {self.note}" if self.note else ""
        return f"{self.plane}: {said} ({self.source}{printed}{note})"


@cache
def setbacks() -> tuple[Setback, ...]:
    """The authorities on the cap iron's setback, none of them averaged. [mm]"""
    return tuple(
        Setback(
            row["plane"],
            number(row["setback_least_mm"]),
            number(row["setback_most_mm"]),
            row["printed"],
            Source.of(row),
            row["note"],
        )
        for row in read_table("smoothing/cap_irons.csv")
    )


def thickest_shaving(setback: float, *, bed: float) -> float:
    """The shaving at which the cap iron's own edge would touch the wood.

    Parameters
    ----------
    setback : float
        From the edge back to the cap iron, along the iron. [mm]
    bed : float
        Angle of the iron to the sole. [degrees]

    Returns
    -------
    float
        Depth of the edge below the sole at which the cap iron meets the sole's line. [mm]

    Raises
    ------
    ValueError
        The setback is not above 0, or the bed is out of range.

    Source
    ------
    Geometry: setback × sin(bed).

    >>> round(thickest_shaving(0.15, bed=45), 2)
    0.11
    """
    above_zero(setback, name="setback", example="0.2")
    between(bed, low=5, high=80, name="bed", example="45")
    return setback * sin(radians(bed))


def setback_to_begin(shaving: float) -> tuple[float, float]:
    """The nearest and farthest cap iron to begin with for a shaving. [mm]

    Straight shavings are right, crumpled ones too close. Custom: 3 to 5 shavings, a reading of
    secondary reports.
    """
    above_zero(shaving, name="shaving", example="0.03")
    return shaving * CUSTOMS.setback_shavings_low, shaving * CUSTOMS.setback_shavings_high
