"""The parts of a whole class on the boards of a rack, from the least wood, with proof or gap.

For every board all counts of parts that it can give are listed with the wood each takes
(``class_sections``, ``class_patterns``); then one count is picked for each board, so that the
class has all it needs (``class_search``). Looks are not weighed.

Where everybody's box has its own size there are too many kinds of parts for that. Then parts that
are nearly alike are sawn to the larger size of them, and the floor is one of area alone: such a
layout is good, but it is not proved to be the best, and says so.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from toolkit.measures import Rule
from toolkit.stock.blanks import Blank, can_give
from toolkit.stock.board_grid import MARGIN
from toolkit.stock.boards import Board
from toolkit.stock.class_patterns import MOST_KEPT, board_patterns
from toolkit.stock.class_prices import Prices, area_prices, best_prices, checked_prices
from toolkit.stock.class_program import market
from toolkit.stock.class_search import search
from toolkit.stock.class_sections import BoardSections, board_sections
from toolkit.stock.laid import Laid
from toolkit.stock.layout import GAP
from toolkit.stock.sets import kinds_of

MOST_KINDS = 12
FEW_KINDS = 5  # so few that all their counts can be listed
KEPT_OF_MANY = 300
SHARE_FOR_PRICES = 0.2  # of the time
LITRE = 1e6  # [mm³]


@dataclass(frozen=True, slots=True)
class ClassLaid:
    """A class's parts on a rack.

    ``boards`` holds a layout for every board, ``missing`` the parts that the stock cannot give.
    ``proved`` says whether no layout sawn this way uses less wood on this grid; where it is not
    proved, ``gap`` bounds what could be saved. ``alike`` says whether parts of nearly one size
    were sawn to the larger.
    """

    boards: tuple[Laid, ...]
    missing: tuple[Blank, ...]
    prices: Prices
    proved: bool
    alike: bool
    cell: float

    @property
    def volume(self) -> float:
        """Wood used up, offcuts and all. [mm³]"""
        return sum(laid.volume for laid in self.boards)

    @property
    def used(self) -> float:
        """Length of board used, all boards together. [mm]"""
        return sum(laid.used for laid in self.boards)

    @property
    def gap(self) -> float | None:
        """By how much the wood may exceed the floor's; None while parts are missing. [share]"""
        if self.missing or not self.prices.floor:
            return None
        return max(0.0, self.volume / self.prices.floor - 1)

    def sentence(self, rule: Rule) -> str:
        """The layout and what is proved about it, in words, on somebody's rule."""
        pieces = sum(len(laid.pieces) for laid in self.boards)
        boards = sum(bool(laid.sections) for laid in self.boards)
        used = rule.show(self.used, fineness="rough", direction="up")
        told = (
            f"{pieces} parts from {boards} boards: {used} of board, "
            f"{self.volume / LITRE:.2f} litres of wood."
        )
        if self.missing:
            return f"{told} {len(self.missing)} parts are missing."
        if self.proved:
            grid = rule.exact(self.cell)
            return f"{told} No layout sawn this way uses less, on a grid of {grid}."
        if self.gap is None:
            return told
        return (
            f"{told} It is not proved that this is the least: no layout can save more than "
            f"{100 * self.gap / (1 + self.gap):.1f} % of it."
        )


def lay_out_class(
    blanks: Sequence[Blank],
    boards: Sequence[Board],
    *,
    gap: float = GAP,
    cell: float = 2.0,
    margin: float = MARGIN,
    time_limit: float = 10.0,
) -> Iterator[ClassLaid]:
    """Lay out a class, the first answer at once and then, if need be, a better or proved one.

    ``gap``, ``cell`` and ``margin`` in mm; ``time_limit`` bounds the search. [s]
    """
    if not blanks:
        nothing = Prices((), ())
        yield ClassLaid(tuple(Laid(b, gap, 0.0) for b in boards), (), nothing, True, False, cell)
        return
    groups = _grouped(blanks)
    alike = any(len({blank.alike for blank in group}) > 1 for group in groups)
    wanted = [len(group) for group in groups]

    def listed(kinds: Sequence[Blank]) -> list[BoardSections]:
        return [
            board_sections(
                board,
                kinds,
                counts=[
                    n if can_give(board, kind) else 0 for n, kind in zip(wanted, kinds, strict=True)
                ],
                gap=gap,
                cell=cell,
                margin=margin,
            )
            for board in boards
        ]

    kinds = [_of_all(max, group) for group in groups]
    sections = listed(kinds)
    kept = MOST_KEPT if len(kinds) <= FEW_KINDS else KEPT_OF_MANY
    patterns = [board_patterns(one, most=wanted, kept=kept) for one in sections]
    on = market(patterns, wanted=wanted)
    if not all(one.whole for one in sections):
        prices = area_prices(kinds_of(blanks), boards, gap=gap)
    elif all(one.whole for one in patterns) and not alike:
        prices = checked_prices(sections, kinds=kinds, counts=wanted, prices=on.prices.tolist())
    else:
        # Who needs each part only as small as the smallest of its kind needs no more wood.
        kinds = [_of_all(min, group) for group in groups]
        sections = listed(kinds) if alike else sections
        seconds = time_limit * SHARE_FOR_PRICES
        prices = best_prices(sections, kinds=kinds, on=on, seconds=seconds)
    for shared in search(on, time_limit=time_limit):
        names = [list(group) for group in groups]
        laid = tuple(
            patterns[index].laid(row, gap=gap, names=names)
            if (row := shared.patterns[index]) >= 0
            else Laid(board, gap, 0.0)
            for index, board in enumerate(boards)
        )
        missing = tuple(blank for group in names for blank in group)
        yield ClassLaid(
            laid,
            missing,
            prices,
            shared.proved and not alike and not missing,
            alike,
            max((one.on.cell for one in sections), default=cell),
        )


def _grouped(blanks: Sequence[Blank]) -> list[tuple[Blank, ...]]:
    """Parts by kind; of too many kinds, the two that waste least together are made one."""
    groups = list(kinds_of(blanks))
    while len(groups) > MOST_KINDS:
        pairs = [
            (_waste(one + other), i, j)
            for j, other in enumerate(groups)
            for i, one in enumerate(groups[:j])
            if one[0].wood.casefold() == other[0].wood.casefold()
            and not (one[0].run or other[0].run)
        ]
        if not pairs:
            break
        _, i, j = min(pairs)
        groups[i] += groups.pop(j)
    return groups


def _waste(group: tuple[Blank, ...]) -> float:
    """Wood lost when all of a group are sawn to the largest of it. [mm³]"""
    most = _of_all(max, group)
    each = most.length * most.width * most.thickness
    return sum(each - blank.length * blank.width * blank.thickness for blank in group)


def _of_all(largest: Callable[[Iterable[float]], float], group: tuple[Blank, ...]) -> Blank:
    """A part with the largest, or with the smallest, of each size in its group."""
    if len({blank.alike for blank in group}) == 1:
        return group[0]
    return replace(
        group[0],
        length=largest(blank.length for blank in group),
        width=largest(blank.width for blank in group),
        thickness=largest(blank.thickness for blank in group),
        finished=largest(blank.finished for blank in group),
    )
