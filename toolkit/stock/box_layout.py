"""The parts of one box shared out among the boards on the rack.

Each board has its own tables (``toolkit.stock.layout``) for the parts that its wood and thickness
allow. Boards are then taken one by one: what is the least wood, for how good a look, of every set
of parts from the boards so far? A board gives some set T or nothing, the boards before it the
rest. As a set may be had in several ways, dearer and of better figure, each keeps its trade-off.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from toolkit.measures import Rule
from toolkit.results import below, listed
from toolkit.stock.blanks import (
    Blank,
    Corners,
    can_give,
    right_wood,
    round_the_corners,
    thick_enough,
)
from toolkit.stock.board_grid import MARGIN, Grid, cells, grid
from toolkit.stock.boards import Board
from toolkit.stock.laid import BoxLaid, Laid, Point
from toolkit.stock.layout import GAP, NO_GAIN, STEP, BoardLayouts
from toolkit.stock.sets import Counts, Way, kinds_of, sets_up_to, without, worth_having


class BoxLayouts:
    """Every layout worth having of one box on a rack; made once, read with a slider."""

    def __init__(
        self,
        blanks: Sequence[Blank],
        boards: Sequence[Board],
        *,
        gap: float = GAP,
        cell: float = 1.0,
        margin: float = MARGIN,
        corners: Corners = "free",
    ) -> None:
        self.boards, self.gap = tuple(boards), gap
        self.groups = kinds_of(round_the_corners(blanks, corners=corners, gap=gap))
        self._layouts: list[BoardLayouts | None] = []
        self._given: list[list[tuple[Counts, Counts, tuple[Point, ...]]]] = []
        for board in self.boards:
            here = [blank for group in self.groups for blank in group if can_give(board, blank)]
            made = None
            if here:
                made = BoardLayouts(board, here, gap=gap, cell=cell, margin=margin)
            self._layouts.append(made)
            self._given.append([] if made is None else list(self._sets_of(made)))
        self.cell = max((made.cell for made in self._layouts if made), default=cell)
        self.most, self._ways = self._share_out()

    def laid(self, looks: float = 0.0) -> BoxLaid:
        """The layout at a slider's place, from 0, most economical, to 1, best figure."""
        if not 0 <= looks <= 1:
            raise ValueError(
                f"looks was given as {looks:g}; give 0 for the least board to 1 for the best figure"
            )
        count = max(1, self._count(self.most))
        low, high = self._ways[0].looks, self._ways[-1].looks
        wanted = low + looks * (high - low) - 1e-6
        way = next(way for way in self._ways if way.looks >= wanted)
        short = without(tuple(len(group) for group in self.groups), other=self.most)
        missing = tuple(
            part
            for n, group in zip(short, self.groups, strict=True)
            for blank in group[len(group) - n :]
            for part in blank.parts
        )
        return BoxLaid(
            boards=self._read(way),
            missing=missing,
            curve=tuple(Point(row.all_used, row.looks / count, row.volume) for row in self._ways),
            looks=way.looks / count,
            least=self._ways[0].all_used,
            cell=self.cell,
        )

    def _count(self, chosen: Counts) -> int:
        pairs = zip(chosen, self.groups, strict=True)
        return sum(n * len(group[0].parts) for n, group in pairs)

    def _sets_of(self, made: BoardLayouts) -> list[tuple[Counts, Counts, tuple[Point, ...]]]:
        """What a board can give: in the box's kinds, in the board's own, and the trade-off."""
        keys = [group[0].alike for group in self.groups]
        found = []
        for chosen in made.tables.fitting():
            counts = [0] * len(keys)
            for n, group in zip(chosen, made.groups, strict=True):
                counts[keys.index(group[0].alike)] += n
            if any(chosen):
                found.append((tuple(counts), chosen, made.curve_of(chosen)))
        return found

    def _share_out(self) -> tuple[Counts, list[Way]]:
        """The largest set that the rack can give, and the ways to get it."""
        counts = tuple(len(group) for group in self.groups)
        sets = list(sets_up_to(counts))
        ways: dict[Counts, list[Way]] = {sets[0]: [Way(0.0, 0.0)]}
        for index, given in enumerate(self._given):
            after = {chosen: list(rows) for chosen, rows in ways.items()}
            for gives, chosen, curve in given:
                count = self._count(gives)
                points = [(point.volume, point.looks * count, point.used) for point in curve]
                for before, rows in ways.items():
                    total = tuple(a + b for a, b in zip(before, gives, strict=True))
                    if any(n > m for n, m in zip(total, counts, strict=True)):
                        continue
                    after.setdefault(total, []).extend(
                        Way(row.volume + volume, row.looks + seen, index, used, chosen, row)
                        for row in rows
                        for volume, seen, used in points
                    )
            ways = {
                chosen: worth_having(
                    rows, step=STEP * self._count(chosen), no_gain=NO_GAIN * self._count(chosen)
                )
                for chosen, rows in after.items()
            }
        most = max(ways, key=lambda chosen: (self._count(chosen), self._area(chosen)))
        return most, ways[most]

    def _area(self, chosen: Counts) -> float:
        pairs = zip(chosen, self.groups, strict=True)
        return sum(n * group[0].length * group[0].width for n, group in pairs)

    def _read(self, way: Way) -> tuple[Laid, ...]:
        laid = [Laid(board, self.gap, 0.0) for board in self.boards]
        queues = {group[0].alike: list(group) for group in self.groups}
        step: Way | None = way
        steps = []
        while step is not None and step.board >= 0:
            steps.append(step)
            step = step.before
        for step in reversed(steps):
            made = self._layouts[step.board]
            assert made is not None
            names = []
            for n, group in zip(step.chosen, made.groups, strict=True):
                queue = queues[group[0].alike]
                names.append(queue[:n])
                del queue[:n]
            laid[step.board] = made.laid_in(step.used, chosen=step.chosen, names=names)
        return tuple(laid)


def _together(
    blanks: Sequence[Blank], reason: Callable[[Blank], str]
) -> Iterator[tuple[str, list[str]]]:
    """Each reason with the names of all the parts that have it."""
    names: dict[str, list[str]] = {}
    for blank in blanks:
        names.setdefault(reason(blank), []).append(blank.name)
    yield from names.items()


def longest_clear(on: Grid, *, width: float) -> float:
    """The longest clear stretch of this width, 0 where there is none. [mm]"""
    wide, low, high = cells(width, cell=on.cell), 0, on.along
    while low < high:  # a stretch that is clear stays clear when it is made shorter
        middle = (low + high + 1) // 2
        low, high = (middle, high) if on.fits(long=middle, wide=wide) else (low, middle - 1)
    return low * on.cell


def why_no_board(boards: Sequence[Board], blank: Blank, *, rule: Rule, cell: float) -> str:
    """Why no board of a rack can give one part, even by itself; empty if one can."""
    wood = [board for board in boards if right_wood(blank, board)]
    if not wood:
        return f"no board is {blank.wood}"
    thick = [board for board in wood if thick_enough(blank, board)]
    if not thick:
        most, need = max(board.thickness for board in wood), rule.exact(blank.thickness)
        return f"it needs {need} of thickness; the thickest board is {rule.exact(most)}"
    longest = 0.0
    for board in thick:
        on = grid(board, cell=cell)
        found = longest_clear(on, width=blank.width)
        if not below(found, blank.length):
            return ""
        longest = max(longest, found)
    return (
        f"it needs {rule.exact(blank.length)}; the longest clear stretch "
        f"{rule.exact(blank.width)} wide on any board is {rule.exact(longest)}"
    )


def missing_sentences(laid: BoxLaid, *, rule: Rule) -> tuple[str, ...]:
    """Why the parts that a rack has no room for are missing, a sentence for each reason."""
    boards = [one.board for one in laid.boards]

    def reason(blank: Blank) -> str:
        alone = why_no_board(boards, blank, rule=rule, cell=laid.cell)
        return alone or "no room is left beside the others"

    return tuple(
        f"Missing: {listed(names)}; {why}." for why, names in _together(laid.missing, reason)
    )
