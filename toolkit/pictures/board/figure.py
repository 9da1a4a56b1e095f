"""The face of a rough board: its grain, swirling round knots, heartwood and paler sapwood."""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil, copysign, exp, hypot, sin

from toolkit.pictures.board.rows import Stretch
from toolkit.pictures.board.spaces import box_of
from toolkit.pictures.kit.picture import Point
from toolkit.stock import Board

_GRAIN = 7.0  # between two lines of grain, about [pt]
_STEP = 7.0  # between two points of one [pt]
_SWIRL = 1.5  # how far the grain is pushed out, in halves of a knot's width: how it is drawn


def heart_and_sap(row: Stretch, board: Board) -> None:
    """Heartwood below the heart line, the paler sapwood above it; all heart without a line."""
    heart = _heart_line(board)
    row.line("face", [(0.0, 0.0), (board.length, 0.0), *reversed(heart)], closed=True)
    if board.heart_line:
        row.line("far", sapwood(board), closed=True)
        row.line("knot line", heart)


def sapwood(board: Board) -> list[Point]:
    """The outline of the sapwood. [mm]"""
    return [*_heart_line(board), (board.length, board.width), (0.0, board.width)]


def _heart_line(board: Board) -> list[Point]:
    """The border of the heartwood from end to end of the board. [mm]"""
    if not board.heart_line:
        return [(0.0, board.width), (board.length, board.width)]
    first, last = ((x, board.heart_at(x) or 0.0) for x in (0.0, board.length))
    return [first, *(point for point in board.heart_line if 0 < point[0] < board.length), last]


def grain(row: Stretch, board: Board) -> None:
    """Lines of grain along a row, parted by the knots. [mm]"""
    view = row.view
    gap, step = _GRAIN / view.scale, _STEP / view.scale
    count = max(2, ceil((row.end - row.start) / step))
    knots = list(_knots(board))
    for i in range(ceil(board.width / gap) + 1):
        # Lines crowd and part again like the latewood of a flat-sawn board.
        base = (i + 0.42 * sin(1.9 * i)) * gap
        swing, lag = gap * (0.3 + 0.14 * sin(2.3 * i)), 0.32 * i
        line = []
        for k in range(count + 1):
            x = row.start + (row.end - row.start) * k / count
            turn = x * view.scale / 70
            y = base + swing * (sin(turn + lag) + 0.4 * sin(2.3 * turn + lag))
            for at, half in knots:
                y = _parted(x, y, at, half)
            line.append((x, y))
        row.line("face grain", line)


def _knots(board: Board) -> Iterator[tuple[Point, Point]]:
    """Middle and half sizes of each knot. [mm]"""
    for defect in board.defects:
        if "knot" in defect.kind:
            left, right, low, high = box_of(defect)
            half = max((right - left) / 2, 1.0), max((high - low) / 2, 1.0)
            yield ((left + right) / 2, (low + high) / 2), half


def _parted(x: float, y: float, at: Point, half: Point) -> float:
    """How high a line of grain runs that a knot has pushed aside. [mm]"""
    away = (x - at[0]) / (2.2 * half[0])
    if abs(away) > 3:
        return y
    push = _SWIRL * half[1] * exp(-away * away)
    off = y - at[1]
    return at[1] + copysign(hypot(off, push), off)
