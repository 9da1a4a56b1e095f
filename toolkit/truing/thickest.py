"""The thickest board with two true faces that lies in a rough one."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from toolkit.truing._arrays import arrays, spread_out
from toolkit.truing._program import thickest_slopes

if TYPE_CHECKING:
    from numpy.typing import ArrayLike


@dataclass(frozen=True, slots=True, eq=False)
class ThickestBoard:
    """The thickest board with two true parallel faces that lies within the readings.

    Attributes
    ----------
    thickness : float
        Of the true board, square to its faces. [mm]
    upright : float
        The same measured upright, as the readings were. [mm]
    plane : tuple of float
        a, b, c of its upper face, ``a x + b y + c``; its lower face lies ``upright`` below.
        [mm/mm, mm/mm, mm]
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
        lists differ in length, a bottom lies above its top, or the board has more warp than wood.

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
    along, across, high, low = arrays(x=x, y=y, top=top, bottom=bottom)
    spread_out(along, across)
    upside = np.flatnonzero(high < low)
    if len(upside):
        at = int(upside[0])
        raise ValueError(
            f"at reading {at + 1} (x {along[at]:g} mm, y {across[at]:g} mm) the top is "
            f"{high[at]:g} mm and the bottom {low[at]:g} mm, above it; give the heights of both "
            "faces above the same flat thing, or exchange the two lists"
        )
    a, b = thickest_slopes(along, across, high, low)
    tilt = a * along + b * across
    c, floor = float((high - tilt).min()), float((low - tilt).max())
    if c - floor <= 0:
        rough = float((high - low).min())
        raise ValueError(
            f"there is more warp than wood: the board is {rough:g} mm thick at its thinnest, and "
            f"two true faces would need {floor - c:.3g} mm more; cut it shorter or narrower "
            "first, or choose another"
        )
    return ThickestBoard(
        thickness=(c - floor) / float(np.sqrt(1 + a * a + b * b)),
        upright=c - floor,
        plane=(a, b, c),
    )
