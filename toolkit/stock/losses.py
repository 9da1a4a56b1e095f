"""What sawing costs: at a cut, at the ends of a blank, along the middle of a board.

All of it customs, common practice, no source: round numbers on the rule of whoever saws.
"""

from __future__ import annotations

from typing import TypedDict

from toolkit.measures import MM_PER_INCH, Rule, Units

GAP = 5.0  # custom, no source: kerf, the saw's wander and a planing margin [mm]
KERF = 1.5  # custom, no source: what a hand saw takes along the middle of a board [mm]
WANDER = 1.0  # custom, no source: how much of a leaf the saw's wander costs [mm]
TRUING = 1.0  # custom, no source: what planing both faces of a leaf takes off it [mm]
END_WASTE = 30.0  # custom, no source: lost at the two ends of a blank to checks and squaring [mm]

# Lost at a cut between two parts, at both ends of a blank, in a cut along a board; to the saw's
# wander and to planing true, of each leaf. [mm]
LOST: dict[Units, dict[str, float]] = {
    "mm": {"cut": GAP, "ends": END_WASTE, "kerf": KERF, "wander": WANDER, "truing": TRUING},
    "in": {
        "cut": MM_PER_INCH / 4,
        "ends": MM_PER_INCH * 5 / 4,
        "kerf": MM_PER_INCH / 16,
        "wander": MM_PER_INCH / 32,
        "truing": MM_PER_INCH / 32,
    },
}
# Rough sizes lie on cells as wide, so that a layout saws at marks of the rule. [mm]
_CELLS: dict[Units, float] = {"mm": 2.5, "in": MM_PER_INCH / 8}


def resawn(board: float, *, thick: float, rule: Rule) -> tuple[float, float]:
    """A leaf to saw for a thickness from a board, and what the other leaf of it planes to. [mm]

    >>> resawn(25, thick=12, rule=Rule.millimetres())
    (14.0, 7.5)
    """
    lost = LOST[rule.units]
    true = lost["wander"] + lost["truing"]
    return thick + true, board - lost["kerf"] - thick - 2 * true


class Sawing(TypedDict):
    """How a layout is sawn: the gap between two parts, and the cell that sizes lie on. [mm]"""

    gap: float
    cell: float


def sawing(rule: Rule) -> Sawing:
    """How every layout is sawn by a rule, so that each page tells of the same cuts."""
    return Sawing(gap=LOST[rule.units]["cut"], cell=_CELLS[rule.units])
