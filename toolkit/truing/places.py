"""Places on a board as it lies on the bench, in words: left to right, near and far edge."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

import numpy as np

from toolkit.results import listed

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Numbers = NDArray[np.float64]

_ALL = [(along, across) for along in range(3) for across in range(3)]


def place_on_board(x: float, *, y: float, length: float, width: float) -> str:
    """Where a point lies, by thirds of the board. [mm]

    >>> place_on_board(690, y=70, length=700, width=72)
    'the right far corner'
    """
    return _words(_third(x, length), _third(y, width))


def places_on_board(points: Iterable[tuple[float, float]], *, length: float, width: float) -> str:
    """Where several points lie, in as few words as say it. [mm]

    >>> places_on_board([(0, 0), (0, 36), (0, 72)], length=700, width=72)
    'right across the left end'
    """
    thirds = sorted({(_third(x, length), _third(y, width)) for x, y in points})
    along, across = {row[0] for row in thirds}, {row[1] for row in thirds}
    whole = {
        frozenset(_ALL): "the whole face",
        frozenset(row for row in _ALL if row[0] != 1): "both ends",
        frozenset(row for row in _ALL if row[1] != 1): "both edges",
        frozenset(row for row in _ALL if 1 not in row): "all four corners",
    }
    if (words := whole.get(frozenset(thirds))) is not None:
        return words
    if len(thirds) == 3 and len(across) == 3 and len(along) == 1:
        return f"right across {_words(next(iter(along)), 1)}"
    if len(thirds) == 3 and len(along) == 3 and len(across) == 1:
        return f"all along {_words(1, next(iter(across)))}"
    return listed([_words(*row) for row in thirds])


def _words(along: int, across: int) -> str:
    end, edge = ("left", "", "right")[along], ("near", "", "far")[across]
    if end and edge:
        return f"the {end} {edge} corner"
    if end or edge:
        return f"the {end} end" if end else f"the {edge} edge"
    return "the middle"


def _third(value: float, size: float) -> int:
    share = value / size if size > 0 else 0.5
    return 0 if share < 1 / 3 else 2 if share > 2 / 3 else 1


def most_at(x: Numbers, y: Numbers, removal: Numbers) -> str:
    """Where most comes off, in words; readings within a hundredth of the most count with it."""
    deepest = removal >= 0.99 * removal.max()
    left, near = float(x.min()), float(y.min())
    return places_on_board(
        zip((x[deepest] - left).tolist(), (y[deepest] - near).tolist(), strict=True),
        length=float(np.ptp(x)),
        width=float(np.ptp(y)),
    )
