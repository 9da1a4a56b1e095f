"""One end of a wall, opened out over its arrises: inside face, end grain, outside face.

Along the paper, u is 0 on the arris between inside face and end grain. It grows into the inside
face; end grain lies from 0 to minus the board's thickness, and the outside face beyond that. z
runs up from the bottom edge. Folded at the arrises, every line lies on its own face.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from toolkit.box.joinery import Line
from toolkit.pictures.corner.boards import socket_shape, tail_wastes
from toolkit.pictures.corner.joint import Joint
from toolkit.pictures.kit.picture import Point
from toolkit.pictures.kit.view import rectangle
from toolkit.pictures.sheets.marks import Mark, closed
from toolkit.results import above

Shape = list[Point]

PAST = 4.0  # how far the outside face is drawn past its baseline [mm]
_SAME = 1e-6


@dataclass(frozen=True, slots=True)
class Early:
    """A groove that ends before this end of its wall: how, at which height, and where. [mm]"""

    name: str
    plugged: bool


@dataclass(frozen=True, slots=True)
class End:
    """What is drawn on one end of a wall, in its own u and z. [mm]

    ``base`` is the baseline's distance from the end on the inside face; ``flap`` how much of the
    outside face there is, 0 where that carries no line.
    """

    joint: Joint
    tails: bool
    thickness: float
    base: float
    flap: float
    wastes: tuple[Shape, ...]
    gauged: tuple[Mark, ...]
    early: tuple[Early, ...]

    @property
    def marks(self) -> Iterator[Mark]:
        """Edges of the waste, and the gauge lines. [mm]"""
        covered = {0.0, -self.thickness}
        covered |= {m.points[0][0] for m in self.gauged if m.points[0][0] == m.points[1][0]}
        for shape in self.wastes:
            for a, b in pairwise([*shape, shape[0]]):
                # A gauge line or a fold is there already.
                upright = abs(a[0] - b[0]) < _SAME
                if not (upright and any(abs(a[0] - u) < _SAME for u in covered)):
                    yield Mark("edge", (a, b))
        yield from self.gauged

    def notch(self, name: str, low: float, high: float) -> Iterator[Mark]:
        """A groove where it comes out at the end grain, or how it ends before it. [mm]"""
        depth = min(self.joint.groove_depth, self.thickness)
        early = next((row for row in self.early if row.name == name), None)
        if early is None:
            yield Mark("edge", ((0.0, low), (-depth, low), (-depth, high), (0.0, high)))
        elif early.plugged:
            plug = rectangle((0.0, self.base), (low, high))
            yield closed("edge", plug)
            yield Mark("edge", (plug[0], plug[2]))
            yield Mark("edge", (plug[1], plug[3]))
        else:
            yield Mark("edge", ((self.base, low), (self.base, high)))

    def groove_starts(self, name: str) -> float:
        """How far from the end a groove begins on the inside face. [mm]"""
        return self.base if any(row.name == name for row in self.early) else 0.0


def _mirrored(shape: Sequence[Point], thickness: float) -> Shape:
    """A shape of the inside face on the outside face. [mm]"""
    return [(-thickness - u, z) for u, z in shape]


def _gauged(rows: Sequence[Line], thickness: float, base: float) -> Iterator[Mark]:
    """Gauge lines of one end, each on its face. [mm]"""
    for row in rows:
        if row.setting is None or row.face not in ("inside face", "outside face", "end grain"):
            continue
        setting = row.setting.value
        if row.gauged_from == "the bottom edge":
            stretch = {
                "inside face": (0.0, base),
                "outside face": (-thickness, -thickness - base),
                "end grain": (0.0, -thickness),
            }[row.face]
            ends = [(u, row.low) for u in stretch]
        else:
            u = -setting if row.gauged_from == "the inside face" else setting
            if row.face == "outside face":
                u = -thickness - setting
            ends = [(u, row.low), (u, row.high)]
        yield Mark("gauge", tuple(ends))


def _tail_wastes(j: Joint, thickness: float, base: float) -> Iterator[Shape]:
    tip = base - j.tail_length
    shapes = [[(max(base + x, 0.0), z) for x, z in shape] for shape in tail_wastes(j)]
    if above(tip, 0.0):
        # Under an ear the tails end short of the end: that piece goes first, and whole.
        shapes.append(rectangle((0.0, tip), (0.0, j.corner.height)))
        yield rectangle((-thickness, 0.0), (0.0, j.corner.height))
    else:
        for shape in shapes:
            tips = [z for u, z in shape if u <= _SAME]
            if len(tips) > 1:
                yield rectangle((-thickness, 0.0), (min(tips), max(tips)))
    for shape in shapes:
        yield shape
        yield _mirrored(shape, thickness)


def _pin_wastes(j: Joint, thickness: float, base: float) -> Iterator[Shape]:
    for tail in j.corner.tails:
        yield rectangle((0.0, base), (tail.low, tail.high))
        socket = socket_shape(tail, j)
        yield [(-depth, z) for depth, z in socket]
        if not above(thickness, j.socket_depth):
            _, (_, low), (_, high), _ = socket
            yield _mirrored(rectangle((0.0, base), (low, high)), thickness)


def end_of_wall(j: Joint, lines: Sequence[Line], *, tails: bool, thickness: float) -> End:
    """Open out one end of a wall.

    Parameters
    ----------
    j : Joint
        The corner that the end belongs to. [mm]
    lines : sequence of Line
        The lines that are set out on this end. [mm]
    tails : bool
        Whether the wall is the tail board here.
    thickness : float
        Of the wall. [mm]

    Source
    ------
    Which line goes on which face: as set out. The rest is geometry.
    """
    gauged = [
        row.setting.value
        for row in lines
        if row.face == "inside face" and row.gauged_from == "the end" and row.setting is not None
    ]
    base = max(gauged)
    outside = any(row.face == "outside face" and row.setting is not None for row in lines)
    wastes = (_tail_wastes if tails else _pin_wastes)(j, thickness, base)
    early = tuple(
        Early(run.name, run.ends == "plugged")
        for run in j.runs
        if (run.tail_board_stopped if tails else run.pin_board_stopped)
    )
    return End(
        joint=j,
        tails=tails,
        thickness=thickness,
        base=base,
        flap=base + PAST if outside else 0.0,
        wastes=tuple(wastes),
        gauged=tuple(_gauged(lines, thickness, base)),
        early=early,
    )
