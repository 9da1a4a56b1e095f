"""The angle at which the edge meets the wood: bed, bevels, and what skewing makes of it."""

from __future__ import annotations

from dataclasses import dataclass
from math import asin, atan, cos, degrees, radians, sin, tan
from typing import Literal

from toolkit.results import between, one_of

Bevel = Literal["down", "up"]
BEVELS: tuple[Bevel, ...] = ("down", "up")


@dataclass(frozen=True, slots=True)
class CuttingAngle:
    """The angle from the wood to the face that lifts the shaving, as the sum of its terms.

    ``clearance`` lies between the wood and the iron behind its edge; ``terms`` are labels and
    angles whose sum is the cutting angle. [degrees]
    """

    angle: float
    clearance: float
    bevel: Bevel
    terms: tuple[tuple[str, float], ...]

    def sentence(self) -> str:
        """The sum in words."""
        said = " + ".join(f"{value:g}° {label}" for label, value in self.terms if value)
        return (
            f"Bevel {self.bevel}: {said} = cutting angle {self.angle:g}°, "
            f"clearance {self.clearance:g}°."
        )


def cutting_angle(
    bed: float,
    *,
    bevel: Bevel = "down",
    honed_bevel: float = 30.0,
    micro_bevel: float = 0.0,
    back_bevel: float = 0.0,
) -> CuttingAngle:
    """The cutting angle of a plane.

    Bevel down, the bed and a back bevel make it, and the honed bevel only takes clearance; bevel
    up, the bed and the honed bevel make it, and a back bevel takes clearance.

    Parameters
    ----------
    bed : float
        Angle of the iron to the sole. [degrees]
    bevel : str
        ``"down"`` or ``"up"``: which way the honed bevel lies.
    honed_bevel : float
        Bevel to which the iron is honed. [degrees]
    micro_bevel : float
        What a second bevel at the very edge adds to it. [degrees]
    back_bevel : float
        Narrow bevel on the flat face of the iron. [degrees]

    Returns
    -------
    CuttingAngle
        The angle, its sum and the clearance behind the edge, negative where the iron would ride
        on its heel. [degrees]

    Raises
    ------
    ValueError
        An angle is out of range, or the cutting angle reaches 90 degrees.

    Source
    ------
    Geometry.

    >>> cutting_angle(12, bevel="up", honed_bevel=30).angle
    42.0
    """
    between(bed, low=5, high=80, name="bed", example="45")
    between(honed_bevel, low=10, high=60, name="honed bevel", example="30")
    between(micro_bevel, low=0, high=30, name="micro bevel", example="2")
    between(back_bevel, low=0, high=45, name="back bevel", example="5")
    one_of(bevel, name="bevel", allowed=BEVELS)
    terms: tuple[tuple[str, float], ...]
    if bevel == "down":
        terms = ("bed", float(bed)), ("back bevel", float(back_bevel))
        clearance = bed - honed_bevel - micro_bevel
    else:
        terms = (
            ("bed", float(bed)),
            ("honed bevel", float(honed_bevel)),
            ("micro bevel", float(micro_bevel)),
        )
        clearance = bed - back_bevel
    angle = float(sum(value for _, value in terms))
    if angle >= 90:
        raise ValueError(
            f"the cutting angle comes to {angle:g} degrees, which scrapes rather than cuts; "
            "give a bed and bevels that add up to less than 90"
        )
    return CuttingAngle(angle, float(clearance), bevel, terms)


@dataclass(frozen=True, slots=True)
class Skewed:
    """A cutting angle with the plane turned across its path, by two forms. [degrees]

    ``width_share`` is what is left of the width of the cut, of the iron's. [1]
    """

    angle: float
    skew: float
    up_the_iron: float
    along_the_travel: float
    width_share: float


def skewed(angle: float, *, skew: float) -> Skewed:
    """The cutting angle of a skewed plane, by a quoted form and by one derived here.

    Parameters
    ----------
    angle : float
        Cutting angle with the plane held square to its path. [degrees]
    skew : float
        How far the plane is turned from that. [degrees]

    Returns
    -------
    Skewed
        Slope of the shaving's path up the iron, which is the one to talk about, and the iron's
        section along the line of travel. [degrees]

    Raises
    ------
    ValueError
        An angle is out of range.

    Source
    ------
    sin e = sin p cos s: quoted from a book on wooden planes, read. tan e = tan p cos s: geometry,
    derived here.

    >>> turned = skewed(45, skew=30)
    >>> round(turned.up_the_iron, 1), round(turned.along_the_travel, 1)
    (37.8, 40.9)
    """
    between(angle, low=5, high=89, name="angle", example="45")
    between(skew, low=0, high=70, name="skew", example="30")
    turn = cos(radians(skew))
    return Skewed(
        float(angle),
        float(skew),
        degrees(asin(sin(radians(angle)) * turn)),
        degrees(atan(tan(radians(angle)) * turn)),
        turn,
    )
