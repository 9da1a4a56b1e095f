"""A box apart and together: bench drawings of its solids."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from toolkit.pictures.apart.figure import Log, log_of
from toolkit.pictures.apart.moves import key, lid_shifts, shifts, trails
from toolkit.pictures.apart.sheet import Frame, Scene, draw
from toolkit.pictures.apart.view import Floats, look_at, on_paper
from toolkit.pictures.apart.words import apart_sentence, together_sentence
from toolkit.pictures.kit.picture import Picture
from toolkit.plan import Plan
from toolkit.shape import Solid, solids

WALL_RINGS = 18.0  # walls are drawn nearly flat-sawn [deg]


def _box(part: Solid) -> tuple[Floats, Floats]:
    bounds = np.array(part.shape.bounding_box(), dtype=np.float64)
    return bounds[:3], bounds[3:]


def _log(part: Solid, number: int, shift: Floats, *, rings: float) -> Log:
    """The log of a part, moved along with it."""
    low, high = _box(part)
    angle = rings if part.name in ("lid", "bottom") else WALL_RINGS
    return log_of(low + shift, high=high + shift, grain=part.grain, angle=angle, seed=number + 1)


def _scene(plan: Plan, parts: Sequence[Solid], moves: list[Floats], ways: list[Floats]) -> Scene:
    faces, edges = look_at((part.shape, move) for part, move in zip(parts, moves, strict=True))
    rings = plan.choices.wood.rings
    return Scene(
        keys=tuple(key(part) for part in parts),
        grains=tuple(part.grain for part in parts),
        logs=tuple(
            _log(part, number, move, rings=rings)
            for number, (part, move) in enumerate(zip(parts, moves, strict=True))
        ),
        faces=faces,
        edges=edges,
        trails=ways,
    )


def bounds_of(parts: Sequence[Solid], *stands: list[Floats]) -> tuple[float, float, float, float]:
    """The least page that holds all parts in all of these stands. [mm on paper]"""
    points = []
    for moves in stands:
        for part, move in zip(parts, moves, strict=True):
            x, y, z = zip(*(end + move for end in _box(part)), strict=True)
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
    d = plan.design
    parts = solids(d)
    moves = shifts(d, parts=parts, opened=open)
    scene = _scene(plan, parts, moves, trails(d, opened=open))
    stands = [shifts(d, parts=parts, opened=opened) for opened in (0.0, 1.0)]
    frame = Frame(bounds_of(parts, *stands))
    return draw(scene, frame=frame, sentence=apart_sentence(plan, opened=open))


def box_together(plan: Plan, *, lid_out: float = 0.0) -> Picture:
    """The box together, its lid closed or some way open.

    Parameters
    ----------
    plan : Plan
        The box. [mm]
    lid_out : float
        How far a sliding lid is drawn out, or a lift-off lid held up; at most the box's
        length. [mm]

    Returns
    -------
    Picture
        The drawing, its sentence and what was drawn.

    Raises
    ------
    ValueError
        ``lid_out`` is negative or longer than the box, or there is no box to draw.
    """
    d = plan.design
    length = d.frame.outside_length.value
    if not 0 <= lid_out <= length:
        raise ValueError(
            f"the lid is {lid_out:g} mm out: give from 0 for closed to {length:g}, the box's length"
        )
    parts = solids(d)
    moves = lid_shifts(d, parts=parts, out=lid_out)
    stands = [lid_shifts(d, parts=parts, out=out) for out in (0.0, length / 2, lid_out)]
    scene = _scene(plan, parts, moves, [])
    frame = Frame(bounds_of(parts, *stands))
    return draw(scene, frame=frame, sentence=together_sentence(plan, lid_out=lid_out))
