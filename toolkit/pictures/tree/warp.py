"""Lines on a board's end as it warps: they go along with its outline, the change drawn larger."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from math import atan2, ceil, cos, hypot, pi, remainder, sin

import numpy as np
from numpy.typing import NDArray

from toolkit.pictures.kit.picture import Point
from toolkit.pictures.kit.view import band
from toolkit.wood import Cup

Floats = NDArray[np.float64]

_STEP = 1.5  # between two points of a line that is to be bent, at most [mm]


class WarpedSection:
    """How every point of a section moves when its outline does, ``times`` as far. [mm]

    Between the four edges a point moves by a blend of what they do (a Coons patch); on the edges
    themselves it moves exactly as they do.

    Source: Coons patch: common geometry of surfaces.
    """

    def __init__(self, cup: Cup, *, times: float) -> None:
        self.times = times
        before, after = np.array(cup.outline_before), np.array(cup.outline_after)
        self._moves = after - before
        self.outline: list[Point] = [(x, y) for x, y in before + times * self._moves]
        self._low, self._high = before.min(axis=0), before.max(axis=0)
        x, y = before.T
        sides = []
        for along, across, limit in (
            (x, y, self._low[1]),
            (x, y, self._high[1]),
            (y, x, self._low[0]),
            (y, x, self._high[0]),
        ):
            on = np.flatnonzero(np.isclose(across, limit))
            on = on[np.argsort(along[on])]
            sides.append((along[on], self._moves[on]))
        self._bottom, self._top, self._left, self._right = sides

    @property
    def farthest(self) -> float:
        """How far the farthest point of the outline is drawn from where it was. [mm]"""
        return self.times * float(np.hypot(*self._moves.T).max())

    @property
    def size(self) -> float:
        """The larger side of the section. [mm]"""
        return float((self._high - self._low).max())

    def points(self, points: Sequence[Point]) -> list[Point]:
        """Where points of the section come to lie. [mm]"""
        at = np.array(points)
        u, v = ((at - self._low) / (self._high - self._low)).T[:, :, None]
        bottom, top = _read(self._bottom, at[:, 0]), _read(self._top, at[:, 0])
        left, right = _read(self._left, at[:, 1]), _read(self._right, at[:, 1])
        low = (1 - u) * self._bottom[1][0] + u * self._bottom[1][-1]
        high = (1 - u) * self._top[1][0] + u * self._top[1][-1]
        faces = (1 - v) * bottom + v * top
        edges = (1 - u) * left + u * right
        moves = faces + edges - ((1 - v) * low + v * high)
        return [(x, y) for x, y in at + self.times * moves]


def _read(side: tuple[Floats, Floats], at: Floats) -> Floats:
    """The moves of points on one side, by how far along it they lie."""
    along, moves = side
    return np.column_stack([np.interp(at, along, moves[:, i]) for i in (0, 1)])


def arcs_within(section: Sequence[Point], *, pith: Point, radius: float) -> list[list[Point]]:
    """The pieces of one ring that lie in an upright rectangle, as lines of many points. [mm]"""
    (x0, y0), _, (x1, y1), _ = section
    away = [hypot(x - pith[0], y - pith[1]) for x, y in section]
    nearest = hypot(max(x0 - pith[0], 0, pith[0] - x1), max(y0 - pith[1], 0, pith[1] - y1))
    if not nearest < radius < max(away):
        return []
    middle = atan2((y0 + y1) / 2 - pith[1], (x0 + x1) / 2 - pith[0])
    low, high = -pi, pi
    if nearest > 0:
        # Seen from a pith outside it, a section lies between two of its corners.
        turns = [remainder(atan2(y - pith[1], x - pith[0]) - middle, 2 * pi) for x, y in section]
        low, high = min(turns), max(turns)
    count = max(4, ceil((high - low) * radius / _STEP))
    turns = [middle + low + (high - low) * i / count for i in range(count + 1)]
    around = [(pith[0] + radius * cos(turn), pith[1] + radius * sin(turn)) for turn in turns]
    pieces: list[list[Point]] = []
    piece: list[Point] = []
    for a, b in pairwise(around):
        inside = _clipped(a, b, (x0, x1), (y0, y1))
        if inside is None:
            continue
        if not piece or hypot(piece[-1][0] - inside[0][0], piece[-1][1] - inside[0][1]) > 1e-9:
            piece = [inside[0]]
            pieces.append(piece)
        piece.append(inside[1])
    return pieces


def _clipped(
    a: Point, b: Point, across: tuple[float, float], up: tuple[float, float]
) -> tuple[Point, Point] | None:
    """What of a straight line lies in an upright rectangle."""
    first, last = 0.0, 1.0
    for start, end, (low, high) in ((a[0], b[0], across), (a[1], b[1], up)):
        run = end - start
        if run == 0:
            if not low <= start <= high:
                return None
            continue
        enters, leaves = sorted(((low - start) / run, (high - start) / run))
        first, last = max(first, enters), min(last, leaves)
    if first >= last:
        return None
    return (
        (a[0] + first * (b[0] - a[0]), a[1] + first * (b[1] - a[1])),
        (a[0] + last * (b[0] - a[0]), a[1] + last * (b[1] - a[1])),
    )


def disc_within(section: Sequence[Point], *, pith: Point, radius: float) -> list[Point]:
    """What of a disc round the pith lies in an upright rectangle, its edges in short steps. [mm]"""
    (x0, y0), _, (x1, y1), _ = section
    turns = [2 * pi * i / 360 for i in range(360)]
    shape = [(pith[0] + radius * cos(turn), pith[1] + radius * sin(turn)) for turn in turns]
    shape = band(shape, low=y0, high=y1)
    shape = [(x, y) for y, x in band([(y, x) for x, y in shape], low=x0, high=x1)]
    stepped: list[Point] = []
    for a, b in zip(shape, [*shape[1:], *shape[:1]], strict=True):
        count = max(1, ceil(hypot(b[0] - a[0], b[1] - a[1]) / _STEP))
        for i in range(count):
            share = i / count
            stepped.append((a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])))
    return stepped
