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

from toolkit.truing._checks import above_zero
from toolkit.truing.planes import Plane, fewest_tracks

if TYPE_CHECKING:
    from toolkit.measures import Rule


@dataclass(frozen=True, slots=True)
class Strokes:
    """Planing a board down with one plane, in passes of so many tracks each.

    Attributes
    ----------
    plane : Plane
        The plane. [mm]
    width, remove : float
        Of the board, and what is to come off it. [mm]
    tracks, passes : int
        Strokes side by side in a pass, and how many passes. [1]
    """

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
        """How much lower the ridges lie after each pass. [mm]"""
        return self.plane.net_drop(self.step)

    @property
    def troughs(self) -> float:
        """How deep the troughs lie at the end, if the passes take what they can. [mm]"""
        return self.net_drop * self.passes + self.ridge

    def sentence(self, rule: Rule) -> str:
        """The strokes in words."""
        return (
            f"{rule.exact(self.remove)} off {rule.exact(self.width)} with the {self.plane.name}: "
            f"{self.tracks} tracks × {self.passes} passes = {self.strokes} strokes, each sharing "
            f"{self.overlap:.0%} of its width with the next. Ridges of {self.ridge:.2g} mm are "
            "left, and the troughs lie that much lower."
        )


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

    >>> from toolkit.truing.planes import JACK
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


def stroke_choices(
    plane: Plane, *, width: float, remove: float, most: int | None = None
) -> tuple[Strokes, ...]:
    """What each number of tracks in a pass would cost, from the fewest up.

    Parameters
    ----------
    plane : Plane
        The plane. [mm]
    width, remove : float
        Of the board, and what is to come off. [mm]
    most : int or None
        The most tracks to try; left out, until more cannot be better. [1]

    Returns
    -------
    tuple of Strokes
        One a number of tracks. [mm]

    Raises
    ------
    ValueError
        A size is not above 0.

    Source
    ------
    Geometry, as for ``strokes_with``.
    """
    above_zero(remove, name="remove", example="3.5")
    tracks = fewest_tracks(plane, width=width)
    rows = [strokes_with(plane, width=width, remove=remove, tracks=tracks)]
    # However close the tracks, a pass lowers the board by less than the depth of cut.
    passes = ceil(remove / plane.depth * (1 - 1e-9))
    while True:
        tracks += 1
        best = min(row.strokes for row in rows)
        if tracks > most if most is not None else tracks * passes >= best:
            return tuple(rows)
        rows.append(strokes_with(plane, width=width, remove=remove, tracks=tracks))


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

    >>> from toolkit.truing.planes import JACK
    >>> least_strokes(JACK, width=72, remove=13).strokes
    184
    """
    rows = stroke_choices(plane, width=width, remove=remove)
    return min(rows, key=lambda row: row.strokes)


def strokes_at_overlap(plane: Plane, *, width: float, remove: float, overlap: float) -> Strokes:
    """The strokes that a board takes when each shares at least so much of its width with the next.

    Parameters
    ----------
    plane : Plane
        The plane. [mm]
    width, remove : float
        Of the board, and what is to come off. [mm]
    overlap : float
        The share aimed at, as a fraction; the whole number of tracks makes it a little more. [1]

    Returns
    -------
    Strokes
        With the overlap that it comes to. [mm]

    Raises
    ------
    ValueError
        A size is not above 0, or the overlap does not lie from 0 to 0.95.

    Source
    ------
    Geometry, as for ``strokes_with``.

    >>> from toolkit.truing.planes import JACK
    >>> strokes_at_overlap(JACK, width=64, remove=3.5, overlap=0.3).tracks
    3
    """
    if not 0 <= overlap <= 0.95:
        raise ValueError(
            f"overlap was given as {overlap:g}; give a share from 0 to 0.95, such as 0.42"
        )
    wanted = ceil(width / (plane.shaving_width * (1 - overlap)) * (1 - 1e-9))
    tracks = max(wanted, fewest_tracks(plane, width=width))
    return strokes_with(plane, width=width, remove=remove, tracks=tracks)
