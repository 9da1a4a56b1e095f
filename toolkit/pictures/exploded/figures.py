"""The figure of the wood on a solid's faces, and regions of the paper that it is kept in.

Each board is cut from a log of its own whose heart runs almost along the grain; its rings are
cylinders round that heart, a little uneven. On end grain they come out as arcs, on long grain as
flowing lines that close into peaks where the board touches a ring.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, cos, pi, radians, sin

import numpy as np
from manifold3d import CrossSection
from numpy.typing import NDArray

from toolkit.pictures.exploded.view import PAPER, FlatFace, Floats, on_paper


class Region:
    """What lies inside some closed outlines and outside their holes, in any one unit."""

    def __init__(self, outlines: Sequence[Floats]) -> None:
        self.begin = np.concatenate([*outlines, np.zeros((0, 2))])
        self.end = np.concatenate(
            [*(np.concatenate((row[1:], row[:1])) for row in outlines), np.zeros((0, 2))]
        )

    def holds(self, points: Floats) -> NDArray[np.bool_]:
        """Which of some points lie within."""
        x, y = points[:, 0, None], points[:, 1, None]
        low, high = self.begin[None], self.end[None]
        above = (low[..., 1] > y) != (high[..., 1] > y)
        with np.errstate(divide="ignore", invalid="ignore"):
            share = (y - low[..., 1]) / (high[..., 1] - low[..., 1])
            crossed = above & (low[..., 0] + share * (high[..., 0] - low[..., 0]) > x)
        return np.asarray(np.count_nonzero(crossed, axis=1) % 2 == 1)

    def edge_points(self, step: float) -> Floats:
        """Points all along the outlines, no further apart than a step."""
        way = self.end - self.begin
        counts = np.maximum(1, np.ceil(np.hypot(way[:, 0], way[:, 1]) / step)).astype(int)
        owner = np.repeat(np.arange(len(counts)), counts)
        first = np.repeat(np.cumsum(counts) - counts, counts)
        share = (np.arange(len(owner)) - first) / counts[owner]
        return np.asarray(self.begin[owner] + share[:, None] * way[owner])

    def within(self, lines: Sequence[Floats]) -> list[Floats]:
        """The stretches of some lines of points that lie within."""
        if not lines or not len(self.begin):
            return []
        start = np.concatenate([line[:-1] for line in lines])
        way = np.concatenate([line[1:] - line[:-1] for line in lines])
        owner = np.repeat(np.arange(len(lines)), [len(line) - 1 for line in lines])
        piece, low, high = _cut_at(start, *self._crossings(start, way))
        first = start[piece] + low[:, None] * way[piece]
        last = start[piece] + high[:, None] * way[piece]
        kept = np.flatnonzero(self.holds((first + last) / 2))
        found: list[list[Floats]] = []
        previous = -2
        for k in kept.tolist():
            # Neighbouring stretches of one line run on from one another.
            if k == previous + 1 and owner[piece[k]] == owner[piece[previous]]:
                found[-1].append(last[k])
            else:
                found.append([first[k], last[k]])
            previous = k
        return [np.array(row) for row in found]

    def _crossings(self, start: Floats, way: Floats) -> tuple[NDArray[np.int64], Floats]:
        """Which pieces of line cross the outlines, and at which share of their length."""
        edge, out = (self.end - self.begin)[None], self.begin[None] - start[:, None]
        way = way[:, None]
        with np.errstate(divide="ignore", invalid="ignore"):
            across = way[..., 0] * edge[..., 1] - way[..., 1] * edge[..., 0]
            share = (out[..., 0] * edge[..., 1] - out[..., 1] * edge[..., 0]) / across
            place = (out[..., 0] * way[..., 1] - out[..., 1] * way[..., 0]) / across
        piece, edge_number = np.nonzero((share > 0) & (share < 1) & (place >= 0) & (place <= 1))
        return piece, share[piece, edge_number]


def _cut_at(
    start: Floats, piece: NDArray[np.int64], share: Floats
) -> tuple[NDArray[np.int64], Floats, Floats]:
    """Pieces cut at some shares of their length: of which piece, from where, to where."""
    every = np.arange(len(start))
    number = np.concatenate((every, piece, every))
    cut = np.concatenate((np.zeros(len(start)), share, np.ones(len(start))))
    order = np.lexsort((cut, number))
    number, cut = number[order], cut[order]
    same = number[1:] == number[:-1]
    return number[:-1][same], cut[:-1][same], cut[1:][same]


RING = 3.4  # from one ring to the next, on average [mm]
LEAN = 0.05  # how far the heart leans from the grain, in the direction of the thickness
EVERY = 2  # long grain shows every second ring only: a few lines, not a pattern
MARGIN = 0.9  # wood left plain along the edges of a face [mm]
STEP = 9.0  # between points of a flowing line [mm]
ARC = 1.5  # between points of an arc [mm]
PEAK = np.array((0.0, 0.01, 0.05, 0.14, 0.32, 0.6))  # shares of the way from a peak


@dataclass(frozen=True, slots=True)
class Log:
    """The heart of a board's log: a point of it, its board's axes, and the rings round it. [mm]

    ``axes`` are the numbers of the grain's, the thickness's and the width's axis.
    """

    heart: Floats
    axes: tuple[int, int, int]
    rings: Floats
    seed: int


def log_of(low: Floats, *, high: Floats, grain: int, angle: float, seed: int) -> Log:
    """The log that a board was cut from."""
    size = high - low
    others = sorted((axis for axis in range(3) if axis != grain), key=lambda axis: size[axis])
    thin, wide = others
    away = max(40.0, 0.85 * float(size[wide]))
    heart = (low + high) / 2
    heart[thin] -= away * cos(radians(angle))
    # Off the middle, since no log grew for the sake of one board.
    heart[wide] += away * sin(radians(angle)) + (seed % 3 - 1) * 0.14 * size[wide]
    reach = away + float(np.linalg.norm(size[others]))
    count = ceil(reach / RING)
    uneven = np.array([sin(12.9898 * (k + 1) + 78.233 * seed) for k in range(count)])
    rings = np.cumsum(RING * (1 + 0.35 * uneven))
    return Log(heart, (grain, thin, wide), rings, seed)


def figure(face: FlatFace, *, shown: CrossSection, log: Log) -> list[Floats]:
    """The lines of one face's figure, within what is seen of the face, on paper. [mm]"""
    along = abs(face.normal[log.axes[0]])
    room = shown.offset(-MARGIN)
    if room.is_empty():
        return []
    if along > 1 - 1e-6:
        lines = _arcs(face, log)
    elif along < 1e-6:
        lines = _flow(face, log)
    else:
        return []
    return Region(room.to_polygons()).within([on_paper(line)[:, :2] for line in lines])


def _corners(face: FlatFace) -> Floats:
    # The rows of PAPER are at right angles and of length 1, so that it undoes itself.
    return face.triangles.reshape(-1, 3) @ PAPER


def _arcs(face: FlatFace, log: Log) -> list[Floats]:
    corners, (grain, thin, wide) = _corners(face), log.axes
    out = corners[:, [thin, wide]] - log.heart[[thin, wide]]
    distance = np.hypot(out[:, 0], out[:, 1])
    bearing = np.arctan2(out[:, 1], out[:, 0])
    low, high = float(bearing.min()), float(bearing.max())
    if high - low > pi:
        return []
    lines = []
    for ring in log.rings[(log.rings > 0.7 * distance.min()) & (log.rings < distance.max())]:
        turns = np.linspace(low, high, max(3, ceil(ring * (high - low) / ARC)))
        points = np.empty((len(turns), 3))
        points[:, grain] = corners[0, grain]
        points[:, thin] = log.heart[thin] + ring * np.cos(turns)
        points[:, wide] = log.heart[wide] + ring * np.sin(turns)
        lines.append(points)
    return lines


@dataclass(frozen=True, slots=True)
class _Slice:
    """A face along the grain of a board: where, across it, the rings come out. [mm]

    ``beside`` is the direction across; ``lean`` how far the heart moves for each mm along, towards
    one face of the board.
    """

    log: Log
    corner: Floats
    normal: Floats
    beside: Floats
    lean: float

    def across(self, at: Floats, rings: NDArray[np.int64]) -> tuple[Floats, Floats]:
        """The heart's place across, and the squared half width of each ring, at some places."""
        log, (grain, thin, _) = self.log, self.log.axes
        drift = self.lean * (at - log.heart[grain])
        uneven = 0.5 * np.sin(at / 27 + 1.7 * log.seed + 0.15 * rings[:, None])
        height = (self.corner - log.heart) @ self.normal - drift * self.normal[thin]
        middle = log.heart @ self.beside + drift * self.beside[thin]
        return middle, (log.rings[rings][:, None] + uneven) ** 2 - height**2

    def points(self, at: Floats, across: Floats) -> Floats:
        """Places along and across as points of the box."""
        found = self.corner + np.outer(across - self.corner @ self.beside, self.beside)
        found[:, self.log.axes[0]] = at
        return np.asarray(found)


def _flow(face: FlatFace, log: Log) -> list[Floats]:
    corners, (grain, thin, wide) = _corners(face), log.axes
    normal, beside = np.array(face.normal), np.zeros(3)
    beside[thin], beside[wide] = -normal[wide], normal[thin]
    lean = LEAN * (1 if log.seed % 2 else -1)
    cut = _Slice(log, corners[0], normal, beside, lean)
    along, sides = corners[:, grain], corners @ beside
    low, high = float(along.min()), float(along.max())
    rough = np.linspace(low, high, max(3, ceil((high - low) / STEP)))
    rings = np.arange(0, len(log.rings), EVERY)
    middle, squares = cut.across(rough, rings)
    half = np.sqrt(np.maximum(squares, 0.0))
    reached = [
        (side < sides.max()).any(axis=1) & (side > sides.min()).any(axis=1)
        for side in (middle - half, middle + half)
    ]
    lines = []
    for number in np.flatnonzero((squares > 0).any(axis=1) & (reached[0] | reached[1])):
        square = squares[number]
        for first, last in _true_runs(square > 0):
            at = _with_peaks(rough, square, first, last)
            heart, exact = cut.across(at, rings[number : number + 1])
            out = np.sqrt(np.maximum(exact[0], 0.0))
            left, right = cut.points(at, heart - out), cut.points(at, heart + out)
            if first > 0:
                lines.append(np.concatenate((left[::-1], right[1:])))
            elif last < len(rough):
                lines.append(np.concatenate((left, right[-2::-1])))
            else:
                lines += [
                    row for row, seen in zip((left, right), reached, strict=True) if seen[number]
                ]
    return lines


def _with_peaks(rough: Floats, square: Floats, first: int, last: int) -> Floats:
    """Places along a line, those near its peaks close together, where it turns back."""
    at = rough[first:last]
    if first > 0:
        share = square[first] / (square[first] - square[first - 1])
        peak = rough[first] - share * (rough[first] - rough[first - 1])
        at = np.concatenate((peak + PEAK * (rough[first] - peak), at))
    if last < len(rough):
        share = square[last - 1] / (square[last - 1] - square[last])
        peak = rough[last - 1] + share * (rough[last] - rough[last - 1])
        at = np.concatenate((at, (peak + PEAK * (rough[last - 1] - peak))[::-1]))
    return at


def _true_runs(flags: NDArray[np.bool_]) -> list[tuple[int, int]]:
    edges = np.flatnonzero(np.diff(np.concatenate(([0], flags.astype(int), [0]))))
    return list(zip(edges[::2].tolist(), edges[1::2].tolist(), strict=True))
