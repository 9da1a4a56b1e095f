"""Winding sticks and straightedge: what they read, and the warp that it means."""

from __future__ import annotations

from typing import Literal

from toolkit.results import above
from toolkit.truing._checks import above_zero, finite, not_negative, one_of

LinedUp = Literal["ends", "middles"]
Rests = Literal["on both ends", "on its middle", "on one end"]

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
    """What winding sticks show of a twist.

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


def twist_from_sticks(
    reading: float,
    *,
    stick: float,
    width: float,
    lined_up: LinedUp = "ends",
    apart: float | None = None,
    length: float | None = None,
) -> float:
    """The twist of a board from what winding sticks show.

    Parameters
    ----------
    reading : float
        The gap seen at a stick's end, sighting from the left: positive when the right-hand stick
        stands high at the far edge, negative when it does at the near one. [mm]
    stick, width : float
        Length of the sticks, and width of the board. [mm]
    lined_up : str
        As for ``stick_reading``.
    apart, length : float or None
        How far apart the sticks lie and how long the board is, when they do not lie at its two
        ends. [mm]

    Returns
    -------
    float
        Rise of the fourth corner, signed as a ``Warp`` has it. [mm]

    Raises
    ------
    ValueError
        A size is not above 0, the reading is no number, only one of the last two is given, or the
        sticks lie further apart than the board is long.

    Source
    ------
    Geometry of a steady twist.

    >>> twist_from_sticks(6.25, stick=400, width=64)
    1.0
    """
    finite(reading, name="reading", example="3")
    twist = reading / stick_reading(1.0, stick=stick, width=width, lined_up=lined_up)
    if (apart is None) != (length is None):
        raise ValueError(
            "give both apart and length in mm, or neither when the sticks lie at the board's ends"
        )
    if apart is None or length is None:
        return twist
    above_zero(apart, name="apart", example="500")
    if above(apart, above_zero(length, name="length", example="700")):
        raise ValueError(
            f"the sticks were said to lie {apart:g} mm apart on a board of {length:g} mm; give "
            f"{length:g} mm or less"
        )
    return twist * length / apart


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


def curve_from_straightedge(
    gap: float, *, straightedge: float, size: float, rests: Rests = "on both ends"
) -> float:
    """Bow or cup of a face from the gap under a straightedge laid along it, or across.

    Parameters
    ----------
    gap : float
        The widest gap under the straightedge. [mm]
    straightedge : float
        Its length; a longer one than the board touches the board's own ends. [mm]
    size : float
        Length of the board for a bow, width for a cup. [mm]
    rests : str
        ``"on both ends"`` over a hollow, the gap in the middle; ``"on its middle"``, balanced on
        a round face, the gap alike at both ends; ``"on one end"``, pressed down there on a round
        face, the gap at the other end, which is four times as wide.

    Returns
    -------
    float
        Signed as a ``Warp`` has it: positive round, negative hollow. [mm]

    Raises
    ------
    ValueError
        A size is not above 0, the gap is below 0, or the straightedge rests some other way.

    Source
    ------
    Geometry of an arc.

    >>> curve_from_straightedge(0.3, straightedge=350, size=700)
    -1.2
    """
    not_negative(gap, name="gap", example="0.5")
    above_zero(straightedge, name="straightedge", example="600")
    above_zero(size, name="size", example="700")
    one_of(rests, name="rests", allowed=("on both ends", "on its middle", "on one end"))
    share = min(straightedge / size, 1.0)
    if rests == "on both ends":
        return -gap / share**2 or 0.0
    return gap / share**2 / (4 if rests == "on one end" else 1)
