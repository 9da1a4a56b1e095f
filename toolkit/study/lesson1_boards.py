"""Lesson 1, boards: what to reckon before the first saw cut."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import product
from math import ceil, floor

from toolkit.measures import MM_PER_INCH
from toolkit.results import TOLERANCE, WALLS, Part, Working
from toolkit.stock import LOST, MM_PER_FOOT, board_feet, sets_needed
from toolkit.study.asking import Asking, once, without
from toolkit.study.marking import Question

# Boards that lie in a rack are as long and as wide as from so many to so many rough sides, to the
# next of these steps [mm]; those in a yard have widths [in] and lengths [ft] to choose from (all
# made up).
_SIDES = ((3, 6), (2, 5))
_STEPS = (50, 5)
_YARD_WIDTHS = tuple(quarters / 4 for quarters in range(22, 41))
_YARD_LENGTHS = (6.5, 7.75, 8.5, 9.25, 10.5)
# How soon the grain leaves a board, 1 in so many, and how large a class is: made up.
_SLOPES = (10, 8, 9, 15, 11)
_CLASSES = (10, 9, 6, 7, 11, 13)


def _walls(ask: Asking) -> list[Part]:
    """The walls that can come from one blank with the sides, unless one is made already."""
    side, made = ask.part("side"), ask.plan.choices.made
    ask.only_if((made.side_length, made.back_length, made.front_length) == (None, None, None))
    return [
        part
        for part in ask.plan.parts
        if part.name in WALLS
        and part.wood == side.wood
        and part.rough_thickness.value == side.rough_thickness.value
    ]


def _blank(ask: Asking, walls: list[Part]) -> Working:
    """Rough length of the blank that the walls are sawn from. [mm]"""
    lost, pieces = LOST[ask.rule.units], sum(part.count for part in walls)
    return Working.of(
        "blank",
        *((f"rough {part.name}", part.rough_length.value, part.count) for part in walls),
        ("saw cut", lost["cut"], pieces - 1),
        ("end waste", lost["ends"]),
    )


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


def _sides(ask: Asking) -> Question:
    side = ask.part("side")
    ask.only_if(ask.plan.choices.made.side_length is None)
    length, width, cut = side.rough_length.value, side.rough_width.value, LOST["mm"]["cut"]
    boards = list(_racked((length, width), cut))
    ask.only_if(boards)
    sawn = ask.pick(boards)
    slips = {
        "no-cuts": sawn.without_cuts,
        "by-area": sawn.by_area,
        "added": sawn.along + sawn.across,
        "one-row": sawn.along,
        "across-only": sawn.across,
    }
    return ask.question("lesson1.sides", sawn.count, slips, sawn=sawn, side=side, cut=cut)


def _board_feet(ask: Asking) -> Question:
    side = ask.part("side")
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
    ask.only_if(counted.thickness == 1)
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


def grain_run_out(ask: Asking) -> Question:
    """How far a fibre goes along a side before it is through."""
    f = ask.frame
    thick, high = f.side_thickness.value, f.wall_height.value
    slope = ask.pick(_SLOPES)
    rough = ask.part("side").rough_thickness.value
    answer = slope * thick
    slips = {
        "rough": slope * rough,
        "height": slope * high,
        "divided": thick / slope,
        "halved": slope * thick / 2,
        "one-in-one": thick,
    }
    return ask.question("lesson1.run-out", answer, slips, slope=slope, rough=rough)


def wall_blank(ask: Asking) -> Question:
    """How long a blank is from which the walls are sawn end to end."""
    walls, rule = _walls(ask), ask.rule
    sum_, lost, say = _blank(ask, walls), LOST[rule.units], rule.exact
    listed = "; ".join(
        f"{'two sides' if part.count == 2 else f'the {part.name}'} "
        f"{say(part.rough_length.value)}, cut to {say(part.cut_length.value)}"
        for part in walls
    )
    planed = sum((part.rough_length.value - part.cut_length.value) * part.count for part in walls)
    pieces = sum(part.count for part in walls)
    slips = {
        "one-side": once(sum_, "rough side"),
        "finished": sum_.value - planed,
        "no-cuts": without(sum_, "saw cut"),
        "cut-too-many": sum_.value + lost["cut"],
        "no-ends": without(sum_, "end waste"),
        "ends-twice": sum_.value + lost["ends"],
        "pieces-only": without(sum_, "saw cut", "end waste"),
    }
    return ask.question(
        "lesson1.wall-blank",
        sum_,
        slips,
        listed=listed,
        lost=lost,
        pieces=pieces,
        cuts=f"{pieces - 1} cut{'s' if pieces > 2 else ''}",
    )


def from_a_board(ask: Asking) -> Question:
    """What a board comes to: sides to saw from it, or the board feet that a yard counts."""
    by_count = {"mm": _sides, "in": _board_feet}
    return by_count[ask.rule.units](ask)


def resawn(ask: Asking) -> Question:
    """How thick a board must be to be resawn into lid and bottom."""
    lid, bottom, rule = ask.part("lid"), ask.part("bottom"), ask.rule
    ask.only_if(lid.wood == bottom.wood)
    thick = {part.name: part.thickness.value for part in (lid, bottom)}
    name = max(thick, key=lambda part: thick[part])
    lost = LOST[rule.units]
    sum_ = Working.of(
        "board",
        (f"{name} thickness", thick[name], 2),
        ("wander", lost["wander"], 2),
        ("planed off", lost["truing"], 2),
        ("saw cut", lost["kerf"]),
    )
    slips = {
        "no-cut": without(sum_, "saw cut"),
        "two-cuts": sum_.value + lost["kerf"],
        "losses-once": once(sum_, "wander") - lost["truing"],
        "no-wander": without(sum_, "wander"),
        "no-losses": 2 * thick[name] + lost["kerf"],
        "leaves-only": 2 * thick[name],
        "one-leaf": sum_.value - thick[name],
    }
    return ask.question("lesson1.resawn", sum_, slips, thick=thick, lost=lost)


def sets(ask: Asking) -> Question:
    """How many sets of parts a class saws, spares included."""
    students = ask.pick(_CLASSES)
    answer, spare = float(sets_needed(students)), students / 4
    slips = {
        "rounded-down": floor(students + spare),
        "no-spares": students,
        "spares-only": ceil(spare),
        "twenty-five": students + 25.0,
        "half-as-many": ceil(students * 1.5),
    }
    return ask.question("lesson1.sets", answer, slips, students=students, spare=spare)
