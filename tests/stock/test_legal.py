"""Every layout is right on the real board, and the whole trade-off keeps its promises."""

import random
from itertools import pairwise

import pytest
from hypothesis import given, strategies as st

from tests.files.calm import calm
from tests.stock.checks import assert_complete, assert_legal
from tests.stock.racks import POSTCARD, SHORT, THICK, curve, lay_out, lay_out_box, random_board
from toolkit.stock import CORNERS, Blank, Board, BoxLayouts, Defect
from toolkit.stock.layout import BoardLayouts

SEEDS = st.integers(0, 10**9)


def parts_of(rng: random.Random) -> list[Blank]:
    """Six parts or fewer, some alike, with sizes off every grid."""
    sizes = [(rng.uniform(60, 260), rng.uniform(30, 130)) for _ in range(3)]
    return [Blank(f"part {n}", *rng.choice(sizes)) for n in range(rng.randint(1, 6))]


@calm(60)
@given(SEEDS, st.sampled_from([1.0, 2.0]), st.sampled_from([0.0, 2.5, 5.0]))
def test_random_boards(seed, cell, gap):
    rng = random.Random(seed)
    board, parts = random_board(rng), parts_of(rng)
    layouts = BoardLayouts(board, parts, gap=gap, cell=cell)
    for point in curve(layouts):
        laid = layouts.laid_in(point.used, chosen=layouts.tables.all)
        assert_legal(laid)
        assert_complete([laid], parts, [])
        assert laid.used == pytest.approx(point.used)
        assert laid.looks == pytest.approx(point.looks, abs=1e-5)
        assert 0 <= point.looks <= 1 + 1e-6
        assert point.volume == pytest.approx(laid.volume)


@calm(40)
@given(SEEDS)
def test_more_board_for_better_looks_only(seed):
    rng = random.Random(seed)
    layouts = BoardLayouts(random_board(rng), parts_of(rng), cell=2)
    for one, other in pairwise(curve(layouts)):
        assert one.used < other.used
        assert one.looks < other.looks
    for one, other in pairwise(curve(layouts)[:-1]):
        assert other.looks >= one.looks + 0.02 - 1e-6
    if curve(layouts):
        row, count = layouts.tables.best(layouts.tables.all), sum(layouts.tables.all)
        assert curve(layouts)[-1].looks >= row[-1] / count - 0.001 - 1e-6
        for point in curve(layouts):  # none is to be had from less board
            assert row[round(point.used / 2) - 1] / count < point.looks


@calm(25)
@given(SEEDS)
def test_a_coarser_grid_never_uses_less(seed):
    """Parts are rounded up and defects outwards: what fits on 2 mm cells fits on 1 mm cells."""
    rng = random.Random(seed)
    board, parts = random_board(rng), parts_of(rng)
    fine, coarse = (BoardLayouts(board, parts, gap=4, cell=cell) for cell in (1, 2))
    if curve(coarse):
        assert curve(fine)[0].used <= curve(coarse)[0].used + 1e-9


@pytest.mark.parametrize("corners", CORNERS)
def test_grain_round_the_corners(corners):
    laid = lay_out(THICK, POSTCARD, corners=corners)
    assert_legal(laid)
    assert_complete([laid], POSTCARD, [])
    place = {piece.part: (piece.x, piece.y) for piece in laid.pieces}
    runs = {
        "free": [],
        "one run": [("side 1", "front", "side 2", "back")],
        "two runs": [("side 1", "front"), ("side 2", "back")],
    }[corners]
    long = {part.name: part.length for part in POSTCARD}
    for run in runs:
        for one, other in pairwise(run):
            assert place[other][0] == pytest.approx(place[one][0] + long[one] + 5)
            assert place[other][1] == place[one][1]


def test_a_run_is_as_long_as_its_parts_and_the_cuts_between_them():
    laid = lay_out(SHORT, POSTCARD[:4], corners="one run")
    assert laid.used == 186 + 5 + 136 + 5 + 186 + 5 + 136


def test_a_board_exactly_as_large_as_its_parts():
    board = Board("just", "black cherry", 186 + 5 + 136, 145, 16)
    laid = lay_out(board, POSTCARD[:4])
    assert laid.used == board.length
    less = Board("less", "black cherry", 186 + 5 + 135.9, 145, 16)
    assert lay_out_box(POSTCARD[:4], [less]).missing


def test_a_check_without_any_width_is_sawn_round():
    """A fine split right along the middle of a board leaves two strips."""
    split = Defect("split", 0, 90, 1200, 90)
    board = Board("split", "black cherry", 1200, 180, 16, (split,))
    laid = lay_out(board, POSTCARD[:4])
    assert_legal(laid)
    assert lay_out_box([Blank("wide", 100, 95)], [board]).missing


def test_the_largest_board_that_a_file_may_hold_is_laid_out_on_coarser_cells():
    huge = Board("huge", "black cherry", 12000, 3000, 16, (Defect("knot", 0, 0, 400, 3000),))
    layouts = BoxLayouts(POSTCARD, [huge])
    assert layouts.cell > 1
    laid = layouts.laid(1).boards[0]
    assert_legal(laid)
    assert_complete([laid], POSTCARD, [])


@pytest.mark.parametrize(
    ("bad", "named"),
    [
        ({"gap": -1}, "gap"),
        ({"gap": float("nan")}, "gap"),
        ({"cell": 0}, "cell"),
        ({"margin": -2}, "margin"),
        ({"looks": 1.5}, "looks"),
        ({"looks": float("nan")}, "looks"),
        ({"corners": "all round"}, "one run"),
    ],
)
def test_numbers_out_of_range_are_refused_by_name(bad, named):
    with pytest.raises(ValueError, match=named):
        lay_out(SHORT, POSTCARD[:4], **bad)


def test_other_refusals():
    with pytest.raises(ValueError, match=r"part.*length.*0 mm"):
        Blank("part", 0, 20)
    with pytest.raises(ValueError, match=r"part.*width.*nan"):
        Blank("part", 10, float("nan"))
    many = [Blank(f"part {n}", 100 + n, 50) for n in range(12)]
    with pytest.raises(ValueError, match="12 parts of 12 kinds"):
        lay_out(SHORT, many)
    with pytest.raises(ValueError, match="two sides"):
        lay_out(SHORT, many[:2], corners="one run")
    walls = [Blank("side 1", 9, 9, wood="oak"), Blank("side 2", 9, 9, wood="oak")]
    walls += [Blank("back", 9, 9), Blank("front", 9, 9)]
    with pytest.raises(ValueError, match="different woods"):
        lay_out(SHORT, walls, corners="two runs")
