"""What can be sawn between two crosscuts of a board, when only the wood counts and not the looks.

With looks out of the way, lower is always better: ``tops[S][x]`` is the lowest height at which
the strips of S end in a section that begins at x, and ``ends[S][x]`` the first place where such a
section can end, if it begins at x or anywhere to the right of it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from toolkit.stock.blanks import Blank
from toolkit.stock.board_grid import Grid, cells, grid
from toolkit.stock.boards import Board
from toolkit.stock.sets import Counts

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Cells = NDArray[np.int32]

FAR = np.int32(1 << 28)  # further than any board is long or wide [cells]
MOST_SECTIONS = 4000


@dataclass(frozen=True)
class BoardSections:
    """Every section worth sawing from one board.

    ``counts`` [section, kind] holds the parts of each, ``long`` its length, ``ends`` [section, x]
    where it ends at the earliest. ``whole`` is False where there were too many to list them all.
    """

    on: Grid
    gap: int
    kinds: tuple[Blank, ...]
    counts: Cells
    long: Cells
    ends: Cells
    lowest: tuple[Cells, ...]
    whole: bool

    def places(self, section: int, *, x: int) -> list[tuple[int, int]]:
        """The strips of a section that begins at x, from its lower edge up: kind and height."""
        found = self._stack(tuple(int(n) for n in self.counts[section]), x, {})
        assert found is not None
        return found[1]

    def _stack(
        self, rest: Counts, x: int, known: dict[Counts, tuple[int, list[tuple[int, int]]] | None]
    ) -> tuple[int, list[tuple[int, int]]] | None:
        """The lowest way to stack some strips at x: where it ends, and the strips."""
        if not any(rest):
            return -self.gap, []
        if rest not in known:
            ways = []
            for k, n in enumerate(rest):
                if not n:
                    continue
                under = self._stack((*rest[:k], n - 1, *rest[k + 1 :]), x, known)
                if under is None or under[0] + self.gap >= len(self.lowest[k]):
                    continue
                low = int(self.lowest[k][under[0] + self.gap, x])
                if low < FAR:
                    wide = cells(self.kinds[k].width, cell=self.on.cell)
                    ways.append((low + wide, [*under[1], (k, low)]))
            known[rest] = min(ways) if ways else None
        return known[rest]


def board_sections(
    board: Board,
    kinds: Sequence[Blank],
    *,
    counts: Sequence[int],
    gap: float,
    cell: float,
    margin: float,
) -> BoardSections:
    """List every section worth sawing from one board."""
    on = grid(board, cell=cell, margin=margin)
    between = cells(gap, cell=on.cell)
    long = [cells(kind.length, cell=on.cell) for kind in kinds]
    wide = [cells(kind.width, cell=on.cell) for kind in kinds]
    lowest = tuple(
        _lowest(on, long=one, wide=other) if count else np.full((0, 0), FAR, np.int32)
        for one, other, count in zip(long, wide, counts, strict=True)
    )
    tops: dict[Counts, Cells] = {}
    layer: dict[Counts, Cells] = {(0,) * len(kinds): np.full(on.along, -between, np.int32)}
    whole = True
    while layer:
        above: dict[Counts, Cells] = {}
        for section, top in layer.items():
            for k, low in enumerate(lowest):
                if not low.size or section[k] >= counts[k]:
                    continue
                placed = _placed(top + between, low, wide[k])
                if placed.size and placed.min() < FAR:
                    more = (*section[:k], section[k] + 1, *section[k + 1 :])
                    known = above.get(more)
                    above[more] = placed if known is None else np.minimum(known, placed)
        tops.update(above)
        whole = whole and len(tops) <= MOST_SECTIONS
        layer = above if whole else {}
    return _listed(on, between, tuple(kinds), long, tops, lowest, whole)


def _lowest(on: Grid, *, long: int, wide: int) -> Cells:
    """The lowest clear place of a part at or over each height, [height, x]."""
    clear = on.clear(long=long, wide=wide)
    found = np.full(clear.shape, FAR, np.int32)
    above = np.full(clear.shape[1], FAR, np.int32)
    for row in range(clear.shape[0] - 1, -1, -1):
        above = np.where(clear[row], np.int32(row), above)
        found[row] = above
    return found


def _placed(floor: Cells, low: Cells, wide: int) -> Cells:
    """Where a strip ends that is laid on a floor of uneven height, for each x."""
    columns = min(len(floor), low.shape[1])
    floor = floor[:columns]
    rows = np.minimum(floor, low.shape[0] - 1)
    found = low[rows, np.arange(columns)]
    return np.where((floor < low.shape[0]) & (found < FAR), found + wide, FAR).astype(np.int32)


def _listed(
    on: Grid,
    gap: int,
    kinds: tuple[Blank, ...],
    long: Sequence[int],
    tops: dict[Counts, Cells],
    lowest: tuple[Cells, ...],
    whole: bool,
) -> BoardSections:
    """Sections with the first place where each can end, without those that another outdoes."""
    counts = np.array(list(tops), np.int32).reshape(-1, len(kinds))
    lengths = np.array(
        [max(long[k] for k, n in enumerate(section) if n) for section in tops], np.int32
    )
    ends = np.full((len(tops), on.along + gap + 2), FAR, np.int32)
    for row, top in enumerate(tops.values()):
        starts = np.where(top < FAR, np.arange(len(top), dtype=np.int32), FAR)
        first = np.minimum.accumulate(starts[::-1])[::-1]
        ends[row, : len(first)] = np.where(first < FAR, first + lengths[row], FAR)
    order = np.argsort(-counts.sum(axis=1), kind="stable")
    kept: list[int] = []
    for row in order:
        rivals = [one for one in kept if (counts[one] >= counts[row]).all()]
        if not any((ends[one] <= ends[row]).all() for one in rivals):
            kept.append(int(row))
    return BoardSections(on, gap, kinds, counts[kept], lengths[kept], ends[kept], lowest, whole)
