"""Readings of a face: what they must tell, and the bow, cup and twist fitted to them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

import numpy as np

from toolkit.results import above_zero, one_of
from toolkit.truing.places import place_on_board
from toolkit.truing.warp import NO_WARP, Warp, shapes

if TYPE_CHECKING:
    from numpy.typing import ArrayLike, NDArray

    from toolkit.measures import Rule

    Numbers = NDArray[np.float64]

Measured = Literal["heights", "gaps"]

# Readings whose second direction is this much shorter than the first lie on one line.
ON_A_LINE = 1e-6

# What each shape needs before readings can tell it from a tilt or from another shape.
_TELLS = (
    ("bow", "read the middle of the length too, not the ends alone"),
    ("cup", "read the middle of the width too, not the edges alone"),
    ("twist", "read all four corners"),
)


def checked(**given: ArrayLike) -> tuple[Numbers, ...]:
    """Readings as arrays, x and y first; refused unless they say how a plane lies. [mm]"""
    made = tuple(np.asarray(values, dtype=np.float64) for values in given.values())
    if len({array.shape for array in made}) > 1 or made[0].ndim != 1:
        told = ", ".join(f"{array.size} of {name}" for name, array in zip(given, made, strict=True))
        raise ValueError(f"the readings do not match: {told}; give one of each a reading, in a row")
    if not np.isfinite(made).all():
        raise ValueError("a reading is no length; measure it again, or leave it out of every list")
    x, y = made[:2]
    if len(x) < 3:
        told = ("there are no readings", "there is one reading", "there are two readings")[len(x)]
        raise ValueError(
            f"{told}: a plane needs three at least, and to know a board read its four corners, "
            "the middles of its edges and its middle"
        )
    about_x, about_y = x - x.mean(), y - y.mean()
    xx, yy, xy = about_x @ about_x, about_y @ about_y, about_x @ about_y
    if xx * yy - xy * xy <= (ON_A_LINE * (xx + yy)) ** 2:
        raise ValueError(
            f"all {len(x)} readings lie on one line, from x {x[0]:g}, y {y[0]:g} to x {x[-1]:g}, "
            f"y {y[-1]:g} mm: a face could tilt about it; read along both edges of the board too"
        )
    return made


@dataclass(frozen=True, slots=True)
class FittedWarp:
    """The warp that fits readings best by least squares. [mm]"""

    warp: Warp
    rest: float  # the furthest that a reading lies from that face
    at: tuple[float, float]  # x and y of it

    def sentence(self, rule: Rule) -> str:
        """The warp, and what it leaves out, in words."""
        if self.rest < NO_WARP:
            return f"{self.warp.sentence(rule)} The readings lie on just such a face."
        place = place_on_board(
            self.at[0], y=self.at[1], length=self.warp.length, width=self.warp.width
        )
        return (
            f"{self.warp.sentence(rule)} No reading lies further than {rule.exact(self.rest)} "
            f"from such a face; the furthest is at {place}."
        )


def warp_from_readings(
    rows: Sequence[tuple[float, float, float]],
    *,
    length: float,
    width: float,
    measured: Measured = "heights",
) -> FittedWarp:
    """Bow, cup and twist from readings taken anywhere on a face.

    Parameters
    ----------
    rows : sequence of (x, y, reading)
        From the left end, from the near edge, and what was read there. [mm]
    length, width : float
        Of the board. [mm]
    measured : str
        ``"heights"`` of the face above anything flat, or ``"gaps"`` read by feeler between the
        face and a straightedge or winding sticks held level above it.

    Returns
    -------
    FittedWarp
        The warp, and how far the readings lie from it. [mm]

    Raises
    ------
    ValueError
        A size is not above 0, a reading is no number or lies off the board, or the readings do
        not tell bow, cup and twist apart.

    Source
    ------
    Geometry: least squares over a tilt, two arcs and a steady twist.

    >>> grid = [(x, y, 0.01 * x) for x in (0, 350, 700) for y in (0, 36, 72)]
    >>> fitted = warp_from_readings(grid, length=700, width=72)
    >>> abs(round(fitted.warp.bow, 6)), abs(round(fitted.warp.twist, 6))
    (0.0, 0.0)
    """
    above_zero(length, name="length", example="700")
    above_zero(width, name="width", example="72")
    one_of(measured, name="measured", allowed=("heights", "gaps"))
    x, y, read = np.array(rows, dtype=np.float64).reshape(-1, 3).T
    checked(x=x, y=y, reading=read)
    off = np.flatnonzero((x < 0) | (x > length) | (y < 0) | (y > width))
    if len(off):
        at = int(off[0])
        raise ValueError(
            f"reading {at + 1} was taken at x {x[at]:g}, y {y[at]:g} mm, off a board of "
            f"{length:g} × {width:g} mm; give places from its left end and its near edge"
        )
    height = read if measured == "heights" else -read
    bends = shapes(x / length, y / width)
    tilt = [np.ones(len(x)), x / length, y / width]
    for bend, (word, need) in zip(bends, _TELLS, strict=True):
        others = np.column_stack([*tilt, *(row for row in bends if row is not bend)])
        if _rest(others, bend).max() < 1e-6:
            raise ValueError(f"these {len(x)} readings cannot tell the {word}: {need}")
    matrix = np.column_stack([*tilt, *bends])
    found = np.linalg.lstsq(matrix, height, rcond=None)[0]
    rest = np.abs(height - matrix @ found)
    most = int(np.argmax(rest))
    return FittedWarp(
        warp=Warp(length, width, *(float(value) for value in found[3:])),
        rest=float(rest[most]),
        at=(float(x[most]), float(y[most])),
    )


def _rest(matrix: Numbers, values: Numbers) -> Numbers:
    """The part of the values that no mixture of the columns gives."""
    rest: Numbers = np.abs(values - matrix @ np.linalg.lstsq(matrix, values, rcond=None)[0])
    return rest


def _rule(places: Numbers) -> Numbers:
    """The share of the way that each place stands for: by Simpson's rule, else by trapezia."""
    gaps = np.diff(places)
    if len(places) % 2 == 1 and np.allclose(gaps, gaps[0], rtol=1e-6):
        shares = np.full(len(places), 2.0)
        shares[1::2] = 4.0
        shares[[0, -1]] = 1.0
    else:
        shares = np.zeros(len(places))
        shares[:-1] += gaps
        shares[1:] += gaps
    whole: Numbers = shares / shares.sum()
    return whole


def shares_of_face(x: Numbers, y: Numbers) -> Numbers:
    """The share of the face that each reading stands for; they add up to one.

    Readings on a full grid of rows and columns stand for the rectangle that it covers; readings
    taken anywhere else count alike.
    """
    along, at_x = np.unique(x, return_inverse=True)
    across, at_y = np.unique(y, return_inverse=True)
    full = len(along) * len(across) == len(x) and len(along) > 1 and len(across) > 1
    if full and len(np.unique(at_x * len(across) + at_y)) == len(x):
        shares: Numbers = _rule(along)[at_x] * _rule(across)[at_y]
        return shares
    return np.full(len(x), 1 / len(x))
