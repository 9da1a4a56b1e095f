"""A hundred corners by their widest gap: which column of blocks each of them stands in."""

from __future__ import annotations

from bisect import bisect_left
from dataclasses import dataclass
from functools import lru_cache

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


def _gap_of(curve: tuple[tuple[float, float], ...], share: float) -> float:
    """The gap that a share of corners stays within, between two points of the curve. [mm]"""
    shares = [row[1] for row in curve]
    i = bisect_left(shares, share)
    if i == 0:
        return 0.0
    if i == len(curve):
        return curve[-1][0]
    (g0, s0), (g1, s1) = curve[i - 1], curve[i]
    return g0 + (g1 - g0) * (share - s0) / (s1 - s0)


@lru_cache(maxsize=32)
def heap(gaps: Gaps, *, kept: float | None = None) -> Heap:
    """A hundred corners, from the tightest to the widest, laid on a scale.

    Parameters
    ----------
    gaps : Gaps
        The spread of gaps.
    kept : float, optional
        The reach of another drawing's scale, kept if these corners fit it too. [mm]

    Source
    ------
    The middle of each hundredth of `Gaps.curve`.
    """
    curve = gaps.curve()
    each = [_gap_of(curve, (i + 0.5) / COUNT) for i in range(COUNT)]
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
        middle=_gap_of(curve, 0.5),
        late=_gap_of(curve, 0.95),
    )
