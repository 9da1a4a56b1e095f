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
from toolkit.pictures.corner.joint import Joint
from toolkit.pictures.kit.picture import Point
from toolkit.pictures.kit.view import rectangle
from toolkit.pictures.sheets.marks import Mark, closed
from toolkit.shape import JointedEnd, waste_on

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


def _wastes(end: JointedEnd, base: float) -> Iterator[Shape]:
    """What is cut away, on each face. [mm]"""
    thick = end.thickness
    yield from (list(shape) for shape in waste_on(end, on="inside face", base=base) if shape)
    for shape in waste_on(end, on="end grain", base=base):
        if shape:
            yield [(-deep, z) for deep, z in shape]
    for shape in waste_on(end, on="outside face", base=base):
        if shape:
            yield [(-thick - u, z) for u, z in shape]


def end_of_wall(j: Joint, lines: Sequence[Line], *, tails: bool, thickness: float) -> End:
    """Open out one end of a wall. [mm]"""
    gauged = [
        row.setting.value
        for row in lines
        if row.face == "inside face" and row.gauged_from == "the end" and row.setting is not None
    ]
    base = max(gauged)
    outside = any(row.face == "outside face" and row.setting is not None for row in lines)
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
        wastes=tuple(_wastes(j.tail_end if tails else j.pin_end, base)),
        gauged=tuple(_gauged(lines, thickness, base)),
        early=early,
    )
