"""How much room words take, and where on the page a label finds it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import chain, pairwise
from typing import Literal

import numpy as np
from matplotlib.font_manager import get_font
from numpy.typing import NDArray

from toolkit.pictures.kit.faces import DRAWINGS, face_file
from toolkit.pictures.kit.picture import Point

Anchor = Literal["left", "center", "right"]
Box = tuple[float, float, float, float]

LEADING = 1.22  # from one line of a label to the next, in sizes of text
_EM = 1000.0


@lru_cache(maxsize=1)
def _face() -> object:
    return get_font(face_file(DRAWINGS))


@lru_cache(maxsize=512)
def _letter(char: str) -> tuple[float, float, float]:
    """Advance, depth below and height above the line of one letter, for a size of 1."""
    font = _face()
    font.set_size(_EM, 72)  # type: ignore[attr-defined]
    glyph = font.load_char(ord(char))  # type: ignore[attr-defined]
    _, low, _, high = glyph.bbox
    return glyph.linearHoriAdvance / 65536 / _EM, low / 64 / _EM, high / 64 / _EM


@dataclass(frozen=True, slots=True)
class Place:
    """Where a label might go: its anchor on the line of its text, and a leader if it needs one.

    Points on the page, y upwards. [pt]
    """

    x: float
    y: float
    anchor: Anchor = "left"
    leader: tuple[Point, ...] = ()


@dataclass(frozen=True, slots=True)
class Label:
    """Words that want a place; the lower its rank, the sooner it is served. [pt]

    With ``at``, words for which all places are taken go round about that point, on a leader.
    """

    text: str
    places: tuple[Place, ...]
    rank: int
    size: float
    red: bool = False
    number: int = 0
    at: Point | None = None


@lru_cache(maxsize=2048)
def extent(text: str, *, size: float) -> tuple[float, float, float]:
    """Width of some words, how far they reach below their line and above it. [pt]

    Parameters
    ----------
    text : str
        One line of words.
    size : float
        Size of the text. [pt]

    Source
    ------
    Metrics of the font that the drawings are lettered in.
    """
    rows = [_letter(char) for char in text] or [(0.0, 0.0, 0.0)]
    width = sum(row[0] for row in rows)
    return width * size, min(row[1] for row in rows) * size, max(row[2] for row in rows) * size


def lines_of(label: Label, place: Place) -> list[tuple[str, float]]:
    """Each line of a label with the height of its line on the page; ``place`` is the first. [pt]"""
    step = label.size * LEADING
    return [(line, place.y - i * step) for i, line in enumerate(label.text.split("\n"))]


def box_of(label: Label, place: Place) -> Box:
    """The room that a label takes at a place: x0, y0, x1, y1. [pt]"""
    rows = [(extent(line, size=label.size), y) for line, y in lines_of(label, place)]
    width = max(size[0] for size, _ in rows)
    left = {"left": 0.0, "center": width / 2, "right": width}[place.anchor]
    low = min(y + size[1] for size, y in rows)
    high = max(y + size[2] for size, y in rows)
    return place.x - left, low, place.x - left + width, high


@lru_cache(maxsize=1)
def _steps() -> tuple[Point, ...]:
    """Steps away from a point, the nearest first. [pt]"""
    steps = [(22.0 * i, 11.0 * k) for i in range(-16, 17) for k in range(-26, 27) if i]
    return tuple(sorted(steps, key=lambda step: (step[0] ** 2 + step[1] ** 2, step)))


def round_about(text: str, at: Point, *, size: float) -> Iterator[Place]:
    """Places farther and farther from a point, each with a leader to it. [pt]

    Parameters
    ----------
    text : str
        The words, in one line or more.
    at : point
        What they speak of. [pt]
    size : float
        Size of the text. [pt]

    Source
    ------
    Leaders: ISO 128-2:2020 (from memory).
    """
    x, y = at
    drop = text.count("\n") * size * LEADING / 2 - 0.36 * size
    for dx, dy in _steps():
        way = 1.0 if dx > 0 else -1.0
        anchor: Anchor = "left" if dx > 0 else "right"
        leader = (at, (x + dx - way * 2.5, y + dy))
        yield Place(x + dx, y + dy + drop, anchor, leader)


def _crosses(box: Box, segments: NDArray[np.float64]) -> bool:
    """Whether a line passes through a box: bounds overlap, and corners lie on both sides of it."""
    x0, y0, x1, y1 = box
    ax, ay, bx, by = segments.T
    near = (
        (np.minimum(ax, bx) < x1)
        & (np.maximum(ax, bx) > x0)
        & (np.minimum(ay, by) < y1)
        & (np.maximum(ay, by) > y0)
    )
    if not near.any():
        return False
    ax, ay, bx, by = segments[near].T
    dx, dy = bx - ax, by - ay
    sides = [dx * (y - ay) - dy * (x - ax) for x in (x0, x1) for y in (y0, y1)]
    return bool((~((np.min(sides, axis=0) > 0) | (np.max(sides, axis=0) < 0))).any())


@dataclass(slots=True)
class Page:
    """A page on which labels find their places: what is free, and what is taken. [pt]"""

    width: float
    height: float
    segments: NDArray[np.float64]
    most: int
    margin: float = 3.0
    clear: float = 1.3

    def settle(self, labels: Sequence[Label]) -> tuple[list[tuple[Label, Place, Box]], list[str]]:
        """Place labels by rank, each where it first fits; those that fit nowhere are dropped.

        Parameters
        ----------
        labels : sequence of Label
            What wants to be written. [pt]

        Source
        ------
        A figure beside or above its line, never on one: ISO 129-1:2018 (from memory).
        """
        placed: list[tuple[Label, Place, Box]] = []
        dropped: list[str] = []
        taken: list[Box] = []
        for label in sorted(labels, key=lambda row: row.rank):
            found = self._fitting(label, taken) if len(placed) < self.most else None
            if found is None:
                dropped.append(label.text)
                continue
            place, box = found
            placed.append((label, place, box))
            taken.append(box)
            if place.leader:
                leader = [(*a, *b) for a, b in pairwise(place.leader)]
                self.segments = np.vstack([self.segments, np.array(leader, dtype=np.float64)])
        return placed, dropped

    def _fitting(self, label: Label, taken: list[Box]) -> tuple[Place, Box] | None:
        """The first place of a label that is free."""
        spots: Iterable[Place] = label.places
        if label.at is not None:
            spots = chain(spots, round_about(label.text, label.at, size=label.size))
        for place in spots:
            x0, y0, x1, y1 = box = box_of(label, place)
            if x0 < self.margin or x1 > self.width - self.margin:
                continue
            if y0 < self.margin or y1 > self.height - self.margin:
                continue
            gap = self.clear
            wide = (x0 - gap, y0 - gap, x1 + gap, y1 + gap)
            if any(
                wide[0] < other[2]
                and other[0] < wide[2]
                and wide[1] < other[3]
                and other[1] < wide[3]
                for other in taken
            ):
                continue
            if len(self.segments) and _crosses(wide, self.segments):
                continue
            if place.leader and _struck(place.leader, taken):
                continue
            return place, box
        return None


def _struck(leader: tuple[Point, ...], boxes: list[Box]) -> bool:
    """Whether a leader would run through a label that is already there."""
    segments = np.array([(*a, *b) for a, b in pairwise(leader)], dtype=np.float64)
    return any(_crosses(box, segments) for box in boxes)
