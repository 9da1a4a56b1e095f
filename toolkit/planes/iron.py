"""The curve of an iron's edge, as it is honed and as the wood sees it."""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, inf, isinf, radians, sin, sqrt
from typing import TYPE_CHECKING

from toolkit.results import above_zero, between, not_negative

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

# The share of a shaving's width that the next one covers again when a wide board comes down
# fastest, 42 %: step × (shaving less ridge) is greatest where the step is the width over √3.
# Geometry. [1]
BEST_OVERLAP = 1 - 1 / sqrt(3)


def camber_radius(drop: float, *, width: float) -> float:
    """The radius of an edge whose corners fall back so far, both on the face of the iron.

    Parameters
    ----------
    drop : float
        How far the corners fall behind the middle; 0 for a straight edge. [mm]
    width : float
        Width of the iron. [mm]

    Returns
    -------
    float
        Radius of the edge, infinite for a straight one. [mm]

    Raises
    ------
    ValueError
        The drop is negative or the width is not above 0.

    Source
    ------
    Geometry of a circle: R = w²/(8c) + c/2.

    >>> round(camber_radius(0.05, width=50))
    6250
    """
    not_negative(drop, name="camber drop", example="0.05")
    above_zero(width, name="width of the iron", example="50")
    return inf if drop == 0 else width**2 / (8 * drop) + drop / 2


@dataclass(frozen=True, slots=True)
class Iron:
    """An iron bedded in its plane: what its honed curve becomes in the wood.

    Attributes
    ----------
    width : float
        Width of the edge. [mm]
    radius : float
        Radius of the edge on the face of the iron, infinite for a straight one. [mm]
    bed : float
        Angle of the iron to the sole. [degrees]
    skew : float
        How far the plane is turned across its path. [degrees]

    Source
    ------
    Projection of a shallow arc by the sine of the bed angle: two trade articles, and geometry. An
    iron at 12 degrees needs 3.4 times the camber of one at 45. In the wood the arc is taken as a
    parabola, which differs from its circle by 0.2 % of the depth over a jack's shaving.

    >>> jack = Iron(50, radius=254)
    >>> round(jack.radius_in_wood), round(jack.shaving_width(0.4), 1)
    (359, 33.9)
    """

    width: float
    radius: float = inf
    bed: float = 45.0
    skew: float = 0.0

    def __post_init__(self) -> None:
        """Refuse what no iron has."""
        above_zero(self.width, name="width of the iron", example="50")
        if not self.radius >= self.width / 2:
            raise ValueError(
                f"radius of the edge was given as {self.radius:g} mm, less than half the iron's "
                f"width of {self.width:g} mm; give a radius such as 250, or inf for a straight edge"
            )
        between(self.bed, low=5, high=80, name="bed", example="45")
        between(self.skew, low=0, high=70, name="skew", example="30")

    @property
    def cut_width(self) -> float:
        """Width of the edge seen along the path. [mm]"""
        return self.width * cos(radians(self.skew))

    @property
    def drop(self) -> float:
        """How far the corners fall behind the middle, on the face of the iron. [mm]"""
        if isinf(self.radius):
            return 0.0
        return self.radius - sqrt(self.radius**2 - self.width**2 / 4)

    @property
    def drop_in_wood(self) -> float:
        """Depth by which the middle of the edge cuts below its corners. [mm]"""
        return self.drop * sin(radians(self.bed))

    @property
    def radius_in_wood(self) -> float:
        """Radius of the hollow that the edge leaves. [mm]"""
        return self.radius * cos(radians(self.skew)) ** 2 / sin(radians(self.bed))

    def open_width(self, depth: float) -> float:
        """Width of a shaving so thick in its middle if the iron were wide enough. [mm]"""
        return sqrt(8 * self.radius_in_wood * depth)

    def shaving_width(self, depth: float) -> float:
        """Width of a shaving so thick in its middle. [mm]"""
        return min(self.cut_width, self.open_width(depth))

    def corner_depth(self, depth: float) -> float:
        """How deep the corners dig with a shaving so thick in its middle, at least 0. [mm]"""
        return max(depth - self.cut_width**2 / (8 * self.radius_in_wood), 0.0)

    def edge(self, aside: NDArray[np.floating]) -> NDArray[np.floating]:
        """Height of the edge above its middle so far aside, infinite beyond its corners. [mm]"""
        rise = aside * aside
        rise *= 1 / (2 * self.radius_in_wood)
        rise[abs(aside) > self.cut_width / 2] = inf
        return rise
