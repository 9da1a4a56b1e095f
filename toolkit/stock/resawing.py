"""Sawing a board into thinner ones: what each is at best, and what is left when it is true."""

from __future__ import annotations

from dataclasses import dataclass
from math import isfinite

KERF = 1.5  # custom, no source: what a hand saw takes along the middle of a board [mm]
WANDER = 1.0  # custom, no source: how much of a leaf the saw's wander costs [mm]
TRUING = 1.0  # custom, no source: what planing both faces of a leaf takes off it [mm]


@dataclass(frozen=True, slots=True)
class Resawn:
    """Leaves of one board: each at best, and as expected once it is true. [mm]"""

    thickness: float
    boards: int
    at_best: float
    expected: float

    @property
    def sentence(self) -> str:
        """What resawing gives, in words."""
        if self.expected <= 0:
            return f"{self.thickness:g} mm is too thin to resaw into {self.boards}."
        return (
            f"{self.thickness:g} mm resawn into {self.boards}: {self.at_best:.4g} mm each at best, "
            f"about {self.expected:.3g} mm once planed true. Resaw days ahead, in stick."
        )


def resaw(
    thickness: float,
    *,
    boards: int = 2,
    kerf: float = KERF,
    wander: float = WANDER,
    truing: float = TRUING,
) -> Resawn:
    """What is left of a board's thickness when it is sawn into thinner boards.

    Parameters
    ----------
    thickness : float
        Of the board. [mm]
    boards : int
        How many thinner boards.
    kerf : float
        Lost at each saw cut. [mm]
    wander : float
        Lost of each thinner board because the cut wanders. [mm]
    truing : float
        Planed off each thinner board to make both faces true. [mm]

    Returns
    -------
    Resawn
        Thickness of each at best, and as expected once true. [mm]

    Raises
    ------
    ValueError
        A length is negative, or there are fewer than two boards to make.

    Source
    ------
    Geometry: (thickness − cuts × kerf) / boards. Kerf, wander and truing are customs: common
    practice, no source.

    >>> made = resaw(25)
    >>> made.at_best, made.expected
    (11.75, 9.75)
    """
    if boards < 2:
        raise ValueError(f"resawing into {boards} is no resawing; give 2 or more boards")
    if not (isfinite(thickness) and thickness > 0):
        raise ValueError(f"the board's thickness was given as {thickness:g} mm; give one above 0")
    for name, value in (("kerf", kerf), ("wander", wander), ("truing", truing)):
        if not (isfinite(value) and value >= 0):
            raise ValueError(f"{name} was given as {value:g} mm; give 0 or more")
    best = (thickness - (boards - 1) * kerf) / boards
    return Resawn(thickness, boards, best, best - wander - truing)
