"""Lines on a board's end as it warps: they go along with its outline, the change drawn larger."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import ceil, sin

import numpy as np
from contourpy import ContourGenerator, contour_generator
from numpy.typing import NDArray

from toolkit.pictures.kit.picture import Point
from toolkit.pictures.kit.view import View
from toolkit.pictures.strokes import points_of
from toolkit.wood import Cup

Floats = NDArray[np.float64]

HEART = 0.8  # of the log's radius is heartwood: how it is drawn, no source
_RING = 2.5  # between two growth rings, about: how they are drawn, no source [mm]
_APART = 4.3  # between two rings on the page, at least [pt]
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
        self.outline = points_of(before + times * self._moves)
        self._low, self._high = before.min(axis=0), before.max(axis=0)
        sides = []
        for across, limits in ((1, (self._low, self._high)), (0, (self._low, self._high))):
            along = before[:, 1 - across]
            for limit in limits:
                on = np.flatnonzero(np.isclose(before[:, across], limit[across]))
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
        return points_of(self.moved(np.array(points)))

    def moved(self, at: Floats) -> Floats:
        """The same for an array of them, a row each. [mm]"""
        u, v = ((at - self._low) / (self._high - self._low)).T[:, :, None]
        bottom, top = _read(self._bottom, at[:, 0]), _read(self._top, at[:, 0])
        left, right = _read(self._left, at[:, 1]), _read(self._right, at[:, 1])
        low = (1 - u) * self._bottom[1][0] + u * self._bottom[1][-1]
        high = (1 - u) * self._top[1][0] + u * self._top[1][-1]
        faces = (1 - v) * bottom + v * top
        edges = (1 - u) * left + u * right
        moves: Floats = faces + edges - ((1 - v) * low + v * high)
        return at + self.times * moves


def _read(side: tuple[Floats, Floats], at: Floats) -> Floats:
    """The moves of points on one side, by how far along it they lie."""
    along, moves = side
    return np.column_stack([np.interp(at, along, moves[:, i]) for i in (0, 1)])


def ring_radii(scale: float, *, most: float) -> Iterator[float]:
    """Radii of the rings that are drawn at a scale [pt/mm]: some of the same ones at any. [mm]"""
    every = ceil(_APART / (_RING * scale))
    for i in range(every, int(most / _RING) + 1, every):
        radius = (i + 0.3 * sin(2.1 * i)) * _RING
        if radius < most:
            yield radius


def within(
    section: Sequence[Point], *, pith: Point, warp: WarpedSection | None = None
) -> ContourGenerator:
    """How far every place of a section lies from the pith: contours of that are its rings. [mm]"""
    (x0, y0), _, (x1, y1), _ = section
    x, y = np.meshgrid(
        np.linspace(x0, x1, ceil((x1 - x0) / _STEP) + 1),
        np.linspace(y0, y1, ceil((y1 - y0) / _STEP) + 1),
    )
    far = np.hypot(x - pith[0], y - pith[1])
    if warp is not None:
        x, y = warp.moved(np.column_stack([x.ravel(), y.ravel()])).T.reshape(2, *x.shape)
    return contour_generator(x, y, far)


def draw_grain(
    view: View, section: Sequence[Point], *, pith: Point, radius: float, warp: WarpedSection | None
) -> None:
    """Heartwood and rings of a section, gone along with it where it has warped."""
    tree = within(section, pith=pith, warp=warp)
    for heart in tree.filled(0.0, radius * HEART)[0]:
        view.sheet.line("end", view.points(points_of(np.asarray(heart))), closed=True)
    for far in ring_radii(view.scale, most=radius):
        for arc in tree.lines(far):
            view.sheet.line("ring", view.points(points_of(np.asarray(arc))))
