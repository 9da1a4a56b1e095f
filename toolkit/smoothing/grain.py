"""Reading the slope of the grain: from which end to plane a face, an edge, a rim, an end."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from toolkit.results import TOLERANCE, above_zero, one_of

Side = Literal["face", "edge", "rim", "end grain"]
SIDES: tuple[Side, ...] = ("face", "edge", "rim", "end grain")
Start = Literal["left end", "right end", "either end", "both edges"]

# Where to look: never at the pattern on the surface that is going to be planed.
_LOOK_AT = {"face": "an edge", "edge": "a face", "rim": "the wall's outside face"}
_FLAT = 1 / 200  # a slope that no eye reads off a small box's wall [1]


@dataclass(frozen=True, slots=True)
class Reading:
    """From which end to plane a surface, with it uppermost, and why."""

    surface: Side
    start: Start
    why: str
    care: str = ""

    def sentence(self) -> str:
        """The start, the reason and the care in words."""
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
            "both edges",
            "no way is with the grain, and the last fibres have nothing behind them",
            "Stop short of the far edge and finish from there, or cramp a scrap behind it, or "
            "chamfer it down to the line first; else it breaks away (breakout).",
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
    return Reading(surface, start, why, care)
