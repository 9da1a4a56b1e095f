"""A whole wall opened out: its inside face, and at each end what folds over the arrises."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from toolkit.box.joinery import setting_out_lines
from toolkit.pictures.kit import Anchor, Label, Place, Point, rectangle
from toolkit.pictures.sheets.ends import OpenedEnd, opened_end
from toolkit.pictures.sheets.marks import SMALL, CutOut, Extent, Mark, closed, hatched
from toolkit.pictures.sheets.words import wall_caption
from toolkit.plan import Plan
from toolkit.shape import JointedWall, wall

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
        own, ends = wall(plan.design, part), []
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
        stamp=(f"{opened.name}, inside face", f"{day} · {plan.fingerprint}"),
        marks=tuple(marks),
        wishes=(*_names(opened, free), *_faces(opened)),
    )


def _turned(points: Sequence[Point], long: float, turn: bool) -> tuple[Point, ...]:
    """Points of an end on the whole wall, turned about for its right-hand end. [mm]"""
    return tuple((long - u if turn else u, z) for u, z in points)


def _names(opened: OpenedWall, free: Extent) -> Iterator[Label]:
    """What lies at either end, and what the grooves are for. [mm]"""
    levels = [free.low + free.height * share - 1.2 for share in (0.5, 0.78, 0.15)]
    left = tuple(Place(free.left + 1.5, z) for z in levels)
    yield Label(f"← {opened.left[0]}", left, 2, SMALL)
    right = tuple(Place(free.right - 1.5, z, "right") for z in levels)
    yield Label(f"{opened.right[0]} →", right, 2, SMALL)
    for name, span in opened.wall.grooves:
        level = (span.low + span.high) / 2 - 0.26 * SMALL
        beside = span.high + 1.4 if name == "bottom" else span.low - 1.4 - 0.76 * SMALL
        for x in _along(opened):
            shifts = (0.0, -20.0, 20.0, -40.0, 40.0)
            places = [Place(x + shift, z, "center") for z in (level, beside) for shift in shifts]
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
            places = tuple(Place(*spot, anchor) for spot in _turned(spots, long, turn))
            yield Label(text, places, 1, SMALL)
    for x in _along(opened):
        places = tuple(Place(x + shift, first, "center") for shift in (0.0, -20.0, 20.0))
        yield Label("bottom edge", places, 1, SMALL)
