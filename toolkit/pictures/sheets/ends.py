"""One end of a wall, opened out over its arrises: inside face, end grain, outside face.

Along the paper, u is 0 on the arris between inside face and end grain. It grows into the inside
face; end grain lies from 0 to minus the board's thickness, and the outside face beyond that. z
runs up from the bottom edge. Folded at the arrises, every line lies on its own face.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from toolkit.box import Span
from toolkit.box.joinery import Line
from toolkit.pictures.kit import Point, rectangle
from toolkit.pictures.sheets.marks import Mark, closed
from toolkit.shape import JointedEnd, waste_on

Shape = list[Point]

FACES = ("inside face", "end grain", "outside face")
PAST = 4.0  # how far the outside face is drawn past its baseline [mm]
_SAME = 1e-6


@dataclass(frozen=True, slots=True)
class OpenedEnd:
    """What is drawn on one end of a wall, in its own u and z. [mm]

    ``base`` is the baseline's distance from the end on the inside face; ``flap`` how much of the
    outside face there is, 0 where that carries no line; ``plugged`` whether a plug fills the way
    out of grooves that end before it.
    """

    end: JointedEnd
    base: float
    flap: float
    wastes: tuple[Shape, ...]
    gauged: tuple[Mark, ...]
    plugged: bool

    @property
    def thickness(self) -> float:
        """Of the board. [mm]"""
        return self.end.thickness

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

    def notch(self, name: str, span: Span, *, deep: float) -> Iterator[Mark]:
        """A groove where it comes out at the end grain, or how it ends before it. [mm]"""
        low, high, deep = span.low, span.high, min(deep, self.thickness)
        if name not in self.end.stopped:
            yield Mark("edge", ((0.0, low), (-deep, low), (-deep, high), (0.0, high)))
        elif self.plugged:
            plug = rectangle((0.0, self.base), (low, high))
            yield closed("edge", plug)
            yield Mark("edge", (plug[0], plug[2]))
            yield Mark("edge", (plug[1], plug[3]))
        else:
            yield Mark("edge", ((self.base, low), (self.base, high)))

    def groove_starts(self, name: str) -> float:
        """How far from the end a groove begins on the inside face. [mm]"""
        return self.base if name in self.end.stopped else 0.0


def _unfolded(face: str, far: float, thickness: float) -> float:
    """The u of a place on a face, so far from the arris at which that begins. [mm]"""
    return {"inside face": far, "end grain": -far, "outside face": -thickness - far}[face]


def _gauged(rows: Sequence[Line], thickness: float, base: float) -> Iterator[Mark]:
    """Gauge lines of one end, each on its face. [mm]"""
    for row in rows:
        if row.setting is None or row.face not in FACES:
            continue
        if row.gauged_from == "the bottom edge":
            far = thickness if row.face == "end grain" else base
            ends = [(0.0, row.low), (far, row.low)]
        else:
            ends = [(row.setting.value, z) for z in (row.low, row.high)]
        yield Mark("gauge", tuple((_unfolded(row.face, u, thickness), z) for u, z in ends))


def opened_end(end: JointedEnd, lines: Sequence[Line], *, plugged: bool) -> OpenedEnd:
    """Open out one end of a wall. [mm]"""
    set_on = [
        (row.face, row.gauged_from, row.setting.value) for row in lines if row.setting is not None
    ]
    base = max(size for face, start, size in set_on if (face, start) == ("inside face", "the end"))
    return OpenedEnd(
        end=end,
        base=base,
        flap=base + PAST if any(face == "outside face" for face, _, _ in set_on) else 0.0,
        wastes=tuple(
            [(_unfolded(face, u, end.thickness), z) for u, z in shape]
            for face in FACES
            for shape in waste_on(end, on=face, base=base)
            if shape
        ),
        gauged=tuple(_gauged(lines, end.thickness, base)),
        plugged=plugged,
    )
