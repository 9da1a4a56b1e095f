"""The face of a rough board: heartwood and sapwood, grain that swirls round knots, defects."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from math import ceil, copysign, cos, exp, hypot, pi, sin

from toolkit.pictures.board.rows import Stretch, box_of
from toolkit.pictures.kit.picture import Point
from toolkit.pictures.kit.strokes import circle, flowing
from toolkit.stock import Board, Defect

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
    scale, knots = row.view.scale, list(_knots(board))
    parts, up = max(2, ceil((row.end - row.start) * scale / _STEP)), (0.0, board.width)
    for line in flowing((row.start, row.end), up, scale=scale, parts=parts, gap=_GRAIN):
        for at, half in knots:
            line = [(x, _parted(x, y, at, half)) for x, y in line]
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


_THIN = 2.2  # what is thinner is drawn so wide, or it could not be seen [pt]


def draw_flaw(row: Stretch, defect: Defect, board: Board) -> None:
    """One defect, as far as it shows in a row: what is not chalked is closed. [mm]"""
    if row.has(defect.from_along, defect.to_along):
        for pen, points in _HANDS[defect.kind](_Field(row, defect, board)):
            row.line(pen, points, closed=pen != "chalk" and len(points) > 2)


class _Field:
    """The rectangle of a defect, to draw in by shares of its length and width."""

    def __init__(self, row: Stretch, defect: Defect, board: Board) -> None:
        self.row, self.board = row, board
        least = _THIN / row.view.scale / 2
        x0, x1, y0, y1 = box_of(defect)
        self.x, self.half = (x0 + x1) / 2, max((x1 - x0) / 2, least)
        self.y, self.rise = (y0 + y1) / 2, max((y1 - y0) / 2, least)

    def at(self, u: float, v: float) -> Point:
        """A point by shares from the middle: -1 to 1 each way. [mm]"""
        return self.x + u * self.half, self.y + v * self.rise

    def round(self, size: float, *, sway: float = 0.07) -> list[Point]:
        """A closed line round the middle, drawn free-hand. [mm]"""
        turns = [2 * pi * i / 26 for i in range(26)]
        rows = [(turn, size * (1 - sway + sway * sin(3 * turn + 1.1))) for turn in turns]
        return [self.at(off * cos(turn), off * sin(turn)) for turn, off in rows]

    def lens(self) -> list[Point]:
        """A pocket, pointed at both ends. [mm]"""
        up = [(-1 + i / 6, sin(pi * i / 12)) for i in range(13)]
        return [self.at(way * u, way * v) for way in (1, -1) for u, v in up]

    @property
    def way(self) -> float:
        """1 if a crack runs in from the left end of the board, -1 from the right. [1]"""
        return 1.0 if self.x <= self.board.length / 2 else -1.0


Marks = Iterable[tuple[str, list[Point]]]


def _rings(f: _Field, *sizes: float) -> Marks:
    return [("knot line", f.round(size)) for size in sizes]


def _check(f: _Field) -> Marks:
    # The checks of a dried end: each runs in along the grain and closes.
    for v, far in ((0.0, 1.0), (0.8, 0.45), (-0.8, 0.6)):
        rest = [(i / 6, (-1) ** i * (1 - i / 6)) for i in range(7)]
        yield "chalk", [f.at(f.way * (2 * far * u - 1), v + 0.25 * off) for u, off in rest]


def _split(f: _Field) -> Marks:
    # Open at the end of the board, closing inwards.
    mouth = [f.at(-f.way, 1.0), f.at(-0.2 * f.way, 0.35), f.at(f.way, 0.0)]
    shape = [*mouth, f.at(-0.1 * f.way, -0.35), f.at(-f.way, -1.0)]
    return [("void", shape), ("chalk", shape)]


def _shake(f: _Field) -> Marks:
    for v in (-0.6, 0.1, 0.8):
        yield "chalk", [f.at(-1 + i / 6, v + 0.4 * sin(pi * i / 12)) for i in range(13)]


def _wane(f: _Field) -> Marks:
    # Bark along the nearer edge, ragged where it meets the wood.
    up = 1.0 if f.y >= f.board.width / 2 else -1.0
    ragged = [(1 - i / 20, -up * (0.78 - 0.22 * sin(0.9 * i) * cos(2.3 * i))) for i in range(41)]
    yield "bark", [f.at(-1, up), f.at(1, up), *(f.at(u, v) for u, v in ragged)]


def _pith(f: _Field) -> Marks:
    yield "chalk", [f.at(-1, 0), f.at(1, 0)]
    for i in range(9):
        yield "chalk", [f.at(-0.9 + 0.225 * i, -0.8), f.at(-0.85 + 0.225 * i, 0.8)]


def _dots(f: _Field, count: int) -> Marks:
    size = 1.0 / f.row.view.scale
    for i in range(count):
        # Spread by the golden angle, so that no two fall together.
        far, turn = ((i + 0.5) / count) ** 0.5 * 0.85, 2.39996 * i
        yield "bark", circle(f.at(far * cos(turn), far * sin(turn)), size, count=6)


def _cross(f: _Field) -> Marks:
    return [("knot line", [f.at(i / 5 - 0.2, -0.9), f.at(i / 5 + 0.2, 0.9)]) for i in range(-4, 5)]


def _torn(f: _Field) -> Marks:
    for i in range(15):
        u, v = -0.95 + 0.42 * (i % 5), -0.7 + 0.7 * (i // 5)
        yield "chalk", [f.at(u, v), f.at(u + 0.16, v + 0.28), f.at(u + 0.2, v - 0.05)]


def _other(f: _Field) -> Marks:
    a, b, c, d = f.at(-1, -1), f.at(1, -1), f.at(1, 1), f.at(-1, 1)
    return [("chalk", [a, b, c, d, a]), ("chalk", [a, c]), ("chalk", [b, d])]


_HANDS: dict[str, Callable[[_Field], Marks]] = {
    "knot": lambda f: [("knot", f.round(1.0)), *_rings(f, 1.0, 0.72, 0.46, 0.2)],
    # It stands alone in its hole, a dark ring of bark about it.
    "loose knot": lambda f: [
        ("bark", f.round(1.0)),
        ("knot middle", f.round(0.72)),
        *_rings(f, 0.72, 0.45, 0.2),
    ],
    "end check": _check,
    "split": _split,
    "shake": _shake,
    "wane": _wane,
    "pith": _pith,
    "bark pocket": lambda f: [("bark", f.lens())],
    "gum pocket": lambda f: [
        ("knot", f.lens()),
        ("knot line", f.lens()),
        ("knot line", [f.at(-0.7, 0), f.at(0.7, 0)]),
    ],
    "decay": lambda f: [("knot", f.round(1.0, sway=0.16)), *_dots(f, 15)],
    "worm holes": lambda f: _dots(f, 9),
    "stain": lambda f: [("knot", f.round(1.0, sway=0.12))],
    "cross grain": _cross,
    "tear-out": _torn,
    "other": _other,
}
