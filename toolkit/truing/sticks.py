"""Winding sticks and square: what they show of a board."""

from __future__ import annotations

from math import isfinite, radians, tan
from typing import Literal

from toolkit.results import above_zero, finite, one_of

LinedUp = Literal["ends", "middles"]

EYE = 0.3  # custom, no source: the least gap between two sticks that most eyes see [mm]


def magnification(stick: float, *, width: float) -> float:
    """How many times larger winding sticks show a twist than the corner of the board is off.

    Parameters
    ----------
    stick : float
        Length of the winding sticks. [mm]
    width : float
        Of the board that they lie across. [mm]

    Returns
    -------
    float
        Reading over rise. [1]

    Raises
    ------
    ValueError
        A size is not above 0.

    Source
    ------
    Geometry: similar triangles. That long sticks show more: common practice, no source.

    >>> magnification(400, width=64)
    6.25
    """
    above_zero(stick, name="stick", example="400")
    return stick / above_zero(width, name="width", example="64")


def stick_reading(twist: float, *, stick: float, width: float, lined_up: LinedUp = "ends") -> float:
    """The gap that winding sticks show of a twist.

    Parameters
    ----------
    twist : float
        Rise of the fourth corner over the plane of the other three. [mm]
    stick, width : float
        Length of the sticks, and width of the board. [mm]
    lined_up : str
        ``"ends"`` when one pair of stick ends is brought into line by eye and the gap is read at
        the other; ``"middles"`` when the middles are, and half shows at each end.

    Returns
    -------
    float
        The gap seen at a stick's end. [mm]

    Raises
    ------
    ValueError
        A size is not above 0, the twist is no number, or the sticks are lined up some other way.

    Source
    ------
    Geometry.

    >>> stick_reading(1.0, stick=400, width=64)
    6.25
    """
    one_of(lined_up, name="lined_up", allowed=("ends", "middles"))
    share = 1.0 if lined_up == "ends" else 0.5
    return share * finite(twist, name="twist", example="1") * magnification(stick, width=width)


def least_twist(*, stick: float, width: float, seen: float = EYE) -> float:
    """The smallest twist that an eye can catch with winding sticks.

    Parameters
    ----------
    stick, width : float
        Length of the sticks, and width of the board. [mm]
    seen : float
        The least gap between the sticks that the eye sees. [mm]

    Returns
    -------
    float
        Rise of the fourth corner. [mm]

    Raises
    ------
    ValueError
        A size is not above 0.

    Source
    ------
    Geometry; what an eye sees is a custom: common practice, no source.

    >>> round(least_twist(stick=400, width=64), 3)
    0.048
    """
    return above_zero(seen, name="seen", example="0.3") / magnification(stick, width=width)


def out_of_square(size: float, *, angle: float) -> float:
    """How far an edge that is out of square leans over a thickness or a width.

    Parameters
    ----------
    size : float
        The thickness or width that it leans over. [mm]
    angle : float
        Between the edge and square. [degrees]

    Returns
    -------
    float
        The gap under the square's blade at the far side. [mm]

    Raises
    ------
    ValueError
        The size is not above 0, or the angle is 45 degrees or more.

    Source
    ------
    Geometry.

    >>> round(out_of_square(12, angle=0.5), 2)
    0.1
    """
    above_zero(size, name="size", example="12")
    if not (isfinite(angle) and abs(angle) < 45):
        raise ValueError(
            f"angle was given as {angle:g} degrees; give how far the edge is out of square, less "
            "than 45, such as 0.5"
        )
    return size * tan(radians(angle))
