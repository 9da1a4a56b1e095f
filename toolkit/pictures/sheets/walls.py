"""A whole wall opened out: its inside face, and at each end what folds over the arrises."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from toolkit.box import Span
from toolkit.box.joinery import setting_out_lines
from toolkit.pictures.corner.joint import joint
from toolkit.pictures.kit.lettering import Anchor, Label, Place
from toolkit.pictures.kit.picture import Point
from toolkit.pictures.kit.view import rectangle
from toolkit.pictures.sheets.ends import End, end_of_wall
from toolkit.pictures.sheets.marks import SMALL, CutOut, Extent, Mark, closed, hatched
from toolkit.pictures.sheets.words import wall_caption
from toolkit.plan import Plan
from toolkit.results import Working
from toolkit.shape import Which

Grooves = tuple[tuple[str, Span], ...]

_OVER = 2.0  # how far a fold runs on above the wall [mm]
_APART = 170.0  # what is written more than once on a long wall [mm]
_UNDER = 1.0  # from the bottom edge to the words under it [mm]


@dataclass(frozen=True, slots=True)
class OpenedWall:
    """A wall of the box as seen from inside it: what it is called, and its two ends. [mm]

    ``left`` and ``right`` say which wall or which end of the box lies there.
    """

    name: str
    part: str
    length: Working
    height: Working
    thickness: Working
    grooves: Grooves
    left: tuple[str, End]
    right: tuple[str, End]

    @property
    def tails(self) -> bool:
        """Whether it is a tail board."""
        return self.left[1].tails


def walls_of(plan: Plan) -> tuple[OpenedWall, ...]:
    """The four walls of a box; left and right as seen from its front. [mm]"""
    d, f = plan.design, plan.design.frame
    on_ends = d.choices.corner.tails_on == "ends"
    lines = setting_out_lines(d)

    def end(part: str, which: Which, thickness: Working) -> End:
        named = (f"{which} end", "each end")
        here = [row for row in lines if row.part == part and row.end in named]
        tails = on_ends != (part == "side")
        return end_of_wall(joint(plan, which), here, tails=tails, thickness=thickness.value)

    bottom = ("bottom", f.bottom_groove)
    both = (bottom, *([("lid", f.lid_groove)] if f.lid_groove is not None else []))
    side = (f.side_length, f.wall_height, f.side_thickness, both)
    back = ("back end", end("side", "back", f.side_thickness))
    front = ("front end", end("side", "front", f.side_thickness))
    made = [
        OpenedWall("left side", "side", *side, front, back),
        OpenedWall("right side", "side", *side, back, front),
    ]
    across: tuple[tuple[Which, Working, Working, Working, Grooves], ...] = (
        ("back", f.back_length, f.wall_height, f.back_thickness, both),
        ("front", f.front_length, f.front_height, f.front_thickness, (bottom,)),
    )
    for which, length, height, thickness, grooves in across:
        own = end(which, which, thickness)
        # From inside, the front shows its two ends the other way round.
        names = ("left side", "right side")[:: 1 if which == "back" else -1]
        size = (length, height, thickness, grooves)
        made.append(OpenedWall(f"{which} end", which, *size, (names[0], own), (names[1], own)))
    return tuple(made)


def wall_piece(wall: OpenedWall, plan: Plan, *, day: str) -> CutOut:
    """A wall as something to cut out. [mm]"""
    (_, left), (_, right) = wall.left, wall.right
    long, high = wall.length.value, wall.height.value
    window = Extent(-left.thickness - left.flap, long + right.thickness + right.flap, 0.0, high)
    marks = [closed("edge", rectangle((window.left, window.right), (0.0, high)))]
    for end, turn in ((left, False), (right, True)):
        for shape in end.wastes:
            marks += hatched(_turned(shape, long, turn))
        placed = [*end.marks]
        folds = [0.0, *([-end.thickness] if end.flap else [])]
        placed += [Mark("fold", ((u, 0.0), (u, high + _OVER))) for u in folds]
        for name, span in wall.grooves:
            placed += end.notch(name, span.low, span.high)
        marks += [Mark(mark.pen, _turned(mark.points, long, turn)) for mark in placed]
    for name, span in wall.grooves:
        start, stop = left.groove_starts(name), long - right.groove_starts(name)
        marks += [Mark("edge", ((start, z), (stop, z))) for z in (span.low, span.high)]
    spans = dict(wall.grooves)
    low, top = spans["bottom"].high, spans["lid"].low if "lid" in spans else high
    free = Extent(left.base, long - right.base, low, top)
    return CutOut(
        name=wall.name,
        caption=wall_caption(wall, plan),
        window=window,
        free=free,
        stamp=(f"{wall.name}, inside face", f"{day} · {plan.fingerprint}"),
        marks=tuple(marks),
        wishes=(*_names(wall, free), *_faces(wall)),
    )


def _turned(points: Sequence[Point], long: float, turn: bool) -> tuple[Point, ...]:
    """Points of an end on the whole wall, turned about for its right-hand end. [mm]"""
    return tuple((long - u if turn else u, z) for u, z in points)


def _names(wall: OpenedWall, free: Extent) -> Iterator[Label]:
    """What lies at either end, and what the grooves are for. [mm]"""
    levels = [free.low + free.height * share - 1.2 for share in (0.5, 0.78, 0.15)]
    left = tuple(Place(free.left + 1.5, z) for z in levels)
    yield Label(f"← {wall.left[0]}", left, 2, SMALL)
    right = tuple(Place(free.right - 1.5, z, "right") for z in levels)
    yield Label(f"{wall.right[0]} →", right, 2, SMALL)
    for name, span in wall.grooves:
        level = (span.low + span.high) / 2 - 0.26 * SMALL
        beside = span.high + 1.4 if name == "bottom" else span.low - 1.4 - 0.76 * SMALL
        for x in _along(wall):
            shifts = (0.0, -20.0, 20.0, -40.0, 40.0)
            places = [Place(x + shift, z, "center") for z in (level, beside) for shift in shifts]
            yield Label(f"{name} groove", tuple(places), 3, SMALL)


def _along(wall: OpenedWall) -> Iterator[float]:
    """Where along a wall something is written that should be on each of its sheets. [mm]"""
    long = wall.length.value
    count = max(1, round(long / _APART))
    return (long * (i + 0.5) / count for i in range(count))


def _faces(wall: OpenedWall) -> Iterator[Label]:
    """Which face each flap lies on, under it; the first line of two is given its place. [mm]"""
    long, first = wall.length.value, -_UNDER - 0.76 * SMALL
    for (_, end), turn in ((wall.left, False), (wall.right, True)):
        away: Anchor = "left" if turn else "right"
        near: Anchor = "right" if turn else "left"
        # A flap at the end of the paper: its words go as far back as they have to.
        outside = [(-end.thickness - 1.5 + back, first) for back in (0.0, 2.0, 4.0, 6.0)]
        rows = [("end\ngrain", [(-end.thickness + 1.5, first)], near)]
        rows += [("outside\nface", outside, away)] if end.flap else []
        for text, spots, anchor in rows:
            places = tuple(Place(*spot, anchor) for spot in _turned(spots, long, turn))
            yield Label(text, places, 1, SMALL)
    for x in _along(wall):
        places = tuple(Place(x + shift, first, "center") for shift in (0.0, -20.0, 20.0))
        yield Label("bottom edge", places, 1, SMALL)
