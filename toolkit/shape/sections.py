"""The box cut through: across at its middle, and along at its middle."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from manifold3d import CrossSection, Manifold, OpType

from toolkit.box import Design
from toolkit.shape.panels import lift_off_pieces, panel_pieces
from toolkit.shape.slices import Axis, Outline, face, outlines
from toolkit.shape.walls import wall


@dataclass(frozen=True, slots=True)
class CutPart:
    """One part where it is cut. [mm]"""

    name: str
    points: Outline
    end_grain: bool


@lru_cache(maxsize=32)
def cut_across(design: Design) -> tuple[CutPart, ...]:
    """Sides, bottom and lid, cut across at mid-length; of battens what is seen beyond.

    x runs from the outside of the left-hand side as seen from the front, z up from the bottom
    edge.

    Parameters
    ----------
    design : Design
        The box. [mm]

    Returns
    -------
    tuple of CutPart
        The outline of each part. [mm]
    """
    wide, thick = design.frame.outside_width.value, design.frame.side_thickness.value
    return (
        *_wall(design, "side", "left side", inside=thick, way=-1),
        *_wall(design, "side", "right side", inside=wide - thick, way=1),
        *_panels(design, axis=0),
    )


@lru_cache(maxsize=32)
def cut_along(design: Design) -> tuple[CutPart, ...]:
    """Back, front, bottom and lid, cut along at mid-width.

    x runs from the outside of the back end, z up from the bottom edge.

    Parameters
    ----------
    design : Design
        The box. [mm]

    Returns
    -------
    tuple of CutPart
        The outline of each part. [mm]
    """
    f = design.frame
    face_of_front = f.outside_length.value - f.front_thickness.value
    return (
        *_wall(design, "back", "back end", inside=f.back_thickness.value, way=-1),
        *_wall(design, "front", "front end", inside=face_of_front, way=1),
        *_panels(design, axis=1),
    )


def _wall(d: Design, part: str, name: str, *, inside: float, way: int) -> Iterator[CutPart]:
    """A wall cut across in its middle, from its inside face outwards. [mm]"""
    own = wall(d, part)
    for row in outlines(own.section(own.length / 2)):
        yield CutPart(name, tuple((inside + way * deep, z) for deep, z in row), True)


def _panels(d: Design, *, axis: Axis) -> Iterator[CutPart]:
    """Bottom, lid and battens, cut in the middle of the inside across an axis. [mm]"""
    f = d.frame
    battens: tuple[Manifold, ...] = ()
    at = f.outside_width.value / 2 if axis else f.back_thickness.value + f.inside_length.value / 2
    pieces = {panel.name: panel_pieces(d, panel=panel) for panel in d.grooved}
    if d.lift_off_lid is not None:
        pieces["lid"], battens = lift_off_pieces(d, lid=d.lift_off_lid)
    for name, own in pieces.items():
        flat = CrossSection.batch_boolean([face(piece, axis, at=at) for piece in own], OpType.Add)
        yield from (CutPart(name, row, axis == 0) for row in outlines(flat))
    for number, batten in enumerate(battens if axis else battens[:1], 1):
        # Between the battens, a cut across looks on to one of them.
        name, end_grain = (f"batten {number}", True) if axis else ("batten", False)
        middle = at if axis else (batten.bounding_box()[0] + batten.bounding_box()[3]) / 2
        yield from (
            CutPart(name, row, end_grain) for row in outlines(face(batten, axis, at=middle))
        )
