"""A board as a grid of cells: where a part may lie, and how good it looks there.

Parts are rounded up to whole cells and defects outwards, so that a layout which is right on the
grid is right on the real board too. Arrays are indexed [across, along]: the long side lies side
by side in memory.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from math import ceil, floor, isfinite, sqrt
from typing import TYPE_CHECKING

import numpy as np

from toolkit.stock.boards import Board

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Values = NDArray[np.float32]

NEVER = np.float32(-np.inf)

MARGIN = 3.0  # custom, no source: kept clear round every defect [mm]
MOST_CELLS = 1_500_000  # of one board: keeps the tables of the largest boards in memory
SWIRL = 150.0  # custom, no source: how far the grain swirls, three widths of a 50 mm knot [mm]
SWIRL_COSTS = 0.8  # custom, no source: share of the looks lost beside the knot

_NOISE = 1e-9


def cells(size: float, *, cell: float) -> int:
    """Whole cells that a size takes, rounded up."""
    return ceil(size / cell - _NOISE)


@dataclass(frozen=True)
class Grid:
    """Cells of one board.

    ``spoilt`` holds the cells that each defect takes with its margin: lower and upper, left and
    right edge.
    """

    board: Board
    cell: float
    along: int
    across: int
    spoilt: tuple[tuple[int, int, int, int], ...]

    def clear(self, *, long: int, wide: int) -> NDArray[np.bool_]:
        """Whether so many cells lie free of defects, by their lower left cell. [across, along]"""
        if long > self.along or wide > self.across:
            return np.zeros((0, 0), bool)
        free = np.ones((self.across - wide + 1, self.along - long + 1), bool)
        for low, high, left, right in self.spoilt:
            free[max(low - wide + 1, 0) : high, max(left - long + 1, 0) : right] = False
        return free

    def fits(self, *, long: int, wide: int) -> bool:
        """Whether so many cells lie free of defects anywhere."""
        return bool(self.clear(long=long, wide=wide).any())

    @cached_property
    def figure(self) -> NDArray[np.float64]:
        """How good each cell looks, 0 to 1, summed up to each corner of the grid.

        Heartwood is 1 and sapwood 0; near a knot the grain swirls. What a knot covers needs no
        value: no part lies there.
        """
        x = (np.arange(self.along) + 0.5) * self.cell
        y = (np.arange(self.across) + 0.5) * self.cell
        seen = np.ones((self.across, self.along))
        if self.board.heart_line:
            points = np.array(self.board.heart_line)
            seen[y[:, None] > np.interp(x, points[:, 0], points[:, 1])[None, :]] = 0.0
        for defect in self.board.defects:
            if "knot" not in defect.kind:
                continue
            here = np.searchsorted(x, (defect.from_along - SWIRL, defect.to_along + SWIRL))
            there = np.searchsorted(y, (defect.from_across - SWIRL, defect.to_across + SWIRL))
            near = slice(*there), slice(*here)
            dx = _outside(x[near[1]], defect.from_along, defect.to_along)
            dy = _outside(y[near[0]], defect.from_across, defect.to_across)
            far = np.hypot(dx[None, :], dy[:, None]) / SWIRL
            seen[near] *= 1 - SWIRL_COSTS * np.clip(1 - far, 0.0, 1.0)
        table = np.zeros((self.across + 1, self.along + 1))
        np.cumsum(seen, axis=1, out=table[1:, 1:])
        for row in range(1, self.across):  # row by row: several times as fast as along axis 0
            table[row + 1] += table[row]
        return table

    def worth(self, *, long: int, wide: int) -> Values:
        """How a part looks at each place, 0 to 1, and −∞ where it cannot lie. [across, along]"""
        free = self.clear(long=long, wide=wide)
        if not free.size:
            return np.zeros((0, 0), np.float32)
        rows = self.figure[wide:] - self.figure[:-wide]
        mean = ((rows[:, long:] - rows[:, :-long]) / (long * wide)).astype(np.float32)
        mean[~free] = NEVER
        return mean


def _outside(places: NDArray[np.floating], start: float, end: float) -> NDArray[np.floating]:
    """How far each place lies outside a stretch. [mm]"""
    far: NDArray[np.floating] = np.maximum(np.maximum(start - places, places - end), 0.0)
    return far


def grid(board: Board, *, cell: float = 1.0, margin: float = MARGIN) -> Grid:
    """Lay a grid over a board, with so much kept clear round every defect. [mm]

    A board of more than 1.5 million cells gets coarser ones.
    """
    if not (isfinite(cell) and cell > 0):
        raise ValueError(f"cell was given as {cell:g} mm; give a size above 0, such as 1")
    if not (isfinite(margin) and margin >= 0):
        raise ValueError(f"margin was given as {margin:g} mm; give 0 or more, such as {MARGIN:g}")
    cell = float(cell)
    least = sqrt(board.length * board.width / MOST_CELLS)
    if cell < least:
        cell = float(ceil(least))
    along, across = floor(board.length / cell + _NOISE), floor(board.width / cell + _NOISE)
    spoilt = []
    for defect in board.defects:
        low = max(0, floor((defect.from_across - margin) / cell + _NOISE))
        left = max(0, floor((defect.from_along - margin) / cell + _NOISE))
        # A fine check without any width still spoils a cell.
        high = max(cells(defect.to_across + margin, cell=cell), low + 1)
        right = max(cells(defect.to_along + margin, cell=cell), left + 1)
        spoilt.append((low, min(across, high), left, min(along, right)))
    return Grid(board, cell, along, across, tuple(spoilt))
