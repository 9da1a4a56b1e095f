"""A floor under the wood that a class needs, which a student can check.

Put a price on each kind of part and a rent on each board, such that no way to saw a board gives
parts worth more than the wood it takes and the board's rent. Whoever then supplies the class
takes in Σ price × parts and can have paid at most Σ rent less for wood: so no layout uses less
wood than Σ price × parts − Σ rent. Any prices give a true floor; good ones give a high floor.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, floor
from time import monotonic

import numpy as np

from toolkit.stock.blanks import Blank, can_give
from toolkit.stock.boards import Board
from toolkit.stock.class_program import Market, duals
from toolkit.stock.class_sections import FAR, BoardSections

TENTH = 100.0  # prices and rents are kept to a tenth of a cubic centimetre [mm³]
BEGIN_WITH = 40  # patterns of each board


@dataclass(frozen=True, slots=True)
class Prices:
    """Prices of parts and rents of boards, and the floor that follows. [mm³]"""

    parts: tuple[tuple[Blank, int, float], ...]
    boards: tuple[tuple[str, float], ...]

    @property
    def floor(self) -> float:
        """No layout uses less wood than this. [mm³]"""
        income = sum(count * price for _, count, price in self.parts)
        return max(0.0, income - sum(rent for _, rent in self.boards))


def dearest(
    sections: BoardSections, *, prices: Sequence[float], each: float
) -> tuple[float, tuple[int, ...], int]:
    """The parts from one board that are worth most above the wood they take.

    The rent that the board must have, 0 or more [mm³]; how many parts of each kind earn it; and
    the length that they take [cells]. Dynamic programming along the board.
    """
    on = sections.on
    worth = [sum(n * p for n, p in zip(row, prices, strict=True)) for row in sections.counts]
    ends = [row.tolist() for row in sections.ends]
    most = [-1.0] * (on.along + 1)  # the dearest parts of which the last ends here
    last: dict[int, tuple[int, int]] = {}
    most[0], so_far = 0.0, -1.0
    for x, here in enumerate(most):
        if here <= so_far:
            continue  # what ended before is worth as much and leaves more room
        so_far = here
        start = x + sections.gap if x else 0
        for section, (value, row) in enumerate(zip(worth, ends, strict=True)):
            end = row[start]
            if end < FAR and here + value > most[end]:
                most[end] = here + value
                last[end] = x, section
    cost = each * on.cell
    rent, x = max((value - x * cost, x) for x, value in enumerate(most) if value >= 0)
    used, counts = x, [0] * len(prices)
    while x:
        x, section = last[x]
        counts = [n + int(more) for n, more in zip(counts, sections.counts[section], strict=True)]
    return rent, tuple(counts), used


def checked_prices(
    sections: Sequence[BoardSections],
    *,
    kinds: Sequence[Blank],
    counts: Sequence[int],
    prices: Sequence[float],
) -> Prices:
    """Prices rounded to what can be added up by hand, with the rents that they need. [mm³]

    By the duality of linear programs any prices give a floor.
    """
    rounded = [max(0.0, floor(price / TENTH) * TENTH) for price in prices]
    rents = []
    for one in sections:
        board = one.on.board
        rent, _, _ = dearest(one, prices=rounded, each=board.width * board.thickness)
        rents.append((board.name, ceil(rent / TENTH - 1e-9) * TENTH))
    return Prices(tuple(zip(kinds, counts, rounded, strict=True)), tuple(rents))


def best_prices(
    sections: Sequence[BoardSections],
    *,
    kinds: Sequence[Blank],
    on: Market,
    seconds: float,
) -> Prices:
    """The prices with the highest floor, as far as they are found in so many seconds. [mm³]

    Column generation: a pattern dearer than its board's rent is brought into the linear program.
    """
    end, best = monotonic() + seconds, None
    boards = [one.on.board for one in sections]
    offers = on.offers(on.most_promising(BEGIN_WITH))
    prices, rents = on.prices.tolist(), on.rents
    while True:
        made = checked_prices(sections, kinds=kinds, counts=on.wanted.tolist(), prices=prices)
        if best is None or made.floor > best.floor:
            best = made
        fresh = False
        for index, one in enumerate(sections):
            each = boards[index].width * boards[index].thickness
            rent, row, used = dearest(one, prices=prices, each=each)
            if rent > rents[index] + 1e-7 * on.short:
                rows, wood = offers[index]
                wood = np.append(wood, used * one.on.cell * each)
                offers[index] = np.vstack((rows, np.array([row], np.int32))), wood
                fresh = True
        if not fresh or monotonic() > end:
            return best
        found, rents = duals(offers, need=on.wanted, short=on.short)
        prices = found.tolist()


def area_prices(
    blanks: Sequence[Sequence[Blank]], boards: Sequence[Board], *, gap: float
) -> Prices:
    """Prices by area alone, for classes in which everybody makes another size. [mm³]

    A part with half a gap on every side covers so much of a board with half a gap round it.
    """
    parts = []
    for group in blanks:
        part = group[0]
        able = [board for board in boards if can_give(board, part)]
        each = min((b.thickness * b.width / (b.width + gap) for b in able), default=0.0)
        price = floor((part.length + gap) * (part.width + gap) * each / TENTH) * TENTH
        parts.append((part, len(group), price))
    rents = [
        (b.name, ceil(gap * b.width * b.thickness / TENTH) * TENTH)
        for b in boards
        if any(can_give(b, group[0]) for group in blanks)
    ]
    return Prices(tuple(parts), tuple(rents))
