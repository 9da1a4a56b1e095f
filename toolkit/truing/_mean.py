"""The mean of readings over a face, each standing for the piece of face round it."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Numbers = NDArray[np.float64]


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
