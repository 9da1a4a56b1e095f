"""Strokes that many drawings want: circles and arrows, grain and waste, breaks and marks on wood.

The grain is the same for the same part at every size, and so faint that the lines of the joint
stand out from it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import atan2, ceil, cos, floor, hypot, pi, radians, sin

import numpy as np
from numpy.typing import NDArray

from toolkit.pictures.kit.lettering import Anchor, Slot
from toolkit.pictures.kit.picture import Point
from toolkit.pictures.kit.sheet import Sheet
from toolkit.pictures.kit.view import PartView

ARROW, HALF_ARROW = 5.6, 0.95  # length of an arrowhead, and half its width [pt]


def points_of(*rows: NDArray[np.float64]) -> list[Point]:
    """The points of a line from an array of them, or from one of x and one of y."""
    both = np.column_stack(rows)
    return [(x, y) for x, y in both.tolist()]


def away(start: Point, *, turn: float, far: float, aside: float = 0.0) -> Point:
    """A point so far from another in a direction [rad], and so far to the left of that."""
    along, up = cos(turn), sin(turn)
    return start[0] + far * along - aside * up, start[1] + far * up + aside * along


def circle(middle: Point, radius: float, *, count: int = 24) -> list[Point]:
    """Points round a middle."""
    return [away(middle, turn=2 * pi * i / count, far=radius) for i in range(count)]


def fill(sheet: Sheet, shape: Sequence[Point], *pens: str) -> None:
    """A closed shape in one pen over another. [pt]"""
    for pen in pens:
        sheet.line(pen, shape, closed=True)


def spread(
    x: float, levels: Sequence[float], shifts: Sequence[float], anchor: Anchor = "center"
) -> list[Slot]:
    """Places for words at some levels, at each by one shift after another. [pt]"""
    return [Slot(x + shift, level, anchor) for level in levels for shift in shifts]


def arrow_head(
    tip: Point, *, turn: float, long: float = ARROW, half: float = HALF_ARROW
) -> list[Point]:
    """A head that points in a direction [rad], to be filled. [pt]"""
    return [tip, *(away(tip, turn=turn, far=-long, aside=side) for side in (half, -half))]


def arrow(sheet: Sheet, tail: Point, tip: Point) -> None:
    """A thin line with a filled head at its tip. [pt]"""
    turn = atan2(tip[1] - tail[1], tip[0] - tail[0])
    sheet.line("thin", [tail, away(tip, turn=turn, far=-ARROW)])
    sheet.line("arrow", arrow_head(tip, turn=turn, half=1.6 * HALF_ARROW), closed=True)


HATCH = 4.3  # between two lines of hatching [pt]
_GRAIN = 8.5  # between two lines of long grain, about [pt]
_RING = 5.0  # between two growth rings, about [pt]


def hatching(
    shape: Sequence[Point], *, gap: float, shortest: float
) -> Iterator[tuple[Point, Point]]:
    """The lines at 45 degrees inside a shape, all in one raster."""
    step = gap * 2**0.5
    sums = [y - x for x, y in shape]
    for count in range(ceil(min(sums) / step), floor(max(sums) / step) + 1):
        offset = count * step
        cuts = []
        for (x0, y0), (x1, y1) in zip(shape, [*shape[1:], *shape[:1]], strict=True):
            d0, d1 = y0 - x0 - offset, y1 - x1 - offset
            if (d0 < 0) != (d1 < 0):
                share = d0 / (d0 - d1)
                cuts.append((x0 + share * (x1 - x0), y0 + share * (y1 - y0)))
        cuts.sort()
        for a, b in zip(cuts[::2], cuts[1::2], strict=False):
            if hypot(b[0] - a[0], b[1] - a[1]) > shortest:
                yield a, b


def hatch(sheet: Sheet, shape: Sequence[Point], *, pen: str = "hatch", gap: float = HATCH) -> None:
    """Hatching at 45 degrees inside a shape on the page. [pt]

    All hatching on a sheet lies in one raster, so that it stays put while its edges move.

    Source: ISO 128-3:2022, hatching (from memory). Here it means waste, and only waste.
    """
    for line in hatching(shape, gap=gap, shortest=0.8):
        sheet.line(pen, line)


def waste(view: PartView, name: str, shape: Sequence[Point]) -> None:
    """A piece to be cut away: hatched, its outer edges dotted. [mm]"""
    page = view.area(name, shape, edge="waste edge")
    hatch(view.sheet, page)


def _bounds(points: Sequence[Point]) -> tuple[float, float, float, float]:
    xs, ys = zip(*points, strict=True)
    return min(xs), max(xs), min(ys), max(ys)


def flowing(
    across: Point, up: Point, *, scale: float, parts: int, gap: float = _GRAIN
) -> Iterator[list[Point]]:
    """Lines that flow between two limits, about so far from each other on the page. [mm, pt]"""
    (x0, x1), (z0, z1), gap = across, up, gap / scale
    for i in range(floor(z0 / gap), ceil(z1 / gap) + 1):
        # Lines crowd and part again like the latewood of a flat-sawn board.
        base = (i + 0.42 * sin(1.9 * i)) * gap
        swing, lag = gap * (0.34 + 0.16 * sin(2.3 * i)), 0.32 * i
        line = []
        for k in range(parts + 1):
            x = x0 + (x1 - x0) * k / parts
            turn = x * scale / 62
            line.append((x, base + swing * (sin(turn + lag) + 0.4 * sin(2.3 * turn + lag))))
        yield line


def long_grain(view: PartView, shape: Sequence[Point], *, pen: str = "face grain") -> None:
    """A few flowing lines along the page, inside a shape of the part. [mm]"""
    clip = view.sheet.within(view.points(shape))
    x0, x1, z0, z1 = _bounds(shape)
    parts = max(3, min(30, round((x1 - x0) * view.scale / 12)))
    for line in flowing((x0, x1), (z0, z1), scale=view.scale, parts=parts):
        view.sheet.line(pen, view.points(line), clip=clip)


def rings(
    view: PartView,
    shape: Sequence[Point],
    *,
    across: float = 90.0,
    far: float = 1.15,
    pen: str = "ring",
    pieces: Sequence[Sequence[Point]] = (),
) -> None:
    """Growth rings on end grain, inside a shape of the part."""
    clip = view.sheet.within(*(view.points(piece) for piece in pieces or [shape]))
    x0, x1, z0, z1 = _bounds(shape)
    mid_x, mid_z = (x0 + x1) / 2, (z0 + z1) / 2
    size = max(x1 - x0, z1 - z0)
    way = radians(across)
    cx, cz = mid_x + far * size * cos(way), mid_z + far * size * sin(way)
    corners = [(x, z) for x in (x0, x1) for z in (z0, z1)]
    away = [hypot(x - cx, z - cz) for x, z in corners]
    turns = [(atan2(z - cz, x - cx) - way - pi) % (2 * pi) for x, z in corners]
    spread = [turn - 2 * pi if turn > pi else turn for turn in turns]
    nearest = hypot(max(x0 - cx, 0, cx - x1), max(z0 - cz, 0, cz - z1))
    gap = _RING / view.scale
    first, last = ceil(nearest / gap), floor(max(away) / gap)
    low, high = min(spread), max(spread)
    for i in range(first, last + 1):
        radius = (i + 0.3 * sin(2.1 * i)) * gap
        count = max(4, min(16, round((high - low) * radius * view.scale / 14)))
        arc = []
        for k in range(count + 1):
            turn = way + pi + low + (high - low) * k / count
            arc.append((cx + radius * cos(turn), cz + radius * sin(turn)))
        view.sheet.line(pen, view.points(arc), clip=clip)


_BREAK = (0.0, 2.6, -1.2, -3.4, 0.9, 3.1, -0.4, -2.7, 1.7, 3.3, -1.9, -0.6, 2.2, 0.0)


def break_line(x: float, *, low: float, high: float, sway: float = 1.0) -> list[Point]:
    """The free-hand line where a board is broken off, from low to high. [pt]"""
    last = len(_BREAK) - 1
    return [(x + sway * off, low + (high - low) * i / last) for i, off in enumerate(_BREAK)]


def face_mark(sheet: Sheet, *, x: float, edge: float) -> None:
    """The loop of a face mark whose tail leads to the face edge, and the edge's own caret. [pt]"""
    loop = [(0.0, 0.0), (1.6, 5.0), (4.2, 10.4), (7.0, 13.0), (8.8, 12.0), (8.0, 9.2), (5.4, 7.6)]
    loop += [(2.6, 7.8), (0.6, 9.4)]
    sheet.line("mark", [(x + a, edge + 1.2 + b) for a, b in loop])
    sheet.line("mark", [(x - 3.4, edge - 5.6), (x, edge - 1.6), (x + 3.4, edge - 5.6)])
