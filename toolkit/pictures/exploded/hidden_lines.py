"""What of faces and lines the eye sees: exact, by cutting each with everything in front of it.

Solids do not run through one another, so that wherever two faces cover each other on paper the
one whose plane is nearer hides the other. No order of painting is needed, and none can be wrong.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from manifold3d import CrossSection, FillRule, OpType
from numpy.typing import NDArray

from toolkit.pictures.exploded.view import Edges, FlatFace, Floats

BEHIND = 1e-3  # what lies less than this behind a face lies in it [mm]
# A gap or a step narrower than this is drawn as the joint that it is, not as two outlines. [mm]
HAIRLINE = 0.6
STUB = 2 * HAIRLINE
FAR = 1e5
SEAM = 1e-7  # [mm]

Span = tuple[float, float]


def _half_paper(way: Floats, level: float) -> CrossSection:
    """The half of the paper where ``way · (u, v)`` is above a level; ``way`` has length 1."""
    foot, across = way * level, np.array((-way[1], way[0]))
    corners = (
        foot - FAR * across,
        foot - FAR * across + FAR * way,
        foot + FAR * across + FAR * way,
        foot + FAR * across,
    )
    return CrossSection([np.array(corners)], FillRule.NonZero)


def _before(face: FlatFace, other: FlatFace) -> CrossSection | None:
    """The part of ``other`` that lies in front of the plane of ``face``."""
    out = other.triangles.reshape(-1, 3) @ face.facing - face.offset
    if out.max() <= BEHIND:
        return None
    if out.min() >= -BEHIND:
        return other.outline
    # Both planes as heights above the paper: their difference grows along one direction.
    mine, its = face.facing / face.facing[2], other.facing / other.facing[2]
    slope = (mine - its)[:2]
    gap = face.offset / face.facing[2] - other.offset / other.facing[2]
    size = float(np.hypot(slope[0], slope[1]))
    return other.outline ^ _half_paper(slope / size, (gap + BEHIND) / size)


def visible_faces(faces: Sequence[FlatFace]) -> list[CrossSection]:
    """What is seen of each face, on paper. [mm]"""
    bounds = np.array([face.outline.bounds() for face in faces]).reshape(-1, 4)
    shown = []
    for number, face in enumerate(faces):
        low, high = bounds[number, :2], bounds[number, 2:]
        touching = np.all((bounds[:, :2] < high) & (bounds[:, 2:] > low), axis=1)
        touching[number] = False
        nearer = [_before(face, faces[other]) for other in np.flatnonzero(touching).tolist()]
        cutters = [cutter for cutter in nearer if cutter is not None]
        shown.append(CrossSection.batch_boolean([face.outline, *cutters], OpType.Subtract))
    return shown


def _overlaps(
    lines: Floats, triangles: Floats, *, low: float, high: float
) -> tuple[NDArray[np.int64], NDArray[np.int64], Floats, Floats]:
    """Where triangles cover lines on paper: line, triangle, and from where to where on the line.

    Only triangles count whose plane lies more than ``low`` and less than ``high`` before the
    line. Places on a line are shares of its length.
    """
    line, tri = _near(lines, triangles)
    start, way, corner = lines[line, 0], lines[line, 1] - lines[line, 0], triangles[tri]
    normal = np.cross(triangles[:, 1] - triangles[:, 0], triangles[:, 2] - triangles[:, 0])
    normal = (normal / np.linalg.norm(normal, axis=1, keepdims=True))[tri]
    # Each condition is level + slope × share >= 0, with the share running from 0 to 1.
    levels, slopes = [], []
    for k in range(3):
        edge = corner[:, (k + 1) % 3, :2] - corner[:, k, :2]
        edge = edge / np.linalg.norm(edge, axis=1, keepdims=True)
        out = start[:, :2] - corner[:, k, :2]
        # Along the seam of two triangles a line must lie in at least one of them.
        levels.append(edge[:, 0] * out[:, 1] - edge[:, 1] * out[:, 0] + SEAM)
        slopes.append(edge[:, 0] * way[:, 1] - edge[:, 1] * way[:, 0])
    depth = ((corner[:, 0] - start) * normal).sum(axis=1)
    change = -(way * normal).sum(axis=1)
    for limit, sign in ((low, 1.0), (high, -1.0)):
        if np.isfinite(limit):
            levels.append(sign * (depth - limit))
            slopes.append(sign * change)
    first, last = np.zeros_like(depth), np.ones_like(depth)
    for level, slope in zip(levels, slopes, strict=True):
        with np.errstate(divide="ignore", invalid="ignore"):
            cross = -level / slope
        rising, falling = slope > 1e-12, slope < -1e-12
        first = np.where(rising, np.maximum(first, cross), first)
        last = np.where(falling, np.minimum(last, cross), last)
        last = np.where(~rising & ~falling & (level < 0), -1.0, last)
    found = last - first > 1e-9
    return line[found], tri[found], first[found], last[found]


def _near(lines: Floats, triangles: Floats) -> tuple[NDArray[np.int64], NDArray[np.int64]]:
    """Pairs of line and triangle whose bounds on paper touch."""
    near = np.ones((len(lines), len(triangles)), dtype=bool)
    for axis in (0, 1):
        line, tri = lines[:, :, axis], triangles[:, :, axis]
        near &= line.min(axis=1)[:, None] <= tri.max(axis=1) + SEAM
        near &= line.max(axis=1)[:, None] >= tri.min(axis=1) - SEAM
    first, second = np.nonzero(near)
    return first, second


def _gathered(count: int, line: NDArray[np.int64], first: Floats, last: Floats) -> list[list[Span]]:
    """The stretches found, line by line."""
    found: list[list[Span]] = [[] for _ in range(count)]
    for number, low, high in zip(line.tolist(), first.tolist(), last.tolist(), strict=True):
        found[number].append((low, high))
    return found


def _without(span: Span, covered: list[Span]) -> list[Span]:
    """What is left of a stretch when others are taken from it."""
    left, low = [], span[0]
    for begin, end in sorted(covered):
        if begin > low + 1e-9:
            left.append((low, min(begin, span[1])))
        low = max(low, end)
        if low >= span[1]:
            break
    if low < span[1] - 1e-9:
        left.append((low, span[1]))
    return [(begin, end) for begin, end in left if end - begin > 1e-9]


def _triangles(faces: Sequence[FlatFace]) -> tuple[Floats, NDArray[np.int64]]:
    """All triangles of some faces, and the part that each belongs to."""
    part = [face.part for face in faces for _ in face.triangles]
    return np.concatenate([face.triangles for face in faces]), np.array(part, dtype=np.int64)


def visible_lines(lines: Floats, *, faces: Sequence[FlatFace]) -> list[list[Span]]:
    """The stretches of straight lines that no face hides, as shares of each line."""
    line, _, first, last = _overlaps(lines, _triangles(faces)[0], low=BEHIND, high=np.inf)
    hidden = _gathered(len(lines), line, first, last)
    return [_without((0.0, 1.0), covered) for covered in hidden]


def _beyond(edges: Edges, faces: Sequence[FlatFace]) -> list[list[Span]]:
    """Where the eye, looking just past an outer edge, sees no step out of the part.

    That is where another face goes on within a hair of this one: a joint; and where the same part
    lies beyond, unless another part may come between.
    """
    ends = edges.ends[edges.outer]
    way = ends[:, 1, :2] - ends[:, 0, :2]
    way = way / np.linalg.norm(way, axis=1, keepdims=True)
    beside = ends.copy()
    beside[:, :, 0] += HAIRLINE * way[:, None, 1]
    beside[:, :, 1] -= HAIRLINE * way[:, None, 0]
    triangles, part = _triangles(faces)
    line, _, first, last = _overlaps(beside, triangles, low=-HAIRLINE, high=HAIRLINE)
    joints = _gathered(len(ends), line, first, last)
    line, tri, first, last = _overlaps(beside, triangles, low=-np.inf, high=np.inf)
    same = part[tri] == edges.part[edges.outer][line]
    own = _gathered(len(ends), line[same], first[same], last[same])
    others = _gathered(len(ends), line[~same], first[~same], last[~same])
    return [
        [*joint, *(piece for span in mine for piece in _without(span, other))]
        for joint, mine, other in zip(joints, own, others, strict=True)
    ]


def split_edges(edges: Edges, *, faces: Sequence[FlatFace]) -> tuple[list[Floats], list[Floats]]:
    """The visible edges: outlines, beyond which the eye sees past the part, and inner edges."""
    plain: list[list[Span]] = [[] for _ in edges.ends]
    for number, spans in zip(np.flatnonzero(edges.outer), _beyond(edges, faces), strict=True):
        plain[number] = spans
    outlines: list[Floats] = []
    inner: list[Floats] = []
    for ends, outer, spans, within in zip(
        edges.ends, edges.outer, visible_lines(edges.ends, faces=faces), plain, strict=True
    ):
        # Past its end an edge looks by a hair into the open: that is no outline yet.
        least = min(1.0, STUB / float(np.linalg.norm(ends[1] - ends[0])))
        for span in spans:
            bold = _without(span, within) if outer else []
            bold = [row for row in bold if row == span or row[1] - row[0] > least]
            outlines += [_cut(ends, row) for row in bold]
            inner += [_cut(ends, row) for row in _without(span, bold)]
    return outlines, inner


def _cut(line: Floats, share: Span) -> Floats:
    start, way = line[0, :2], line[1, :2] - line[0, :2]
    return np.array((start + share[0] * way, start + share[1] * way))
