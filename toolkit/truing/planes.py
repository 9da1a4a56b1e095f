"""Bench planes as far as their strokes matter: camber, bed, iron, depth of cut, sole.

An iron ground to an arc and bedded at an angle cuts an arc that is flatter than the grinding: a
low bed flattens it most. That arc and the depth of cut give the width of the shaving; the step
between two strokes gives the ridge that is left between them.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, radians, sin, sqrt

from toolkit.results import CUSTOM, below
from toolkit.truing._checks import above_zero


@dataclass(frozen=True, slots=True)
class Plane:
    """One bench plane, set for one job.

    Parameters
    ----------
    name : str
        Such as ``jack plane``.
    camber_radius : float
        Of the arc to which the iron is ground. [mm]
    depth : float
        Of the cut, where it is deepest. [mm]
    iron : float
        Width of the iron. [mm]
    sole : float
        Length of the sole. [mm]
    bed : float
        Angle at which the iron lies on its bed. [degrees]
    source : str
        Who says so.

    Raises
    ------
    ValueError
        A size is not above 0, the bed does not lie between 5 and 90 degrees, or the camber is too
        round for its iron.
    """

    name: str
    camber_radius: float
    depth: float
    iron: float
    sole: float
    bed: float = 45.0
    source: str = CUSTOM

    def __post_init__(self) -> None:
        """Refuse a plane that cannot be."""
        for name, example in (
            ("camber_radius", "254"),
            ("depth", "0.4"),
            ("iron", "50"),
            ("sole", "370"),
        ):
            above_zero(getattr(self, name), name=f"{self.name}: {name}", example=example)
        if not 5 <= self.bed <= 90:
            raise ValueError(
                f"{self.name}: bed was given as {self.bed:g} degrees; give the angle between iron "
                "and sole, such as 45, or 12 for a low one with its bevel up"
            )
        if self.camber_radius < self.iron / 2:
            raise ValueError(
                f"{self.name}: an iron {self.iron:g} mm wide cannot be ground to a radius of "
                f"{self.camber_radius:g} mm; give {self.iron / 2:g} mm or more"
            )

    @property
    def effective_radius(self) -> float:
        """Radius of the arc that it cuts: camber radius over the sine of the bed angle. [mm]"""
        return self.camber_radius / sin(radians(self.bed))

    @property
    def arc_width(self) -> float:
        """Width of its shaving if the iron were wide enough: √(8 × radius × depth). [mm]"""
        return sqrt(8 * self.effective_radius * self.depth)

    @property
    def shaving_width(self) -> float:
        """Width of its shaving. [mm]"""
        return min(self.iron, self.arc_width)

    @property
    def corners_cut(self) -> bool:
        """Whether the corners of the iron dig in, its shaving being as wide as it is."""
        return self.iron < self.arc_width * (1 - 1e-6)

    @property
    def corner_track(self) -> float:
        """Depth of the track that a corner of the iron leaves, 0 when it stays clear. [mm]"""
        return self.depth - self.iron**2 / (8 * self.effective_radius) if self.corners_cut else 0.0

    @property
    def best_step(self) -> float:
        """Step between strokes that lowers a wide board fastest. [mm]"""
        return min(self.iron, self.arc_width / sqrt(3))

    @property
    def best_overlap(self) -> float:
        """The share of its shaving that each stroke then shares with the next: √3 gives 42 %.

        As a fraction. [1]
        """
        return 1 - self.best_step / self.shaving_width

    def ridge(self, step: float) -> float:
        """Height of the ridge left between two strokes a step apart. [mm]"""
        return step**2 / (8 * self.effective_radius)

    def net_drop(self, step: float) -> float:
        """How much lower the ridges lie after one pass over the board: depth less ridge.

        The sole rides on the ridges that the last pass left. [mm]
        """
        return self.depth - self.ridge(step)

    @property
    def sentence(self) -> str:
        """The plane and its shaving in words."""
        return f"The {self.name} {self.shaving}"

    @property
    def shaving(self) -> str:
        """What the plane does, in words; millimetres, as for any gap."""
        said = f"takes a shaving {self.depth:.3g} mm deep and {self.shaving_width:.3g} mm wide"
        if self.corners_cut:
            return (
                f"{said}, the full width of its iron: the corners dig in and leave tracks "
                f"{self.corner_track:.2g} mm deep."
            )
        return f"{said}, within its iron of {self.iron:.3g} mm."


def fewest_tracks(plane: Plane, *, width: float) -> int:
    """The fewest tracks that cover a board and lower it.

    Parameters
    ----------
    plane : Plane
        The plane. [mm]
    width : float
        Of the board. [mm]

    Returns
    -------
    int
        Tracks in a pass. [1]

    Raises
    ------
    ValueError
        The width is not above 0.

    Source
    ------
    Geometry: a step may be as wide as the iron, but must be narrower than the arc that it cuts.
    """
    above_zero(width, name="width", example="64")
    tracks = max(1, ceil(width / plane.shaving_width * (1 - 1e-9)))
    return tracks if below(width / tracks, plane.arc_width) else tracks + 1


# Coarse, medium and fine, each with one job. Camber, depth and size are customs; the middle of
# what is usual: jack 200 to 255 mm and 0.25 to 0.5 mm, try plane 0.1 to 0.2 mm of camber over its
# iron, smoother 0.03 to 0.08 mm of camber and 0.02 to 0.05 mm of cut.
JACK = Plane("jack plane", camber_radius=254, depth=0.4, iron=50, sole=370)
TRY = Plane("try plane", camber_radius=3000, depth=0.1, iron=60, sole=560)
SMOOTHER = Plane("smoothing plane", camber_radius=6250, depth=0.03, iron=50, sole=240)
PLANES = (JACK, TRY, SMOOTHER)
