"""The linear program behind a class's layout: prices, rents, and a choice when there are many.

Of every board at most one pattern is taken; parts that stay missing cost more than any board.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from toolkit.stock.class_patterns import BoardPatterns

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Reals = NDArray[np.float64]
    Cells = NDArray[np.int32]

    Offers = Sequence[tuple[Cells, Reals]]  # of each board: counts [pattern, kind], wood [mm³]

AT_A_TIME = 8  # patterns of one board that are brought into the program together
NEAR_ENOUGH = 0.001  # of the wood: no longer search is worth less than a tenth of a percent


@dataclass(frozen=True, slots=True)
class Shared:
    """A pattern for each board, -1 for none; whether it is proved to be of the least wood."""

    patterns: tuple[int, ...]
    cost: float
    proved: bool


@dataclass(frozen=True)
class Market:
    """Patterns of every board, with prices and rents from the linear program. [mm³]"""

    patterns: tuple[BoardPatterns, ...]
    costs: tuple[Reals, ...]
    wanted: Cells
    short: float  # what a part costs that stays missing
    prices: Reals
    rents: Reals

    @property
    def floor(self) -> float:
        """What no choice of these patterns can be cheaper than. [mm³]"""
        return float(self.prices @ self.wanted - self.rents.sum())

    def losses(self, index: int) -> Reals:
        """What each pattern of a board loses against the floor. [mm³]"""
        counts = self.patterns[index].counts
        worse: Reals = self.costs[index] - counts @ self.prices + self.rents[index]
        return worse

    def most_promising(self, of_each: int) -> list[Cells]:
        """Rows of each board's patterns that lose least."""
        return [
            np.argsort(self.losses(index))[:of_each].astype(np.int32)
            for index in range(len(self.patterns))
        ]

    def offers(self, rows: Sequence[Cells]) -> list[tuple[Cells, Reals]]:
        """Counts and wood of some patterns of each board."""
        return [
            (one.counts[some], cost[some])
            for one, cost, some in zip(self.patterns, self.costs, rows, strict=True)
        ]


def market(patterns: Sequence[BoardPatterns], *, wanted: Sequence[int]) -> Market:
    """Find the prices and rents that give the highest floor. [mm³]

    A linear program over the patterns, of which those that could matter are brought in by and by.
    """
    need = np.array(wanted, np.int32)
    boards = [one.sections.on.board for one in patterns]
    costs: list[Reals] = [
        one.used.astype(float) * float(one.sections.on.cell * board.width * board.thickness)
        for one, board in zip(patterns, boards, strict=True)
    ]
    # A part that stays missing costs more than any whole board, so that none does without need.
    short = 2.0 * max((b.length * b.width * b.thickness for b in boards), default=1.0)
    taken: list[list[int]] = [[] for _ in patterns]
    prices, rents = np.full(len(need), short), np.zeros(len(patterns))
    fresh = True
    while fresh:
        fresh = False
        for index, (one, cost) in enumerate(zip(patterns, costs, strict=True)):
            gain = one.counts @ prices - cost - rents[index]
            for row in np.argsort(-gain)[:AT_A_TIME]:
                if gain[row] > 1e-7 * short and int(row) not in taken[index]:
                    taken[index].append(int(row))
                    fresh = True
        if fresh:
            offers = [
                (one.counts[rows], cost[rows])
                for one, cost, rows in zip(patterns, costs, taken, strict=True)
            ]
            prices, rents = duals(offers, need=need, short=short)
    # From prices alone the rents can be had without the program's rounding.
    rents = np.array(
        [
            max(0.0, float(np.max(one.counts @ prices - cost, initial=0.0)))
            for one, cost in zip(patterns, costs, strict=True)
        ]
    )
    return Market(tuple(patterns), tuple(costs), need, short, prices, rents)


def duals(offers: Offers, *, need: Cells, short: float) -> tuple[Reals, Reals]:
    """Prices of parts and rents of boards that belong to the cheapest mixture of patterns. [mm³]"""
    from scipy.optimize import linprog

    cost, counts, home = _columns(offers, need, short)
    left = np.concatenate((-counts, home))
    right = np.concatenate((-need.astype(float), np.ones(len(offers))))
    answer = linprog(cost / short, A_ub=left, b_ub=right, method="highs")
    if answer.status != 0:
        raise RuntimeError(f"the linear program of the class was not solved: {answer.message}")
    found = np.maximum(-answer.ineqlin.marginals, 0.0) * short
    return found[: len(need)], found[len(need) :]


def _columns(offers: Offers, need: Cells, short: float) -> tuple[Reals, Reals, Reals]:
    """Cost, parts and board of each pattern, after a column for each kind that stays missing."""
    sizes = [len(wood) for _, wood in offers]
    cost = np.concatenate([np.full(len(need), short), *(wood for _, wood in offers)])
    counts = np.hstack([np.eye(len(need)), *(rows.T.astype(float) for rows, _ in offers)])
    home = np.zeros((len(offers), len(cost)))
    home[np.repeat(np.arange(len(offers)), sizes), np.arange(len(need), len(cost))] = 1.0
    return cost, counts, home


def pick(on: Market, *, of_each: int, time_limit: float) -> Shared | None:
    """One pattern for each board from the most promising of each, None if time was too short."""
    from scipy.optimize import Bounds, LinearConstraint, milp
    from scipy.sparse import csr_matrix

    chosen = on.most_promising(of_each)
    cost, counts, home = _columns(on.offers(chosen), on.wanted, on.short)
    most = np.concatenate((on.wanted, np.ones(len(cost) - len(on.wanted))))
    answer = milp(
        cost / on.short,
        constraints=[
            LinearConstraint(csr_matrix(counts), lb=on.wanted),
            LinearConstraint(csr_matrix(home), ub=1),
        ],
        integrality=np.ones(len(cost)),
        bounds=Bounds(0, most),
        options={"time_limit": time_limit, "mip_rel_gap": NEAR_ENOUGH},
    )
    if answer.x is None:
        return None
    taken, picked = np.round(answer.x[len(on.wanted) :]), []
    for rows in chosen:
        here, taken = taken[: len(rows)], taken[len(rows) :]
        picked.append(int(rows[np.argmax(here)]) if here.any() else -1)
    return Shared(tuple(picked), float(answer.fun) * on.short, False)
