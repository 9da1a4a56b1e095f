"""Solids seen from one side: flat faces and the edges between them, and their tints under one lamp.

The view is axonometric and the same for every box: the back to the left, the near side and the
front end towards the eye. On the paper u runs to the right, v up and w towards the eye. [mm]
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from math import cos, radians, sin
from typing import Any

import numpy as np
from manifold3d import CrossSection, FillRule, Manifold
from matplotlib.colors import to_hex, to_rgb
from numpy.typing import NDArray

from toolkit.pictures.kit.pens import END, FACE

Floats = NDArray[np.float64]

TURN = radians(33.0)  # the eye stands this far round from the near side towards the front
RISE = radians(33.0)  # and looks down by this much
PAPER: Floats = np.array(
    [
        (cos(TURN), sin(TURN), 0.0),
        (-sin(RISE) * sin(TURN), sin(RISE) * cos(TURN), cos(RISE)),
        (cos(RISE) * sin(TURN), -cos(RISE) * cos(TURN), sin(RISE)),
    ]
)
FLAT = 1e-5  # corners of one face lie this near its plane [mm]


@dataclass(frozen=True, slots=True)
class FlatFace:
    """One flat face turned to the eye: its triangles in (u, v, w), its outline in (u, v). [mm]

    ``normal`` is in the axes of the box; ``facing`` and ``offset`` describe the plane on paper:
    points p of it have ``facing · p = offset``.
    """

    part: int
    normal: tuple[float, float, float]
    facing: Floats
    offset: float
    triangles: Floats
    outline: CrossSection


# An edge: its part, its two ends in (u, v, w), and whether only one of its faces is seen.
Row = tuple[int, Floats, Floats, bool]


@dataclass(frozen=True, slots=True)
class Edges:
    """Edges between flat faces of which the eye sees one or both. [mm]

    ``ends`` holds both ends of each edge in (u, v, w), the face seen lying to its left;
    ``outer`` tells whether only one of its two faces is turned to the eye.
    """

    part: NDArray[np.int64]
    ends: Floats
    outer: NDArray[np.bool_]


def on_paper(points: Iterable[Any]) -> Floats:
    """Points of the box as (u, v, w). [mm]"""
    return np.asarray(points, dtype=np.float64) @ PAPER.T


def _planes(corners: Floats) -> tuple[NDArray[np.int64], Floats]:
    """Which plane each triangle lies in, and the normals of the planes.

    The largest triangle of each plane speaks for it, so that slivers, whose own normals are
    noise, join the face that they lie in instead of leaving a streak.
    """
    cross = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    area = np.linalg.norm(cross, axis=1)
    plane = np.full(len(corners), -1, dtype=np.int64)
    normals: list[Floats] = []
    for tri in np.argsort(-area, kind="stable"):
        if plane[tri] >= 0:
            continue
        normal = cross[tri] / area[tri] if area[tri] > 0 else np.zeros(3)
        away = np.abs((corners - corners[tri, 0]) @ normal).max(axis=1)
        same = (away < FLAT) & (cross @ normal > -FLAT) & (plane < 0)
        plane[same] = len(normals)
        plane[tri] = len(normals)
        normals.append(normal)
    return plane, np.array(normals).reshape(-1, 3)


def _runs(pieces: list[tuple[Floats, Floats]]) -> list[tuple[Floats, Floats]]:
    """Pieces of one straight line, those that touch joined end to end."""
    start, way = pieces[0][0], pieces[0][1] - pieces[0][0]
    way = way / np.linalg.norm(way)
    spans = sorted((float((a - start) @ way), float((b - start) @ way)) for a, b in pieces)
    joined = [spans[0]]
    for low, high in spans[1:]:
        if low <= joined[-1][1] + FLAT:
            joined[-1] = (joined[-1][0], max(high, joined[-1][1]))
        else:
            joined.append((low, high))
    return [(start + low * way, start + high * way) for low, high in joined]


def _in_order(shape: Manifold) -> tuple[Floats, NDArray[np.int64]]:
    """Its points and triangles in an order of their own, whatever was built before it. [mm]"""
    mesh = shape.to_mesh64()
    points = np.asarray(mesh.vert_properties)[:, :3]
    order = np.lexsort(points.T)
    triangles = np.argsort(order)[np.asarray(mesh.tri_verts, dtype=np.int64)]
    first = np.argmin(triangles, axis=1)[:, None]
    triangles = np.take_along_axis(triangles, (first + np.arange(3)) % 3, axis=1)
    return points[order], triangles[np.lexsort(triangles.T)]


def seen(part: int, shape: Manifold, shift: Floats) -> tuple[list[FlatFace], list[Row]]:
    """The faces of one solid that are turned to the eye, and the edges round them. [mm]"""
    points, triangles = _in_order(shape)
    points = points + shift
    corners = points[triangles]
    plane, normals = _planes(corners)
    paper = on_paper(points)
    facing = normals @ PAPER.T
    to_eye = facing[:, 2] > 1e-9
    faces = []
    for number in np.flatnonzero(to_eye):
        flat = paper[triangles[plane == number]]
        outline = CrossSection([tri[:, :2] for tri in flat], FillRule.NonZero)
        if outline.is_empty():
            continue
        normal = normals[number]
        faces.append(
            FlatFace(
                part=part,
                normal=(float(normal[0]), float(normal[1]), float(normal[2])),
                facing=facing[number],
                offset=float(facing[number] @ flat[0, 0]),
                triangles=flat,
                outline=outline,
            )
        )
    return faces, _edges(part, triangles, plane, paper, to_eye)


def _edges(
    part: int,
    triangles: NDArray[np.int64],
    plane: NDArray[np.int64],
    paper: Floats,
    to_eye: NDArray[np.bool_],
) -> list[Row]:
    owner = {}
    for tri, (a, b, c) in zip(plane.tolist(), triangles.tolist(), strict=True):
        owner[a, b] = owner[b, c] = owner[c, a] = tri
    lines: dict[tuple[int, int], list[tuple[Floats, Floats]]] = {}
    for (a, b), left in owner.items():
        right = owner[b, a]
        # Each edge once: from the side of a face that is seen, of two such from the lower.
        if left == right or not to_eye[left] or (to_eye[right] and right < left):
            continue
        lines.setdefault((left, right), []).append((paper[a], paper[b]))
    return [
        (part, start, end, not bool(to_eye[right]))
        for (_, right), pieces in lines.items()
        for start, end in _runs(pieces)
    ]


def look_at(placed: Iterable[tuple[Manifold, Floats]]) -> tuple[list[FlatFace], Edges]:
    """All faces and edges of some solids, each moved by its shift."""
    faces: list[FlatFace] = []
    rows: list[Row] = []
    for part, (shape, shift) in enumerate(placed):
        own_faces, own_edges = seen(part, shape, shift)
        faces += own_faces
        rows += own_edges
    return faces, Edges(
        np.array([row[0] for row in rows], dtype=np.int64),
        np.array([(row[1], row[2]) for row in rows]).reshape(-1, 2, 3),
        np.array([row[3] for row in rows], dtype=np.bool_),
    )


def carried(
    seen: tuple[list[FlatFace], Edges], *, part: int, shift: Floats
) -> tuple[list[FlatFace], Edges]:
    """Faces and edges of one part carried along: they look the same from this far away."""
    faces, edges = seen
    way = PAPER @ shift
    u, v = float(way[0]), float(way[1])
    moved = [
        replace(
            face,
            offset=face.offset + float(face.facing @ way),
            triangles=face.triangles + way,
            outline=face.outline.translate((u, v)),
        )
        if face.part == part
        else face
        for face in faces
    ]
    ends = edges.ends + np.where(edges.part == part, 1.0, 0.0)[:, None, None] * way
    return moved, replace(edges, ends=ends)


# Above and to the left of the near side: a top lies in full light, the near side in half, the
# front end in shade. Its direction in the axes of the box.
LAMP = np.array((-0.18, -0.42, 0.89)) / np.linalg.norm((-0.18, -0.42, 0.89))
FACE_SHADE = "#c4a270"
END_SHADE = "#a47444"
# A line of the figure is so much darker than the face that it runs on.
GRAIN, RING = 0.87, 0.80


def tints(face: FlatFace, *, grain: int) -> tuple[str, str]:
    """The tint of a face, and of the figure on it: the lighter, the more it is lit (Lambert)."""
    normal = np.array(face.normal)
    ends = abs(normal[grain]) > 0.9
    light, shade = (END, END_SHADE) if ends else (FACE, FACE_SHADE)
    dark, lit = np.array(to_rgb(shade)), max(0.0, float(normal @ LAMP))
    tint = dark + lit * (np.array(to_rgb(light)) - dark)
    return to_hex(tint), to_hex(tint * (RING if ends else GRAIN))
