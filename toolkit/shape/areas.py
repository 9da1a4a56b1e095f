"""How much of a box takes a finish: faces of its solids that are seen or touched."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal, NamedTuple

from toolkit.box import Design
from toolkit.results import above
from toolkit.shape.box import solids
from toolkit.shape.slices import Axis, Range, area_between, face

ALL: Range = (-1e4, 1e4)
Group = Literal["outside", "inside", "lid"]


class Area(NamedTuple):
    """One surface to finish: its name, the group it belongs to, its size. [mm²]"""

    name: str
    group: Group
    size: float


@dataclass(frozen=True, slots=True)
class Areas:
    """The surfaces of a box that take a finish; each group is the sum of its own."""

    rows: tuple[Area, ...]

    def total(self, *groups: Group) -> float:
        """All surfaces of some groups together. [mm²]"""
        return sum(row.size for row in self.rows if row.group in groups)


@lru_cache(maxsize=16)
def finishing_areas(design: Design) -> Areas:
    """The surfaces of a box that take a finish, each with its group. [mm²]

    Grooves, tongues and joints take none and are left out, and so are a lid's underside where it
    lies on a rim, and the cheeks of what reaches down from it into the box.
    """
    return Areas(tuple(Area(*row) for row in (*_walls(design), *_panels(design))))


def _walls(d: Design) -> Iterator[tuple[str, Group, float]]:
    f = d.frame
    walls = [part.shape for part in solids(d) if part.name in ("side", "back", "front")]
    length, width, low = f.outside_length.value, f.outside_width.value, f.front_height.value
    x, y = _inside(d)

    def shown(axis: Axis, at: float, facing: int, across: Range = ALL, up: Range = ALL) -> float:
        return sum(area_between(face(w, axis, at=at, facing=facing), across, up) for w in walls)

    def round_inside(up: Range) -> float:
        ends = shown(0, x[0], 1, y, up) + shown(0, x[1], -1, y, up)
        return ends + shown(1, y[0], 1, x, up) + shown(1, y[1], -1, x, up)

    yield "sides", "outside", shown(1, 0.0, -1) + shown(1, width, 1)
    yield "back end", "outside", shown(0, 0.0, -1)
    yield "front end", "outside", shown(0, length, 1)
    yield "bottom edges", "outside", shown(2, 0.0, -1)
    top = shown(2, f.wall_height.value, 1)
    if above(f.wall_height.value, low):
        # What stands on a low front hides the rest of its top edge.
        top += shown(2, low, 1, (x[1], length), y)
    yield "top edges", "outside", top
    yield "walls below the bottom", "outside", round_inside((0.0, d.bottom.low))
    floor = f.bottom_groove.high
    yield "walls inside", "inside", round_inside((floor, floor + f.inside_height.value))


def _panels(d: Design) -> Iterator[tuple[str, Group, float]]:
    f = d.frame
    shapes = {part.name: part.shape for part in solids(d)}
    x, y = _inside(d)

    def between(name: str, along: Range) -> float:
        return area_between(shapes[name].project(), along, y)

    yield "underside of the bottom", "outside", between("bottom", x)
    yield "bottom inside", "inside", between("bottom", x)
    if not d.lids:
        return
    yield "underside of the lid", "lid", between("lid", x)
    if d.sliding_lid is not None:
        length = f.outside_length.value
        yield "top of the lid", "lid", between("lid", (x[0], length))
        front = face(shapes["lid"], 0, at=length, facing=1)
        yield "front edge of the lid", "lid", area_between(front, y, ALL)
        return
    yield "top of the lid", "lid", float(shapes["lid"].project().area())
    bounds = shapes["lid"].bounding_box()
    axes: tuple[Axis, ...] = (0, 1)
    edges = [
        face(shapes["lid"], axis, at=bounds[axis + 3 * far], facing=2 * far - 1).area()
        for axis in axes
        for far in (0, 1)
    ]
    yield "edges of the lid", "lid", float(sum(edges))


def _inside(d: Design) -> tuple[Range, Range]:
    """Where the inside lies along and across the box. [mm]"""
    f = d.frame
    side, back = f.side_thickness.value, f.back_thickness.value
    return (back, f.outside_length.value - f.front_thickness.value), (
        side,
        f.outside_width.value - side,
    )
