"""How each kind of defect looks on the face of a board, inside the rectangle that it spoils."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from math import cos, pi, sin

from toolkit.pictures.board.rows import Stretch
from toolkit.pictures.board.spaces import box_of
from toolkit.pictures.kit.picture import Point
from toolkit.pictures.strokes import circle
from toolkit.stock import Board, Defect

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
