"""A board's surface planed stroke by stroke, to check the sums and to see what scatter costs.

The surface is a field of heights. Each stroke runs the whole length; where it lies across the
board may scatter, at its start and at its end by themselves. At each place the sole rides on the
highest wood under it, and the iron cuts its arc so far below. Nothing of the sums about ridges
and passes is built in.

The board is flat to begin with, so the sole is kept level: it does not pitch or roll.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil
from typing import TYPE_CHECKING

import numpy as np

from toolkit.truing._checks import above_zero, not_negative
from toolkit.truing.planes import Plane
from toolkit.truing.strokes import least_strokes

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Numbers = NDArray[np.float64]

MOST_STROKES = 20_000
CHEEKS = 14.0  # custom, no source: how much wider a sole is than its iron, both sides [mm]


@dataclass(frozen=True, slots=True, eq=False)
class Planed:
    """A surface after so many strokes.

    Attributes
    ----------
    plane : Plane
        The plane. [mm]
    across : array
        Places from the near edge. [mm]
    surface : array
        Heights by station along the board and place across it; it began at 0. [mm]
    tracks, strokes : int
        In a pass, and in all. [1]
    drops : tuple of float
        How low the highest wood lay after each full pass. [mm]
    finished : bool
        Whether all of the board came down as far as was wanted.
    """

    plane: Plane
    across: Numbers
    surface: Numbers
    tracks: int
    strokes: int
    drops: tuple[float, ...]
    finished: bool

    @property
    def ridge(self) -> float:
        """From the lowest trough to the highest ridge. [mm]"""
        return float(self.surface.max() - self.surface.min())

    @property
    def drop_a_pass(self) -> float:
        """How much lower a pass makes the board, the first left out: it rides on flat wood.

        In millimetres. [mm]
        """
        if len(self.drops) < 2:
            return self.drops[0] if self.drops else 0.0
        return (self.drops[-1] - self.drops[0]) / (len(self.drops) - 1)


def simulate_strokes(
    plane: Plane,
    *,
    width: float,
    remove: float,
    tracks: int | None = None,
    scatter: float = 0.0,
    length: float = 300.0,
    stations: int = 1,
    cell: float = 0.25,
    seed: int = 0,
) -> Planed:
    """Plane a flat board stroke by stroke until all of it lies so much lower.

    Parameters
    ----------
    plane : Plane
        The plane. [mm]
    width, remove : float
        Of the board, and what is to come off everywhere. [mm]
    tracks : int or None
        Strokes side by side in one pass; left out, the best number by the sums. [1]
    scatter : float
        Standard deviation of where a stroke lies across the board. [mm]
    length : float
        Of the board; it matters only with more than one station. [mm]
    stations : int
        Places along the board where the surface is followed; with more than one, a stroke that
        scatters runs askew, and the sole rides on the highest wood within its length. [1]
    cell : float
        Distance between the places across. [mm]
    seed : int
        Of the scatter, so that it can be repeated.

    Returns
    -------
    Planed
        The surface, and how many strokes it took. [mm]

    Raises
    ------
    ValueError
        A size is impossible, or the tracks and stations are not at least 1.

    Source
    ------
    Geometry; that strokes scatter evenly to both sides is an assumption of the workbook's own.

    >>> from toolkit.truing.planes import JACK
    >>> simulate_strokes(JACK, width=64, remove=3.5).strokes
    45
    """
    above_zero(width, name="width", example="64")
    above_zero(remove, name="remove", example="3.5")
    above_zero(length, name="length", example="300")
    above_zero(cell, name="cell", example="0.25")
    not_negative(scatter, name="scatter", example="3")
    if tracks is None:
        tracks = least_strokes(plane, width=width, remove=remove).tracks
    for name, count in (("tracks", tracks), ("stations", stations)):
        if count < 1:
            raise ValueError(f"{name} was given as {count}; give 1 or more")
    chance = np.random.default_rng(seed)
    across = np.linspace(0.0, width, ceil(width / cell * (1 - 1e-9)) + 1)
    surface = np.zeros((stations, len(across)))
    shares = np.linspace(0.0, 1.0, stations)
    apart = np.abs(shares[:, None] - shares[None, :]) * length
    reached = apart <= plane.sole / 2  # by the sole, the mouth being at a station
    drops: list[float] = []
    strokes = 0
    finished = False
    while not finished and strokes < MOST_STROKES:
        start, end = chance.normal(0.0, scatter, 2) if scatter else (0.0, 0.0)
        middle = (strokes % tracks + 0.5) * width / tracks
        lies = middle + start + (end - start) * shares
        _stroke(surface, across[None, :] - lies[:, None], reached, plane)
        strokes += 1
        low = -float(surface.max())
        if strokes % tracks == 0:
            drops.append(low)
        finished = low >= remove * (1 - 1e-9)
        if not scatter and strokes > tracks and strokes % tracks == 0 and drops[-1] <= drops[-2]:
            break  # bare wood between the tracks carries the sole, and will for ever
    return Planed(plane, across, surface, tracks, strokes, tuple(drops), finished)


def _stroke(surface: Numbers, aside: Numbers, reached: NDArray[np.bool_], plane: Plane) -> None:
    """Cut one stroke into the surface; ``aside`` is how far each place lies off its middle."""
    away = np.abs(aside)
    under_sole = away <= (plane.iron + CHEEKS) / 2
    highest = np.where(under_sole, surface, -np.inf).max(axis=1)
    level = np.where(reached, highest[None, :], -np.inf).max(axis=1)
    # A stroke that has strayed off the board altogether cuts nothing.
    level[~np.isfinite(level)] = np.inf
    cut = level[:, None] - plane.depth + aside**2 / (2 * plane.effective_radius)
    np.minimum(surface, cut, out=surface, where=away <= plane.iron / 2)
