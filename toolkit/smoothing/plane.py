"""A plane set up for work: everything about it that the wood notices."""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import inf, radians, sin
from typing import Any

from toolkit.measures import Rule
from toolkit.smoothing._checks import above_zero, between
from toolkit.smoothing.angles import Bevel, CuttingAngle, Skewed, cutting_angle, skewed
from toolkit.smoothing.iron import Iron, camber_radius
from toolkit.smoothing.scallops import Scallops
from toolkit.smoothing.words import fine

_OVERLAP_MOST = 95.0  # beyond it a stroke hardly moves on [%]


@dataclass(frozen=True, slots=True)
class Plane:
    """How a plane is set.

    Attributes
    ----------
    bed, honed_bevel, micro_bevel, back_bevel : float
        Angles of the iron. [degrees]
    bevel : str
        ``"down"`` or ``"up"``.
    iron_width : float
        Width of the edge. [mm]
    camber_radius : float
        Radius of the edge on the face of the iron, infinite for a straight one. [mm]
    shaving : float
        Thickness of the shaving in its middle. [mm]
    overlap : float
        How much of a shaving's width the next one covers again. [%]
    setback : float or None
        From the edge to the cap iron; None without one. [mm]
    skew : float
        How far the plane is turned across its path. [degrees]
    finishing : bool
        Whether this is the last plane to touch the wood.

    Source
    ------
    The defaults are a common smoother's: common practice, no source. 42 % is the overlap that
    takes most off an endless width with each pass: geometry.
    """

    bed: float = 45.0
    bevel: Bevel = "down"
    honed_bevel: float = 30.0
    micro_bevel: float = 0.0
    back_bevel: float = 0.0
    iron_width: float = 50.0
    camber_radius: float = camber_radius(0.05, width=50)
    shaving: float = 0.03
    overlap: float = 42.0
    setback: float | None = 0.2
    skew: float = 0.0
    finishing: bool = True

    def __post_init__(self) -> None:
        """Refuse what no plane can be set to."""
        above_zero(self.shaving, name="shaving", example="0.03")
        between(self.overlap, low=0, high=_OVERLAP_MOST, name="overlap", unit="%", example="40")
        if self.setback is not None:
            above_zero(self.setback, name="setback", example="0.2")
        # Both refuse what they cannot be.
        _ = self.cutting, self.iron

    @classmethod
    def smoother(cls) -> Plane:
        """A smoother: 0.05 mm of camber over 50 mm, shavings of 0.03 mm."""
        return cls()

    @classmethod
    def jack(cls) -> Plane:
        """A jack: camber of 254 mm (10 in) radius, shavings of 0.4 mm."""
        return cls(camber_radius=254.0, shaving=0.4, setback=2.0, finishing=False)

    def having(self, **changes: Any) -> Plane:
        """The same plane, set otherwise."""
        return replace(self, **changes)

    @property
    def cutting(self) -> CuttingAngle:
        """Its cutting angle, held square. [degrees]"""
        return cutting_angle(
            self.bed,
            bevel=self.bevel,
            honed_bevel=self.honed_bevel,
            micro_bevel=self.micro_bevel,
            back_bevel=self.back_bevel,
        )

    @property
    def turned(self) -> Skewed:
        """Its cutting angle, held as it is. [degrees]"""
        return skewed(self.cutting.angle, skew=self.skew)

    @property
    def working_angle(self) -> float:
        """Its cutting angle as held, by the first published form. [degrees]"""
        return self.turned.up_the_iron

    @property
    def iron(self) -> Iron:
        """Its iron as the wood sees it. [mm]"""
        return Iron(self.iron_width, radius=self.camber_radius, bed=self.bed, skew=self.skew)

    @property
    def shaving_width(self) -> float:
        """Width of its shaving. [mm]"""
        return self.iron.shaving_width(self.shaving)

    @property
    def corner_depth(self) -> float:
        """How deep the corners of its iron dig, 0 when its camber is enough. [mm]"""
        return self.iron.corner_depth(self.shaving)

    @property
    def pitch(self) -> float:
        """Distance from one track to the next. [mm]"""
        return self.shaving_width * (1 - self.overlap / 100)

    @property
    def scallops(self) -> Scallops:
        """What its tracks leave when they lie as they should. [mm]"""
        return Scallops(self.iron.radius_in_wood, pitch=self.pitch)

    @property
    def camber_needed(self) -> float:
        """Drop on the face of the iron that lifts its corners clear of this shaving. [mm]"""
        # The corners cut the same depth however the plane is turned.
        return self.shaving / sin(radians(self.bed))

    def sentence(self, rule: Rule) -> str:
        """How it is set, and what it leaves."""
        camber = (
            "a straight edge"
            if self.camber_radius == inf
            else f"{fine(self.iron.drop, rule=rule)} of camber"
        )
        return (
            f"{self.cutting.sentence()} With {camber} over {rule.show(self.iron_width)} a shaving "
            f"of {fine(self.shaving, rule=rule)} is {rule.show(self.shaving_width)} wide. "
            f"{self.scallops.sentence(rule)}"
        )
