"""A surface made stroke by stroke: each stroke rides on what the pass before it left."""

from __future__ import annotations

from math import ceil
from typing import TYPE_CHECKING

import numpy as np

from toolkit.planes.plane import Plane
from toolkit.planes.surface import PlaneStroke, Surface
from toolkit.results import above_zero, between, not_negative

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Numbers = NDArray[np.float32]

WIDTH, LENGTH, STEP = 60.0, 40.0, 0.1  # a patch to look at [mm]
_BESIDE_THE_IRON = 14.0  # how much wider a sole is than its iron, about: no source [mm]
_STROKES_MOST = 2000
_CELLS_MOST = 4_000_000
_THINNEST = 0.1  # a light stroke still takes this share of the shaving set [1]


def planed(
    plane: Plane,
    *,
    width: float = WIDTH,
    length: float = LENGTH,
    step: float = STEP,
    passes: int = 2,
    scatter: float = 0.0,
    depth_scatter: float = 0.0,
    seed: int = 1,
) -> Surface:
    """Plane a patch of a wider and longer board, stroke after stroke from left to right. [mm]

    The sole is wider than its iron, so that it always reaches on to wood which this pass has not
    cut yet: it rides level on the highest that the pass before left under it, and the edge cuts its
    curve below that. A model: a real sole also tilts into the last track.
    """
    if not 1 <= passes <= 50:
        raise ValueError(f"passes was given as {passes}; give a whole number from 1 to 50")
    not_negative(scatter, name="scatter", example="3")
    between(depth_scatter, low=0, high=100, name="scatter of depth", unit="%", example="15")
    cells = _cells(width=width, length=length, step=step)
    width, pitch = cells * step, plane.pitch
    aside = plane.shaving_width / 2 + 3 * scatter
    first, last = -ceil(aside / pitch), ceil((width + aside) / pitch)
    count = last - first
    if passes * count > _STROKES_MOST:
        raise ValueError(
            f"{passes} passes of {count} strokes are more than {_STROKES_MOST:,}; let them "
            "overlap less, or take fewer passes"
        )
    profile = np.zeros(cells, dtype=np.float32)
    places = ((np.arange(cells) + 0.5) * step).astype(np.float32)
    half_sole = (plane.iron_width + _BESIDE_THE_IRON) / 2
    strokes = []
    # Three numbers a stroke and one of them unused: with two, every picture would be another.
    for shifts in np.random.default_rng(seed).standard_normal((passes, count, 3)):
        before = profile.copy()
        for i, (sideways, deeper, _) in enumerate(shifts):
            centre = (first + i + 0.5) * pitch + scatter * float(sideways)
            depth = plane.shaving * max(1 + depth_scatter / 100 * float(deeper), _THINNEST)
            # Beyond the patch the board is like its edge.
            left = min(max(int((centre - half_sole) / step), 0), cells - 1)
            right = max(min(ceil((centre + half_sole) / step), cells), left + 1)
            level = float(before[left:right].max())
            strokes.append(PlaneStroke(centre, level, depth))
            cut = plane.iron.edge(places[left:right] - np.float32(centre)) + np.float32(
                level - depth
            )
            np.minimum(profile[left:right], cut, out=profile[left:right])
    profile.flags.writeable = False
    return Surface(profile, round(length / step) * step, step, plane, tuple(strokes), passes)


def _cells(*, width: float, length: float, step: float) -> int:
    """Cells of a patch across it, refused where there are none or too many."""
    above_zero(width, name="width of the patch", example="60")
    above_zero(length, name="length of the patch", example="40")
    above_zero(step, name="step", example="0.1")
    along, across = round(length / step), round(width / step)
    if min(along, across) < 4 or along * across > _CELLS_MOST:
        raise ValueError(
            f"a patch of {width:g} by {length:g} mm in steps of {step:g} mm has {across} by "
            f"{along} cells; choose a step that gives from 4 each way to {_CELLS_MOST:,} in all, "
            f"such as {STEP:g}"
        )
    return across
