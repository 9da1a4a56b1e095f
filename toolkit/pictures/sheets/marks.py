"""What a full-size sheet is made of: lines, words and pieces, all in true millimetres.

Everything is black, for any printer prints that; what a line means is told by its pattern alone.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import pairwise

from matplotlib.font_manager import get_font

from toolkit.pictures.kit import Label, Point, Slot, extent
from toolkit.pictures.kit.faces import DRAWINGS, face_file
from toolkit.pictures.kit.marks import Words
from toolkit.pictures.kit.pens import Pen
from toolkit.pictures.kit.strokes import hatching

PT = 25.4 / 72  # one point of a letter's size [mm]
TEXT = 11 * PT
SMALL = 11 * PT
BLACK = "#000"
THIN = 0.25
_HATCH_GAP = 1.8
_TIED = "\N{NO-BREAK SPACE}"
_NOISE = 1e-9
_SHORTEST = 0.3  # of hatching: less is a speck [mm]


# Dashes as of ISO 128-2:2020 (from memory), a little shorter, so that a line as short as a board
# is thick shows what it is.
PENS = {
    "hatch": Pen(BLACK, 0.13),
    "edge": Pen(BLACK, THIN),
    "gauge": Pen(BLACK, THIN, dash=(2.0, 1.0)),
    "fold": Pen(BLACK, THIN, dash=(5.0, 1.0, 0.5, 1.0)),
    "match": Pen(BLACK, THIN, dash=(5.0, 1.0, 0.5, 1.0, 0.5, 1.0)),
    "bar": Pen(BLACK, THIN),
    "leader": Pen(BLACK, 0.18),
}


@dataclass(frozen=True, slots=True)
class Mark:
    """A line through some points. [mm]"""

    pen: str
    points: tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class Word(Words):
    """One line of words where they stand. [mm]

    Somebody's own, ``typed``, keep their spelling.
    """

    size: float = TEXT
    colour: str = BLACK
    typed: bool = False

    @property
    def box(self) -> tuple[float, float, float, float]:
        """The room that it takes: x0, y0, x1, y1. [mm]"""
        width, under, over = extent(self.text, size=self.size)
        back = {"left": 0.0, "center": width / 2, "right": width}[self.anchor]
        if self.upright:
            return self.x - over, self.y - back, self.x - under, self.y - back + width
        return self.x - back, self.y + under, self.x - back + width, self.y + over


@dataclass(frozen=True, slots=True)
class Extent:
    """An upright rectangle; what two share may be empty, with a negative size. [mm]"""

    left: float
    right: float
    low: float
    high: float

    @property
    def width(self) -> float:
        """Across. [mm]"""
        return self.right - self.left

    @property
    def height(self) -> float:
        """Up. [mm]"""
        return self.high - self.low

    def common(self, other: Extent) -> Extent:
        """What two of them share. [mm]"""
        left, low = max(self.left, other.left), max(self.low, other.low)
        return Extent(left, min(self.right, other.right), low, min(self.high, other.high))


@dataclass(frozen=True, slots=True)
class CutOut:
    """Something to cut out, in its own millimetres, and what is said of it.

    ``window`` is the paper that it takes; ``free`` the room inside it in which its name may
    stand. ``caption`` has a heading, and what is to be known at the bench. Laid on a page, its
    zero is at ``x`` and ``y``, and its caption's upper left corner at ``corner``: a wall's zero
    is its left-hand arris at the bottom edge, seen from inside the box.
    """

    name: str
    caption: tuple[str, str]
    window: Extent
    free: Extent
    stamp: tuple[str, ...]
    marks: tuple[Mark, ...]
    wishes: tuple[Label, ...] = ()
    caption_width: float = 0.0
    x: float = 0.0
    y: float = 0.0
    corner: Point = (0.0, 0.0)

    @property
    def has_room(self) -> bool:
        """Whether there is any room inside it for its name."""
        return min(self.free.width, self.free.height) > 0

    def within(self, window: Extent) -> CutOut:
        """What lies in a part of it. [mm]"""
        marks = tuple(
            Mark(mark.pen, cut)
            for mark in self.marks
            for a, b in pairwise(mark.points)
            if (cut := _clipped(a, b, window)) is not None
        )
        w, wishes = self.window, []
        for wish in self.wishes:
            places = tuple(
                place
                for place in wish.places
                # What stands outside the piece belongs to the part nearest to it.
                if window.left <= min(max(place.x, w.left), w.right) <= window.right
                and window.low <= max(place.y, w.low) <= window.high
            )
            if places:
                wishes.append(replace(wish, places=places))
        free = self.free.common(window)
        return replace(self, window=window, free=free, marks=marks, wishes=tuple(wishes))

    def on_page(self) -> tuple[list[Mark], list[Label]]:
        """Its lines and the words that it asks for, where it has been laid. [mm]"""

        def at(x: float, y: float) -> Point:
            return self.x + x, self.y + y

        marks = [Mark(mark.pen, tuple(at(*point) for point in mark.points)) for mark in self.marks]
        return marks, [
            replace(wish, places=tuple(Slot(*at(p.x, p.y), p.anchor) for p in wish.places))
            for wish in self.wishes
        ]


def _clipped(a: Point, b: Point, w: Extent) -> tuple[Point, Point] | None:
    """What of a line lies in a window, or None."""
    start, end = 0.0, 1.0
    for p, q, low, high in ((a[0], b[0], w.left, w.right), (a[1], b[1], w.low, w.high)):
        run = q - p
        if run == 0.0:
            # An edge of the piece that is the window's too may differ from it by a rounding.
            if not low - _NOISE <= p <= high + _NOISE:
                return None
            continue
        first, last = sorted(((low - p) / run, (high - p) / run))
        start, end = max(start, first), min(end, last)
    if start >= end:
        return None
    (x, y), dx, dy = a, b[0] - a[0], b[1] - a[1]
    return (x + start * dx, y + start * dy), (x + end * dx, y + end * dy)


def hatched(shape: Sequence[Point]) -> Iterator[Mark]:
    """Hatching at 45 degrees inside a shape, only of waste: ISO 128-3:2022 (from memory). [mm]"""
    for line in hatching(shape, gap=_HATCH_GAP, shortest=_SHORTEST):
        yield Mark("hatch", line)


def closed(pen: str, points: Sequence[Point]) -> Mark:
    """A line round a shape. [mm]"""
    return Mark(pen, (*points, points[0]))


@lru_cache(maxsize=1)
def _letters() -> frozenset[int]:
    font = get_font(face_file(DRAWINGS))
    return frozenset(font.get_charmap())


def printable(text: str) -> str:
    """Words on one line, with a box for every letter that the printed font does not have."""
    return "".join(char if ord(char) in _letters() else "□" for char in " ".join(text.split()))


def wrapped(text: str, *, width: float, size: float = TEXT) -> list[str]:
    """Words in lines that are no wider than there is room; no measure is torn in two. [mm]"""
    kept = re.sub(r"(?<=\d) (?=\d+/\d|(?:mm|in)\b)", _TIED, text)
    lines: list[str] = []
    for word in kept.replace("\n", " ").split(" "):
        whole = word.replace(_TIED, " ")
        longer = f"{lines[-1]} {whole}" if lines else whole
        if lines and extent(longer, size=size)[0] <= width:
            lines[-1] = longer
        else:
            lines.append(whole)
    return lines


def shortened(text: str, *, width: float, size: float = TEXT) -> str:
    """As much of some words as there is room for, with dots for the rest. [mm]"""
    if extent(text, size=size)[0] <= width:
        return text
    while text and extent(f"{text}…", size=size)[0] > width:
        text = text[:-1]
    return f"{text.rstrip()}…"
