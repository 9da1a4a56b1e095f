"""Sawing a board into thinner ones: what each is at best, and what is left when it is true."""

from __future__ import annotations

from math import isfinite

KERF = 1.5  # custom, no source: what a hand saw takes along the middle of a board [mm]
WANDER = 1.0  # custom, no source: how much of a leaf the saw's wander costs [mm]
TRUING = 1.0  # custom, no source: what planing both faces of a leaf takes off it [mm]


def resaw(thickness: float, *, boards: int = 2) -> float:
    """Thickness of each leaf when a board is sawn into thinner ones and they are planed true.

    Parameters
    ----------
    thickness : float
        Of the board. [mm]
    boards : int
        How many thinner boards.

    Returns
    -------
    float
        As expected; below 0 for a board too thin to resaw. [mm]

    Raises
    ------
    ValueError
        The thickness is not above 0, or there are fewer than two boards to make.

    Source
    ------
    Geometry: (thickness − cuts × kerf) / boards. Kerf, wander and truing are customs: common
    practice, no source.

    >>> resaw(25)
    9.75
    """
    if boards < 2:
        raise ValueError(f"resawing into {boards} is no resawing; give 2 or more boards")
    if not (isfinite(thickness) and thickness > 0):
        raise ValueError(f"the board's thickness was given as {thickness:g} mm; give one above 0")
    return (thickness - (boards - 1) * KERF) / boards - WANDER - TRUING
