"""Where a stroke against the grain lifts fibres out below the edge.

*Where* it tears is geometry: where the fibres dive ahead of the edge, a split that follows them
goes down into the wood. *How deep and how often* is a model to look at, not a measurement: no
published figure covers a hand plane on a given board. The split runs ahead by so many thicknesses
of the shaving, less at a steeper cutting angle and with the cap iron close, and then breaks off.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from toolkit.smoothing.plane import Plane

if TYPE_CHECKING:
    from numpy.typing import NDArray

MODEL = "a model to look at, no source: it says where a surface tears, not how deep"

_REACH = 25.0  # a split ahead of a 45 degree edge without help, in shavings [1]
_LONGEST = 6.0  # a splinter breaks off under its own lift sooner or later [mm]
_NO_SPLIT = 65.0  # cutting angle at which wood is pushed off rather than split [degrees]
_RATIO_NEAR, _RATIO_FAR = 3.0, 15.0  # setbacks that help fully and not at all, in shavings [1]
_STILL = 0.1  # what is left of a split under a close cap iron [1]
_FROM = 1.0  # fibres that dive less do no harm [degrees]
_FULL = 10.0  # fibres that dive so much tear everywhere [degrees]
_A_CM2 = 40.0  # pits to a square centimetre where they tear everywhere [1/cm²]


def reach(plane: Plane) -> float:
    """How far a split runs ahead of the edge of this plane. [mm]"""
    by_angle = np.clip((_NO_SPLIT - plane.working_angle) / (_NO_SPLIT - 45.0), 0.0, 1.5)
    by_cap = 1.0
    if plane.setback is not None:
        ratio = plane.setback / plane.shaving
        share = np.clip((ratio - _RATIO_NEAR) / (_RATIO_FAR - _RATIO_NEAR), 0.0, 1.0)
        by_cap = _STILL + (1 - _STILL) * float(share)
    return min(float(_REACH * plane.shaving * by_angle * by_cap), _LONGEST)


def tear(
    heights: NDArray[np.float32],
    grain: NDArray[np.float32],
    *,
    plane: Plane,
    step: float,
    direction: int,
    rng: np.random.Generator,
) -> NDArray[np.bool_]:
    """Lift fibres out of the heights, in place, and say from which cells. [mm, degrees]"""
    pits = np.zeros_like(heights)
    along, across = heights.shape
    most = round(_A_CM2 * along * across * step**2 / 100)
    split = reach(plane)
    # Drawn whatever the setting, so that moving a slider does not throw the pits about.
    rows, columns = rng.integers(0, along, most), rng.integers(0, across, most)
    chance, size, wide = rng.random(most), rng.uniform(0.5, 1.5, most), rng.uniform(0.3, 1.1, most)
    # Fibres break off one by one: some sooner, some later.
    ragged = 0.35 + 0.65 * rng.random((across,))
    against = -direction * grain[rows, columns]
    share = np.clip((against - _FROM) / (_FULL - _FROM), 0.0, 1.0)
    for i in np.flatnonzero((chance < share) & (split > 0)):
        long = split * float(size[i])
        _pit(
            pits,
            start=(int(rows[i]), int(columns[i])),
            cells=(max(round(long / step), 1), max(round(float(wide[i]) / step), 1)),
            deep=long * float(np.tan(np.radians(against[i]))),
            direction=direction,
            ragged=ragged,
        )
    heights -= pits
    return pits > 0


def _pit(
    pits: NDArray[np.float32],
    *,
    start: tuple[int, int],
    cells: tuple[int, int],
    deep: float,
    direction: int,
    ragged: NDArray[np.float64],
) -> None:
    """One lifted splinter: it dives along the fibres and breaks off at its deep far end."""
    (row, column), (long, wide) = start, cells
    ends = sorted((row, row + direction * long))
    low, high = max(ends[0], 0), min(ends[1], pits.shape[0] - 1)
    left, right = max(column - wide // 2, 0), min(column + wide // 2, pits.shape[1] - 1)
    ahead = (direction * (np.arange(low, high + 1) - row) / long)[:, None]
    aside = 2 * (np.arange(left, right + 1) - column) / (wide + 1)
    # It begins as a point and widens as it runs ahead.
    depth = deep * ahead * (aside**2 < ahead) * (ahead <= ragged[left : right + 1])
    # Where two splinters cross, the deeper one leaves its mark.
    here = pits[low : high + 1, left : right + 1]
    np.maximum(here, depth.astype(np.float32), out=here)
