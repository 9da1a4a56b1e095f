"""Why parts do not lie on a board, in numbers that a person can check with a rule."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from toolkit.measures import Rule
from toolkit.results import below
from toolkit.stock.blanks import Blank, right_wood, thick_enough
from toolkit.stock.boards import Board
from toolkit.stock.grid import MARGIN, cells, grid
from toolkit.stock.laid import BoxLaid
from toolkit.stock.layout import GAP, BoardLayouts
from toolkit.stock.sets import Counts
from toolkit.stock.stretches import Clearest, clearest


@dataclass(frozen=True, slots=True)
class WhyNot:
    """Why some parts do not lie on a board.

    ``wrong`` are parts whose wood or thickness the board does not have; ``too_large`` those that
    fit nowhere on it; ``together`` is the largest set that fits together, when each fits by
    itself. All are empty when everything fits.
    """

    board: Board
    wrong: tuple[Blank, ...]
    too_large: tuple[Clearest, ...]
    together: tuple[Blank, ...]
    fits: bool

    def sentences(self, rule: Rule) -> tuple[str, ...]:
        """Each reason in words, on somebody's rule.

        Parameters
        ----------
        rule : Rule
            Theirs.

        Source
        ------
        The workbook's own.
        """
        if self.fits:
            return ("Every part fits.",)
        told = [
            f"{_listed(names)}: {reason}."
            for reason, names in _together(self.wrong, lambda blank: self._unfit(blank, rule))
        ]
        found = {row.blank: row for row in self.too_large}
        told += [
            f"{_listed(names)}: {reason}."
            for reason, names in _together(tuple(found), lambda blank: found[blank].reason(rule))
        ]
        if self.together:
            told.append(
                "The others fit one by one, but not all together; the largest set that "
                f"does: {_listed([blank.name for blank in self.together])}."
            )
        return tuple(told)

    def _unfit(self, blank: Blank, rule: Rule) -> str:
        """What is wrong with the board as such."""
        if not right_wood(blank, self.board):
            return f"to be {blank.wood}, and this is {self.board.species}"
        thick = rule.exact(self.board.thickness)
        if blank.leaves:
            return f"too thin to resaw: {rule.exact(blank.finished)} must be left, of {thick}"
        return f"{rule.exact(blank.thickness)} of thickness is needed, and this board has {thick}"


def _listed(names: Sequence[str]) -> str:
    return f"{', '.join(names[:-1])} and {names[-1]}" if len(names) > 1 else names[0]


def _together(
    blanks: Sequence[Blank], reason: Callable[[Blank], str]
) -> Iterator[tuple[str, list[str]]]:
    """Each reason with the names of all the parts that have it."""
    names: dict[str, list[str]] = {}
    for blank in blanks:
        names.setdefault(reason(blank), []).append(blank.name)
    yield from names.items()


def why_not_all_fit(
    board: Board,
    blanks: Sequence[Blank],
    *,
    gap: float = GAP,
    cell: float = 1.0,
    margin: float = MARGIN,
) -> WhyNot:
    """Say why parts do not all lie on a board.

    Parameters
    ----------
    board : Board
        The board. [mm]
    blanks : sequence of Blank
        The parts. [mm]
    gap : float
        Between parts. [mm]
    cell : float
        Size of a cell. [mm]
    margin : float
        Kept clear round every defect. [mm]

    Returns
    -------
    WhyNot
        The reasons. [mm]

    Raises
    ------
    ValueError
        Too many different parts, or a number out of its range.

    Source
    ------
    Two bisections for each part, and the layout's own tables.
    """
    wrong = tuple(b for b in blanks if not (right_wood(b, board) and thick_enough(b, board)))
    on = grid(board, cell=cell, margin=margin)
    too_large: list[Clearest] = []
    others = []
    for blank in blanks:
        if blank in wrong:
            continue
        long, wide = cells(blank.length, cell=on.cell), cells(blank.width, cell=on.cell)
        if on.fits(long=long, wide=wide):
            others.append(blank)
        else:
            stretches = clearest(on, length=blank.length, width=blank.width)
            too_large.append(Clearest(blank, *stretches))
    together: tuple[Blank, ...] = ()
    whole = True
    if others:
        layouts = BoardLayouts(board, others, gap=gap, cell=cell, margin=margin)
        whole = bool(layouts.curve)
        if not whole:
            together = _names(layouts, largest_set(layouts))
    fits = whole and not wrong and not too_large
    return WhyNot(board, wrong, tuple(too_large), together, fits)


def largest_set(layouts: BoardLayouts) -> Counts:
    """The set that fits with the most parts; of several, the one with the most wood in it.

    Parameters
    ----------
    layouts : BoardLayouts
        All layouts of some parts on one board.

    Source
    ------
    The workbook's own.
    """

    def size(chosen: Counts) -> tuple[int, float]:
        pairs = [(n, group[0]) for n, group in zip(chosen, layouts.groups, strict=True)]
        count = sum(n * len(blank.parts) for n, blank in pairs)
        return count, sum(n * blank.length * blank.width for n, blank in pairs)

    return max(layouts.tables.fitting(), key=size)


def _names(layouts: BoardLayouts, chosen: Counts) -> tuple[Blank, ...]:
    return tuple(
        blank for n, group in zip(chosen, layouts.groups, strict=True) for blank in group[:n]
    )


def why_no_board(
    boards: Sequence[Board],
    blank: Blank,
    *,
    rule: Rule,
    cell: float = 1.0,
    margin: float = MARGIN,
) -> str:
    """Why no board of a rack can give one part, even by itself; empty if one can.

    Parameters
    ----------
    boards : sequence of Board
        The rack. [mm]
    blank : Blank
        The part. [mm]
    rule : Rule
        Whose rule the sizes are read on.
    cell : float
        Size of a cell. [mm]
    margin : float
        Kept clear round every defect. [mm]

    Source
    ------
    The workbook's own.
    """
    wood = [board for board in boards if right_wood(blank, board)]
    if not wood:
        return f"no board is {blank.wood}"
    thick = [board for board in wood if thick_enough(blank, board)]
    if not thick:
        most, need = max(board.thickness for board in wood), rule.exact(blank.thickness)
        return f"it needs {need} of thickness; the thickest board is {rule.exact(most)}"
    longest = 0.0
    for board in thick:
        on = grid(board, cell=cell, margin=margin)
        found = clearest(on, length=blank.length, width=blank.width)[0]
        if not below(found, blank.length):
            return ""
        longest = max(longest, found)
    return (
        f"it needs {rule.exact(blank.length)}; the longest clear stretch "
        f"{rule.exact(blank.width)} wide on any board is {rule.exact(longest)}"
    )


def missing_sentences(laid: BoxLaid, *, rule: Rule) -> tuple[str, ...]:
    """Why the parts that a rack has no room for are missing.

    Parameters
    ----------
    laid : BoxLaid
        A box on its rack. [mm]
    rule : Rule
        Whose rule the sizes are read on.

    Returns
    -------
    tuple of str
        One sentence for each reason.

    Source
    ------
    The workbook's own.
    """
    boards = [one.board for one in laid.boards]

    def reason(blank: Blank) -> str:
        alone = why_no_board(boards, blank, rule=rule, cell=laid.cell)
        return alone or "no room is left beside the others"

    return tuple(
        f"Missing: {_listed(names)}; {why}." for why, names in _together(laid.missing, reason)
    )
