"""Reading the slope of the grain: from which end to plane a face, an edge, a rim, an end."""

from __future__ import annotations

from dataclasses import dataclass
from math import atan, degrees, inf
from typing import Literal

import numpy as np

from toolkit.results import TOLERANCE, read_table
from toolkit.smoothing._checks import above_zero, one_of

Side = Literal["face", "edge", "rim", "end grain"]
SIDES: tuple[Side, ...] = ("face", "edge", "rim", "end grain")
Start = Literal["left end", "right end", "either end", "both edges"]

# Where to look: never at the pattern on the surface that is going to be planed.
_LOOK_AT = {"face": "an edge", "edge": "a face", "rim": "the wall's outside face"}
_FLAT = 1 / 200  # a slope that no eye reads off a small box's wall [1]


@dataclass(frozen=True, slots=True)
class Reading:
    """From which end to plane a surface, and why.

    Attributes
    ----------
    surface : str
        What is planed.
    slope : float
        Rise of the fibres over their run, positive when they climb towards the right end. [1]
    start : str
        Where the stroke begins, as one looks at the piece with that surface uppermost.
    why, care : str
        The reason, and what else to do there.
    """

    surface: Side
    slope: float
    start: Start
    why: str
    care: str = ""

    @property
    def angle(self) -> float:
        """Slope of the fibres to the surface, positive when they climb to the right. [degrees]"""
        return degrees(atan(self.slope))

    @property
    def one_in(self) -> float:
        """Length along which the fibres climb by 1, infinite for straight grain. [1]"""
        return 1 / abs(self.slope) if self.slope else inf

    def sentence(self) -> str:
        """What to do, why, and what to mind."""
        where = {"both edges": "inwards from both edges", "either end": "from either end"}
        start = where.get(self.start, f"from the {self.start}")
        return f"{self.surface}: plane {start}; {self.why}. {self.care}".rstrip()


def where_to_start(surface: Side, *, rise: float = 0.0, run: float = 100.0) -> Reading:
    """From which end to plane, by the lines read on the surface next to it.

    Hold the piece with the surface to be planed uppermost and look at the surface beside it: a
    face is read on an edge, an edge on a face, a rim on the outside of its wall. Plane the way
    its lines climb, as one strokes a cat.

    Parameters
    ----------
    surface : str
        ``"face"``, ``"edge"``, ``"rim"`` or ``"end grain"``.
    rise : float
        How far a line climbs towards that surface on its way from the left end to the right,
        negative where it sinks. [mm]
    run : float
        Along what length it does so. [mm]

    Returns
    -------
    Reading
        Where to start, and why.

    Raises
    ------
    ValueError
        There is no such surface, or the run is not above 0.

    Source
    ------
    Geometry of a split that runs along the fibres: out of the wood, or down into it. Rims and end
    grain: common practice, no source.

    >>> where_to_start("face", rise=2, run=60).start, where_to_start("face", rise=-2, run=60).start
    ('left end', 'right end')
    """
    one_of(surface, name="surface", allowed=SIDES)
    above_zero(run, name="run", example="100")
    if surface == "end grain":
        return Reading(
            surface,
            0.0,
            "both edges",
            "no way is with the grain, and the last fibres have nothing behind them",
            "Stop short of the far edge and finish from there, or clamp a scrap behind it, or "
            "chamfer it down to the line first; else it breaks away (spelching).",
        )
    slope = rise / run
    start: Start
    if abs(slope) < _FLAT * (1 - TOLERANCE):
        start = "either end"
        why = f"{_LOOK_AT[surface]} shows no slope; try a thin shaving and turn round if it tears"
    else:
        start = "left end" if slope > 0 else "right end"
        other = "right" if slope > 0 else "left"
        why = (
            f"the lines on {_LOOK_AT[surface]} climb towards the {other} end by 1 in "
            f"{1 / abs(slope):.0f}, so a split runs out of the wood ahead of the edge, not into it"
        )
    care = ""
    if surface == "rim":
        care = (
            "Each wall has its own way. Where it would lead off the outside of a corner, come in "
            "from that corner first, or turn with it: the rim that crosses there would break out."
        )
    return Reading(surface, slope, start, why, care)


def opposite(reading: Reading) -> Reading:
    """The surface on the other side of the same piece, turned over about its length.

    Parameters
    ----------
    reading : Reading
        What was read for the first side.

    Returns
    -------
    Reading
        The other side's: fibres that climb to one face sink from the other, so it is planed from
        the other end.

    Source
    ------
    Geometry.

    >>> opposite(where_to_start("face", rise=2)).start
    'right end'
    """
    return where_to_start(reading.surface, rise=-reading.slope, run=1.0)


def strength_kept(slope: float) -> tuple[float, float]:
    """How much of its strength wood keeps when its grain runs out of it.

    Parameters
    ----------
    slope : float
        Rise of the fibres over their run, of either sign. [1]

    Returns
    -------
    tuple of float
        In bending and against a blow, of straight-grained wood's. [%]

    Raises
    ------
    ValueError
        The slope is steeper than 1 in 5, where the table ends.

    Source
    ------
    Wood Handbook, GTR-190 Table 5-12 (from memory), straight lines between its rows and to 100 %
    for straight grain.

    >>> strength_kept(1 / 10)
    (81.0, 62.0)
    """
    table = read_table("smoothing/slope_of_grain.csv")
    slopes = [0.0, *(1 / float(row["one_in"]) for row in table)]
    if not abs(slope) <= slopes[-1] * (1 + TOLERANCE):
        raise ValueError(
            f"slope was given as {slope:g}; the table ends at 1 in 5 (0.2): choose straighter wood"
        )
    columns = ("bending_strength_pct", "impact_bending_pct")
    bending, blow = (
        float(np.interp(abs(slope), slopes, [100.0, *(float(row[name]) for row in table)]))
        for name in columns
    )
    return bending, blow
