"""Parts laid out on one rough board, exactly, from most economical to best figure.

How it works, in ten minutes
----------------------------
A layout has to be *sawable by a person*: crosscut the board into sections, then rip each section
into strips; one part a strip, each from the section's left end, the grain along the board and
``gap`` for the saw between parts. A length L and a width W are counted in cells of 1 or 2 mm.
Three tables, each made from the one before:

1. *Where can a part lie, and how does it look there?* ``Grid.worth``: one array for each kind of
   part, −∞ on defects.
2. *What is the best section?* Let S be a set of parts, such as "two sides". ``full[S][y, x]`` is
   the best looks of S ripped from the lowest y cells of a section that begins at x. The topmost
   strip is a part i of S, at some height; what is under it is the same question for S without i,
   a strip and a gap lower:

       full[S][y, x] = max over i of full[S − i][y − width(i) − gap, x] + worth[i][y − width(i), x]

   and as wood may be wasted, full[S][y, x] is at least full[S][y − 1, x]. Sets too wide for the
   board are never looked at; that is most of them.
3. *What is the best board?* ``board[S][x]``: the best looks of S from the first x cells. The last
   section holds some T within S; to its left lies the same question for S without T:

       board[S][x] = max over T of board[S − T][x − length(T) − gap] + full[T][W, x − length(T)]

Parts of one size can change places, so a set is only a count of each kind: two sides, two ends,
lid and bottom make 3 · 3 · 2 · 2 = 36 sets. An example that fits in the head, two sides S and a
lid D on a board that is one strip wide: board[2 S][x] looks for the best place of a last side in
the first x cells and asks board[1 S] for the rest; board[2 S + D] tries a side last, and the lid
last, and keeps the better.

``board`` of all parts, read along x, is the best looks for every length of board: the trade-off
curve, complete. A slider only picks a point of it, and ``BoardTables.sections`` walks back from
there: which T was last, which strip was topmost. No layout *sawn this way, on this grid* does
better. Parts nested in a way that nobody can saw might.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import isfinite

import numpy as np

from toolkit.stock.blanks import Blank
from toolkit.stock.board_grid import MARGIN
from toolkit.stock.boards import Board
from toolkit.stock.laid import Laid, LaidPart, LaidSection, Point, Strip
from toolkit.stock.losses import GAP
from toolkit.stock.sets import Counts, kinds_of
from toolkit.stock.tables import BoardTables

STEP = 0.02  # least gain in mean looks that is worth showing
NO_GAIN = 0.001  # and what is no gain at all, though it were to cost a metre of board


class BoardLayouts:
    """Every layout worth having of some parts on one board, by length of board and by looks. [mm]

    Whether the board has the wood and the thickness for the parts is not asked.
    """

    def __init__(
        self,
        board: Board,
        blanks: Sequence[Blank],
        *,
        gap: float = GAP,
        cell: float = 1.0,
        margin: float = MARGIN,
    ) -> None:
        if not (isfinite(gap) and gap >= 0):
            raise ValueError(f"gap was given as {gap:g} mm; give 0 or more, such as {GAP:g}")
        self.board, self.gap = board, gap
        self._each = board.width * board.thickness
        self.groups = kinds_of(blanks)
        self.tables = BoardTables(
            board,
            kinds=[group[0] for group in self.groups],
            counts=[len(group) for group in self.groups],
            gap=gap,
            cell=cell,
            margin=margin,
        )
        self.cell = self.tables.grid.cell

    def curve_of(self, chosen: Counts) -> tuple[Point, ...]:
        """The trade-off of a set, from least board to best looks; empty where it does not fit.

        Each point looks better than the one before by 0.02 or more, the last perhaps by less; it
        is within 0.001 of the best.
        """
        row = self.tables.best(chosen)
        count = sum(n * len(group[0].parts) for n, group in zip(chosen, self.groups, strict=True))
        if row is None or not count:
            return ()
        enough = float(row[-1]) - NO_GAIN * count
        points, wanted, seen = list[Point](), -1.0, -1.0
        while seen < enough:
            # The row never falls, so the first place that looks as good as wanted is a bisection.
            place = int(np.searchsorted(row, wanted))
            used, seen = float(place) * self.cell, float(row[place])
            points.append(Point(used, seen / count, used * self._each))
            wanted = min(seen + STEP * count, enough)
        return tuple(points)

    def laid_in(
        self, used: float, *, chosen: Counts, names: Sequence[Sequence[Blank]] | None = None
    ) -> Laid:
        """The best layout of a set in a length of board [mm]; its parts in order of ``names``."""
        queues = [iter(group) for group in (names or self.groups)]
        sections, count = [], 0
        for start, end, places in self.tables.sections(chosen, used=round(used / self.cell)):
            strips = []
            for place in places:
                blank = next(queues[place.kind])
                count += len(blank.parts)
                strips.append(
                    _strip(blank, place.along * self.cell, place.across * self.cell, self.gap)
                )
            sections.append(LaidSection(start * self.cell, end * self.cell, tuple(strips)))
        row = self.tables.best(chosen)
        looks = 0.0 if row is None or not count else float(row[round(used / self.cell)]) / count
        return Laid(self.board, self.gap, looks, tuple(sections))


def _strip(blank: Blank, x: float, y: float, gap: float) -> Strip:
    pieces = []
    for part in blank.run or (blank,):
        pieces.append(LaidPart(part.name, x, y, part.length, part.width))
        x += part.length + gap
    return Strip(y, y + blank.width, tuple(pieces))
