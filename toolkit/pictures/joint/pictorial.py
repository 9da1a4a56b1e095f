"""The joint apart and together: its two boards as solids, one drawn off the other."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

import numpy as np

from toolkit.pictures.corner.boards import Joint
from toolkit.pictures.exploded.drawing import bounds_of, log_for
from toolkit.pictures.exploded.sheet import Bounds, Naming, PageFrame, SolidScene, draw
from toolkit.pictures.exploded.view import Edges, FlatFace, Floats, carried, look_at
from toolkit.pictures.exploded.words import SeenPart
from toolkit.pictures.joint.names import Foot, Posed, columns, feet, lines_on_wood, posed
from toolkit.pictures.joint.words import apart_sentence
from toolkit.pictures.kit import Label, Picture, still_scale
from toolkit.pictures.kit.notes import nothing
from toolkit.plan import Plan
from toolkit.shape import Which

HEIGHT = 366.0  # [pt]
PLAIN = 90.0  # a face of which less is seen shows no figure [mm²]
ROOMS = (300.0, 335.0)  # across and up, for the boards; names stand left and right of them [pt]


def _bounds(p: Posed) -> Bounds:
    """Room for the joint together and apart, so that nothing jumps in between. [mm on paper]"""
    together, apart = np.zeros(3), np.array((p.off, 0.0, 0.0))
    stands = [(off, together) for off in (together, apart)]
    return bounds_of((p.tail_board, p.pin_board), *stands)


@lru_cache(maxsize=16)
def _seen(p: Posed) -> tuple[list[FlatFace], Edges]:
    """What the eye sees of both boards where they stand together. [mm]"""
    return look_at((board, np.zeros(3)) for board in (p.tail_board, p.pin_board))


def _frame(p: Posed, *, mirrored: bool) -> PageFrame:
    u0, v0, u1, v1 = bounds = _bounds(p)
    scale = still_scale((u1 - u0, ROOMS[0]), (v1 - v0, ROOMS[1]))
    return PageFrame(bounds, scale=scale, height=HEIGHT, mirrored=mirrored)


def _trails(j: Joint, p: Posed, off: float) -> list[Floats]:
    """From the pin board's end to the tips of the outermost tails, where there is a gap. [mm]"""
    if off <= p.tail_thickness:
        return []
    heights = (j.corner.tails[0].tip_low, j.corner.tails[-1].tip_high)
    ends = (0.0, off - p.tail_thickness)
    return [np.array([(x, p.tail_length, max(z, 0.0)) for x in ends]) for z in heights]


def joint_apart(
    plan: Plan,
    *,
    which: Which = "back",
    open: float = 1.0,
    left_handed: bool | None = None,
) -> Picture:
    """One corner apart: the tail board drawn off the pins the one way that it goes.

    Parameters
    ----------
    plan : Plan
        The box. [mm]
    which : str
        ``"back"`` or ``"front"``.
    open : float
        How far it is apart: 0 together, 1 wholly apart; the page stays the same.
    left_handed : bool or None
        Whether left and right are changed about, as the boards lie before a left-handed maker;
        None for the box's own maker.

    Returns
    -------
    Picture
        Both boards, cut short, with the sentence that says how they hold one another.

    Raises
    ------
    ValueError
        ``open`` is not from 0 to 1, or there is no such corner.

    Source
    ------
    Geometry; exploded views: common practice.
    """
    if not 0 <= open <= 1:
        raise ValueError(f"open is {open!r}: give 0 for together, 1 for apart, or between")
    j = Joint.of(plan, which, left_handed=left_handed)
    said = apart_sentence(plan, j, opened=open)
    if not plan.design.exists:
        return nothing(said, height=HEIGHT)
    p = posed(plan.design, which)
    moved = np.array((p.off * open, 0.0, 0.0))
    boards = ((p.tail_board, moved, 1), (p.pin_board, np.zeros(3), 0))
    faces, edges = carried(_seen(p), part=0, shift=moved)
    heights = (j.corner.height, j.pin_board.height)
    scene = SolidScene(
        keys=(p.tail_part, p.pin_part),
        grains=tuple(grain for _, _, grain in boards),
        logs=tuple(
            log_for(shape, shift, grain=grain, number=number)
            for number, (shape, shift, grain) in enumerate(boards)
        ),
        faces=faces,
        edges=edges,
        trails=_trails(j, p, p.off * open),
        marks=tuple(lines_on_wood(p, heights=heights, moved=moved)),
        plain=PLAIN,
    )
    named = feet(j, p, moved=moved, faces=faces)
    frame = _frame(p, mirrored=j.left_handed)
    return draw(scene, frame=frame, sentence=said, naming=_naming(named, p))


def _naming(named: Sequence[Foot], p: Posed) -> Naming:
    """Names in two columns, beside all that the joint may take up of the page."""

    def names(_: list[SeenPart], frame: PageFrame, __: Sequence[Floats]) -> Sequence[Label]:
        across = frame.page(np.array(_bounds(p)).reshape(2, 2))[:, 0]
        return columns(named, frame, sides=(float(across.min()), float(across.max())))

    return names
