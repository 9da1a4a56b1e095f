"""Questions of lesson 1 about a board: the sides that come from it, or what a yard counts."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import product
from math import ceil, floor

from toolkit.measures import MM_PER_INCH
from toolkit.results import TOLERANCE
from toolkit.stock import MM_PER_FOOT, board_feet
from toolkit.study.asking import Asking
from toolkit.study.lesson1_rough import LOST
from toolkit.study.marking import Question

# Boards that lie in a rack are as long and as wide as from so many to so many rough sides, to the
# next of these steps [mm]; those in a yard have widths [in] and lengths [ft] to choose from (all
# made up).
_SIDES = ((3, 6), (2, 5))
_STEPS = (50, 5)
_YARD_WIDTHS = tuple(quarters / 4 for quarters in range(22, 41))
_YARD_LENGTHS = (6.5, 7.75, 8.5, 9.25, 10.5)


def from_a_board(ask: Asking) -> Question | None:
    """What a board comes to: sides to saw from it, or the board feet that a yard counts."""
    by_count = {"mm": _sides, "in": _board_feet}
    return by_count[ask.rule.units](ask)


@dataclass(frozen=True, slots=True)
class _Sawn:
    """A board sawn into pieces with their grain along it. [mm]"""

    board: tuple[float, float]
    piece: tuple[float, float]
    cut: float

    def fits(self, axis: int, cut: float) -> int:
        """How many pieces lie along the board (0) or across it (1)."""
        room, each = self.board[axis] + cut, self.piece[axis] + cut
        return floor(room / each * (1 + TOLERANCE))

    @property
    def along(self) -> int:
        return self.fits(0, self.cut)

    @property
    def across(self) -> int:
        return self.fits(1, self.cut)

    @property
    def count(self) -> int:
        return self.along * self.across

    @property
    def without_cuts(self) -> int:
        return self.fits(0, 0.0) * self.fits(1, 0.0)

    @property
    def by_area(self) -> int:
        share = self.board[0] * self.board[1] / (self.piece[0] * self.piece[1])
        return floor(share * (1 + TOLERANCE))


def _racked(side: tuple[float, float], cut: float) -> Iterator[_Sawn]:
    """Boards from which saw cuts and area would each give a wrong number of sides."""
    lengths, widths = (
        range(ceil(least * size / step) * step, ceil(most * size), step)
        for size, (least, most), step in zip(side, _SIDES, _STEPS, strict=True)
    )
    for length, width in product(lengths, widths):
        sawn = _Sawn((float(length), float(width)), side, cut)
        wrong = {sawn.without_cuts, sawn.by_area, sawn.along + sawn.across}
        if sawn.along > 1 and sawn.across > 1 and len(wrong - {sawn.count}) == len(wrong) > 1:
            yield sawn


def _sides(ask: Asking) -> Question | None:
    side = ask.part("side")
    if side is None or ask.plan.choices.made.side_length is not None:
        return None
    length, width, cut = side.rough_length.value, side.rough_width.value, LOST["mm"]["cut"]
    boards = list(_racked((length, width), cut))
    if not boards:
        return None
    sawn = ask.pick(boards)
    slips = {
        "no-cuts": sawn.without_cuts,
        "by-area": sawn.by_area,
        "added": sawn.along + sawn.across,
        "one-row": sawn.along,
        "across-only": sawn.across,
    }
    return ask.question("lesson1.sides", sawn.count, slips, sawn=sawn, side=side, cut=cut)


def _board_feet(ask: Asking) -> Question | None:
    side = ask.part("side")
    if side is None:
        return None
    thick = side.rough_thickness.value
    sizes = [
        (feet, inches)
        for feet, inches in product(_YARD_LENGTHS, _YARD_WIDTHS)
        # A fraction that decides the rounding shows who has dropped and who has rounded it.
        if round(feet * inches / 12) != round(floor(feet) * inches / 12)
        and 0.1 < floor(feet) * inches / 12 % 1 < 0.4
    ]
    feet, inches = ask.pick(sizes)
    counted = board_feet(feet * MM_PER_FOOT, width=inches * MM_PER_INCH, thickness=thick)
    if counted.thickness != 1:
        return None
    raw, whole = counted.raw, floor(feet)
    slips = {
        "as-thin-as-it-is": round(raw * thick / MM_PER_INCH),
        "odd-inches": round(feet * inches / 12),
        "not-divided": round(inches * whole),
    }
    return ask.question(
        "lesson1.board-feet",
        counted.board_feet,
        slips,
        side=side,
        whole=whole,
        odd=(feet - whole) * 12,
        wide=inches * MM_PER_INCH,
        sum=counted.sentence,
    )
