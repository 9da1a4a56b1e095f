"""How many strokes it takes to lower a board, and how far apart they are best laid.

A pass covers the board with a whole number of parallel tracks, the first and the last half a
step inside the edges. Were they laid so that they only just reached the edges, the arrises would
never be cut, and the sole would ride on them for ever.

With tracks no further apart than a third of a shaving, one stroke lowers its neighbour's place as
well. The sums then promise too many strokes, never too few; the best tracks are never so close.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil
from typing import TYPE_CHECKING

from toolkit.planes import Plane
from toolkit.results import above_zero, below

if TYPE_CHECKING:
    from toolkit.measures import Rule


@dataclass(frozen=True, slots=True)
class Strokes:
    """Planing a board of some width down with one plane, in passes of so many tracks. [mm]"""

    plane: Plane
    width: float
    remove: float
    tracks: int
    passes: int

    @property
    def strokes(self) -> int:
        """Full strokes in all. [1]"""
        return self.tracks * self.passes

    @property
    def step(self) -> float:
        """From one track to the next. [mm]"""
        return self.width / self.tracks

    @property
    def overlap(self) -> float:
        """The share of a shaving's width that a stroke shares with the next, as a fraction. [1]"""
        return 1 - self.step / self.plane.shaving_width

    @property
    def ridge(self) -> float:
        """Height of the ridges left between the tracks. [mm]"""
        return self.plane.ridge(self.step)

    @property
    def net_drop(self) -> float:
        """Height that the ridges lose with each pass. [mm]"""
        return self.plane.net_drop(self.step)

    def sentence(self, rule: Rule) -> str:
        """The strokes in words."""
        return (
            f"{rule.exact(self.remove)} off {rule.exact(self.width)} with the {self.plane.name}: "
            f"{self.tracks} tracks × {self.passes} passes = {self.strokes} strokes, each sharing "
            f"{self.overlap:.0%} of its width with the next. Ridges of {rule.fine(self.ridge)} are "
            "left, and the troughs lie that much lower."
        )


def fewest_tracks(plane: Plane, *, width: float) -> int:
    """The fewest tracks that cover a board and lower it. [mm]

    A step may be as wide as the iron, but must be narrower than the arc that it cuts.
    """
    above_zero(width, name="width", example="64")
    tracks = max(1, ceil(width / plane.shaving_width * (1 - 1e-9)))
    return tracks if below(width / tracks, plane.arc_width) else tracks + 1


def strokes_with(plane: Plane, *, width: float, remove: float, tracks: int) -> Strokes:
    """The strokes that a board takes when every pass is laid in so many tracks.

    Parameters
    ----------
    plane : Plane
        The plane. [mm]
    width, remove : float
        Of the board, and what is to come off, reckoned to the ridges. [mm]
    tracks : int
        Strokes side by side in one pass. [1]

    Returns
    -------
    Strokes
        Passes, strokes, ridge. [mm]

    Raises
    ------
    ValueError
        A size is not above 0, or so few tracks leave bare wood between them.

    Source
    ------
    Geometry: each pass lowers the ridges by the depth of cut less one ridge, because the sole
    rides on the ridges of the pass before.

    >>> from toolkit.planes import JACK
    >>> strokes_with(JACK, width=64, remove=3.5, tracks=3).strokes
    45
    """
    above_zero(remove, name="remove", example="3.5")
    least = fewest_tracks(plane, width=width)
    if tracks < least:
        raise ValueError(
            f"{tracks} tracks on {width:g} mm leave bare wood between them: a shaving is "
            f"{plane.shaving_width:.3g} mm wide; lay {least} or more"
        )
    passes = ceil(remove / plane.net_drop(width / tracks) * (1 - 1e-9))
    return Strokes(plane, float(width), float(remove), tracks, passes)


def least_strokes(plane: Plane, *, width: float, remove: float) -> Strokes:
    """The fewest strokes that take so much off a board, over all whole numbers of tracks.

    Parameters
    ----------
    plane : Plane
        The plane. [mm]
    width, remove : float
        Of the board, and what is to come off, reckoned to the ridges. [mm]

    Returns
    -------
    Strokes
        The best; of equals, the one with fewer tracks. [mm]

    Raises
    ------
    ValueError
        A size is not above 0.

    Source
    ------
    Geometry, as for ``strokes_with``.

    >>> from toolkit.planes import JACK
    >>> least_strokes(JACK, width=72, remove=13).strokes
    184
    """
    above_zero(remove, name="remove", example="3.5")
    tracks = fewest_tracks(plane, width=width)
    best = strokes_with(plane, width=width, remove=remove, tracks=tracks)
    # However close the tracks, a pass lowers the board by less than the shaving.
    passes = ceil(remove / plane.shaving * (1 - 1e-9))
    while (tracks := tracks + 1) * passes < best.strokes:
        closer = strokes_with(plane, width=width, remove=remove, tracks=tracks)
        best = min(best, closer, key=lambda row: row.strokes)
    return best


def strokes_as_set(plane: Plane, *, width: float, remove: float) -> Strokes:
    """The strokes that a board takes with the plane's own overlap or a little more. [mm]"""
    above_zero(width, name="width", example="64")
    tracks = max(ceil(width / plane.pitch * (1 - 1e-9)), fewest_tracks(plane, width=width))
    return strokes_with(plane, width=width, remove=remove, tracks=tracks)
