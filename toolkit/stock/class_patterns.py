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

from toolkit.stock.class_sections import FAR, BoardSections
from toolkit.stock.laid import Laid, Piece, Section, Strip

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

    def laid(self, pattern: int, *, gap: float, names: Sequence[list[str]]) -> Laid:
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
            strips = []
            for kind, low in self.sections.places(section, x=x):
                if not names[kind]:
                    continue
                blank = self.sections.kinds[kind]
                piece = Piece(
                    names[kind].pop(0), x * on.cell, low * on.cell, blank.length, blank.width
                )
                strips.append(Strip(piece.y, piece.y + piece.width, (piece,)))
            if strips:
                end = max(strip.pieces[0].x + strip.pieces[0].length for strip in strips)
                made.append(Section(x * on.cell, end, tuple(strips)))
        return Laid(on.board, gap, 0.0, tuple(made))


def board_patterns(sections: BoardSections, *, most: Sequence[int]) -> BoardPatterns:
    """Every count of parts worth having from one board.

    Parameters
    ----------
    sections : BoardSections
        What can be sawn between two crosscuts of the board.
    most : sequence of int
        How many of each kind are wanted.

    Source
    ------
    Label-correcting over counts; the workbook's own.
    """
    limit = np.array(most, np.int32)
    area = np.array([blank.length * blank.width for blank in sections.kinds])
    kinds, whole = len(most), sections.whole
    zero = np.zeros((1, kinds), np.int32)
    none = np.zeros(1, np.int32)
    layers: dict[int, _Layer] = {0: _Layer(zero, none, none - 1, np.zeros((1, 2), np.int32))}
    coming: dict[int, list[_Layer]] = {}
    size = 0
    while True:
        layer = layers[size]
        after = layer.used + (sections.gap if size else 0)
        for row, extra in enumerate(sections.counts):
            counts = np.minimum(layer.counts + extra, limit)
            ends = sections.ends[row][np.minimum(after, sections.ends.shape[1] - 1)]
            grown = counts.sum(axis=1) - size
            for step in range(1, int(extra.sum()) + 1):
                good = np.flatnonzero((ends < FAR) & (grown == step))
                if good.size:
                    before = np.column_stack((np.full(good.size, size), good)).astype(np.int32)
                    section = np.full(good.size, row, np.int32)
                    coming.setdefault(size + step, []).append(
                        _Layer(counts[good], ends[good], section, before)
                    )
        if not coming:
            break
        size = min(coming)
        layers[size], complete = _least(coming.pop(size), area)
        whole = whole and complete
    return _worth_having(sections, layers, whole)


def _least(parts: list[_Layer], area: NDArray[np.float64]) -> tuple[_Layer, bool]:
    """For each count the least length; where there are too many, those that fill the board best."""
    counts = np.concatenate([part.counts for part in parts])
    used = np.concatenate([part.used for part in parts])
    section = np.concatenate([part.section for part in parts])
    before = np.concatenate([part.before for part in parts])
    order = np.lexsort((used, *counts.T))
    ahead = counts[order]
    first = np.ones(len(order), bool)
    first[1:] = (ahead[1:] != ahead[:-1]).any(axis=1)
    rows = order[first]
    complete = len(rows) <= MOST_KEPT
    if not complete:
        rows = rows[np.argsort(used[rows] / (counts[rows] @ area), kind="stable")[:MOST_KEPT]]
    return _Layer(counts[rows], used[rows], section[rows], before[rows]), complete


def _worth_having(
    sections: BoardSections, layers: dict[int, _Layer], whole: bool
) -> BoardPatterns:
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
