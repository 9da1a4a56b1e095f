"""Warp fitted to a list of readings, which corners stand high, and whether the board rocks."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

import numpy as np

from toolkit.truing._arrays import arrays, spread_out
from toolkit.truing._checks import above_zero, one_of
from toolkit.truing._program import resting_plane
from toolkit.truing.places import CORNERS, place_on_board
from toolkit.truing.warp import NO_WARP, Warp, shapes

if TYPE_CHECKING:
    from numpy.typing import ArrayLike, NDArray

    from toolkit.measures import Rule

    Numbers = NDArray[np.float64]

Measured = Literal["heights", "gaps"]

STEADY = 0.05  # custom, no source: a board that rocks less than this does not feel loose [mm]

# What each shape needs before readings can tell it from a tilt or from another shape.
NEEDS = (
    ("bow", "read the middle of the length too, not the ends alone"),
    ("cup", "read the middle of the width too, not the edges alone"),
    ("twist", "read all four corners"),
)


@dataclass(frozen=True, slots=True)
class FittedWarp:
    """Bow, cup and twist of a face, as its readings tell them.

    Attributes
    ----------
    warp : Warp
        What fits them best by least squares. [mm]
    rest : float
        The furthest that a reading lies from that face: what the three words leave out. [mm]
    at : tuple of float
        Where that is, x and y. [mm]
    """

    warp: Warp
    rest: float
    at: tuple[float, float]

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
    readings: Sequence[tuple[float, float, float]],
    *,
    length: float,
    width: float,
    measured: Measured = "heights",
) -> FittedWarp:
    """Bow, cup and twist from readings taken anywhere on a face.

    Parameters
    ----------
    readings : sequence of (x, y, reading)
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
    x, y, read = _columns(readings)
    spread_out(x, y)
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
    for bend, (word, need) in zip(bends, NEEDS, strict=True):
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


def _columns(readings: Sequence[tuple[float, float, float]]) -> tuple[Numbers, ...]:
    for number, row in enumerate(readings, start=1):
        if len(row) != 3:
            raise ValueError(
                f"reading {number} was given as {row!r}; give three numbers in mm: how far from "
                "the left end, how far from the near edge, and what was read"
            )
    along, across, read = zip(*readings, strict=True) if len(readings) else ((), (), ())
    return arrays(x=along, y=across, reading=read)


def _rest(matrix: Numbers, values: Numbers) -> Numbers:
    """What of the values no mixture of the columns gives."""
    rest: Numbers = np.abs(values - matrix @ np.linalg.lstsq(matrix, values, rcond=None)[0])
    return rest


@dataclass(frozen=True, slots=True)
class Rocking:
    """How a board lies on a flat bench.

    Attributes
    ----------
    lifts : tuple of float
        How far each corner lifts when the corner opposite is pressed down, in the order of
        ``CORNERS``: left near, left far, right near, right far. [mm]
    """

    lifts: tuple[float, float, float, float]

    @property
    def travel(self) -> float:
        """The most that any corner lifts. [mm]"""
        return max(self.lifts)

    @property
    def steady(self) -> bool:
        """Whether it lies still."""
        return self.travel <= STEADY

    @property
    def sentence(self) -> str:
        """How it lies, in words; a gap is told in millimetres."""
        if self.steady:
            return "It lies still on the bench."
        least = self.travel * 0.5
        loose = [name for name, lift in zip(CORNERS, self.lifts, strict=True) if lift > least]
        if len(loose) == 4:
            return (
                f"It rocks on its belly: pressed down at one corner, the one opposite lifts "
                f"{self.travel:.2f} mm. Turn it over."
            )
        return (
            f"It rocks: pressed down at one of the {' and '.join(loose)} corners, the other "
            f"lifts {self.travel:.2f} mm."
        )


def rocking(*, x: ArrayLike, y: ArrayLike, underside: ArrayLike) -> Rocking:
    """Whether a board rocks on a flat bench, and at which corners.

    Parameters
    ----------
    x, y : array of shape (n,)
        Where each reading was taken; the corners must be among them. [mm]
    underside : array of shape (n,)
        Height of the face that lies on the bench. [mm]

    Returns
    -------
    Rocking
        How far each corner lifts. [mm]

    Raises
    ------
    ValueError
        There are fewer than three readings, they lie on one line, or one is no number.

    Source
    ------
    Geometry: pressed at a corner, the bench touches it there and lies as close to the board's
    middle as it can, a linear program.

    >>> twisted = rocking(x=[0, 0, 700, 700], y=[0, 72, 0, 72], underside=[0, 0, 0, 2])
    >>> [round(lift, 6) + 0.0 for lift in twisted.lifts]
    [2.0, 0.0, 0.0, 2.0]
    """
    along, across, low = arrays(x=x, y=y, underside=underside)
    spread_out(along, across)
    span_x, span_y = np.ptp(along), np.ptp(across)
    ends = [
        int(np.argmax(a * along / span_x + b * across / span_y)) for a in (-1, 1) for b in (-1, 1)
    ]
    lifts = []
    for corner in range(4):
        pressed, free = ends[3 - corner], ends[corner]
        a, b, c = resting_plane(along, across, low, pressed)
        lifts.append(max(float(low[free] - a * along[free] - b * across[free] - c), 0.0))
    return Rocking((lifts[0], lifts[1], lifts[2], lifts[3]))
