"""What two diagonals say of four walls, and what an angle does to them."""

from __future__ import annotations

from math import asin, degrees, radians, sin, sqrt


def skew_angle(difference: float, *, length: float, width: float) -> float:
    """How far a box with equal opposite walls leans from square, by its two diagonals.

    Parameters
    ----------
    difference : float
        The longer diagonal less the shorter. [mm]
    length, width : float
        Of the walls that the diagonals were measured over, both inside or both outside. [mm]

    Returns
    -------
    float
        The angle by which a corner misses 90 degrees. [deg]

    Raises
    ------
    ValueError
        A size is not above zero, or no such box has diagonals so unlike.

    Source
    ------
    Geometry: d1² − d2² = 4 · length · width · sin a, and d1² + d2² = 2 (length² + width²).

    >>> round(skew_angle(1.0, length=176, width=134), 2)
    0.27
    """
    if min(length, width) <= 0 or difference < 0:
        raise ValueError("length and width lie above 0 mm, and the difference is not under 0 mm")
    square = length**2 + width**2 - difference**2 / 4
    share = 2.0 if square <= 0 else difference * sqrt(square) / (2 * length * width)
    if share > 1:
        raise ValueError(
            f"no box of {length:g} × {width:g} mm has diagonals {difference:g} mm unlike; "
            "measure them again"
        )
    return degrees(asin(share))


def diagonal_difference(angle: float, *, length: float, width: float) -> float:
    """How much the diagonals of a box differ that leans from square.

    Parameters
    ----------
    angle : float
        By which a corner misses 90 degrees. [deg]
    length, width : float
        Of the walls. [mm]

    Returns
    -------
    float
        The longer diagonal less the shorter. [mm]

    Raises
    ------
    ValueError
        A size is not above zero, or the angle is not from 0 up to 90 degrees.

    Source
    ------
    Geometry: 2 · length · width · sin a over the mean diagonal.

    >>> round(diagonal_difference(0.27, length=176, width=134), 1)
    1.0
    """
    if min(length, width) <= 0 or not 0 <= angle < 90:
        raise ValueError("length and width lie above 0 mm, and the angle from 0 to under 90 deg")
    whole, twist = length**2 + width**2, 2 * length * width * sin(radians(angle))
    return sqrt(whole + twist) - sqrt(whole - twist)
