"""The longest and the widest clear stretch of a board, for a part that does not fit on it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from toolkit.measures import Rule
from toolkit.stock.blanks import Blank
from toolkit.stock.grid import Grid, cells


@dataclass(frozen=True, slots=True)
class Clearest:
    """What a board has to offer a part that does not fit. [mm]

    ``longest`` is the longest clear stretch as wide as the part, ``widest`` the widest clear one
    as long as the part; 0 where there is none.
    """

    blank: Blank
    longest: float
    widest: float

    def reason(self, rule: Rule) -> str:
        """The reason in words, on somebody's rule."""
        length, width = rule.exact(self.blank.length), rule.exact(self.blank.width)

        def stretch(value: float) -> str:
            return rule.show(value, fineness="sizes", direction="down")

        return (
            f"the longest clear stretch {width} wide is {stretch(self.longest)}; "
            f"the widest clear stretch {length} long is {stretch(self.widest)}"
        )


def clearest(on: Grid, *, length: float, width: float) -> tuple[float, float]:
    """The longest clear stretch of this width, and the widest clear one of this length.

    Parameters
    ----------
    on : Grid
        The board.
    length, width : float
        Of the part that does not fit. [mm]

    Returns
    -------
    tuple of float
        Longest and widest, 0 where there is none. [mm]

    Source
    ------
    Two bisections: a stretch that is clear stays clear when it is made shorter or narrower.
    """
    long, wide = cells(length, cell=on.cell), cells(width, cell=on.cell)
    longest = _largest(on.along, lambda n: on.fits(long=n, wide=wide))
    widest = _largest(on.across, lambda n: on.fits(long=long, wide=n))
    return longest * on.cell, widest * on.cell


def _largest(most: int, fits: Callable[[int], bool]) -> int:
    low, high = 0, most
    while low < high:
        middle = (low + high + 1) // 2
        low, high = (middle, high) if fits(middle) else (low, middle - 1)
    return low
