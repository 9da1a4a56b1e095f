"""Why parts are missing from a layout, in numbers that a person can check with a rule."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from toolkit.measures import Rule
from toolkit.results import below, listed
from toolkit.stock.blanks import Blank, right_wood, thick_enough
from toolkit.stock.board_grid import Grid, cells, grid
from toolkit.stock.boards import Board
from toolkit.stock.laid import BoxLaid


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
