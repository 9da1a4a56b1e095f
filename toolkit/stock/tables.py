"""The solver's tables for one board: what is made of what is told in ``toolkit.stock.layout``."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from toolkit.stock.blanks import Blank
from toolkit.stock.board_grid import MARGIN, NEVER, cells, grid
from toolkit.stock.boards import Board
from toolkit.stock.sets import Counts, few_enough, sets_up_to, without

if TYPE_CHECKING:
    from toolkit.stock.board_grid import Values

MOST_VALUES = 60_000_000  # of all tables together: a quarter of a gigabyte


@dataclass(frozen=True, slots=True)
class LaidCell:
    """A part of a kind, by its lower left cell."""

    kind: int
    along: int
    across: int


class BoardTables:
    """The tables of one board and some kinds of parts, with at most so many of each. [mm]"""

    def __init__(
        self,
        board: Board,
        *,
        kinds: Sequence[Blank],
        counts: Sequence[int],
        gap: float = 5.0,
        cell: float = 1.0,
        margin: float = MARGIN,
    ) -> None:
        self.all: Counts = tuple(counts)
        self._sets = list(sets_up_to(self.all)) if few_enough(self.all) else []
        if not self._sets:
            raise ValueError(
                f"{sum(self.all)} parts of {len(kinds)} kinds make too many sets to try them all; "
                "lay out fewer at a time"
            )
        while True:
            self.grid = grid(board, cell=cell, margin=margin)
            self.gap = cells(gap, cell=self.grid.cell)
            self._long = [cells(kind.length, cell=self.grid.cell) for kind in kinds]
            self._wide = [cells(kind.width, cell=self.grid.cell) for kind in kinds]
            if sum(rows * columns for _, rows, columns in self._rippable()) <= MOST_VALUES:
                break
            cell = 2 * self.grid.cell
        self._worth = [
            self.grid.worth(long=long, wide=wide) * np.float32(len(kind.parts))
            for kind, long, wide in zip(kinds, self._long, self._wide, strict=True)
        ]
        self._full: dict[Counts, Values] = {}
        self._section: dict[Counts, Values] = {}
        self._board: dict[Counts, Values] = {}
        self._rip()
        self._crosscut()

    def best(self, chosen: Counts) -> Values | None:
        """Best sum of looks of a set from the first cells of the board; None if never."""
        return self._board.get(chosen)

    def fitting(self) -> tuple[Counts, ...]:
        """Every set that fits on the board, the empty one among them."""
        return tuple(self._board)

    def length_of(self, section: Counts) -> int:
        """How many cells long a section is: as long as its longest part."""
        return max((self._long[k] for k, n in enumerate(section) if n), default=0)

    def _width_of(self, section: Counts) -> int:
        """How many cells its strips take side by side."""
        total = sum(n * self._wide[k] for k, n in enumerate(section))
        return total + self.gap * (sum(section) - 1)

    def _last_strips(self, section: Counts) -> Iterator[tuple[int, Counts]]:
        """Each kind that the topmost strip may be of, and the strips under it."""
        for k, n in enumerate(section):
            if n:
                yield k, (*section[:k], n - 1, *section[k + 1 :])

    def _rippable(self) -> Iterator[tuple[Counts, int, int]]:
        """Sets whose strips lie side by side in the board's width, with their tables' shapes."""
        for section in self._sets[1:]:
            rows = self.grid.across - self._width_of(section) + 1
            columns = self.grid.along - self.length_of(section) + 1
            if rows > 0 and columns > 0:
                yield section, rows, columns

    def _rip(self) -> None:
        """Best looks of the strips in the lower y cells of a section that begins at x.

        ``_full[S]`` is indexed [y − least y, x]; ``_section[S]`` is its last row, the whole width.
        """
        for section, rows, columns in self._rippable():
            best: Values | None = None
            for k, under in self._last_strips(section):
                here = self._strips(k, under, rows, columns)
                if here is not None:
                    best = here if best is None else np.maximum(best, here, out=best)
            if best is None:
                continue
            widest = self._width_of(section) + self.gap + min(self._wide)
            if widest <= self.grid.across and sum(section) < sum(self.all):
                for row in range(1, rows):
                    np.maximum(best[row], best[row - 1], out=best[row])
                self._full[section] = best
                top = best[-1]
            else:
                top = best.max(axis=0)
            if np.isfinite(top).any():
                self._section[section] = top

    def _strips(self, k: int, under: Counts, rows: int, columns: int) -> Values | None:
        """A strip of one kind at every height over the strips under it, or None if never."""
        here = self._worth[k]
        if not any(under):
            return here[:rows, :columns].copy() if here.size else None
        if under not in self._full or not here.size:
            return None
        low = self._width_of(under) + self.gap
        return self._full[under][:rows, :columns] + here[low : low + rows, :columns]

    def _crosscut(self) -> None:
        """Best looks of every set from the first x cells: sections sawn one after another."""
        along = self.grid.along
        self._board[self._sets[0]] = np.zeros(along + 1, np.float32)
        for chosen in self._sets[1:]:
            best = np.full(along + 1, NEVER, np.float32)
            for section in self._section:
                rest = without(chosen, other=section)
                if min(rest) < 0 or rest not in self._board:
                    continue
                gap = self.gap if any(rest) else 0
                long = self.length_of(section)
                starts = along - long - gap + 1
                if starts > 0:
                    value = self._board[rest][:starts] + self._section[section][gap : gap + starts]
                    row = best[gap + long :]
                    np.maximum(row, value, out=row)
            np.maximum.accumulate(best, out=best)
            if np.isfinite(best[-1]):
                self._board[chosen] = best

    def sections(self, chosen: Counts, *, used: int) -> list[tuple[int, int, list[LaidCell]]]:
        """The sections of the best layout in so many cells: start, end and parts of each."""
        made, rest, x = [], chosen, used
        while any(rest):
            row = self._board[rest]
            x = int(np.argmax(row[: x + 1] >= row[x]))
            section, start = self._last_section(rest, x)
            made.append((start, x, self._places(section, start)))
            rest = without(rest, other=section)
            x = start - (self.gap if any(rest) else 0)
        return made[::-1]

    def _last_section(self, rest: Counts, x: int) -> tuple[Counts, int]:
        """What was sawn last to end at x, and where it starts."""
        wanted = self._board[rest][x]
        for section, top in self._section.items():
            left = without(rest, other=section)
            start = x - self.length_of(section)
            before = start - (self.gap if any(left) else 0)
            if min(left) < 0 or left not in self._board or before < 0:
                continue
            if self._board[left][before] + top[start] >= wanted:
                return section, start
        raise AssertionError("a table that was made cannot be read back")

    def _places(self, section: Counts, x: int) -> list[LaidCell]:
        """The parts of a section that starts at x, from its lower edge up."""
        y, found, rest = self.grid.across, list[LaidCell](), section
        while any(rest):
            best = (NEVER, 0, 0, rest)
            for k, under in self._last_strips(rest):
                column = self._strip_column(k, under, x, y - self._width_of(rest) + 1)
                row = int(np.argmax(column)) if column.size else 0
                if column.size and column[row] > best[0]:
                    floor = self._width_of(under) + self.gap if any(under) else 0
                    best = (column[row], k, floor + row, under)
            _, k, low, rest = best
            found.append(LaidCell(k, x, low))
            y = low - self.gap
        return found[::-1]

    def _strip_column(self, k: int, under: Counts, x: int, rows: int) -> Values:
        here = self._worth[k]
        if not here.size or (any(under) and under not in self._full):
            return here[:0, 0]
        if not any(under):
            return here[:rows, x]
        low = self._width_of(under) + self.gap
        return self._full[under][:rows, x] + here[low : low + rows, x]
