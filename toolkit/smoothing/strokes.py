"""A surface made stroke by stroke: each stroke rides on what the pass before it left."""

from __future__ import annotations

from math import ceil, radians, tan
from typing import TYPE_CHECKING

import numpy as np

from toolkit.smoothing._checks import between, not_negative
from toolkit.smoothing.grain_map import LENGTH, STEP, WIDTH, shape_of
from toolkit.smoothing.plane import Plane
from toolkit.smoothing.surface import Stroke, Surface
from toolkit.smoothing.tearing import tear

if TYPE_CHECKING:
    from numpy.typing import ArrayLike, NDArray

    Numbers = NDArray[np.float32]

_BESIDE_THE_IRON = 14.0  # how much wider a sole is than its iron, about: no source [mm]
_STROKES_MOST = 2000
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
    wander: float = 0.0,
    direction: int = 1,
    grain: ArrayLike | None = None,
    over: Surface | None = None,
    seed: int = 1,
) -> Surface:
    """Plane a patch of a wider and longer board, stroke after stroke from left to right.

    The sole is wider than its iron, so that it always reaches on to wood which this pass has not
    cut yet: it rides level on the highest that the pass before left under it, and the edge cuts
    its curve below that.

    Parameters
    ----------
    plane : Plane
        How the plane is set. [mm, degrees]
    width, length : float
        Size of the patch across the strokes and along them. [mm]
    step : float
        Size of a cell. [mm]
    passes : int
        How often the plane goes over the whole width. [1]
    scatter : float
        Standard deviation of where a stroke lies from where it should. [mm]
    depth_scatter : float
        Standard deviation of a shaving's thickness, as a share of what is set. [%]
    wander : float
        Standard deviation of a stroke's direction from straight along. [degrees]
    direction : int
        1 for strokes towards the far end, -1 towards the near end.
    grain : array, optional
        Slope of the fibres at each cell, as `grain_map` gives it; without it nothing tears.
        [degrees]
    over : Surface, optional
        What is there already; without it a flat. Its size and cells are kept. [mm]
    seed : int
        Which of the many such hands.

    Returns
    -------
    Surface
        The heights. [mm]

    Raises
    ------
    ValueError
        A size or a scatter is out of range, the grain does not fit the patch, or there would be
        too many strokes.

    Source
    ------
    Geometry. That the sole rides level is a model: a real one also tilts into the last track. The
    edge's curve is taken as a parabola, which differs from its circle by 0.2 % of the depth over
    a jack's shaving.

    >>> surface = planed(Plane.smoother(), width=40, length=1)
    >>> abs(surface.ridge / Plane.smoother().scallops.depth - 1) < 0.01
    True
    """
    if direction not in (1, -1):
        raise ValueError(f"direction was given as {direction}; give 1 for away from you, or -1")
    if not 1 <= passes <= 50:
        raise ValueError(f"passes was given as {passes}; give a whole number from 1 to 50")
    not_negative(scatter, name="scatter", example="3")
    between(depth_scatter, low=0, high=100, name="scatter of depth", unit="%", example="15")
    between(wander, low=0, high=20, name="wander", example="1")
    if over is not None:
        step, (along, across) = over.step, over.heights.shape
    else:
        along, across = shape_of(width=width, length=length, step=step)
    slopes = _fitted(grain, (along, across))
    rng = np.random.default_rng(seed)
    heights, strokes = _strokes(
        plane,
        shape=(along, across),
        step=step,
        hand=(passes, scatter, depth_scatter / 100, tan(radians(wander))),
        over=over,
        rng=rng,
    )
    if heights.shape != (along, across):
        heights = np.repeat(heights, along, axis=0)
    torn = np.zeros((along, across), dtype=np.bool_)
    if over is not None:
        # What tore before is torn until it is planed away.
        torn |= over.torn & (heights >= over.heights)
    if slopes is not None:
        torn |= tear(
            heights,
            slopes,
            plane=plane,
            step=step,
            direction=direction,
            rng=np.random.default_rng(seed + 1),
        )
    heights.flags.writeable = False
    return Surface(heights, step, plane, strokes, passes, torn, slopes, direction)


def _fitted(grain: ArrayLike | None, shape: tuple[int, int]) -> Numbers | None:
    if grain is None:
        return None
    slopes = np.asarray(grain, dtype=np.float32)
    if slopes.shape != shape:
        raise ValueError(
            f"the grain has {' by '.join(str(n) for n in slopes.shape)} cells and the patch "
            f"{shape[0]} by {shape[1]}; make it with the same width, length and step"
        )
    return slopes


def _strokes(
    plane: Plane,
    *,
    shape: tuple[int, int],
    step: float,
    hand: tuple[int, float, float, float],
    over: Surface | None,
    rng: np.random.Generator,
) -> tuple[Numbers, tuple[Stroke, ...]]:
    """Heights after all the strokes; one row only where they are the same all along."""
    passes, scatter, unlike, drift = hand
    along, across = shape
    width, pitch, iron = across * step, plane.pitch, plane.iron
    aside = plane.shaving_width / 2 + 3 * scatter + drift * along * step
    first, last = -ceil(aside / pitch), ceil((width + aside) / pitch)
    count = last - first
    if passes * count > _STROKES_MOST:
        raise ValueError(
            f"{passes} passes of {count} strokes are more than {_STROKES_MOST:,}; let them "
            "overlap less, or take fewer passes"
        )
    chance = rng.standard_normal((passes, count, 3))
    if over is None:
        heights = np.zeros((along if drift else 1, across), dtype=np.float32)
    else:
        heights = np.array(over.heights, dtype=np.float32)
    x = ((np.arange(across) + 0.5) * step).astype(np.float32)[None, :]
    y = ((np.arange(heights.shape[0]) + 0.5) * step - along * step / 2).astype(np.float32)
    half_sole, half_iron = (plane.iron_width + _BESIDE_THE_IRON) / 2, iron.cut_width / 2
    curve = np.float32(1 / (2 * iron.radius_in_wood))
    made = []
    for shifts in chance:
        before = heights.copy()
        for i, (sideways, deeper, turned) in enumerate(shifts):
            centre = (first + i + 0.5) * pitch + scatter * float(sideways)
            lean = drift * float(turned)
            depth = plane.shaving * max(1 + unlike * float(deeper), _THINNEST)
            level = _level(before, centre, half_sole=half_sole, step=step)
            made.append(Stroke(centre, lean, level, depth))
            swing = abs(lean) * along * step / 2
            left = max(int((centre - half_iron - swing) / step), 0)
            right = min(ceil((centre + half_iron + swing) / step), across)
            if right <= left:
                continue
            here = heights[:, left:right]
            middles = np.float32(centre) + np.float32(lean) * y[:, None]
            cut = x[:, left:right] - middles
            outside = np.abs(cut) > half_iron
            np.multiply(cut, cut, out=cut)
            cut *= curve
            cut += np.float32(level - depth)
            cut[outside] = np.inf
            np.minimum(here, cut, out=here)
    return heights, tuple(made)


def _level(heights: Numbers, centre: float, *, half_sole: float, step: float) -> float:
    """Height of the highest wood under the sole; beyond the patch the board is like its edge."""
    across = heights.shape[1]
    left = min(max(int((centre - half_sole) / step), 0), across - 1)
    right = max(min(ceil((centre + half_sole) / step), across), left + 1)
    return float(heights[:, left:right].max())
