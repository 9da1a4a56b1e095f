"""The flattest plane through real readings of one face, and the thickest board between two.

Readings may lie anywhere on the face: x along the board, y across it, heights upwards from
whatever they were measured from. A tilt of the whole board does not change the answer.

The plane that takes least off one face is not always the one that leaves most of the board: the
other face has a say in that, and ``thickest_board`` asks it.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from toolkit.truing._program import best_slopes
from toolkit.truing.places import most_at
from toolkit.truing.readings import checked, shares_of_face

if TYPE_CHECKING:
    from numpy.typing import ArrayLike, NDArray

    from toolkit.measures import Rule

    Numbers = NDArray[np.float64]

FLAT = 0.005  # less than this rounds to nothing on any rule, and no plane takes it [mm]


@dataclass(frozen=True, slots=True, eq=False)
class LeastPlaning:
    """A true face as shallow below the readings as one can lie.

    ``plane`` holds a, b, c of the face, ``a x + b y + c``; ``removal`` is what comes off at each
    reading, upright, ``deepest`` the most of it. [mm]
    """

    x: Numbers
    y: Numbers
    plane: tuple[float, float, float]
    removal: Numbers
    deepest: float

    @property
    def mean(self) -> float:
        """Wood that comes off on average over the face. [mm]"""
        return float(self.removal @ shares_of_face(self.x, self.y))

    def sentence(self, rule: Rule) -> str:
        """The wood that comes off, and where most of it does, in words."""
        if self.deepest < FLAT:
            return "The readings lie in one plane: nothing has to come off."
        return (
            f"A true face takes {rule.exact(self.deepest)} off where it is highest, "
            f"{most_at(self.x, self.y, self.removal)}, and {rule.exact(self.mean)} on average."
        )


def least_planing(*, x: ArrayLike, y: ArrayLike, height: ArrayLike) -> LeastPlaning:
    """The true face that takes least wood off where it takes most.

    Parameters
    ----------
    x, y : array of shape (n,)
        Where each reading was taken: along the board and across it. [mm]
    height : array of shape (n,)
        Height of the face there, above anything flat. [mm]

    Returns
    -------
    LeastPlaning
        The plane, and what comes off at each reading. [mm]

    Raises
    ------
    ValueError
        There are fewer than three readings, they lie on one line, one of them is no number, or
        the lists differ in length.

    Source
    ------
    Geometry: the least d for which some plane lies nowhere above the readings and nowhere more
    than d below them, a linear program. Of several planes, the one that takes least off in all.

    >>> twisted = least_planing(x=[0, 0, 700, 700], y=[0, 72, 0, 72], height=[0, 0, 0, 2])
    >>> round(twisted.deepest, 6)
    1.0
    """
    along, across, high = checked(x=x, y=y, height=height)
    a, b = best_slopes(along, across, high, high)
    rest = high - a * along - b * across
    c = float(rest.min())
    return LeastPlaning(along, across, (a, b, c), removal=rest - c, deepest=float(rest.max() - c))


@dataclass(frozen=True, slots=True, eq=False)
class ThickestBoard:
    """The thickest board with two true parallel faces that lies within the readings.

    ``thickness`` is square to its faces, ``upright`` as the readings were. ``plane`` holds a, b, c
    of its upper face, ``a x + b y + c``; its lower face lies ``upright`` below. [mm]
    """

    thickness: float
    upright: float
    plane: tuple[float, float, float]


def thickest_board(
    *, x: ArrayLike, y: ArrayLike, top: ArrayLike, bottom: ArrayLike
) -> ThickestBoard:
    """The thickest board with two true parallel faces that can be planed out of a rough one.

    Parameters
    ----------
    x, y : array of shape (n,)
        Where each reading was taken: along the board and across it. [mm]
    top, bottom : array of shape (n,)
        Heights of the two faces there, above the same flat thing; a thickness read with
        callipers is their difference. [mm]

    Returns
    -------
    ThickestBoard
        Its thickness and its upper face. [mm]

    Raises
    ------
    ValueError
        There are fewer than three readings, they lie on one line, one of them is no number, the
        lists differ in length, or the board has more warp than wood.

    Source
    ------
    Geometry: the greatest T for which some plane lies nowhere above the top readings and, less
    T, nowhere below the bottom ones, a linear program; square to the plane it is
    T / √(1 + a² + b²).

    >>> left = thickest_board(x=[0, 0, 700, 700], y=[0, 72, 0, 72],
    ...                       top=[16, 16, 16, 18], bottom=[0, 0, 0, 2])
    >>> round(left.upright, 6), round(left.thickness, 3)
    (15.0, 14.999)
    """
    along, across, high, low = checked(x=x, y=y, top=top, bottom=bottom)
    a, b = best_slopes(along, across, high, low)
    tilt = a * along + b * across
    c, floor = float((high - tilt).min()), float((low - tilt).max())
    if c <= floor:
        raise ValueError(
            "there is more warp than wood for two true faces; cut the board shorter or narrower "
            "first, or choose another"
        )
    return ThickestBoard(
        thickness=(c - floor) / float(np.sqrt(1 + a * a + b * b)),
        upright=c - floor,
        plane=(a, b, c),
    )
