"""Wood that flushing the joints takes from the lap, the rim and the walls behind the grooves."""

from __future__ import annotations

from dataclasses import dataclass

from toolkit.measures import Rule
from toolkit.results import GEOMETRY, Finding, Working, above, below
from toolkit.results.refusals import above_zero, not_negative
from toolkit.smoothing.customs import DEFAULTS, SurfaceCustoms, cite


@dataclass(frozen=True, slots=True)
class Flushed:
    """Sizes before and after planing as sums, None for what was not given. [mm]"""

    lap: Working | None
    rim: Working | None
    groove_wall: Working | None
    lid_play: Working | None
    outside: float
    rim_planed: float

    @property
    def workings(self) -> tuple[Working, ...]:
        """Those that were given, as sums."""
        rows = (self.lap, self.rim, self.groove_wall, self.lid_play)
        return tuple(row for row in rows if row is not None)

    def sentence(self, rule: Rule) -> str:
        """Every sum in words."""
        return "; ".join(row.sentence(rule) for row in self.workings) + "."

    def findings(self, *, rule: Rule, customs: SurfaceCustoms = DEFAULTS) -> tuple[Finding, ...]:
        """The sizes to look at again."""
        show, found = rule.exact, []
        for row in (self.lap, self.rim, self.groove_wall):
            if row is not None and not above(row.value, 0.0):
                found.append(
                    Finding(
                        "wont_work",
                        "planed-through",
                        row.name,
                        f"{show(row.terms[0].value)} less what is planed off leaves nothing.",
                        "Flush the joints with less, or make the wall thicker.",
                        GEOMETRY,
                    )
                )
        if above(self.rim_planed, customs.rim_planing_most):
            found.append(
                Finding(
                    "care",
                    "rim-planed",
                    "rim",
                    f"{show(self.rim_planed)} planed off it in all is over "
                    f"{show(customs.rim_planing_most)}: look again at the strip above the lid "
                    "groove.",
                    "Take what is uneven off the high places only.",
                    cite("rim_planing_most"),
                )
            )
        if below(self.outside, customs.flushing_least) or above(
            self.outside, customs.flushing_most
        ):
            found.append(
                Finding(
                    "care",
                    "flushing-allowance",
                    "outside faces",
                    f"{show(self.outside)} off each is outside the usual "
                    f"{show(customs.flushing_least)} to {show(customs.flushing_most)}: too little "
                    "leaves joints proud, more goes off the lap.",
                    f"Leave {show(customs.flushing_least)} to {show(customs.flushing_most)}.",
                    cite("flushing_most"),
                )
            )
        if self.lid_play is not None and above(self.lid_play.value, customs.lid_play_most):
            found.append(
                Finding(
                    "care",
                    "lid-rattles",
                    "lid",
                    f"its tongue is {show(self.lid_play.value)} thinner than the groove, over "
                    f"{show(customs.lid_play_most)}: the lid rattles and tips at the front.",
                    "Take the last shavings off the top of the lid, not off its tongue; a strip "
                    "of veneer glued along the tongue brings it back.",
                    cite("lid_play_most"),
                )
            )
        if not found:
            found.append(
                Finding(
                    "good",
                    "good-flushing",
                    "outside faces",
                    f"{show(self.outside)} off each leaves "
                    + ", ".join(f"{row.name} {show(row.value)}" for row in self.workings)
                    + ".",
                    "",
                    cite("flushing_most"),
                )
            )
        return tuple(found)


def after_flushing(
    outside: float,
    *,
    lap: float | None = None,
    rim: float | None = None,
    groove_wall: float | None = None,
    lid_play: float | None = None,
    rim_planed: float = 0.0,
    tongue_planed: float = 0.0,
) -> Flushed:
    """The sizes left once the outside faces are planed flush.

    Parameters
    ----------
    outside : float
        Planed off each outside face. [mm]
    lap : float, optional
        Lap of the half-blind joint. [mm]
    rim : float, optional
        Strip of wall above the lid groove. [mm]
    groove_wall : float, optional
        Wall left behind the bottom of a groove. [mm]
    lid_play : float, optional
        Groove's width less the tongue's thickness. [mm]
    rim_planed : float
        Planed off the rim in all. [mm]
    tongue_planed : float
        Planed off the lid's tongue while it was fitted and smoothed. [mm]

    Returns
    -------
    Flushed
        What is left of each that was given, as sums. [mm]

    Raises
    ------
    ValueError
        A size is out of range.

    Source
    ------
    Geometry. 0.2 to 0.3 mm a face: custom, no source.

    >>> round(after_flushing(0.3, lap=4).lap.value, 3)
    3.7
    """
    not_negative(outside, name="what is planed off", example="0.3")
    not_negative(rim_planed, name="what is planed off the rim", example="0.3")
    not_negative(tongue_planed, name="what is planed off the tongue", example="0.1")
    sizes = {"lap": lap, "rim strip": rim, "wall behind the groove": groove_wall}
    for name, value in sizes.items():
        if value is not None:
            above_zero(value, name=name, example="4")
    if lid_play is not None:
        not_negative(lid_play, name="play of the lid", example="0.3")
    return Flushed(
        _less("lap", lap, outside, "planed off the face"),
        _less("rim strip", rim, rim_planed, "planed off the rim"),
        _less("wall behind the groove", groove_wall, outside, "planed off the face"),
        _less("play of the lid", lid_play, -tongue_planed, "planed off the tongue"),
        float(outside),
        float(rim_planed),
    )


def _less(name: str, size: float | None, planed: float, why: str) -> Working | None:
    if size is None:
        return None
    if planed == 0:
        return Working.of(name, ("as made", size))
    return Working.of(name, ("as made", size), (why, -planed))
