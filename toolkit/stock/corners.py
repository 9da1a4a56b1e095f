"""What it costs in board to let the grain run on round the corners of the box."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from toolkit.measures import Rule
from toolkit.stock.blanks import CORNERS, Blank, Corners
from toolkit.stock.board_grid import MARGIN
from toolkit.stock.boards import Board
from toolkit.stock.box_layout import BoxLayouts
from toolkit.stock.layout import GAP

WORDS: dict[Corners, str] = {
    "free": "Walls from anywhere",
    "one run": "All four walls from one strip, the grain running round three corners",
    "two runs": "Each side with its end, the grain running round two corners",
}


@dataclass(frozen=True, slots=True)
class CornerPrice:
    """The most economical layout for one way of the grain, beside the free one.

    ``used`` is the length of board of both kinds of layout, ``volume`` their wood; None where the
    parts do not all fit. [mm, mm³]
    """

    corners: Corners
    used: float | None
    free_used: float | None
    volume: float | None
    free_volume: float | None

    def sentence(self, rule: Rule) -> str:
        """The price in words, on somebody's rule."""
        words = WORDS[self.corners]
        if self.used is None or self.volume is None:
            return f"{words}: not all parts fit so."
        used = rule.show(self.used, fineness="sizes", direction="up")
        if self.free_used is None or not self.free_volume or self.corners == "free":
            return f"{words}: {used} of board."
        free = rule.show(self.free_used, fineness="sizes", direction="up")
        wood = 100 * (self.volume / self.free_volume - 1)
        more = f"{wood:.0f} % more wood" if wood >= 0.5 else "no more wood"
        return f"{words}: {used} of board instead of {free}, {more}."


def corner_prices(
    blanks: Sequence[Blank],
    boards: Sequence[Board],
    *,
    gap: float = GAP,
    cell: float = 1.0,
    margin: float = MARGIN,
) -> tuple[CornerPrice, ...]:
    """The price of each way to let the grain run round, on one rack. [mm]"""
    found: list[tuple[Corners, float | None, float | None]] = []
    for corners in CORNERS:
        laid = BoxLayouts(blanks, boards, gap=gap, cell=cell, margin=margin, corners=corners).laid()
        whole = not laid.missing
        found.append((corners, laid.used if whole else None, laid.volume if whole else None))
    _, free_used, free_volume = found[0]
    return tuple(
        CornerPrice(corners, used, free_used, volume, free_volume)
        for corners, used, volume in found
    )
