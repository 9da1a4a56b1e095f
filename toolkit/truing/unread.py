"""Readings on a grid with some places left out: what a drawing shows between those that were read.

Nothing is reckoned from such a place. A plane is found from the readings alone; only a picture of
the face needs something to show where nobody has measured.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from numpy.typing import ArrayLike, NDArray

    Numbers = NDArray[np.float64]


def between_readings(grid: ArrayLike) -> Numbers:
    """A grid with its gaps filled from what lies round them, never beyond what was read.

    Parameters
    ----------
    grid : array of shape (along, across)
        What was read, or what comes off there; nan where nothing was. [mm]

    Returns
    -------
    array of shape (along, across)
        The same, each unread place the mean of its neighbours. [mm]

    Source
    ------
    The mean of the neighbours at each unread place: the discrete equation of a stretched sheet.

    >>> between_readings([[0.0, 1.0], [float("nan"), 3.0]]).tolist()
    [[0.0, 1.0], [1.5, 3.0]]
    """
    known = np.asarray(grid, dtype=np.float64)
    missing = np.isnan(known)
    spots = [tuple(spot) for spot in np.argwhere(missing)]
    number = {spot: i for i, spot in enumerate(spots)}
    matrix, given = np.zeros((len(spots), len(spots))), np.zeros(len(spots))
    for i, (a, b) in enumerate(spots):
        for near in ((a - 1, b), (a + 1, b), (a, b - 1), (a, b + 1)):
            if not (0 <= near[0] < known.shape[0] and 0 <= near[1] < known.shape[1]):
                continue
            matrix[i, i] += 1.0
            if near in number:
                matrix[i, number[near]] -= 1.0
            else:
                given[i] += known[near]
    filled = known.copy()
    filled[missing] = np.linalg.solve(matrix, given)
    return filled
