"""A class on a rack: legal, complete, of the least wood, and with a floor that holds."""

import random
from functools import wraps
from itertools import product
from time import monotonic

import numpy as np
import pytest

from tests.stock.checks import assert_complete, assert_legal
from tests.stock.racks import POSTCARD, class_of, rack, random_board
from toolkit.measures import Rule
from toolkit.stock import Blank, Board, class_prices, class_search, lay_out_class
from toolkit.stock.blanks import can_give
from toolkit.stock.class_patterns import board_patterns
from toolkit.stock.class_program import market, pick
from toolkit.stock.class_search import search
from toolkit.stock.class_sections import board_sections
from toolkit.stock.layout import BoardLayouts
from toolkit.stock.sets import kinds_of

MM = Rule.millimetres()


def last(blanks, boards, **more):
    return list(lay_out_class(blanks, boards, **more))[-1]


def _patient_pick(on, *, of_each, time_limit):
    return pick(on, of_each=of_each, time_limit=10 * time_limit)


def unhurried(test):
    """Give a search that a busy machine's clock ended too soon ten times as long."""

    @wraps(test)
    def run(*args, **more):
        try:
            test(*args, **more)
        except (AssertionError, ValueError):
            with pytest.MonkeyPatch.context() as slower:
                for module in (class_prices, class_search):
                    slower.setattr(module, "monotonic", lambda: monotonic() / 10)
                slower.setattr(class_search, "pick", _patient_pick)
                test(*args, **more)

    return run


def assert_right(laid, blanks):
    assert_complete(laid.boards, blanks, laid.missing)
    for one in laid.boards:
        assert_legal(one)
        for piece in one.pieces:
            part = next(blank for blank in blanks if blank.name == piece.part)
            assert can_give(one.board, part)


def patterns_of(board: Board, blanks, *, cell: float) -> dict[tuple[int, ...], float]:
    """Least wood of every set of parts of one board, by the tables that also weigh the looks."""
    kinds = kinds_of(blanks)
    own = [blank for group in kinds for blank in group if can_give(board, blank)]
    if not own:
        return {(0,) * len(kinds): 0.0}
    layouts = BoardLayouts(board, own, cell=cell)
    keys = [group[0].alike for group in layouts.groups]
    found = {}
    for chosen in layouts.tables.fitting():
        counts = [0] * len(kinds)
        for n, key in zip(chosen, keys, strict=True):
            counts[[group[0].alike for group in kinds].index(key)] = n
        curve = layouts.curve_of(chosen)
        found[tuple(counts)] = curve[0].volume if curve else 0.0
    return found


@pytest.mark.parametrize("seed", range(8))
def test_two_boxes_on_three_small_boards_by_trying_every_share(seed):
    rng = random.Random(seed)
    blanks = class_of(2)
    boards = [
        random_board(
            rng, name=f"{n}", length=(250, 800), width=(100, 230), thickness=(13.0, 16.0, 25.0)
        )
        for n in range(3)
    ]
    kinds = kinds_of(blanks)
    tables = [patterns_of(board, blanks, cell=4) for board in boards]
    least = None
    for shares in product(*tables):
        supply = [sum(column) for column in zip(*shares, strict=True)]
        if all(n >= len(group) for n, group in zip(supply, kinds, strict=True)):
            wood = sum(table[share] for table, share in zip(tables, shares, strict=True))
            least = wood if least is None else min(least, wood)
    # Only the third rack has wood enough: both kinds are looked at.
    assert (least is not None) == (seed == 2)
    laid = last(blanks, boards, cell=4)
    assert_right(laid, blanks)
    if least is None:
        assert laid.missing
        assert not laid.proved
        return
    assert not laid.missing
    assert laid.proved
    assert laid.volume == pytest.approx(least)
    # The floor holds, and from its own prices and rents once more.
    assert laid.prices.floor <= least + 1e-6
    prices = {part.alike: price for part, _, price in laid.prices.parts}
    rents = dict(laid.prices.boards)
    for board, table in zip(boards, tables, strict=True):
        for share, wood in table.items():
            worth = sum(n * prices[group[0].alike] for n, group in zip(share, kinds, strict=True))
            assert worth <= wood + rents[board.name] + 1e-6
    income = sum(count * price for _, count, price in laid.prices.parts)
    assert laid.prices.floor == pytest.approx(max(0, income - sum(rents.values())))


@pytest.mark.parametrize("seed", [1, 3, 8])
@unhurried
def test_twelve_boxes_on_twenty_boards(seed):
    """Against the integer solver in scipy, given the same patterns; it knows no budgets."""
    from scipy.optimize import Bounds, LinearConstraint, milp

    blanks, boards = class_of(12), rack(seed)
    laid = last(blanks, boards)
    assert_right(laid, blanks)
    assert laid.proved
    assert not laid.missing
    assert laid.prices.floor <= laid.volume
    assert laid.gap < 0.02
    assert "No layout sawn this way uses less" in laid.sentence(MM)

    kinds = [group[0] for group in kinds_of(blanks)]
    wanted = [24, 24, 12, 12]
    assert [len(group) for group in kinds_of(blanks)] == wanted
    patterns = []
    for board in boards:
        counts = [n if can_give(board, k) else 0 for n, k in zip(wanted, kinds, strict=True)]
        listed = board_sections(board, kinds, counts=counts, gap=5, cell=2, margin=3)
        patterns.append(board_patterns(listed, most=wanted))
    assert all(one.whole for one in patterns)
    on = market(patterns, wanted=wanted)
    # Only what loses less than the layout does can be in a better one.
    budget = laid.volume - on.floor
    rows = [np.flatnonzero(on.losses(n) <= budget + 1) for n in range(len(boards))]
    cost = np.concatenate([on.costs[n][row] for n, row in enumerate(rows)])
    counts = np.concatenate([one.counts[row] for one, row in zip(patterns, rows, strict=True)])
    home = np.repeat(np.arange(len(boards)), [len(row) for row in rows])
    answer = milp(
        cost / 1e6,
        constraints=[
            LinearConstraint(counts.T, lb=wanted),
            LinearConstraint(home == np.arange(len(boards))[:, None], ub=1),
        ],
        integrality=np.ones(len(cost)),
        bounds=Bounds(0, 1),
        options={"time_limit": 20},
    )
    assert answer.mip_dual_bound * 1e6 <= laid.volume * (1 + 1e-6)
    assert laid.volume <= answer.fun * 1e6 * (1 + 1e-6)


@unhurried
def test_the_first_answer_is_near_and_later_ones_are_no_worse():
    answers = list(lay_out_class(class_of(12), rack(4)))
    assert answers[0].volume <= 1.02 * answers[-1].volume
    assert [a.volume for a in answers] == sorted((a.volume for a in answers), reverse=True)


def test_when_the_stock_falls_short_what_is_missing_is_told():
    blanks, boards = class_of(12), rack(2, count=3)
    laid = last(blanks, boards)
    assert laid.missing
    assert not laid.proved
    assert laid.gap is None
    assert_right(laid, blanks)
    assert f"{len(laid.missing)} parts are missing" in laid.sentence(MM)


def test_no_boards_and_no_parts():
    laid = last(POSTCARD, [])
    assert len(laid.missing) == 6
    assert last((), rack(1, count=2)).missing == ()


@pytest.mark.parametrize(("sizes", "most"), [(3, 0.15), (12, 0.6)])
@unhurried
def test_boxes_of_different_sizes_are_not_said_to_be_proved(sizes, most):
    blanks, boards = class_of(12, larger=4, sizes=sizes), rack(2)
    laid = last(blanks, boards, time_limit=4)
    assert_right(laid, blanks)
    assert not laid.missing
    assert not laid.proved
    assert 0 < laid.gap < most
    assert "not proved" in laid.sentence(MM)
    assert laid.alike == (sizes == 12)
    # Even the wood in the parts themselves is a floor, and a lower one.
    bare = sum(blank.length * blank.width * 16 for blank in blanks if blank.thickness == 16)
    assert bare < laid.prices.floor


def test_a_part_larger_than_every_board_is_missing_and_the_others_are_laid():
    blanks = (*class_of(2), Blank("table", 4000, 900, 16, "black cherry"))
    laid = last(blanks, rack(1, count=6))
    assert [blank.name for blank in laid.missing] == ["table"]
    assert_right(laid, blanks)


@unhurried
def test_two_answers_of_the_search_are_the_same_layout_when_no_budget_is_too_small():
    """A search that starts with a large budget finds what one with rising budgets finds."""
    blanks, boards = class_of(4), rack(5, count=6)
    kinds = [group[0] for group in kinds_of(blanks)]
    wanted = [8, 8, 4, 4]
    patterns = []
    for board in boards:
        counts = [n if can_give(board, k) else 0 for n, k in zip(wanted, kinds, strict=True)]
        listed = board_sections(board, kinds, counts=counts, gap=5, cell=4, margin=3)
        patterns.append(board_patterns(listed, most=wanted))
    on = market(patterns, wanted=wanted)
    (found,) = search(on, time_limit=10)
    large, complete = class_search._within(on, 0.05 * on.floor, 10**9)
    assert complete and found.proved
    assert large.cost == pytest.approx(found.cost)
