"""What was seen and measured of a board before the first saw cut, and where the pith lies."""

from __future__ import annotations

from dataclasses import dataclass

from toolkit.wood._checks import above_zero, moisture_in_range, rings_in_range
from toolkit.wood.cup import PithInside, cup_from_strains


@dataclass(frozen=True, slots=True)
class BoardSeen:
    """What was seen and measured of a board or a rough part; None for what was not looked at.

    Attributes
    ----------
    name : str
        What is chalked on it.
    moisture : float or None
        By a moisture meter. [%]
    weight : float or None
        On the scale. [g]
    size : str
        The same words, such as ``wall stick``, on pieces cut to one size; those are weighed
        against one another.
    log : tuple of (day, weight)
        Its weights over the days. [days, g]
    pith : bool or None
        Whether the pith, the middle of the tree, is to be seen on an end.
    grain : float or None
        The grain runs out of the face or edge 1 in this many; infinite for straight grain.
    thickness : float or None
        Of the part to be made. [mm]
    lid_rings : float or None
        Only where a lid is to come from it: angle of the rings to the width. [degrees]
    species : str
        The wood; needed for a lid only.
    """

    name: str
    moisture: float | None = None
    weight: float | None = None
    size: str = ""
    log: tuple[tuple[float, float], ...] = ()
    pith: bool | None = None
    grain: float | None = None
    thickness: float | None = None
    lid_rings: float | None = None
    species: str = ""

    def __post_init__(self) -> None:
        """Refuse what cannot have been measured, naming the board."""
        if self.moisture is not None:
            moisture_in_range(self.moisture, name=f"{self.name}: its moisture")
        if self.weight is not None:
            above_zero(self.weight, name=f"{self.name}: its weight", unit="g", example="440")
        if self.thickness is not None:
            above_zero(self.thickness, name=f"{self.name}: thickness", unit="mm", example="12")
        if self.grain is not None and not self.grain > 0:
            raise ValueError(
                f"{self.name}: its grain was given as 1 in {self.grain:g}; count how many "
                "millimetres along it rises by one, for example 15."
            )
        if self.lid_rings is not None:
            rings_in_range(self.lid_rings)
            if not self.species:
                raise ValueError(
                    f"{self.name}: a lid is to come from it, but of which wood? Give its species."
                )


def pith_in_section(width: float, *, thickness: float, ring_radius: float, rings: float) -> bool:
    """Whether a piece sawn at a place in the log has the pith inside.

    Parameters
    ----------
    width, thickness : float
        Size of the section. [mm]
    ring_radius : float
        Distance from the pith to the middle of the section. [mm]
    rings : float
        Angle between the ring at the middle of the section and the width. [degrees]

    Returns
    -------
    bool
        Whether it has.

    Raises
    ------
    ValueError
        A size or an angle is impossible.

    Source
    ------
    Plane geometry.

    >>> pith_in_section(116, thickness=16, ring_radius=30, rings=90)
    True
    """
    try:
        cup_from_strains(
            width,
            thickness=thickness,
            ring_radius=ring_radius,
            rings=rings,
            tangential=0.0,
            radial=0.0,
            points=3,
        )
    except PithInside:
        return True
    return False
