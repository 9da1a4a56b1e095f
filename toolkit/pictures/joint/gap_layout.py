"""A hundred corners by their widest gap: which column of blocks each of them stands in."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from toolkit.box.joinery import Gaps

COUNT = 100  # corners, each a block
COLUMNS = 28
SPANS = (0.4, 0.8, 1.6, 3.2)  # how wide a gap the scale reaches; few, so that it stays [mm]
MOST = 0.97  # share of the corners that must lie within the scale


@dataclass(frozen=True, slots=True)
class Heap:
    """How many of 100 corners have no gap, and how many stand in each column of a scale. [mm]

    ``middle`` and ``late``: half the corners, and 95 of 100, have no wider gap.
    """

    span: float
    closed: int
    columns: tuple[int, ...]
    middle: float
    late: float


def _gaps_at(curve: tuple[tuple[float, float], ...], shares: list[float]) -> list[float]:
    """The gap that each share of corners stays within; none where all of them close. [mm]"""
    gaps, reached = zip(*curve, strict=True)
    found: list[float] = np.interp(shares, reached, gaps, left=0.0).tolist()
    return found


@lru_cache(maxsize=32)
def heap(gaps: Gaps, *, kept: float | None = None) -> Heap:
    """A hundred corners, from the tightest to the widest, laid on a scale."""
    curve = gaps.curve()
    *each, middle, late = _gaps_at(curve, [*((i + 0.5) / COUNT for i in range(COUNT)), 0.5, 0.95])
    most = each[round(MOST * COUNT) - 1]
    span = next((span for span in SPANS if most <= span), SPANS[-1])
    if kept is not None and most <= kept <= 2 * span:
        span = kept
    columns = [0] * COLUMNS
    for gap in each:
        if gap > 0:
            columns[min(int(gap / span * COLUMNS), COLUMNS - 1)] += 1
    return Heap(
        span=span,
        closed=sum(gap <= 0 for gap in each),
        columns=tuple(columns),
        middle=middle,
        late=late,
    )
