"""Blocks, moves, and flat shapes taken off solids: sections and faces."""

from __future__ import annotations

from typing import Literal

import numpy as np
from manifold3d import CrossSection, Manifold

Range = tuple[float, float]
Axis = Literal[0, 1, 2]
Outline = tuple[tuple[float, float], ...]

NEAR = 1e-6  # by how much sums of the same sizes differ at most [mm]
_OTHERS = {0: (1, 2), 1: (0, 2), 2: (0, 1)}


def block(x: Range, y: Range, z: Range) -> Manifold:
    """A box between three ranges; nothing where one of them is empty. [mm]"""
    low, high = zip(x, y, z, strict=True)
    size = tuple(b - a for a, b in zip(low, high, strict=True))
    if min(size) <= 0:
        return Manifold()
    return Manifold.cube(size).translate(low)


def moved(shape: Manifold, *rows: tuple[float, float, float, float]) -> Manifold:
    """A solid whose new x, y and z are these sums of the old x, y, z and 1. [mm]"""
    return shape.transform(np.array(rows, dtype=np.float64))


def face(shape: Manifold, axis: Axis, *, at: float, facing: int = -1) -> CrossSection:
    """A solid's face in a plane across an axis, or its section where the plane cuts it. [mm]

    The outside lies beyond the plane, towards ``facing``. The other two axes keep their order.
    """
    # Looked for just under the plane, whichever sums led to it.
    matrix = np.zeros((3, 4))
    for row, own in enumerate((*_OTHERS[axis], axis)):
        matrix[row, own] = 1.0
    return shape.transform(matrix).slice(at - facing * NEAR)


def outlines(flat: CrossSection) -> tuple[Outline, ...]:
    """The outlines of a flat shape, the lowest first, without points on straight edges. [mm]"""
    polygons = flat.simplify(NEAR).to_polygons()
    rows = [tuple((float(x), float(z)) for x, z in row) for row in polygons]
    return tuple(sorted(rows, key=lambda row: min(z for _, z in row)))


def area_between(flat: CrossSection, across: Range, up: Range) -> float:
    """How much of a flat shape lies in a rectangle. [mm²]"""
    (x0, x1), (z0, z1) = across, up
    if x1 <= x0 or z1 <= z0:
        return 0.0
    return float((flat ^ CrossSection([[(x0, z0), (x1, z0), (x1, z1), (x0, z1)]])).area())
