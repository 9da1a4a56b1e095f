"""The ends of walls opened out: what is cut away on each face, and the end grain that is left.

On inside and outside face points are (u, z), u from the end; on the end grain (d, z), d from the
inside face. z runs up from the bottom edge. [mm]
"""

from __future__ import annotations

from functools import lru_cache

from manifold3d import CrossSection

from toolkit.box import Design
from toolkit.shape.slices import Axis, Outline, face, outlines
from toolkit.shape.walls import JointedEnd, Which, wall

_PLANES: dict[str, tuple[Axis, int]] = {
    "inside face": (1, -1),
    "end grain": (0, -1),
    "outside face": (1, 1),
}


@lru_cache(maxsize=256)
def waste_on(end: JointedEnd, *, on: str) -> tuple[Outline, ...]:
    """What is cut away from one end of a wall, on one of the faces that it opens out to.

    Parameters
    ----------
    end : JointedEnd
        The end. [mm]
    on : str
        ``"inside face"``, ``"end grain"`` or ``"outside face"``.

    Returns
    -------
    tuple
        Between tails or in sockets, upwards; last what goes whole before the tips, under an ear.
        Empty outlines where a piece does not come to this face. [mm]
    """
    axis, facing = _PLANES[on]
    at = end.thickness if facing > 0 else 0.0
    pieces = (outlines(face(piece, axis, at=at, facing=facing)) for piece in end.waste())
    return tuple(rows[0] if rows else () for rows in pieces)


@lru_cache(maxsize=64)
def end_grain(design: Design, *, part: str, which: Which) -> tuple[Outline, ...]:
    """The end grain that is left of a wall: one piece, or single pins or tails if it is through.

    Parameters
    ----------
    design : Design
        The box. [mm]
    part : str
        ``"side"``, ``"back"`` or ``"front"``.
    which : str
        The corner: ``"back"`` or ``"front"``.

    Returns
    -------
    tuple
        Outlines, the lowest first. [mm]
    """
    own = wall(design, part)
    far = part == "side" and which == "front"
    left = own.section(own.length if far else 0.0)
    for shape in waste_on(own.ends[far], on="end grain"):
        left -= CrossSection([shape] if shape else [])
    return outlines(left)
