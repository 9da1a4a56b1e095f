"""Ways to get a set of parts from several boards, each dearer in wood and better to look at."""

from __future__ import annotations

from typing import NamedTuple

from toolkit.stock.sets import Counts


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
