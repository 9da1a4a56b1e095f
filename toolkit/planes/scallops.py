"""The shallow hollows that a round edge leaves side by side, and their roughness.

Standards filter a profile before they give its roughness, and the widest filter they name passes
8 mm. Tracks lie wider apart than that, so a stylus would call them waviness: what is given here is
the parameter of the unfiltered profile, which the standards write Pa, Pq and Pz.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import atan, degrees, isinf, sqrt

from toolkit.measures import Rule
from toolkit.results import above_zero

RIDGE_MOST = 0.015  # custom, no source: the highest ridge that a smoothed face may keep [mm]


@dataclass(frozen=True, slots=True)
class Scallops:
    """Equal hollows of one radius side by side.

    Attributes
    ----------
    radius : float
        Radius of a hollow in the wood, infinite for a flat one. [mm]
    pitch : float
        Distance between two tracks. [mm]

    Source
    ------
    Geometry of a circle; Ra, Rq and Rz as ISO 4287 and ISO 21920-2 define them, worked out for
    shallow equal hollows.

    >>> round(Scallops(150, pitch=40).depth, 5)
    1.33931
    """

    radius: float
    pitch: float

    def __post_init__(self) -> None:
        """Refuse hollows wider than their own circle."""
        above_zero(self.pitch, name="pitch", example="27")
        if not self.radius >= self.pitch / 2:
            raise ValueError(
                f"radius in the wood was given as {self.radius:g} mm, less than half the pitch of "
                f"{self.pitch:g} mm; give a larger radius or a smaller pitch"
            )

    @property
    def depth(self) -> float:
        """Height of the ridges above the hollows. [mm]"""
        if isinf(self.radius):
            return 0.0
        half = self.pitch / 2
        # R - √(R² - s²/4), written so that a smoother's large R does not swallow the small depth.
        return half**2 / (self.radius + sqrt(self.radius**2 - half**2))

    @property
    def shallow_depth(self) -> float:
        """The same by the sum on paper, s²/(8R). [mm]"""
        return self.pitch**2 / (8 * self.radius)

    @property
    def ra(self) -> float:
        """Mean distance from the mean line: 4h/(9√3). [mm]"""
        return 4 * self.depth / (9 * sqrt(3))

    @property
    def rq(self) -> float:
        """Root mean square distance from the mean line: 2h/(3√5). [mm]"""
        return 2 * self.depth / (3 * sqrt(5))

    @property
    def rz(self) -> float:
        """Greatest height of the profile: h. [mm]"""
        return self.depth

    @property
    def steepest(self) -> float:
        """Steepest slope, at the ridges: 4h/s. [degrees]"""
        return degrees(atan(4 * self.depth / self.pitch))

    def sentence(self, rule: Rule) -> str:
        """Pitch, ridge and roughness in words."""
        if isinf(self.radius):
            return f"A straight edge leaves no ridges between tracks {rule.show(self.pitch)} apart."
        ra, rq, rz = map(rule.roughness, (self.ra, self.rq, self.rz))
        return (
            f"Tracks {rule.show(self.pitch)} apart leave ridges {rule.fine(self.depth)} high: "
            f"Ra {ra}, Rq {rq}, Rz {rz} of the unfiltered profile, nowhere steeper than "
            f"{self.steepest:.2g}°."
        )
