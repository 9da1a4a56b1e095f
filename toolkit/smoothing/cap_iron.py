"""How far back the cap iron sits: who says what, and where geometry ends the discussion."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from math import radians, sin

from toolkit.measures import Rule
from toolkit.planes import fine
from toolkit.results import Source, above_zero, between, number, read_table
from toolkit.smoothing.customs import CUSTOMS


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
            said = f"{'under' if self.least is None else 'over'} {fine(limit, rule=rule)}"
        elif self.least == self.most:
            said = fine(self.least, rule=rule)
        else:
            said = f"{fine(self.least, rule=rule, unit=False)} to {fine(self.most, rule=rule)}"
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
    """Where to begin with the cap iron: straight shavings are right, crumpled ones too close.

    Parameters
    ----------
    shaving : float
        Thickness of the shaving. [mm]

    Returns
    -------
    tuple of float
        Nearest and farthest setback. [mm]

    Raises
    ------
    ValueError
        The shaving is not above 0.

    Source
    ------
    Custom: 3 to 5 shavings, a reading of secondary reports.

    >>> low, high = setback_to_begin(0.05)
    >>> round(low, 3), round(high, 3)
    (0.15, 0.25)
    """
    above_zero(shaving, name="shaving", example="0.03")
    return shaving * CUSTOMS.setback_shavings_low, shaving * CUSTOMS.setback_shavings_high
