"""How each kind of defect looks on the face of a board, inside the rectangle that it spoils."""

from __future__ import annotations

from collections.abc import Callable
from math import cos, pi, sin

from toolkit.pictures.board.rows import Row
from toolkit.pictures.kit.picture import Point
from toolkit.stock import Board, Defect

_THIN = 2.2  # what is thinner is drawn so wide, or it could not be seen [pt]


def box_of(defect: Defect) -> tuple[float, float, float, float]:
    """Left, right, low, high of what a defect spoils. [mm]"""
    return defect.from_along, defect.to_along, defect.from_across, defect.to_across


def draw_flaw(row: Row, defect: Defect, board: Board) -> None:
    """One defect, as far as it shows in a row. [mm]"""
    if row.has(defect.from_along, defect.to_along):
        _HANDS[defect.kind](_Field(row, defect, board))


class _Field:
    """The rectangle of a defect, to draw in by shares of its length and width."""

    def __init__(self, row: Row, defect: Defect, board: Board) -> None:
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
        points = []
        for i in range(26):
            turn = 2 * pi * i / 26
            off = size * (1 - sway + sway * sin(3 * turn + 1.1))
            points.append(self.at(off * cos(turn), off * sin(turn)))
        return points

    def lens(self, size: float = 1.0) -> list[Point]:
        """A pocket, pointed at both ends. [mm]"""
        up = [self.at(-1 + i / 6, size * sin(pi * i / 12)) for i in range(13)]
        down = [self.at(1 - i / 6, -size * sin(pi * i / 12)) for i in range(13)]
        return [*up, *down]

    @property
    def way(self) -> float:
        """1 if a crack runs in from the left end of the board, -1 from the right. [1]"""
        return 1.0 if self.x <= self.board.length / 2 else -1.0


def _knot(f: _Field) -> None:
    f.row.fill("knot", f.round(1.0))
    for size in (1.0, 0.72, 0.46, 0.2):
        f.row.line("knot line", f.round(size), closed=True)


def _loose(f: _Field) -> None:
    # It stands alone in its hole, a dark ring of bark about it.
    f.row.fill("bark", f.round(1.0))
    f.row.fill("knot middle", f.round(0.72))
    for size in (0.72, 0.45, 0.2):
        f.row.line("knot line", f.round(size), closed=True)


def _check(f: _Field) -> None:
    # The checks of a dried end: each runs in along the grain and closes.
    for v, far in ((0.0, 1.0), (0.8, 0.45), (-0.8, 0.6)):
        points = [
            f.at(f.way * (-1 + 2 * far * i / 6), v + 0.25 * (-1) ** i * (1 - i / 6))
            for i in range(7)
        ]
        f.row.line("chalk", points)


def _split(f: _Field) -> None:
    # Open at the end of the board, closing inwards.
    mouth = [f.at(-f.way, 1.0), f.at(-0.2 * f.way, 0.35), f.at(f.way, 0.0)]
    shape = [*mouth, f.at(-0.1 * f.way, -0.35), f.at(-f.way, -1.0)]
    f.row.fill("void", shape)
    f.row.line("chalk", shape)


def _shake(f: _Field) -> None:
    for v in (-0.6, 0.1, 0.8):
        f.row.line("chalk", [f.at(-1 + i / 6, v + 0.4 * sin(pi * i / 12)) for i in range(13)])


def _wane(f: _Field) -> None:
    # Bark along the nearer edge, ragged where it meets the wood.
    up = 1.0 if f.y >= f.board.width / 2 else -1.0
    ragged = [
        f.at(1 - i / 20, -up * (0.78 - 0.22 * sin(0.9 * i) * cos(2.3 * i))) for i in range(41)
    ]
    f.row.fill("bark", [f.at(-1, up), f.at(1, up), *ragged])


def _pith(f: _Field) -> None:
    f.row.line("chalk", [f.at(-1, 0), f.at(1, 0)])
    for i in range(9):
        u = -0.9 + 0.225 * i
        f.row.line("chalk", [f.at(u, -0.8), f.at(u + 0.05, 0.8)])


def _bark_pocket(f: _Field) -> None:
    f.row.fill("bark", f.lens())


def _gum(f: _Field) -> None:
    f.row.fill("knot", f.lens())
    f.row.line("knot line", f.lens(), closed=True)
    f.row.line("knot line", [f.at(-0.7, 0), f.at(0.7, 0)])


def _decay(f: _Field) -> None:
    f.row.fill("knot", f.round(1.0, sway=0.16))
    _dots(f, 15)


def _worms(f: _Field) -> None:
    _dots(f, 9)


def _dots(f: _Field, count: int) -> None:
    size = 1.0 / f.row.view.scale
    for i in range(count):
        # Spread by the golden angle, so that no two fall together.
        far, turn = ((i + 0.5) / count) ** 0.5 * 0.85, 2.39996 * i
        x, y = f.at(far * cos(turn), far * sin(turn))
        f.row.fill("bark", [(x + size * cos(t), y + size * sin(t)) for t in (0, 1, 2, 3, 4, 5)])


def _stain(f: _Field) -> None:
    f.row.fill("knot", f.round(1.0, sway=0.12))


def _cross(f: _Field) -> None:
    for i in range(-4, 5):
        f.row.line("knot line", [f.at(i / 5 - 0.2, -0.9), f.at(i / 5 + 0.2, 0.9)])


def _torn(f: _Field) -> None:
    for i in range(15):
        u, v = -0.95 + 0.42 * (i % 5), -0.7 + 0.7 * (i // 5)
        f.row.line("chalk", [f.at(u, v), f.at(u + 0.16, v + 0.28), f.at(u + 0.2, v - 0.05)])


def _other(f: _Field) -> None:
    around = [f.at(-1, -1), f.at(1, -1), f.at(1, 1), f.at(-1, 1)]
    f.row.line("chalk", around, closed=True)
    f.row.line("chalk", [around[0], around[2]])
    f.row.line("chalk", [around[1], around[3]])


_HANDS: dict[str, Callable[[_Field], None]] = {
    "knot": _knot,
    "loose knot": _loose,
    "end check": _check,
    "split": _split,
    "shake": _shake,
    "wane": _wane,
    "pith": _pith,
    "bark pocket": _bark_pocket,
    "gum pocket": _gum,
    "decay": _decay,
    "worm holes": _worms,
    "stain": _stain,
    "cross grain": _cross,
    "tear-out": _torn,
    "other": _other,
}
