"""What it costs that no hand lays every stroke where it should."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from toolkit.truing.planes import Plane
from toolkit.truing.simulation import simulate_strokes
from toolkit.truing.strokes import least_strokes


@dataclass(frozen=True, slots=True)
class ScatterCost:
    """What it costs that strokes do not lie where they should.

    Attributes
    ----------
    scatter : float
        Standard deviation of where a stroke lies. [mm]
    drop, drop_scattered : float
        What a pass takes off without and with it. [mm]
    strokes, strokes_scattered : float
        Until all of the board is down, without and with it; the mean of all boards. [1]
    """

    scatter: float
    drop: float
    drop_scattered: float
    strokes: float
    strokes_scattered: float

    @property
    def lost(self) -> float:
        """The share of each pass that is lost, as a fraction. [1]"""
        return 1 - self.drop_scattered / self.drop

    @property
    def sentence(self) -> str:
        """The cost in words, in millimetres."""
        return (
            f"With strokes that stray by {self.scatter:.2g} mm (standard deviation) a pass takes "
            f"{self.drop_scattered:.2g} mm instead of {self.drop:.2g} mm off, {self.lost:.0%} "
            "less: the ridges that were missed carry the sole. "
            f"{self.strokes:.0f} strokes become {self.strokes_scattered:.0f}."
        )


def scatter_cost(
    plane: Plane,
    *,
    width: float,
    scatter: float,
    remove: float | None = None,
    tracks: int | None = None,
    runs: int = 20,
) -> ScatterCost:
    """How much of each pass is lost when strokes scatter, by simulation.

    Parameters
    ----------
    plane : Plane
        The plane. [mm]
    width : float
        Of the board. [mm]
    scatter : float
        Standard deviation of where a stroke lies. [mm]
    remove : float or None
        How far to plane each time; left out, ten times the depth of cut. [mm]
    tracks : int or None
        Strokes in a pass; left out, the best number without scatter. [1]
    runs : int
        Boards planed, over which the mean is taken. [1]

    Returns
    -------
    ScatterCost
        What a pass takes off without and with scatter. [mm]

    Raises
    ------
    ValueError
        A size is impossible, or there are no runs.

    Source
    ------
    The simulation.
    """
    if runs < 1:
        raise ValueError(f"runs was given as {runs}; give 1 or more, such as 20")
    deep = 10 * plane.depth if remove is None else remove
    if tracks is None:
        tracks = least_strokes(plane, width=width, remove=deep).tracks
    even = simulate_strokes(plane, width=width, remove=deep, tracks=tracks)
    strayed = [
        simulate_strokes(plane, width=width, remove=deep, tracks=tracks, scatter=scatter, seed=seed)
        for seed in range(runs)
    ]
    return ScatterCost(
        scatter=float(scatter),
        drop=even.drop_a_pass,
        drop_scattered=float(np.mean([planed.drop_a_pass for planed in strayed])),
        strokes=float(even.strokes),
        strokes_scattered=float(np.mean([planed.strokes for planed in strayed])),
    )
