"""What many drawings want: circles, arrows, filled shapes, what arrays hold, places for words."""

from __future__ import annotations

from collections.abc import Sequence
from math import atan2, cos, pi, sin

import numpy as np
from numpy.typing import NDArray

from toolkit.pictures.kit.dimensions import ARROW, HALF_ARROW
from toolkit.pictures.kit.lettering import Anchor, Place
from toolkit.pictures.kit.picture import Point
from toolkit.pictures.kit.sheet import Sheet


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
) -> list[Place]:
    """Places for words at some levels, at each by one shift after another. [pt]"""
    return [Place(x + shift, level, anchor) for level in levels for shift in shifts]


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
