"""A whole wall opened out: its inside face, and at each end what folds over the arrises.

Along the paper, u is 0 on the arris between inside face and end grain. It grows into the inside
face; end grain lies from 0 to minus the board's thickness, and the outside face beyond that. z
runs up from the bottom edge. Folded at the arrises, every line lies on its own face.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from toolkit.box import Line, Span, setting_out_lines
from toolkit.pictures.kit import Anchor, Label, Point, Slot, rectangle
from toolkit.pictures.sheets.margins import wall_caption
from toolkit.pictures.sheets.marks import SMALL, CutOut, Extent, Mark, closed, hatched
from toolkit.plan import Plan
from toolkit.shape import JointedEnd, JointedWall, wall_as_cut, waste_on

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
            for shape in waste_on(end, on=face)
            if shape
        ),
        gauged=tuple(_gauged(lines, end.thickness, base)),
        plugged=plugged,
    )


ENDS, SIDES = ("back end", "front end"), ("left side", "right side")
_OVER = 2.0  # how far a fold runs on above the wall [mm]
_APART = 170.0  # what is written more than once on a long wall [mm]
_UNDER = 1.0  # from the bottom edge to the words under it [mm]


@dataclass(frozen=True, slots=True)
class OpenedWall:
    """A wall of the box as seen from inside it: what it is called, and its two ends. [mm]

    ``left`` and ``right`` say which wall or which end of the box lies there.
    """

    name: str
    wall: JointedWall
    left: tuple[str, OpenedEnd]
    right: tuple[str, OpenedEnd]

    @property
    def tails(self) -> bool:
        """Whether it is a tail board."""
        return self.wall.ends[0].tails


def walls_of(plan: Plan) -> Iterator[OpenedWall]:
    """The four walls of a box; left and right as seen from its front. [mm]"""
    lines, plugged = setting_out_lines(plan.design), plan.choices.groove.ends == "plugged"
    for part, name, beyond, way in (
        ("side", "left side", ENDS, -1),
        ("side", "right side", ENDS, 1),
        ("back", "back end", SIDES, 1),
        # From inside, the front shows its two ends the other way round.
        ("front", "front end", SIDES, -1),
    ):
        own, ends = wall_as_cut(plan.design, part), []
        for at, end in zip(beyond, own.ends, strict=True):
            here = [row for row in lines if row.part == part and row.end in (at, "each end")]
            ends.append((at, opened_end(end, here, plugged=plugged)))
        yield OpenedWall(name, own, *ends[::way])


def wall_piece(opened: OpenedWall, plan: Plan, *, day: str) -> CutOut:
    """A wall as something to cut out. [mm]"""
    (_, left), (_, right) = opened.left, opened.right
    long, high = opened.wall.length, opened.wall.height
    window = Extent(-left.thickness - left.flap, long + right.thickness + right.flap, 0.0, high)
    marks = [closed("edge", rectangle((window.left, window.right), (0.0, high)))]
    for end, turn in ((left, False), (right, True)):
        for shape in end.wastes:
            marks += hatched(_turned(shape, long, turn))
        placed = [*end.marks]
        folds = [0.0, *([-end.thickness] if end.flap else [])]
        placed += [Mark("fold", ((u, 0.0), (u, high + _OVER))) for u in folds]
        for name, span in opened.wall.grooves:
            placed += end.notch(name, span, deep=opened.wall.depth)
        marks += [Mark(mark.pen, _turned(mark.points, long, turn)) for mark in placed]
    for name, span in opened.wall.grooves:
        start, stop = left.groove_starts(name), long - right.groove_starts(name)
        marks += [Mark("edge", ((start, z), (stop, z))) for z in (span.low, span.high)]
    spans = dict(opened.wall.grooves)
    low, top = spans["bottom"].high, spans["lid"].low if "lid" in spans else high
    free = Extent(left.base, long - right.base, low, top)
    return CutOut(
        name=opened.name,
        caption=wall_caption(opened, plan),
        window=window,
        free=free,
        stamp=(f"{opened.name}, inside face", f"issue {plan.fingerprint} of {day}"),
        marks=tuple(marks),
        wishes=(*_names(opened, free), *_faces(opened)),
    )


def _turned(points: Sequence[Point], long: float, turn: bool) -> tuple[Point, ...]:
    """Points of an end on the whole wall, turned about for its right-hand end. [mm]"""
    return tuple((long - u if turn else u, z) for u, z in points)


def _names(opened: OpenedWall, free: Extent) -> Iterator[Label]:
    """What lies at either end, and what the grooves are for. [mm]"""
    levels = [free.low + free.height * share - 1.2 for share in (0.5, 0.78, 0.15)]
    left = tuple(Slot(free.left + 1.5, z) for z in levels)
    yield Label(f"← {opened.left[0]}", left, 2, SMALL)
    right = tuple(Slot(free.right - 1.5, z, "right") for z in levels)
    yield Label(f"{opened.right[0]} →", right, 2, SMALL)
    for name, span in opened.wall.grooves:
        level = (span.low + span.high) / 2 - 0.26 * SMALL
        beside = span.high + 1.4 if name == "bottom" else span.low - 1.4 - 0.76 * SMALL
        for x in _along(opened):
            shifts = (0.0, -20.0, 20.0, -40.0, 40.0)
            places = [Slot(x + shift, z, "center") for z in (level, beside) for shift in shifts]
            yield Label(f"{name} groove", tuple(places), 3, SMALL)


def _along(opened: OpenedWall) -> Iterator[float]:
    """Where along a wall something is written that should be on each of its sheets. [mm]"""
    long = opened.wall.length
    count = max(1, round(long / _APART))
    return (long * (i + 0.5) / count for i in range(count))


def _faces(opened: OpenedWall) -> Iterator[Label]:
    """Which face each flap lies on, under it; the first line of two is given its place. [mm]"""
    long, first = opened.wall.length, -_UNDER - 0.76 * SMALL
    for (_, end), turn in ((opened.left, False), (opened.right, True)):
        away: Anchor = "left" if turn else "right"
        near: Anchor = "right" if turn else "left"
        # A flap at the end of the paper: its words go as far back as they have to.
        outside = [(-end.thickness - 1.5 + back, first) for back in (0.0, 2.0, 4.0, 6.0)]
        rows = [("end\ngrain", [(-end.thickness + 1.5, first)], near)]
        rows += [("outside\nface", outside, away)] if end.flap else []
        for text, spots, anchor in rows:
            places = tuple(Slot(*spot, anchor) for spot in _turned(spots, long, turn))
            yield Label(text, places, 1, SMALL)
    for x in _along(opened):
        places = tuple(Slot(x + shift, first, "center") for shift in (0.0, -20.0, 20.0))
        yield Label("bottom edge", places, 1, SMALL)
