"""How words are lettered: how large, in whose English, how much room they take, and where.

Whoever prepares a page for paper says so once, round everything that draws for it, instead of
handing a flag through every function between the page and the drawing.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Literal

from matplotlib.font_manager import get_font

from toolkit.pictures.kit.faces import DRAWINGS, face_file
from toolkit.pictures.kit.picture import Kind, Point


@dataclass(frozen=True, slots=True)
class LetterSize:
    """The size of letters [pt]; a ``still`` frame keeps its empty room, whatever a slider does."""

    text: float
    still: bool


SCREEN = LetterSize(9.5, still=True)
PAPER = LetterSize(11.7, still=False)  # 11 pt when a picture is printed 508 pt (179 mm) wide
PHONE = LetterSize(16.7, still=True)  # 11 px when it is shown 390 px wide
_NOW: ContextVar[LetterSize | None] = ContextVar("edition of drawings", default=None)
_usual = SCREEN


def edition() -> LetterSize:
    """The edition that is asked for."""
    return _NOW.get() or _usual


def usually_for_phones() -> None:
    """From here on every drawing that is for nothing else is lettered for a phone."""
    global _usual  # what is open on one page is drawn in one process, in many contexts
    _usual = PHONE


@contextmanager
def for_paper() -> Iterator[None]:
    """Every drawing made inside is lettered for paper, and without idle room above and below."""
    before = _NOW.set(PAPER)
    try:
        yield
    finally:
        _NOW.reset(before)


_SPELL: ContextVar[Callable[[str], str]] = ContextVar("spelling of drawings", default=str)


@contextmanager
def worded(spell: Callable[[str], str]) -> Iterator[None]:
    """Every drawing made inside has its words turned by ``spell``."""
    before = _SPELL.set(spell)
    try:
        yield
    finally:
        _SPELL.reset(before)


def wording(text: str) -> str:
    """A text of a drawing in the English that is asked for."""
    return _SPELL.get()(text)


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
class Slot:
    """Where a label might go: its anchor on the line of its text, and a leader if it needs one.

    A leader runs from what the label speaks of to its words. Points on the page, y upwards. [pt]
    """

    x: float
    y: float
    anchor: Anchor = "left"
    leader: tuple[Point, ...] = ()


@dataclass(frozen=True, slots=True)
class Label:
    """Words that want a place; the lower its rank, the sooner it is served. [pt]

    Where all places are taken a size or a name goes round about ``at``, or else its first place,
    on a leader; a remark does so only with an ``at`` of its own.
    """

    text: str
    places: tuple[Slot, ...]
    rank: int
    size: float
    red: bool = False
    number: int = 0
    at: Point | None = None
    kind: Kind = "name"


@lru_cache(maxsize=2048)
def extent(text: str, *, size: float) -> tuple[float, float, float]:
    """Width of some words, how far they reach below their line and above it. [pt]"""
    rows = [_letter(char) for char in text] or [(0.0, 0.0, 0.0)]
    width = sum(row[0] for row in rows)
    return width * size, min(row[1] for row in rows) * size, max(row[2] for row in rows) * size


def lines_of(label: Label, place: Slot) -> list[tuple[str, float]]:
    """Each line of a label with the height of its line on the page; ``place`` is the first. [pt]"""
    step = label.size * LEADING
    return [(line, place.y - i * step) for i, line in enumerate(label.text.split("\n"))]


def box_of(label: Label, place: Slot) -> Box:
    """The room that a label takes at a place: x0, y0, x1, y1. [pt]"""
    rows = [(extent(line, size=label.size), y) for line, y in lines_of(label, place)]
    width = max(size[0] for size, _ in rows)
    left = {"left": 0.0, "center": width / 2, "right": width}[place.anchor]
    low = min(y + size[1] for size, y in rows)
    high = max(y + size[2] for size, y in rows)
    return place.x - left, low, place.x - left + width, high


AIR = 6.0  # above and below what is drawn, and between it and words beyond it [pt]
_BELOW = 0.3  # of the size of letters, under their line

Placed = tuple[Label, Slot, Box]


def trimmed(
    placed: Sequence[Placed], levels: Sequence[float], *, low: float, high: float
) -> tuple[Sequence[Placed], float, float]:
    """Words of a page and its two edges, the empty room above and below cut off. [pt]

    Titles and notes that stand alone over or under everything at the ``levels`` come nearer to it.
    """
    if not levels:
        return placed, low, high
    spans = [_span(label, place) for label, place, _ in placed]
    down = _nearer(spans, top=max(levels), foot=min(levels))
    up = _nearer([(-b, -a) for a, b in spans], top=-min(levels), foot=-max(levels))
    moved = [
        (label, replace(place, y=place.y + by), (x0, y0 + by, x1, y1 + by))
        for (label, place, (x0, y0, x1, y1)), a, b in zip(placed, down, up, strict=True)
        for by in [b - a]
    ]
    spans = [_span(label, place) for label, place, _ in moved]
    foot = min([*levels, *(a for a, _ in spans)]) - AIR
    top = max([*levels, *(b for _, b in spans)]) + AIR
    return moved, max(foot, low), min(top, high)


def _span(label: Label, place: Slot) -> tuple[float, float]:
    """How far down and up the page some words reach. [pt]"""
    levels = [y for _, y in lines_of(label, place)]
    return min(levels) - _BELOW * label.size, max(levels) + label.size


def _nearer(spans: Sequence[tuple[float, float]], *, top: float, foot: float) -> list[float]:
    """How far down those words come that stand above everything drawn. [pt]"""
    over = sorted((low, high, i) for i, (low, high) in enumerate(spans) if low > top)
    edge = max([top, *(high for low, high in spans if not (low > top or high < foot))])
    down, less = [0.0] * len(spans), 0.0
    for low, high, i in over:
        less += max(low - edge - AIR, 0.0)
        down[i], edge = less, max(edge, high)
    return down
