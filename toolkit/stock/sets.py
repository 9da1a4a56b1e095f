"""Sets of parts, counted by kind, and ways to get them from several boards."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import product
from typing import NamedTuple

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


class Way(NamedTuple):
    """One way to get a set of parts: the wood it takes [mm³], the sum of their looks, and how.

    A tuple, since tens of thousands are made and dropped again for one box on many boards.
    """

    volume: float
    looks: float
    board: int = -1
    used: float = 0.0
    chosen: Counts = ()
    before: Way | None = None

    @property
    def all_used(self) -> float:
        """Length of board used, all boards together. [mm]"""
        return self.used + (self.before.all_used if self.before is not None else 0.0)


def worth_having(ways: list[Way], *, step: float, no_gain: float) -> list[Way]:
    """The least wood first; then only what looks better by a step, and the best-looking last."""
    ways = sorted(ways, key=lambda way: (way.volume, -way.looks))
    enough = max(way.looks for way in ways) - no_gain
    kept: list[Way] = []
    wanted = -1.0
    for way in ways:
        if way.looks >= wanted:
            kept.append(way)
            if way.looks >= enough:
                break
            wanted = min(way.looks + step, enough)
    return kept
