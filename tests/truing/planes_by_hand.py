"""The flattest plane by trying every plane that could be it, without a linear program.

At the best of all planes, pairs of readings are touched: two on one side and two on the other, or
three on one side and one on the other. Either way two directions are known in which the plane runs
parallel to a line through two readings of one face. So it is among the planes that run parallel to
two such lines, and trying them all finds it.
"""

from collections.abc import Iterator, Sequence
from itertools import combinations

import numpy as np
from numpy.typing import NDArray

Numbers = NDArray[np.float64]


def slopes(x: Numbers, y: Numbers, faces: Sequence[Numbers]) -> Iterator[tuple[float, float]]:
    """Slopes of every plane that could be the best."""
    lines = [
        (x[j] - x[i], y[j] - y[i], face[j] - face[i])
        for face in faces
        for i, j in combinations(range(len(x)), 2)
    ]
    for (x1, y1, z1), (x2, y2, z2) in combinations(lines, 2):
        turn = x1 * y2 - x2 * y1
        if abs(turn) > 1e-9:
            yield (z1 * y2 - z2 * y1) / turn, (x1 * z2 - x2 * z1) / turn


def least_deep(x: Numbers, y: Numbers, height: Numbers) -> float:
    """The least depth of all those planes. [mm]"""
    return min(float(np.ptp(height - a * x - b * y)) for a, b in slopes(x, y, [height]))


def most_thick(x: Numbers, y: Numbers, top: Numbers, bottom: Numbers) -> float:
    """The greatest upright thickness of all those planes. [mm]"""
    return max(
        float((top - a * x - b * y).min() - (bottom - a * x - b * y).max())
        for a, b in slopes(x, y, [top, bottom])
    )
