"""The solver against trying everything, on boards small enough for that.

The trial knows nothing of the solver's tables: it takes the sections from the left one by one, in
every order, at every place, and stacks strips in every order, at every height.
"""

import random
from collections.abc import Callable
from functools import cache
from itertools import combinations, permutations

import numpy as np
import pytest

from tests.stock.racks import curve
from toolkit.stock import Blank, Board, Defect
from toolkit.stock.layout import BoardLayouts

NEVER = float("-inf")


def looks_of(board: Board, x: int, y: int, length: int, width: int) -> float:
    """Mean looks of the cells of 1 mm under a part: heartwood 1, sapwood 0, a swirl at knots."""
    total = 0.0
    for along in np.arange(x, x + length) + 0.5:
        edge = np.interp(along, *zip(*board.heart_line, strict=True)) if board.heart_line else 1e9
        for across in np.arange(y, y + width) + 0.5:
            seen = 1.0 if across <= edge else 0.0
            for knot in board.defects:
                if "knot" in knot.kind:
                    dx = max(knot.from_along - along, along - knot.to_along, 0)
                    dy = max(knot.from_across - across, across - knot.to_across, 0)
                    seen *= 1 - 0.8 * min(max(1 - (dx * dx + dy * dy) ** 0.5 / 150, 0), 1)
            total += seen
    return total / (length * width)


def clear(board: Board, x: int, y: int, length: int, width: int) -> bool:
    """Whether a part lies on the board and on no defect of it."""
    on_it = x + length <= board.length and y + width <= board.width
    return on_it and not any(
        x < defect.to_along
        and x + length > defect.from_along
        and y < defect.to_across
        and y + width > defect.from_across
        for defect in board.defects
    )


def stacking(board: Board, sizes: list[tuple[int, int]], gap: int) -> Callable[..., float]:
    """Best looks of some parts in one section that begins at x, tried in every order and place."""

    @cache
    def worth(part: int, x: int, y: int) -> float:
        return looks_of(board, x, y, *sizes[part]) if clear(board, x, y, *sizes[part]) else NEVER

    def stacked(order: tuple[int, ...], x: int, floor: int) -> float:
        if not order:
            return 0.0
        part, best = order[0], NEVER
        for y in range(floor, int(board.width) - sizes[part][1] + 1):
            here = worth(part, x, y)
            if here > NEVER:
                best = max(best, here + stacked(order[1:], x, y + sizes[part][1] + gap))
        return best

    return cache(lambda parts, x: max(stacked(order, x, 0) for order in permutations(parts)))


@cache
def tried(seed: int) -> list[float]:
    """The best sum of looks from the first 0, 1, 2, … mm of a board, −∞ where it can't be."""
    board, blanks, gap = tiny(seed)
    sizes = [(int(blank.length), int(blank.width)) for blank in blanks]
    section = stacking(board, sizes, gap)

    @cache
    def rest(parts: frozenset[int], x: int, end: int) -> float:
        """Best looks of some parts from x to an end, sections taken from the left."""
        if not parts:
            return 0.0
        best = NEVER
        for size in range(1, len(parts) + 1):
            for some in map(frozenset, combinations(sorted(parts), size)):
                long = max(sizes[part][0] for part in some)
                for start in range(x, end - long + 1):
                    here = section(some, start)
                    if here > NEVER:
                        best = max(best, here + rest(parts - some, start + long + gap, end))
        return best

    return [rest(frozenset(range(len(blanks))), 0, end) for end in range(int(board.length) + 1)]


def tiny(seed: int) -> tuple[Board, list[Blank], int]:
    """A board of a few millimetres with a knot or two and up to four parts."""
    rng = random.Random(seed)
    along, across = rng.randint(6, 13), rng.randint(3, 8)
    defects = []
    for _ in range(rng.randint(0, 2)):
        x, y = rng.randrange(along), rng.randrange(across)
        kind = rng.choice(["knot", "gum pocket"])
        defects.append(Defect(kind, x, y, min(along, x + rng.randint(1, 3)), y + 1))
    heart = ((0, rng.randint(1, across)), (along, rng.randint(1, across)))
    board = Board(
        "tiny",
        "black cherry",
        along,
        across,
        10,
        tuple(defects),
        heart if rng.random() < 0.5 else (),
    )
    sizes = [(rng.randint(1, 5), rng.randint(1, 4)) for _ in range(3)]
    parts = [Blank(f"part {n}", *rng.choice(sizes)) for n in range(rng.randint(1, 4))]
    return board, parts, rng.randint(0, 2)


@pytest.mark.parametrize("seed", range(60))
def test_every_length_of_board_looks_as_good_as_anything_that_was_tried(seed):
    board, parts, gap = tiny(seed)
    best = tried(seed)
    layouts = BoardLayouts(board, parts, gap=gap, cell=1, margin=0)
    found = layouts.tables.best(layouts.tables.all)
    if found is None:
        assert max(best) == NEVER
        assert curve(layouts) == ()
        return
    assert len(found) == len(best)
    assert found == pytest.approx(best, abs=1e-5)
    least = next(end for end, looks in enumerate(best) if looks > NEVER)
    assert curve(layouts)[0].used == least
    for end in range(least, int(board.length) + 1):
        read = layouts.laid_in(float(end), chosen=layouts.tables.all)
        looks = sum(
            looks_of(board, int(p.x), int(p.y), int(p.length), int(p.width)) for p in read.pieces
        )
        assert looks == pytest.approx(best[end], abs=1e-5)
        assert read.used <= end


def test_the_trial_finds_both_boards_that_hold_and_boards_that_do_not():
    """Else the comparison above would be worth nothing."""
    held = [max(tried(seed)) > NEVER for seed in range(60)]
    assert 15 <= sum(held) <= 55
