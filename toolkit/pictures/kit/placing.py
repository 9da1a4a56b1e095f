"""Where on a page each label finds its place: a size and a name always do."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from math import copysign

import numpy as np
from numpy.typing import NDArray

from toolkit.pictures.kit.lettering import Anchor, Box, Label, Slot, box_of
from toolkit.pictures.kit.picture import Point

_AT_ONCE = 200  # places looked at together
_SHORT = 2.5  # a leader ends so far before its words [pt]
_GROWTHS = 12  # a label has found its place by then, or is wider than any page


@lru_cache(maxsize=1)
def _steps() -> NDArray[np.float64]:
    """Steps away from a point, the nearest first. [pt]"""
    steps = [(11.0 * i, 5.5 * k) for i in range(-48, 49) for k in range(-64, 65) if abs(i) > 1]
    return np.array(sorted(steps, key=lambda step: (step[0] ** 2 + step[1] ** 2, step)))


def _crossed(boxes: NDArray[np.float64], segments: NDArray[np.float64]) -> NDArray[np.bool_]:
    """Which lines, across, pass through which boxes, down: a box has corners on both sides."""
    x0, y0, x1, y1 = boxes.T[:, :, None]
    ax, ay, bx, by = segments.T
    crossed: NDArray[np.bool_] = (
        (np.minimum(ax, bx) < x1)
        & (np.maximum(ax, bx) > x0)
        & (np.minimum(ay, by) < y1)
        & (np.maximum(ay, by) > y0)
    )
    # Only where their bounds overlap is it worth asking.
    row, column = crossed.nonzero()
    if not len(row):
        return crossed
    x0, y0, x1, y1 = boxes[row].T
    ax, ay, bx, by = segments[column].T
    dx, dy = bx - ax, by - ay
    sides = np.array([dx * (y - ay) - dy * (x - ax) for x in (x0, x1) for y in (y0, y1)])
    crossed[row, column] = ~((sides.min(axis=0) > 0) | (sides.max(axis=0) < 0))
    return crossed


def _uncovered(at: Point, boxes: list[Box]) -> Point:
    """A point, or one beside the words that cover it, from which a leader can start."""
    for x0, y0, x1, y1 in boxes:
        if x0 <= at[0] <= x1 and y0 <= at[1] <= y1:
            return (x0 - 4.0 if 2 * at[0] < x0 + x1 else x1 + 4.0), at[1]
    return at


def _air(label: Label) -> Point:
    """What more a note keeps off other words, beside them and over them, than a figure does."""
    return (4.0, 2.0) if label.kind == "remark" else (0.0, 0.0)


def _spoken_of(label: Label) -> Point | None:
    """The point that a label speaks of: its own, that of its first leader, or its first place."""
    if label.at is not None or not label.places:
        return label.at
    first = label.places[0]
    return first.leader[0] if first.leader else (first.x, first.y)


@dataclass(slots=True)
class Page:
    """A page on which labels find their places: what is free, and what is taken. [pt]

    A page that ``grows`` gets more room above or below, so that every size and every name stands;
    ``floor`` is how far below zero it then begins. What is ``barred`` no words of such a rank, or
    of a higher one, may enter; their leaders may.
    """

    width: float
    height: float
    segments: NDArray[np.float64]
    most: int
    margin: float = 3.0
    clear: float = 1.3
    grows: bool = False
    floor: float = 0.0
    barred: Sequence[tuple[int, Box]] = ()

    def settle(self, labels: Sequence[Label]) -> tuple[list[tuple[Label, Slot, Box]], list[str]]:
        """Place labels by rank, remarks last: no more of these than ``most`` labels leave room for.

        A figure stands beside or above its line, never on one: ISO 129-1:2018 (from memory).
        """
        placed: list[tuple[Label, Slot, Box]] = []
        dropped: list[str] = []
        taken: list[Box] = []
        for label in sorted(labels, key=lambda row: (row.kind == "remark", row.rank)):
            spare = label.kind == "remark" and len(placed) >= self.most
            found = None if spare else self._place(label, taken)
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

    def _place(self, label: Label, taken: list[Box]) -> tuple[Slot, Box] | None:
        """The first place of a label that is free, else one on a leader, else on a larger page."""
        air = _air(label)
        shut = [*taken, *(box for rank, box in self.barred if label.rank >= rank)]
        for place in label.places:
            box = box_of(label, place)
            if self._free(box, shut, air=air) and not _struck(place.leader, taken):
                return place, box
        stands = label.kind != "remark"
        at = _spoken_of(label) if stands else label.at
        if at is None:
            return None
        # A part is as well pointed at under any of the places where its words might have stood.
        starts = [at, *((place.x, at[1]) for place in label.places if label.at is not None)]
        starts = list(dict.fromkeys(_uncovered(start, taken) for start in starts))
        _, low, _, high = box_of(label, Slot(0.0, 0.0))
        more = high - low + 4 * self.clear
        for _ in range(_GROWTHS):
            for start in starts:
                found = self._round_about(label, start, taken, shut)
                if found is not None:
                    return found, box_of(label, found)
            if not (stands and self.grows):
                return None
            if 2 * at[1] < self.floor + self.height:
                self.floor -= more
            else:
                self.height += more
        return None

    def _round_about(
        self, label: Label, at: Point, taken: list[Box], shut: list[Box]
    ) -> Slot | None:
        """The free place nearest to a point, on a leader to it: ISO 128-2:2020 (from memory)."""
        x0, y0, x1, y1 = box_of(label, Slot(0.0, 0.0))
        rise, edge = (y0 + y1) / 2, self.margin
        words, boxes = (np.array([*rows, (1e9, 1e9, 1e9, 1e9)]) for rows in (taken, shut))
        for start in range(0, len(_steps()), _AT_ONCE):
            steps = _steps()[start : start + _AT_ONCE]
            right = steps[:, 0] > 0
            left = at[0] + steps[:, 0] - np.where(right, 0.0, x1)
            low = at[1] + steps[:, 1] - rise + y0
            far, high = left + x1 - x0, low + y1 - y0
            free = (left > edge) & (far < self.width - edge)
            free &= (low > self.floor + edge) & (high < self.height - edge)
            free &= ~(
                (left[:, None] - self.clear < boxes[:, 2])
                & (far[:, None] + self.clear > boxes[:, 0])
                & (low[:, None] - self.clear < boxes[:, 3])
                & (high[:, None] + self.clear > boxes[:, 1])
            ).any(axis=1)
            if not free.any():
                continue
            ends = np.array(at) + steps - np.where(right, _SHORT, -_SHORT)[:, None] * (1.0, 0.0)
            leaders = np.hstack([np.broadcast_to(at, ends.shape), ends])
            free[free] = ~_crossed(words, leaders[free]).any(axis=0)
            wide = np.column_stack([left, low, far, high]) + np.array([-1, -1, 1, 1]) * self.clear
            free[free] = ~_crossed(wide[free], self.segments).any(axis=1)
            for dx, dy in steps[free].tolist():
                anchor: Anchor = "left" if dx > 0 else "right"
                leader = (at, (at[0] + dx - copysign(_SHORT, dx), at[1] + dy))
                place = Slot(at[0] + dx, at[1] + dy - rise, anchor, leader)
                if self._free(box_of(label, place), shut):
                    return place
        return None

    def _free(self, box: Box, taken: list[Box], *, air: Point = (0.0, 0.0)) -> bool:
        """Whether a box lies on the page, off every label and off every line."""
        x0, y0, x1, y1 = box
        edge, gap = self.margin, self.clear
        if x0 < edge or x1 > self.width - edge:
            return False
        if y0 < self.floor + edge or y1 > self.height - edge:
            return False
        wide = (x0 - gap, y0 - gap, x1 + gap, y1 + gap)
        aside, over = air
        if any(
            wide[0] - aside < other[2]
            and other[0] < wide[2] + aside
            and wide[1] - over < other[3]
            and other[1] < wide[3] + over
            for other in taken
        ):
            return False
        return not _crossed(np.array([wide]), self.segments).any()


def _struck(leader: tuple[Point, ...], boxes: list[Box]) -> bool:
    """Whether a leader would run through a label that is already there."""
    if not leader or not boxes:
        return False
    segments = np.array([(*a, *b) for a, b in pairwise(leader)], dtype=np.float64)
    return bool(_crossed(np.array(boxes), segments).any())
