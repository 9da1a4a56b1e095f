"""A box apart or together: which way each part leaves its neighbours, in what order, how far."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import cos, sin, tan

import numpy as np
from manifold3d import Manifold

from toolkit.box import Design
from toolkit.pictures.exploded.figures import Log, log_of
from toolkit.pictures.exploded.sheet import Bounds, PageFrame, SolidScene, draw
from toolkit.pictures.exploded.view import RISE, TURN, Floats, look_at, on_paper
from toolkit.pictures.exploded.words import apart_sentence
from toolkit.pictures.kit.picture import Picture
from toolkit.plan import Plan
from toolkit.shape import Solid, solids

AIR = 8.0  # between parts that would else just touch on paper [mm]


@dataclass(frozen=True, slots=True)
class Leg:
    """A straight move along one axis by so much, made while the box opens from begin to end.

    ``by`` in mm; ``begin`` and ``end`` are shares of the whole opening.
    """

    axis: int
    by: float
    begin: float
    end: float


def _moved(legs: tuple[Leg, ...], opened: float) -> Floats:
    shift = np.zeros(3)
    for leg in legs:
        share = (opened - leg.begin) / (leg.end - leg.begin)
        shift[leg.axis] += leg.by * min(max(share, 0.0), 1.0)
    return shift


def _clearances(d: Design) -> tuple[float, float]:
    """How far sides and ends move so that none hides the bottom or another wall. [mm]"""
    f, bottom = d.frame, d.bottom
    size = min(f.outside_length.value, f.outside_width.value)
    thick = max(f.side_thickness.value, f.back_thickness.value, f.front_thickness.value)
    # A wall hides the floor behind it for its height over the slope of the view; a tall box
    # would fly to pieces if nothing at all were to be hidden.
    over = f.wall_height.value - bottom.low
    sides = over * cos(TURN) / tan(RISE) + bottom.reach - bottom.across / 2 + AIR
    sides = max(min(sides, 0.7 * size), 3 * thick)
    lap = max(f.lap_back.value, 0.0)
    ends = thick + (sides + lap) * tan(TURN)
    return sides, max(ends, 3 * thick)


def _lid_legs(d: Design, ends: float) -> tuple[Leg, ...]:
    f = d.frame
    length = f.outside_length.value

    def out(top: float) -> float:
        """Along the box until the lid hides nothing of the front end."""
        hidden = min(top * sin(TURN) / tan(RISE), 0.5 * length)
        return ends + hidden + AIR

    if (lid := d.sliding_lid) is not None:
        return (Leg(0, lid.length.value + out(lid.high), 0.0, 0.45),)
    if (lifted := d.lift_off_lid) is None:
        return ()
    up = lifted.down + 2 * AIR
    if lifted.batten is not None:
        up += 0.35 * f.outside_width.value
    return (
        Leg(2, up, 0.0, 0.15),
        Leg(0, length + out(f.wall_height.value + up + lifted.thickness.value), 0.15, 0.45),
    )


def legs(d: Design) -> dict[str, tuple[Leg, ...]]:
    """The moves of every part, by its name and place: ``side near``, ``back``, ``lid``."""
    sides, ends = _clearances(d)
    first, second = (0.4, 0.75), (0.65, 1.0)
    when_ends, when_sides = (
        (first, second) if d.choices.corner.tails_on == "ends" else (second, first)
    )
    lid = _lid_legs(d, ends)
    moves = {
        "side near": (Leg(1, -sides, *when_sides),),
        "side far": (Leg(1, sides, *when_sides),),
        "back": (Leg(0, -ends, *when_ends),),
        "front": (Leg(0, ends, *when_ends),),
        "bottom": (),
        "lid": lid,
    }
    if d.lift_off_lid is not None and d.lift_off_lid.batten is not None:
        drop = Leg(2, -0.35 * d.frame.outside_width.value, 0.45, 0.6)
        moves["batten back"] = moves["batten front"] = (*lid, drop)
    return moves


def key(solid: Solid) -> str:
    """The name of a part with its place, where there are two of a kind."""
    return f"{solid.name} {solid.place}".strip()


def shifts(d: Design, *, parts: tuple[Solid, ...], opened: float) -> list[Floats]:
    """Where each part stands when the box is so far open."""
    moves = legs(d)
    return [_moved(moves[key(part)], opened) for part in parts]


def trails(d: Design, *, opened: float) -> list[Floats]:
    """The ways that parts have come, from where they sat (common practice, no source)."""
    f, moves, bottom = d.frame, legs(d), d.bottom
    z = bottom.high - bottom.tongue / 2
    middle_x = f.back_thickness.value + f.inside_length.value / 2
    middle_y = f.outside_width.value / 2
    half = np.array((bottom.length.value, bottom.width.value)) / 2
    rows = []
    for name, axis, way in (
        ("side near", 1, -1),
        ("side far", 1, 1),
        ("back", 0, -1),
        ("front", 0, 1),
    ):
        start = np.array((middle_x, middle_y, z))
        start[axis] += way * half[axis]
        # Where the edge of the bottom lay in the groove of this wall.
        rows.append((start, start + _moved(moves[name], opened)))
    if (lid := d.sliding_lid) is not None:
        start = np.array((f.outside_length.value - lid.length.value, middle_y, lid.low))
        start[2] += lid.tongue / 2
        start = start + _moved(moves["back"], opened)
        end = start.copy()
        end[0] += _moved(moves["lid"], opened)[0] - _moved(moves["back"], opened)[0]
        rows.append((start, end))
    elif d.lids:
        # Up from the middle of the bottom, then along to the lid.
        at = np.array((middle_x, middle_y, bottom.high))
        up = at.copy()
        up[2] = f.wall_height.value + _moved(moves["lid"], opened)[2]
        along = up.copy()
        along[0] += _moved(moves["lid"], opened)[0]
        rows += [(at, up), (up, along)] if opened > 0 else []
    return [np.array(row) for row in rows if np.linalg.norm(row[1] - row[0]) > AIR]


WALL_RINGS = 18.0  # walls are drawn nearly flat-sawn [deg]


def log_for(
    shape: Manifold, shift: Floats, *, grain: int, number: int, rings: float = WALL_RINGS
) -> Log:
    """The log of a part, moved along with it."""
    low, high = np.array(shape.bounding_box()).reshape(2, 3) + shift
    return log_of(low, high=high, grain=grain, angle=rings, seed=number + 1)


def bounds_of(shapes: Sequence[Manifold], *stands: Sequence[Floats]) -> Bounds:
    """The least page that holds all shapes in all of these stands. [mm on paper]"""
    points = []
    for moves in stands:
        for shape, move in zip(shapes, moves, strict=True):
            x, y, z = (np.array(shape.bounding_box()).reshape(2, 3) + move).T
            points += [(a, b, c) for a in x for b in y for c in z]
    paper = on_paper(points)[:, :2]
    (u0, v0), (u1, v1) = paper.min(axis=0), paper.max(axis=0)
    return float(u0), float(v0), float(u1), float(v1)


def box_apart(plan: Plan, *, open: float = 1.0) -> Picture:
    """The box apart: every part moved the way that its joints let it go.

    Parameters
    ----------
    plan : Plan
        The box. [mm]
    open : float
        How far it is taken apart: 0 together, 1 all apart; the page stays the same.

    Returns
    -------
    Picture
        The drawing, its sentence and what was drawn.

    Raises
    ------
    ValueError
        ``open`` is not from 0 to 1, or there is no box to draw.

    Source
    ------
    Geometry; exploded views: common practice.
    """
    if not 0 <= open <= 1:
        raise ValueError(f"open is {open!r}: give 0 for together, 1 for all apart, or between")
    d, rings = plan.design, plan.design.choices.wood.rings
    parts = solids(d)
    shapes, moves = [part.shape for part in parts], shifts(d, parts=parts, opened=open)
    faces, edges = look_at(zip(shapes, moves, strict=True))
    scene = SolidScene(
        keys=tuple(key(part) for part in parts),
        grains=tuple(part.grain for part in parts),
        logs=tuple(
            log_for(
                part.shape,
                move,
                grain=part.grain,
                number=number,
                rings=rings if part.name in ("lid", "bottom") else WALL_RINGS,
            )
            for number, (part, move) in enumerate(zip(parts, moves, strict=True))
        ),
        faces=faces,
        edges=edges,
        trails=trails(d, opened=open),
    )
    stands = [shifts(d, parts=parts, opened=opened) for opened in (0.0, 1.0)]
    frame = PageFrame(bounds_of(shapes, *stands))
    return draw(scene, frame=frame, sentence=apart_sentence(plan, opened=open))
