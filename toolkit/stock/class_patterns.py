"""What one board can give to a class: counts of parts, and the least length of board for each.

Sections follow one another along the board. To finish one earlier never hurts what comes after
it, so for every count of parts only the least length is kept, and counts are built up section by
section, the smaller ones first.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from toolkit.stock.blanks import Blank
from toolkit.stock.board_grid import cells
from toolkit.stock.class_sections import FAR, BoardSections
from toolkit.stock.laid import Laid, LaidPart, LaidSection, Strip

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Cells = NDArray[np.int32]

MOST_KEPT = 3000  # counts of one size that are followed up on one board
MOST_CORNERS = 4_000_000  # of the table in which patterns are compared


@dataclass(frozen=True)
class _Layer:
    """All counts of so many parts: least length of each, and the section that came last."""

    counts: Cells
    used: Cells
    section: Cells
    before: Cells  # [size of the layer before, row in it]


@dataclass(frozen=True)
class BoardPatterns:
    """The counts worth having from one board. ``counts`` [pattern, kind], ``used`` [cells].

    ``whole`` is False where so many different parts were asked for that some were passed over.
    """

    sections: BoardSections
    counts: Cells
    used: Cells
    whole: bool
    _layers: dict[int, _Layer]
    _at: tuple[tuple[int, int], ...]

    def laid(self, pattern: int, *, gap: float, names: Sequence[list[Blank]]) -> Laid:
        """A pattern as a layout; parts take their names from the lists, and none without one."""
        on = self.sections.on
        size, row = self._at[pattern]
        found: list[tuple[int, int]] = []
        while size:
            layer = self._layers[size]
            section, end = int(layer.section[row]), int(layer.used[row])
            found.append((section, end - int(self.sections.long[section])))
            size, row = (int(n) for n in layer.before[row])
        made = []
        for section, x in reversed(found):
            strips, end = [], x
            for kind, low in self.sections.places(section, x=x):
                if not names[kind]:
                    continue  # more than is wanted: it stays in the wood
                blank = names[kind].pop(0)
                piece = LaidPart(blank.name, x * on.cell, low * on.cell, blank.length, blank.width)
                strips.append(Strip(piece.y, piece.y + piece.width, (piece,)))
                end = max(end, x + cells(blank.length, cell=on.cell))
            if strips:
                made.append(LaidSection(x * on.cell, end * on.cell, tuple(strips)))
        return Laid(on.board, gap, 0.0, tuple(made))


def board_patterns(
    sections: BoardSections,
    *,
    most: Sequence[int],
    value: Sequence[float] | None = None,
    kept: int = MOST_KEPT,
) -> BoardPatterns:
    """Every count of parts worth having from one board, or the best of them where they are many.

    Of counts of one size at most ``kept`` are followed up, those of the greatest area.
    """
    limit = np.array(most, np.int32)
    if value is None:
        value = [blank.length * blank.width for blank in sections.kinds]
    worth = np.array(value)
    radix = np.concatenate(([1], np.cumprod(limit[:-1].astype(np.int64) + 1)))
    kinds, whole = len(most), sections.whole
    zero = np.zeros((1, kinds), np.int32)
    none = np.zeros(1, np.int32)
    layers: dict[int, _Layer] = {0: _Layer(zero, none, none - 1, np.zeros((1, 2), np.int32))}
    coming: dict[int, list[_Layer]] = {}
    furthest = sections.ends.shape[1] - 1
    longest = int(sections.counts.sum(axis=1).max(initial=0))
    size = 0
    while True:
        layer = layers[size]
        after = np.minimum(layer.used + (sections.gap if size else 0), furthest)
        ends = sections.ends[:, after]  # of every section, put after every count
        counts = np.minimum(layer.counts + sections.counts[:, None, :], limit)
        grown = np.where(ends < FAR, counts.sum(axis=2) - size, 0)
        for step in range(1, longest + 1):
            section, before = (rows.astype(np.int32) for rows in np.nonzero(grown == step))
            if section.size:
                way = np.column_stack((np.full(section.size, size, np.int32), before))
                coming.setdefault(size + step, []).append(
                    _Layer(counts[section, before], ends[section, before], section, way)
                )
        if not coming:
            break
        size = min(coming)
        layers[size], complete = _least(coming.pop(size), radix, worth, kept)
        whole = whole and complete
    return _worth_having(sections, layers, whole)


def _least(
    parts: list[_Layer], radix: NDArray[np.int64], worth: NDArray[np.float64], kept: int
) -> tuple[_Layer, bool]:
    """For each count the least length; where there are too many, those that fill the board best."""
    counts = np.concatenate([part.counts for part in parts])
    used = np.concatenate([part.used for part in parts])
    section = np.concatenate([part.section for part in parts])
    before = np.concatenate([part.before for part in parts])
    code = counts @ radix
    # One number for count and length, sorted at once: much faster than by several keys.
    order = np.argsort(code * np.int64(used.max() + 1) + used, kind="stable")
    ahead = code[order]
    first = np.ones(len(order), bool)
    first[1:] = ahead[1:] != ahead[:-1]
    rows = order[first]
    complete = len(rows) <= kept
    if not complete:
        rows = rows[np.argsort(used[rows] / (counts[rows] @ worth), kind="stable")[:kept]]
    return _Layer(counts[rows], used[rows], section[rows], before[rows]), complete


def _worth_having(sections: BoardSections, layers: dict[int, _Layer], whole: bool) -> BoardPatterns:
    """Patterns without those that another outdoes: as many of each kind from no more board."""
    at = [(size, row) for size, layer in layers.items() if size for row in range(len(layer.used))]
    if not at:
        empty = np.zeros((0, len(sections.kinds)), np.int32)
        return BoardPatterns(sections, empty, np.zeros(0, np.int32), whole, layers, ())
    counts = np.concatenate([layer.counts for size, layer in layers.items() if size])
    used = np.concatenate([layer.used for size, layer in layers.items() if size])
    keep = _not_outdone(counts, used)
    return BoardPatterns(
        sections, counts[keep], used[keep], whole, layers, tuple(at[row] for row in keep)
    )


def _not_outdone(counts: Cells, used: Cells) -> list[int]:
    """Rows for which no other has as many of each kind, and more of one, in the same length."""
    shape = tuple(int(n) + 2 for n in counts.max(axis=0))
    if np.prod(shape, dtype=float) > MOST_CORNERS:
        return list(range(len(used)))
    # The least length that gives so many or more, for every count there may be.
    least = np.full(shape, FAR, np.int32)
    least[tuple(counts.T)] = used
    for axis in range(len(shape)):
        least = np.flip(np.minimum.accumulate(np.flip(least, axis), axis=axis), axis)
    good = least[tuple(counts.T)] >= used
    for axis in range(len(shape)):
        more = counts.copy()
        more[:, axis] += 1
        good &= least[tuple(more.T)] > used
    return [int(row) for row in np.flatnonzero(good)]
