"""A drawing for paper goes without the empty room that a screen's frame has to hold still."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from toolkit.pictures.kit.lettering import Box, Label, Place, lines_of

AIR = 6.0  # above and below what is drawn, and between it and words beyond it [pt]
_BELOW = 0.3  # of the size of letters, under their line

Placed = tuple[Label, Place, Box]


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


def _span(label: Label, place: Place) -> tuple[float, float]:
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
