"""Sets of parts, counted by kind: parts of one size can change places, so only counts matter."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import product

from toolkit.stock.blanks import Blank

Counts = tuple[int, ...]

MOST_SETS = 600


def kinds_of(blanks: Sequence[Blank]) -> tuple[tuple[Blank, ...], ...]:
    """Parts in groups that can change places, in the order of the first of each."""
    groups: dict[object, list[Blank]] = {}
    for blank in blanks:
        groups.setdefault(blank.alike, []).append(blank)
    return tuple(map(tuple, groups.values()))


def sets_up_to(counts: Sequence[int]) -> Iterator[Counts]:
    """Every set of so many parts of each kind or fewer; what a set holds comes before it."""
    return product(*(range(count + 1) for count in counts))


def without(one: Counts, *, other: Counts) -> Counts:
    """What is left of a set; a negative count where the other holds more."""
    return tuple(a - b for a, b in zip(one, other, strict=True))


def few_enough(counts: Sequence[int]) -> bool:
    """Whether so many parts of each kind make few enough sets, counted without listing them."""
    total = 1
    for count in counts:
        total *= count + 1
        if total > MOST_SETS:
            return False
    return True
