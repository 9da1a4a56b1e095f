"""A planed surface as a profile across the strokes, and what can be measured on it."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from math import atan, degrees
from typing import TYPE_CHECKING

import numpy as np

from toolkit.measures import Rule
from toolkit.planes.plane import Plane

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Numbers = NDArray[np.float32]

_NOISE = 1e-5  # below this a difference of heights is the computer's own [mm]
_LEVEL = 3  # cells that a crest may be level for
_UNLIKE = 6.0  # a climb that differs from its neighbours by more than so many usual ones is a step


@dataclass(frozen=True, slots=True)
class PlaneStroke:
    """One stroke: where its middle ran across the patch, and how deep it cut below its sole. [mm]

    ``level`` is the height of the wood that the sole rode on.
    """

    centre: float
    level: float
    depth: float


@dataclass(frozen=True, slots=True, eq=False)
class Surface:
    """A patch of wood made stroke by stroke, alike all along. [mm]

    ``profile`` holds the height at each cell, a ``step`` wide, from the left edge; 0 is where the
    first sole rode. ``length`` runs along the strokes; ``passes`` is how often they went over the
    whole width.
    """

    profile: Numbers
    length: float
    step: float
    plane: Plane
    strokes: tuple[PlaneStroke, ...]
    passes: int

    @property
    def heights(self) -> Numbers:
        """Height at each cell, rows from the near end, columns from the left edge. [mm]"""
        return np.broadcast_to(self.profile, (round(self.length / self.step), self.profile.size))

    @property
    def width(self) -> float:
        """Size across the strokes. [mm]"""
        return float(self.profile.size * self.step)

    @property
    def last_pass(self) -> tuple[PlaneStroke, ...]:
        """The strokes of the last pass, from left to right as they were meant. [mm]"""
        return self.strokes[-(len(self.strokes) // self.passes) :]

    @property
    def rise(self) -> float:
        """From the lowest to the highest place. [mm]"""
        return float(np.ptp(self.profile))

    @property
    def across(self) -> NDArray[np.float64]:
        """Where the profile's places lie, from the left edge. [mm]"""
        return np.arange(0.5, self.profile.size) * self.step

    def evaluated(self) -> Numbers:
        """The part that roughness is taken from: as many whole tracks as the patch holds. [mm]"""
        tracks = int(self.width / self.plane.pitch + 1e-9)
        if tracks < 1:
            return self.profile
        return self.profile[: round(tracks * self.plane.pitch / self.step)]

    @property
    def ra(self) -> float:
        """Mean distance from the mean line. [mm]"""
        part = self.evaluated()
        return float(np.mean(np.abs(part - part.mean())))

    @property
    def rz(self) -> float:
        """Greatest height of the profile. [mm]"""
        return float(np.ptp(self.evaluated()))

    @property
    def ridge(self) -> float:
        """Mean height of the ridges above the hollows beside them. [mm]

        A ridge's crest lies between two cells; it is found where its two flanks meet.
        """
        z = self.profile.astype(np.float64)
        hollows = _turns(-z)
        heights = []
        for at in _turns(z):
            beside = [z[hollow] for hollow in _neighbours(at, hollows)]
            if beside:
                heights.append(_crest(z, at) - sum(beside) / len(beside))
        return float(np.mean(heights)) if heights else 0.0

    @property
    def corner_step(self) -> float:
        """Highest step, 0 where no corner of an iron dug in. [mm]"""
        climbs, steps = self._climbs()
        # What the curve itself climbs from cell to cell is no part of a step.
        beside = np.maximum(np.roll(climbs, 1), np.roll(climbs, -1))
        heights = (climbs - beside)[steps]
        return float(heights.max()) if heights.size else 0.0

    @property
    def steepest(self) -> float:
        """Steepest slope beside steps. [degrees]"""
        climbs, steps = self._climbs()
        smooth = climbs[~steps]
        return degrees(atan(float(smooth.max()) / self.step)) if smooth.size else 0.0

    def _climbs(self) -> tuple[NDArray[np.float64], NDArray[np.bool_]]:
        """Heights from cell to cell, and which of them are steps."""
        climbs = np.abs(np.diff(self.profile.astype(np.float64)))
        # On a curve two neighbours climb alike; a step towers over both of its own.
        above = climbs[1:-1] - np.maximum(climbs[:-2], climbs[2:])
        alike = _UNLIKE * float(np.median(np.abs(np.diff(climbs)))) + _NOISE
        return climbs, np.concatenate(([False], above > alike, [False]))

    def sentence(self, rule: Rule) -> str:
        """The surface in numbers."""
        ridges = f"ridges of {rule.fine(self.ridge)}" if self.ridge > 0 else "no ridges"
        text = (
            f"After {len(self.strokes)} strokes {rule.show(self.plane.pitch)} apart the patch "
            f"has {ridges} (Ra {rule.roughness(self.ra)})"
        )
        if (step := self.corner_step) > 0:
            text += f", steps of up to {rule.fine(step)} where corners of the iron dug in"
        return text + "."


def _turns(z: NDArray[np.float64]) -> list[int]:
    """Where a profile turns from climbing to sinking; a level track is no turn."""
    way = np.sign(np.where(np.abs(np.diff(z)) > 1e-9, np.diff(z), 0.0))
    moving = np.flatnonzero(way)
    found = []
    for a, b in pairwise(moving):
        if way[a] > 0 > way[b] and b - a <= _LEVEL:
            found.append(int(a + 1 + b) // 2)
    return found


def _neighbours(at: int, others: list[int]) -> list[int]:
    """The nearest on each side."""
    below = [other for other in others if other < at]
    beyond = [other for other in others if other > at]
    return below[-1:] + beyond[:1]


def _crest(z: NDArray[np.float64], at: int) -> float:
    """Height at which two flanks meet near their highest cell, at least that cell's."""
    if not 2 <= at < z.size - 3:
        return float(z[at])
    best = float(z[at])
    # The crest lies left of the highest cell or right of it: the flank's own cells decide.
    for left, right in ((at - 1, at), (at, at + 1)):
        up, down = z[left] - z[left - 1], z[right] - z[right + 1]
        if up > 0 and down > 0:
            # Flanks from both cells, one cell apart, meet where they are equally high.
            share = (z[right] - z[left] + down) / (up + down)
            if 0 <= share <= 1:
                best = max(best, float(z[left] + share * up))
    return best
