"""A bevelled edge: how thick it is at its rim, how far in it runs, how steep it is."""

from __future__ import annotations

from dataclasses import dataclass
from math import atan, degrees

from toolkit.results import above, below

# Where no width is asked for, how far a bevel thins its edge beyond the tongue that it has at the
# lip of the groove: common practice, no source.
_RIM = 0.8


@dataclass(frozen=True, slots=True)
class Bevel:
    """A bevelled edge: thickness at its rim, how far in it runs [mm], and its slope [degrees]."""

    rim: float
    width: float
    angle: float


def bevel(thickness: float, *, tongue: float, reach: float, width: float) -> Bevel:
    """A bevel that has its tongue's thickness at the lip of the groove.

    Parameters
    ----------
    thickness : float
        Of the panel. [mm]
    tongue : float
        What it must be where it enters the groove. [mm]
    reach : float
        How far it stands in the groove. [mm]
    width : float
        How far in from the rim the bevel runs. [mm]

    Returns
    -------
    Bevel
        Rim, width and angle. [mm, degrees]

    Raises
    ------
    ValueError
        The bevel is no wider than it stands in the groove, or would end in nothing.

    Source
    ------
    Geometry of a straight bevel.

    >>> round(bevel(9, tongue=5.8, reach=3, width=16).angle, 1)
    13.8
    """
    if not above(width, reach):
        raise ValueError(
            f"a bevel {width:g} mm wide never comes out of a groove it reaches {reach:g} mm into: "
            f"give more than {reach:g}"
        )
    share = reach / width
    rim = (tongue - thickness * share) / (1 - share)
    if below(rim, 0.0) or below(thickness, tongue):
        raise ValueError(
            f"{thickness:g} mm bevelled over {width:g} mm to {tongue:g} mm at {reach:g} mm from "
            "the rim leaves no rim: give a wider bevel, or a thinner panel"
        )
    return Bevel(rim, width, slope(thickness, rim=rim, width=width))


def slope(thickness: float, *, rim: float, width: float) -> float:
    """How steep a bevel is, from a panel's thickness, its edge and how far in it runs. [degrees]"""
    return degrees(atan((thickness - rim) / width))


def width_for(thickness: float, *, tongue: float, reach: float, rim: float) -> float:
    """How wide a bevel is that leaves this rim and has its tongue at the lip of the groove. [mm]

    Parameters
    ----------
    thickness, tongue, reach : float
        As for ``bevel``. [mm]
    rim : float
        Thickness at its edge. [mm]

    Raises
    ------
    ValueError
        The rim is not thinner than the tongue.

    Source
    ------
    The same geometry, solved for the width.

    >>> round(width_for(9, tongue=5.8, reach=3, rim=5.06), 1)
    16.0
    """
    if not below(rim, tongue):
        raise ValueError(
            f"a rim of {rim:g} mm under a tongue of {tongue:g} mm slopes the wrong way: give less "
            f"than {tongue:g}"
        )
    return (thickness - rim) * reach / (tongue - rim)


def rim_and_width(
    thickness: float, *, tongue: float, reach: float, most: float, asked: float | None = None
) -> tuple[float, float]:
    """Rim and width of a panel's bevel; a rim of nothing where the width asked for can't be. [mm]

    Left out, the width is one that thins the edge by a fifth (common practice, no source), and no
    more than the panel has room for.
    """
    if asked is None:
        rim = _RIM * tongue
        return rim, min(width_for(thickness, tongue=tongue, reach=reach, rim=rim), most)
    width = min(asked, most)
    try:
        return bevel(thickness, tongue=tongue, reach=reach, width=width).rim, width
    except ValueError:
        return 0.0, width
