"""Lists of readings as arrays, refused where they cannot say how a face lies."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from numpy.typing import ArrayLike, NDArray

    Numbers = NDArray[np.float64]

# Readings whose second direction is this much shorter than the first lie on one line.
ON_A_LINE = 1e-6


def arrays(**given: ArrayLike) -> tuple[Numbers, ...]:
    """Readings as arrays of one length, every number of them finite; x and y come first."""
    made: list[Numbers] = []
    for name, values in given.items():
        try:
            array = np.asarray(values, dtype=np.float64)
        except (TypeError, ValueError):
            raise ValueError(
                f"{name} was given as {values!r}; give a list of numbers in mm, one a reading"
            ) from None
        if array.ndim != 1:
            raise ValueError(
                f"{name} has the shape {array.shape}; give one number a reading, in one row: "
                f"a grid of readings goes in by {name}.ravel()"
            )
        made.append(array)
    counts = {name: len(array) for name, array in zip(given, made, strict=True)}
    if len(set(counts.values())) > 1:
        told = ", ".join(f"{count} of {name}" for name, count in counts.items())
        raise ValueError(f"the readings do not match: {told}; give as many of each")
    for name, array in zip(given, made, strict=True):
        bad = np.flatnonzero(~np.isfinite(array))
        if len(bad):
            at = int(bad[0])
            place = "" if name in ("x", "y") else f" (x {made[0][at]:g} mm, y {made[1][at]:g} mm)"
            raise ValueError(
                f"{name} of reading {at + 1}{place} is {array[at]:g}, which is no length; "
                "measure it again, or leave that reading out of every list"
            )
    return tuple(made)


def spread_out(x: Numbers, y: Numbers) -> None:
    """Raise unless the readings say how a plane lies: three at least, not all on one line."""
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
