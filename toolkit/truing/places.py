"""Places on a board as it lies on the bench: length from left to right, one edge near.

x runs along the board from its left end, y across it from the edge near you, heights upwards.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

import numpy as np

from toolkit.truing._words import spoken

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Numbers = NDArray[np.float64]

_ALL = [(along, across) for along in range(3) for across in range(3)]

CORNERS = ("left near", "left far", "right near", "right far")


def place_on_board(x: float, *, y: float, length: float, width: float) -> str:
    """Where a point lies, in words for somebody standing at the bench.

    Parameters
    ----------
    x, y : float
        From the left end, and from the near edge. [mm]
    length, width : float
        Of the board. [mm]

    Returns
    -------
    str
        Such as ``the middle``, ``the right end`` or ``the left far corner``.

    Source
    ------
    Thirds of the board: the workbook's own.

    >>> place_on_board(690, y=70, length=700, width=72)
    'the right far corner'
    """
    return _words(_third(x, length), _third(y, width))


def places_on_board(points: Iterable[tuple[float, float]], *, length: float, width: float) -> str:
    """Where several points lie, in as few words as say it.

    Parameters
    ----------
    points : iterable of (x, y)
        From the left end and from the near edge. [mm]
    length, width : float
        Of the board. [mm]

    Returns
    -------
    str
        Such as ``all along the near edge`` or ``both ends``.

    Source
    ------
    Thirds of the board: the workbook's own.

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
    return spoken([_words(*row) for row in thirds])


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
