"""Plain convex pieces of wood, and what can be asked of solids made of them. Lengths in mm.

A piece is given by its eight corners, never carved out of its neighbour.
"""

from collections.abc import Iterable
from typing import NamedTuple

import numpy as np
from manifold3d import Manifold, Mesh64, OpType
from numpy.typing import NDArray

Pair = tuple[float, float]
Corners = NDArray[np.float64]

# Two triangles for each face of a piece; its corners run anticlockwise below, then above.
_FACES = np.array(
    [
        *([0, 2, 1], [0, 3, 2]),
        *([4, 5, 6], [4, 6, 7]),
        *([0, 1, 5], [0, 5, 4]),
        *([1, 2, 6], [1, 6, 5]),
        *([2, 3, 7], [2, 7, 6]),
        *([3, 0, 4], [3, 4, 7]),
    ],
    dtype=np.uint64,
)

# Corners are laid on marks of 2⁻³⁰ mm, a millionth of a hair: two boards that meet in one place
# then meet in the same numbers, whichever sums led there.
_MARKS = 2.0**30


class Bounds(NamedTuple):
    """The smallest upright block round a solid. [mm]"""

    x: Pair
    y: Pair
    z: Pair


def block(x: Pair, y: Pair, z: Pair) -> Corners:
    """An upright block; flat or inside out where a size is not positive. [mm]"""
    return wedge("x", x, z, z, y)


def wedge(axis: str, reach: Pair, start: Pair, end: Pair, width: Pair) -> Corners:
    """A piece that changes its height along one axis and is as wide all the way. [mm]

    ``reach`` is where it starts and ends along that axis, in either direction; ``start`` and
    ``end`` its lower and upper edge there; ``width`` where it lies along the other level axis.
    """
    (p, q), (near, far) = reach, width
    if p > q:
        p, q, start, end = q, p, end, start
    (a, b), (c, d) = start, end
    if axis == "x":
        low = [[p, near, a], [q, near, c], [q, far, c], [p, far, a]]
        high = [[p, near, b], [q, near, d], [q, far, d], [p, far, b]]
    else:
        low = [[near, p, a], [far, p, a], [far, q, c], [near, q, c]]
        high = [[near, p, b], [far, p, b], [far, q, d], [near, q, d]]
    return np.array(low + high)


def shifted(pieces: Iterable[Corners], x: float = 0.0, y: float = 0.0) -> list[Corners]:
    """Pieces put in their place. [mm]"""
    return [piece + np.array([x, y, 0.0]) for piece in pieces]


def turned_over(pieces: Iterable[Corners], axis: str, length: float) -> list[Corners]:
    """Pieces mirrored in the middle of a length along x or y. [mm]"""
    column, order = (0, [1, 0, 3, 2]) if axis == "x" else (1, [3, 2, 1, 0])
    result = []
    for piece in pieces:
        # Mirrored corners run the wrong way round until they are taken in another order.
        mirrored = piece[order + [corner + 4 for corner in order]]
        mirrored[:, column] = length - mirrored[:, column]
        result.append(mirrored)
    return result


def on_marks(points: Corners) -> Corners:
    """Points laid on the nearest marks. [mm]"""
    result: Corners = np.round(points * _MARKS) / _MARKS
    return result


def wood(piece: Corners) -> Manifold:
    """One piece as a solid; none where it has no thickness."""
    low, high = piece.min(axis=0), piece.max(axis=0)
    if (high - low).min() <= 0:
        return Manifold()
    return Manifold(Mesh64(vert_properties=on_marks(piece), tri_verts=_FACES))


def hull(*pieces: Corners) -> Manifold:
    """The least convex solid round the pieces."""
    return Manifold.hull_points(on_marks(np.vstack(pieces)))


def together(solids: Iterable[Manifold]) -> Manifold:
    """The solids as one."""
    return Manifold.batch_boolean(list(solids), OpType.Add)


def without(solid: Manifold, *cutters: Manifold) -> Manifold:
    """What is left of a solid once the cutters have passed."""
    return Manifold.batch_boolean([solid, *cutters], OpType.Subtract)


def ploughed(pieces: Iterable[Corners], tracks: Iterable[Corners]) -> Manifold:
    """A board of those pieces with those tracks taken out of it."""
    return without(together(wood(piece) for piece in pieces), *(wood(track) for track in tracks))


def overlap(one: Manifold, other: Manifold) -> float:
    """Volume that two solids share. [mm³]"""
    return abs(float((one ^ other).volume()))


def bounds(solid: Manifold) -> Bounds:
    """The block round a solid. [mm]"""
    x0, y0, z0, x1, y1, z1 = solid.bounding_box()
    return Bounds((x0, x1), (y0, y1), (z0, z1))


def swept(pieces: Iterable[Corners], x: float = 0.0, z: float = 0.0) -> Manifold:
    """The space that convex pieces pass through when pushed in a straight line. [mm]"""
    way = np.array([x, 0.0, z])
    return together(hull(piece, piece + way) for piece in pieces)
