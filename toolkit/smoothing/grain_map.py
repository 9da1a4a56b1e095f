"""Maps of how the fibres lie under a surface: where they climb towards it, where they dive."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal

import numpy as np

from toolkit.smoothing._checks import above_zero, between, one_of

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Numbers = NDArray[np.float32]

Pattern = Literal["straight", "interlocked", "curly", "knot"]
PATTERNS: tuple[Pattern, ...] = ("straight", "interlocked", "curly", "knot")

WIDTH, LENGTH, STEP = 60.0, 40.0, 0.1  # a patch to look at [mm]
_CELLS_MOST = 4_000_000
# How the patterns are drawn: what one sees on boards, no source. [mm]
_RIBBON = 9.0
_CURL = 11.0
_KNOT = 6.0


def shape_of(*, width: float, length: float, step: float) -> tuple[int, int]:
    """Cells of a patch along and across it, refused where there are none or too many."""
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
    return along, across


def grain_map(
    pattern: Pattern,
    *,
    slope: float = 4.0,
    width: float = WIDTH,
    length: float = LENGTH,
    step: float = STEP,
    seed: int = 1,
) -> Numbers:
    """Slopes of the fibres to the surface over a patch, for trying strokes on.

    Parameters
    ----------
    pattern : str
        ``"straight"``: one slope; ``"interlocked"``: ribbons along the board that slope by turns
        this way and that; ``"curly"``: waves along it; ``"knot"``: fibres that dive before a knot
        and climb behind it.
    slope : float
        The straight pattern's slope, positive where fibres climb towards the far end, or the
        greatest slope of the others. [degrees]
    width, length : float
        Size of the patch across the strokes and along them. [mm]
    step : float
        Size of a cell. [mm]
    seed : int
        Which of the many such boards.

    Returns
    -------
    array
        Slope at each cell, rows from the near end to the far end, positive where fibres climb
        towards the far end. [degrees]

    Raises
    ------
    ValueError
        There is no such pattern, the slope is out of range, or the patch has no cells or too many.

    Source
    ------
    Shapes as one sees them on boards: drawn, no source.

    >>> float(grain_map("straight", slope=-3).max())
    -3.0
    """
    one_of(pattern, name="pattern", allowed=PATTERNS)
    between(slope, low=-30, high=30, name="slope of the grain", example="4")
    along, across = shape_of(width=width, length=length, step=step)
    if pattern == "straight":
        return np.full((along, across), slope, dtype=np.float32)
    rng = np.random.default_rng(seed)
    y = ((np.arange(along, dtype=np.float32) + 0.5) * step)[:, None]
    x = ((np.arange(across, dtype=np.float32) + 0.5) * step)[None, :]
    shift = float(rng.uniform(0, 2 * np.pi))
    if pattern == "interlocked":
        # Ribbons of unequal width that wander a little.
        way = 2 * np.pi * (x + 0.8 * np.sin(y / 23 + shift)) / (2 * _RIBBON) + shift
        shares = np.sin(way + 0.7 * np.sin(way / 2.3))
    elif pattern == "curly":
        crests = y + 1.6 * np.sin(x / 9 + shift) + 0.9 * np.sin(x / 3.7)
        shares = np.sin(2 * np.pi * crests / _CURL + shift)
    else:
        high = length * float(rng.uniform(0.45, 0.6))
        middle = width * float(rng.uniform(0.4, 0.6))
        ahead, aside = (y - high) / _KNOT, (x - middle) / _KNOT
        # Fibres dive under the knot on its near side and come up again on its far side.
        shares = ahead * np.exp(0.5 - (ahead**2 + aside**2) / 2)
    return np.asarray(slope * shares, dtype=np.float32)
