"""A bench plane set up for work: everything about it that the wood notices."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from math import inf, radians, sin
from typing import Any

from toolkit.measures import Rule
from toolkit.planes.angles import Bevel, CuttingAngle, Skewed, cutting_angle, skewed
from toolkit.planes.iron import BEST_OVERLAP, Iron, camber_radius
from toolkit.planes.scallops import Scallops
from toolkit.results import above_zero, between

_OVERLAP_MOST = 95.0  # beyond it a stroke hardly moves on [%]


@dataclass(frozen=True, slots=True)
class Plane:
    """One bench plane, and how it is set.

    Attributes
    ----------
    name : str
        Such as ``jack plane``.
    bed, honed_bevel, back_bevel : float
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
    iron : Iron
        Its iron as the wood sees it. [mm]
    cutting : CuttingAngle
        Its cutting angle, held square. [degrees]

    Source
    ------
    The defaults are a common smoother's: common practice, no source.
    """

    name: str = "smoothing plane"
    bed: float = 45.0
    bevel: Bevel = "down"
    honed_bevel: float = 30.0
    back_bevel: float = 0.0
    iron_width: float = 50.0
    camber_radius: float = camber_radius(0.05, width=50)
    shaving: float = 0.03
    overlap: float = float(round(100 * BEST_OVERLAP))
    setback: float | None = 0.2
    skew: float = 0.0
    finishing: bool = True
    iron: Iron = field(init=False, repr=False, compare=False)
    cutting: CuttingAngle = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        """Refuse what no plane can be set to."""
        above_zero(self.shaving, name="shaving", example="0.03")
        between(self.overlap, low=0, high=_OVERLAP_MOST, name="overlap", unit="%", example="40")
        if self.setback is not None:
            above_zero(self.setback, name="setback", example="0.2")
        cutting = cutting_angle(
            self.bed, bevel=self.bevel, honed_bevel=self.honed_bevel, back_bevel=self.back_bevel
        )
        object.__setattr__(self, "cutting", cutting)
        iron = Iron(self.iron_width, radius=self.camber_radius, bed=self.bed, skew=self.skew)
        object.__setattr__(self, "iron", iron)

    def having(self, **changes: Any) -> Plane:
        """The same plane, set otherwise."""
        return replace(self, **changes)

    @property
    def turned(self) -> Skewed:
        """Its cutting angle, held as it is. [degrees]"""
        return skewed(self.cutting.angle, skew=self.skew)

    @property
    def working_angle(self) -> float:
        """Its cutting angle as held, by the first published form. [degrees]"""
        return self.turned.up_the_iron

    @property
    def arc_width(self) -> float:
        """Width of its shaving if the iron were wide enough: √(8 × radius × shaving). [mm]"""
        return self.iron.open_width(self.shaving)

    @property
    def shaving_width(self) -> float:
        """Width of its shaving. [mm]"""
        return self.iron.shaving_width(self.shaving)

    @property
    def corner_depth(self) -> float:
        """How deep the corners of its iron dig, 0 when its camber is enough. [mm]"""
        return self.iron.corner_depth(self.shaving)

    @property
    def camber_needed(self) -> float:
        """Drop on the face of the iron that lifts its corners clear of this shaving. [mm]"""
        # The corners cut the same depth however the plane is turned.
        return self.shaving / sin(radians(self.bed))

    @property
    def pitch(self) -> float:
        """Distance from one track to the next. [mm]"""
        return self.shaving_width * (1 - self.overlap / 100)

    @property
    def best_step(self) -> float:
        """Step between strokes that lowers a wide board fastest. [mm]"""
        return min(self.iron.cut_width, self.arc_width * (1 - BEST_OVERLAP))

    @property
    def best_overlap(self) -> float:
        """The share of its shaving that each stroke then shares with the next. [1]"""
        return 1 - self.best_step / self.shaving_width

    def ridge(self, step: float) -> float:
        """Height of the ridge left between two strokes a step apart. [mm]"""
        return Scallops(self.iron.radius_in_wood, pitch=step).shallow_depth

    def net_drop(self, step: float) -> float:
        """Height that the ridges lose with a pass: the sole rides on the last pass's. [mm]"""
        return self.shaving - self.ridge(step)

    @property
    def scallops(self) -> Scallops:
        """The hollows that its tracks leave when they lie as they should. [mm]"""
        return Scallops(self.iron.radius_in_wood, pitch=self.pitch)

    def sentence(self, rule: Rule) -> str:
        """How it is set, and what it leaves."""
        camber = (
            "a straight edge"
            if self.camber_radius == inf
            else f"{rule.fine(self.iron.drop)} of camber"
        )
        return (
            f"{self.cutting.sentence()} With {camber} over {rule.show(self.iron_width)} a shaving "
            f"of {rule.fine(self.shaving)} is {rule.show(self.shaving_width)} wide. "
            f"{self.scallops.sentence(rule)}"
        )


# Coarse, medium and fine, each with one job. Camber, shaving and size are customs; the middle of
# what is usual: jack 200 to 255 mm and 0.25 to 0.5 mm, try plane 0.1 to 0.2 mm of camber over its
# iron, smoother 0.03 to 0.08 mm of camber and 0.02 to 0.05 mm of shaving.
JACK = Plane("jack plane", camber_radius=254.0, shaving=0.4, setback=2.0, finishing=False)
TRY = Plane(
    "try plane", iron_width=60.0, camber_radius=3000.0, shaving=0.1, setback=1.0, finishing=False
)
SMOOTHER = Plane()
PLANES = (JACK, TRY, SMOOTHER)
