"""The slope of a tail: 1 across in so many along, as an angle, and who says what of it."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from math import atan, cos, degrees

from toolkit.measures import Rule
from toolkit.results import Source, Table, read_table


def _known(slope: float) -> float:
    if not slope > 0:
        raise ValueError(f"a slope of 1 in {slope:g} is none; give a number above 0, such as 7")
    return slope


def slope_angle(slope: float) -> float:
    """The angle of a slope from square.

    Parameters
    ----------
    slope : float
        1 across in this many along. [along for each 1 across]

    Returns
    -------
    float
        Angle between a tail's cheek and the length of its board. [deg]

    Raises
    ------
    ValueError
        The slope is 0 or less.

    Source
    ------
    atan(1 / slope): geometry. Compute it: at least one printed table is wrong for 1 in 8.

    >>> [round(slope_angle(slope), 2) for slope in (5, 6, 7, 8)]
    [11.31, 9.46, 8.13, 7.13]
    """
    return degrees(atan(1 / _known(slope)))


def tail_overhang(tail_length: float, *, slope: float) -> float:
    """How far a tail's corner stands out beyond its baseline, on each side.

    Parameters
    ----------
    tail_length : float
        From baseline to tip. [mm]
    slope : float
        1 across in this many along. [along for each 1 across]

    Returns
    -------
    float
        The overhang. [mm]

    Raises
    ------
    ValueError
        The slope is 0 or less.

    Source
    ------
    tail length / slope: geometry.

    >>> round(tail_overhang(8, slope=6), 2)
    1.33
    """
    return tail_length / _known(slope)


def cheek_length(tail_length: float, *, slope: float) -> float:
    """Length of a tail's cheek from baseline to tip, along the slope.

    Parameters
    ----------
    tail_length : float
        From baseline to tip, square to the baseline. [mm]
    slope : float
        1 across in this many along. [along for each 1 across]

    Returns
    -------
    float
        The cheek. [mm]

    Raises
    ------
    ValueError
        The slope is 0 or less.

    Source
    ------
    tail length / cos(angle): geometry.

    >>> round(cheek_length(8, slope=7), 2)
    8.08
    """
    return tail_length / cos(atan(1 / _known(slope)))


@dataclass(frozen=True, slots=True)
class SlopeAdvice:
    """What one authority says of the slope. ``slope`` is None where no number is given."""

    who: str
    wood: str
    slope: float | None
    limit: str
    advice: str
    source: Source

    @property
    def angle(self) -> float | None:
        """Its angle from square. [deg]"""
        return None if self.slope is None else slope_angle(self.slope)

    @property
    def sentence(self) -> str:
        """The advice as one line with its source."""
        number = "" if self.slope is None else f" 1 in {self.slope:g} ({self.angle:.2f}°),"
        return f"{self.who}, {self.wood} wood:{number} {self.advice} ({self.source})."


@cache
def slope_advice() -> tuple[SlopeAdvice, ...]:
    """What the authorities say, side by side: they differ, so that none is averaged away."""
    return tuple(
        SlopeAdvice(
            who=row["who"],
            wood=row["wood"],
            slope=float(row["slope"]) if row["slope"] else None,
            limit=row["limit"],
            advice=row["advice"],
            source=Source.of(row),
        )
        for row in read_table("box/joinery/slopes.csv")
    )


def slope_table(slope: float, *, tail_length: float, rule: Rule) -> Table:
    """A box's own slope, 1 across in this many along, above what each authority says. [1, mm]"""

    def row(who: str, wood: str, ratio: float | None, words: str, source: str) -> tuple[str, ...]:
        if ratio is None:
            return who, wood, "no number", "", "", words, source
        out = rule.exact(tail_overhang(tail_length, slope=ratio))
        return who, wood, f"1 in {ratio:g}", f"{slope_angle(ratio):.2f}°", out, words, source

    rows = [row("this box", "", slope, "as set out now", "")]
    rows += [
        row(one.who, one.wood, one.slope, one.advice, str(one.source)) for one in slope_advice()
    ]
    return Table(
        "How much slope",
        ("who", "wood", "slope", "angle", "corner stands out", "advice", "source"),
        tuple(rows),
        note=f"The corners are those of a tail {rule.exact(tail_length)} long. Authorities "
        "differ; the fit of the joint matters more than its slope.",
        numeric=(2, 3, 4),
    )
