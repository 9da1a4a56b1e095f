"""A planed surface as a field of heights, and what can be measured on it."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from math import atan, degrees
from typing import TYPE_CHECKING

import numpy as np

from toolkit.measures import Rule
from toolkit.smoothing.plane import Plane
from toolkit.smoothing.words import fine, microns

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Numbers = NDArray[np.float32]

# The line across the strokes on which ridges and steps are measured, and which is drawn, lies a
# quarter of the way along.
LINE = 0.25
_NOISE = 1e-5  # below this a difference of heights is the computer's own [mm]
_LEVEL = 3  # cells that a crest may be level for
_UNLIKE = 6.0  # a climb that differs from its neighbours by more than so many usual ones is a step


@dataclass(frozen=True, slots=True)
class Stroke:
    """One stroke: where its middle ran, on what it rode, how deep it cut.

    Attributes
    ----------
    centre : float
        Across the patch from its left edge, half way along it. [mm]
    drift : float
        How far the stroke runs to the right for each millimetre along. [1]
    level : float
        Height of the wood that the sole rode on. [mm]
    depth : float
        How far below that the middle of the edge cut. [mm]
    """

    centre: float
    drift: float
    level: float
    depth: float

    def middle(self, ahead: float) -> float:
        """Where its middle ran so far ahead of half way along the patch. [mm]"""
        return self.centre + self.drift * ahead


@dataclass(frozen=True, slots=True, eq=False)
class Surface:
    """Heights of a patch of wood, made stroke by stroke.

    Attributes
    ----------
    heights : array
        Height at each cell, rows from the near end to the far end, columns from the left edge;
        0 is where the first sole rode. [mm]
    step : float
        Size of a cell. [mm]
    plane : Plane
        The last plane that went over it. [mm, degrees]
    strokes : tuple of Stroke
        That plane's strokes, in their order. [mm]
    passes : int
        How often they went over the whole width. [1]
    torn : array
        Which cells tore out.
    grain : array or None
        Slope of the fibres at each cell, if it was told. [degrees]
    direction : int
        1 for strokes towards the far end, -1 for strokes towards the near end.
    """

    heights: Numbers
    step: float
    plane: Plane
    strokes: tuple[Stroke, ...]
    passes: int
    torn: NDArray[np.bool_]
    grain: Numbers | None
    direction: int

    @property
    def width(self) -> float:
        """Size across the strokes. [mm]"""
        return float(self.heights.shape[1] * self.step)

    @property
    def length(self) -> float:
        """Size along the strokes. [mm]"""
        return float(self.heights.shape[0] * self.step)

    @property
    def last_pass(self) -> tuple[Stroke, ...]:
        """The strokes of the last pass, from left to right as they were meant. [mm]"""
        return self.strokes[-(len(self.strokes) // self.passes) :]

    @property
    def rise(self) -> float:
        """From the lowest to the highest place on the section's line. [mm]"""
        return float(np.ptp(self.section()[1]))

    def section(self, share: float = LINE) -> tuple[NDArray[np.float64], Numbers]:
        """Places across and heights along one line across the strokes. [mm]

        ``share`` is how far along the patch it lies, from 0 to 1.
        """
        row = self.heights[self._row(share)]
        return (np.arange(row.size) + 0.5) * self.step, row

    def _row(self, share: float) -> int:
        rows = len(self.heights)
        return min(int(share * rows), rows - 1)

    def evaluated(self) -> Numbers:
        """The part that roughness is taken from: as many whole tracks as the patch holds. [mm]"""
        tracks = int(self.width / self.plane.pitch + 1e-9)
        if tracks < 1:
            return self.heights
        return self.heights[:, : round(tracks * self.plane.pitch / self.step)]

    @property
    def ra(self) -> float:
        """Mean distance from the mean line, across the strokes, mean over the patch. [mm]"""
        return float(np.mean(np.abs(self._from_mean())))

    @property
    def rq(self) -> float:
        """Root mean square distance from the mean line, mean over the patch. [mm]"""
        squares = np.mean(self._from_mean() ** 2, axis=1, dtype=np.float64)
        return float(np.mean(np.sqrt(squares)))

    @property
    def rz(self) -> float:
        """Greatest height of the profile across the strokes, mean over the patch. [mm]"""
        return float(np.mean(np.ptp(self.evaluated(), axis=1)))

    def _from_mean(self) -> Numbers:
        part = self.evaluated()
        return np.asarray(part - part.mean(axis=1, keepdims=True))

    @property
    def ridge(self) -> float:
        """Mean height of the ridges above the hollows beside them, on the section's line. [mm]

        A ridge's crest lies between two cells; it is found where its two flanks meet. Torn places
        are passed over.
        """
        across, row = self.section()
        whole = ~self.torn[self._row(LINE)]
        z = np.interp(across, across[whole], row[whole]) if whole.any() else row.astype(float)
        crests = _turns(z)
        hollows = _turns(-z)
        heights = []
        for at in crests:
            beside = [z[hollow] for hollow in _neighbours(at, hollows)]
            if beside:
                heights.append(_crest(z, at) - sum(beside) / len(beside))
        return float(np.mean(heights)) if heights else 0.0

    @property
    def corner_step(self) -> float:
        """Highest step on the section's line, 0 where no corner of an iron dug in. [mm]"""
        climbs, steps, torn = self._climbs()
        # What the curve itself climbs from cell to cell is no part of a step.
        beside = np.maximum(np.roll(climbs, 1), np.roll(climbs, -1))
        heights = (climbs - beside)[steps & ~torn]
        return float(heights.max()) if heights.size else 0.0

    @property
    def steepest(self) -> float:
        """Steepest slope on that line beside steps and torn places. [degrees]"""
        climbs, steps, torn = self._climbs()
        smooth = climbs[~steps & ~torn]
        return degrees(atan(float(smooth.max()) / self.step)) if smooth.size else 0.0

    def _climbs(self) -> tuple[NDArray[np.float64], NDArray[np.bool_], NDArray[np.bool_]]:
        """Heights from cell to cell on the line, which of them are steps, which are torn."""
        climbs = np.abs(np.diff(self.section()[1].astype(np.float64)))
        # On a curve two neighbours climb alike; a step towers over both of its own.
        above = climbs[1:-1] - np.maximum(climbs[:-2], climbs[2:])
        alike = _UNLIKE * float(np.median(np.abs(np.diff(climbs)))) + _NOISE
        steps = np.concatenate(([False], above > alike, [False]))
        torn = self.torn[self._row(LINE)]
        return climbs, steps, torn[1:] | torn[:-1]

    @property
    def torn_share(self) -> float:
        """How much of the patch tore out. [%]"""
        return 100 * float(self.torn.mean())

    @property
    def taken_off(self) -> float:
        """Mean of what went from the height that the first sole rode on. [mm]"""
        return -float(self.heights.mean(dtype=np.float64))

    def sentence(self, rule: Rule) -> str:
        """What was made, in numbers."""
        ridges = f"ridges of {fine(self.ridge, rule=rule)}" if self.ridge > 0 else "no ridges"
        text = (
            f"After {len(self.strokes)} strokes {rule.show(self.plane.pitch)} apart the patch "
            f"has {ridges} (Ra {microns(self.ra)})"
        )
        step = self.corner_step
        text += f", steps of up to {fine(step, rule=rule)} where corners of the iron dug in" * (
            step > 0
        )
        if self.grain is not None:
            text += f"; {self.torn_share:.1f} % of it tore out against the grain"
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
