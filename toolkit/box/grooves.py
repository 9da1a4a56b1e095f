"""Where the grooves run, which tail holds each, and where one comes out into daylight."""

from __future__ import annotations

from dataclasses import dataclass

from toolkit.box.corner import Corner, Piece, margins
from toolkit.box.settled import Settled
from toolkit.box.walls import Frame, Span
from toolkit.results import Place, above


@dataclass(frozen=True, slots=True)
class Hole:
    """A groove that shows outside: which groove, at which corner, on which face, how big. [mm]

    ``low`` and ``high`` are above the bottom edge; ``depth`` is the hole's other side. ``cause``
    is ``pin`` (the groove meets a pin instead of a tail) or ``tip`` (it comes out of the tip of
    a through tail).
    """

    groove: str
    corner: str
    face: str
    low: float
    high: float
    depth: float
    cause: str

    @property
    def place(self) -> Place:
        """Where a finding places it."""
        return Place("", f"{self.groove} groove", self.corner, self.face)

    @property
    def height(self) -> float:
        """The hole's size along the height of the wall. [mm]"""
        return self.high - self.low


@dataclass(frozen=True, slots=True)
class GrooveFit:
    """How one groove lies at one corner: the wood on either side of it inside its tail. [mm]

    ``margins`` is None where no tail holds the whole groove.
    """

    groove: str
    corner: str
    span: Span
    margins: tuple[float, float] | None


def uncovered(span: Span, tails: tuple[Piece, ...]) -> tuple[Span, ...]:
    """What no tail covers of a groove, at the baseline where tails are narrowest. [mm]"""
    left, low = [], span.low
    for tail in tails:
        if above(min(tail.low, span.high), low):
            left.append(Span(low, min(tail.low, span.high)))
        low = max(low, min(tail.high, span.high))
    if above(span.high, low):
        left.append(Span(low, span.high))
    return tuple(left)


def _covered(span: Span, tails: tuple[Piece, ...]) -> tuple[Span, ...]:
    """What of a groove lies in tails at their tips, where a through tail shows it. [mm]"""
    meets = []
    for tail in tails:
        low, high = max(span.low, tail.tip_low), min(span.high, tail.tip_high)
        if above(high, low):
            meets.append(Span(low, high))
    return tuple(meets)


def runs(f: Frame, back: Corner, front: Corner) -> tuple[tuple[str, Span, Corner], ...]:
    """Every groove at every corner where it has to be hidden.

    The lid groove leaves through the low front on purpose: the lid fills it there.
    """
    rows = [("bottom", f.bottom_groove, back), ("bottom", f.bottom_groove, front)]
    if f.lid_groove is not None:
        rows.append(("lid", f.lid_groove, back))
    return tuple(rows)


def groove_fits(f: Frame, back: Corner, front: Corner) -> tuple[GrooveFit, ...]:
    """How each groove lies in the tails of each corner."""
    return tuple(
        GrooveFit(name, corner.name, span, margins(corner.tails, span))
        for name, span, corner in runs(f, back, front)
        if corner.tails
    )


def holes(c: Settled, f: Frame, back: Corner, front: Corner) -> tuple[Hole, ...]:
    """Every hole that a groove leaves in the outside of the box, before it is stopped or plugged.

    In a pin board it runs out through any pin it meets; in a tail board it reaches the tip of its
    tail, which only a through joint shows.
    """
    depth, on_ends = c.groove.depth, c.corner.tails_on == "ends"
    found = []
    for name, span, corner in runs(f, back, front):
        if not corner.tails:
            continue
        end = f"{corner.name} end"
        tail_board, pin_board = (end, "sides") if on_ends else ("sides", end)
        for gap in uncovered(span, corner.tails):
            face = f"{tail_board}, outside face"
            found.append(Hole(name, corner.name, face, gap.low, gap.high, depth, "pin"))
        if c.corner.joint == "through":
            for tip in _covered(span, corner.tails):
                face = f"{pin_board}, outside face"
                found.append(Hole(name, corner.name, face, tip.low, tip.high, depth, "tip"))
    return tuple(found)
