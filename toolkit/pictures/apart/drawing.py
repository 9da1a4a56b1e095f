"""A box apart or together: a bench drawing of its solids."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from manifold3d import Manifold

from toolkit.pictures.apart.figure import Log, log_of
from toolkit.pictures.apart.moves import key, shifts, trails
from toolkit.pictures.apart.sheet import Bounds, Frame, Scene, draw
from toolkit.pictures.apart.view import Floats, look_at, on_paper
from toolkit.pictures.apart.words import apart_sentence
from toolkit.pictures.kit.picture import Picture
from toolkit.plan import Plan
from toolkit.shape import solids

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
    d, rings = plan.design, plan.choices.wood.rings
    parts = solids(d)
    shapes, moves = [part.shape for part in parts], shifts(d, parts=parts, opened=open)
    faces, edges = look_at(zip(shapes, moves, strict=True))
    scene = Scene(
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
    frame = Frame(bounds_of(shapes, *stands))
    return draw(scene, frame=frame, sentence=apart_sentence(plan, opened=open))
