"""The flattest plane through real readings of one face.

Readings may lie anywhere on the face: x along the board, y across it, heights upwards from
whatever they were measured from. A tilt of the whole board does not change the answer.

The plane that takes least off one face is not always the one that leaves most of the board: the
other face has a say in that, and ``thickest_board`` asks it.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from toolkit.truing._arrays import arrays, spread_out
from toolkit.truing._mean import shares_of_face
from toolkit.truing._program import flattest_slopes
from toolkit.truing.places import most_at

if TYPE_CHECKING:
    from numpy.typing import ArrayLike, NDArray

    from toolkit.measures import Rule

    Numbers = NDArray[np.float64]

FLAT = 0.005  # less than this rounds to nothing on any rule, and no plane takes it [mm]


@dataclass(frozen=True, slots=True, eq=False)
class LeastPlaning:
    """A true face as shallow below the readings as one can lie.

    Attributes
    ----------
    x, y : array
        Where the readings were taken. [mm]
    plane : tuple of float
        a, b, c of the true face, ``a x + b y + c``. [mm/mm, mm/mm, mm]
    removal : array
        The wood that comes off at each reading, upright. [mm]
    deepest : float
        The most of it. [mm]
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
    along, across, high = arrays(x=x, y=y, height=height)
    spread_out(along, across)
    a, b = flattest_slopes(along, across, high)
    rest = high - a * along - b * across
    c = float(rest.min())
    removal = rest - c
    return LeastPlaning(
        x=along,
        y=across,
        plane=(a, b, c),
        removal=removal,
        deepest=float(removal.max()),
    )
