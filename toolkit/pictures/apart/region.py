"""Regions of the paper bounded by closed outlines: what lies within them, and how clear of them."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from toolkit.pictures.apart.view import Floats


class Region:
    """What lies inside some closed outlines and outside their holes, in any one unit."""

    def __init__(self, outlines: Sequence[Floats]) -> None:
        self.begin = np.concatenate([*outlines, np.zeros((0, 2))])
        self.end = np.concatenate(
            [*(np.concatenate((row[1:], row[:1])) for row in outlines), np.zeros((0, 2))]
        )

    def holds(self, points: Floats) -> NDArray[np.bool_]:
        """Which of some points lie within."""
        x, y = points[:, 0, None], points[:, 1, None]
        low, high = self.begin[None], self.end[None]
        above = (low[..., 1] > y) != (high[..., 1] > y)
        with np.errstate(divide="ignore", invalid="ignore"):
            share = (y - low[..., 1]) / (high[..., 1] - low[..., 1])
            crossed = above & (low[..., 0] + share * (high[..., 0] - low[..., 0]) > x)
        return np.asarray(np.count_nonzero(crossed, axis=1) % 2 == 1)

    def edge_points(self, step: float) -> Floats:
        """Points all along the outlines, no further apart than a step."""
        way = self.end - self.begin
        counts = np.maximum(1, np.ceil(np.hypot(way[:, 0], way[:, 1]) / step)).astype(int)
        owner = np.repeat(np.arange(len(counts)), counts)
        first = np.repeat(np.cumsum(counts) - counts, counts)
        share = (np.arange(len(owner)) - first) / counts[owner]
        return np.asarray(self.begin[owner] + share[:, None] * way[owner])

    def within(self, lines: Sequence[Floats]) -> list[Floats]:
        """The stretches of some lines of points that lie within."""
        if not lines or not len(self.begin):
            return []
        start = np.concatenate([line[:-1] for line in lines])
        way = np.concatenate([line[1:] - line[:-1] for line in lines])
        owner = np.repeat(np.arange(len(lines)), [len(line) - 1 for line in lines])
        piece, low, high = _cut_at(start, way, *self._crossings(start, way))
        first = start[piece] + low[:, None] * way[piece]
        last = start[piece] + high[:, None] * way[piece]
        kept = np.flatnonzero(self.holds((first + last) / 2))
        found: list[list[Floats]] = []
        previous = -2
        for k in kept.tolist():
            # Neighbouring stretches of one line run on from one another.
            if k == previous + 1 and owner[piece[k]] == owner[piece[previous]]:
                found[-1].append(last[k])
            else:
                found.append([first[k], last[k]])
            previous = k
        return [np.array(row) for row in found]

    def _crossings(self, start: Floats, way: Floats) -> tuple[NDArray[np.int64], Floats]:
        """Which pieces of line cross the outlines, and at which share of their length."""
        edge, out = (self.end - self.begin)[None], self.begin[None] - start[:, None]
        way = way[:, None]
        with np.errstate(divide="ignore", invalid="ignore"):
            across = way[..., 0] * edge[..., 1] - way[..., 1] * edge[..., 0]
            share = (out[..., 0] * edge[..., 1] - out[..., 1] * edge[..., 0]) / across
            place = (out[..., 0] * way[..., 1] - out[..., 1] * way[..., 0]) / across
        piece, edge_number = np.nonzero((share > 0) & (share < 1) & (place >= 0) & (place <= 1))
        return piece, share[piece, edge_number]


def _cut_at(
    start: Floats, way: Floats, piece: NDArray[np.int64], share: Floats
) -> tuple[NDArray[np.int64], Floats, Floats]:
    """Pieces cut at some shares of their length: of which piece, from where, to where."""
    every = np.arange(len(start))
    number = np.concatenate((every, piece, every))
    cut = np.concatenate((np.zeros(len(start)), share, np.ones(len(start))))
    order = np.lexsort((cut, number))
    number, cut = number[order], cut[order]
    same = number[1:] == number[:-1]
    return number[:-1][same], cut[:-1][same], cut[1:][same]
