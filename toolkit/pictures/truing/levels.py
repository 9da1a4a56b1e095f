"""Lines of equal removal on a face, smooth, with their figures where there is room for them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import Any

import numpy as np
from contourpy import contour_generator
from numpy.typing import NDArray

from toolkit.measures import MM_PER_INCH, Rule
from toolkit.pictures.kit import Point, Sheet, Slot, extent
from toolkit.pictures.kit.strokes import hatch, points_of
from toolkit.truing import LeastPlaning

Floats = NDArray[np.float64]

# From one line to the next, a rounded number on either rule. [mm]
_STEPS = {
    "mm": (0.05, 0.1, 0.2, 0.25, 0.5, 1.0, 2.0, 2.5, 5.0, 10.0),
    "in": tuple(MM_PER_INCH * n for n in (0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.4)),
}
_MOST_LINES = 5
_FINE = 8  # points between two readings, so that lines run smoothly
_SHORT = 40.0  # a line shorter than this bears no figure [pt]
_AIR = 3.0  # between a figure and the next line [pt]
_CLOSE = 3.0  # from point to point along a line, so that none of it slips through a figure [pt]
_BEND = 3  # a lath bent through the readings is a curve of this degree


class Levels:
    """One face on the page: its lines, and where the first strokes go."""

    def __init__(
        self, planed: LeastPlaning, *, along: int, across: int, corner: Point, size: Point
    ) -> None:
        x = planed.x.reshape(along, across)[:, 0]
        y = planed.y.reshape(along, across)[0]
        self.deep = planed.deepest
        fine_x = np.linspace(x[0], x[-1], (along - 1) * _FINE + 1)
        fine_y = np.linspace(y[0], y[-1], (across - 1) * _FINE + 1)
        removal = _bent(x, y, planed.removal.reshape(along, across), fine_x, fine_y)
        # A lath swings beyond the readings it is bent through; the true face lies where it lies.
        self.removal = removal.clip(0.0, self.deep)
        self._lines: Any = contour_generator(
            np.linspace(corner[0], corner[0] + size[0], len(fine_x)),
            np.linspace(corner[1], corner[1] + size[1], len(fine_y)),
            self.removal.T,
        )

    def at(self, level: float) -> list[Floats]:
        """The lines on which so much comes off, as points on the page. [mm to pt]"""
        return [np.asarray(line) for line in self._lines.lines(level)]

    def first(self, shaving: float) -> Iterator[list[Point]]:
        """Where the first strokes go: all that lies within a shaving of the highest. [mm to pt]"""
        polygons, offsets = self._lines.filled(self.first_from(shaving), self.deep + 1.0)
        for points, breaks in zip(polygons, offsets, strict=True):
            for start, end in pairwise(breaks):
                if end - start > 3:
                    yield points_of(points[start : end - 1])

    def first_from(self, shaving: float) -> float:
        """From what removal on the first strokes go. [mm]"""
        return max(self.deep - shaving, self.deep * 0.5)

    def steps(self, shaving: float, *, rule: Rule) -> list[float]:
        """Rounded steps of removal between nothing and where the first strokes go. [mm]"""
        rows = _STEPS[rule.units]
        step = next((row for row in rows if self.deep / row <= _MOST_LINES), rows[-1])
        most = self.first_from(shaving) * 0.98
        return [n * step for n in range(1, int(self.deep / step) + 1) if n * step < most]


def _bent(x: Floats, y: Floats, removal: Floats, fine_x: Floats, fine_y: Floats) -> Floats:
    """The removal between the readings, as a lath bent through them would have it. [mm]"""
    from scipy.interpolate import RectBivariateSpline  # a picture that bends none need not wait

    degrees = min(_BEND, len(x) - 1), min(_BEND, len(y) - 1)
    smooth = RectBivariateSpline(x, y, removal, kx=degrees[0], ky=degrees[1], s=0)
    found: Floats = smooth(fine_x, fine_y)
    return found


def draw_levels(
    sheet: Sheet, face: Levels, *, shaving: float, rule: Rule, keep_off: Sequence[Floats]
) -> None:
    """Hatch where to plane first, and lay the lines down with a figure in each that has room."""
    loops = list(face.first(shaving))
    for loop in loops:
        hatch(sheet, loop)
        sheet.line("waste edge", loop, closed=True)
    fixed = [*keep_off, *(np.array([*loop, loop[0]]) for loop in loops)]
    lines = [(level, line) for level in face.steps(shaving, rule=rule) for line in face.at(level)]
    every = [_dense(line) for line in (*fixed, *(line for _, line in lines))]
    spots: list[Point] = []
    # The longest first: they have most room, and a short one may stay bare beside them.
    for own in sorted(range(len(fixed), len(every)), key=lambda i: -len(every[i])):
        level, line = lines[own - len(fixed)]
        others = np.vstack([row for i, row in enumerate(every) if i != own] or [line])
        text = rule.exact(level, unit=False)
        wide, low, high = extent(text, size=sheet.text)
        half = np.array((wide / 2 + _AIR, (high - low) / 2 + _AIR))
        spot = _room(every[own], others, half, spots)
        if spot is None:
            sheet.line("thin", points_of(line))
            continue
        spots.append(spot)
        # The line is open where its figure stands.
        hidden = np.all(np.abs(every[own] - spot) < half, axis=1)
        for shown in np.split(np.arange(len(hidden)), np.flatnonzero(np.diff(hidden)) + 1):
            if not hidden[shown[0]]:
                sheet.line("thin", points_of(every[own][[*shown[:-1:2], shown[-1]]]))
        sheet.write(text, [Slot(spot[0], spot[1] - (high + low) / 2, "center")], rank=2)


def _dense(line: Floats) -> Floats:
    """Points so close along a line that none of it slips through a figure. [pt]"""
    steps = np.hypot(*np.diff(line, axis=0).T)
    way = np.concatenate(([0.0], np.cumsum(steps)))
    places = np.linspace(0.0, way[-1], max(2, int(way[-1] / _CLOSE) + 1))
    return np.column_stack([np.interp(places, way, line[:, axis]) for axis in (0, 1)])


def _room(line: Floats, others: Floats, half: Floats, spots: Sequence[Point]) -> Point | None:
    """Where on a line its figure lies clear of all others, far from the figures that are there."""
    if len(line) * _CLOSE < _SHORT:
        return None
    places = line[1:-1:3]
    off = np.abs(places[:, None] - others) > half
    clear = places[np.all(np.any(off, axis=2), axis=1)]
    if not len(clear):
        return None
    best = len(clear) // 2
    if spots:
        lonely = (np.abs(clear[:, None] - spots) / (2 * half)).max(axis=2).min(axis=1)
        best = int(np.argmax(lonely))
        if lonely[best] <= 1.0:
            return None
    return points_of(clear[best : best + 1])[0]
