"""One box from several boards: thickness and species, the least wood, and what is missing."""

import random
from itertools import combinations, pairwise

import pytest

from tests.boxes import first_postcard as postcard
from tests.stock.checks import assert_complete, assert_legal
from tests.stock.racks import PANEL, POSTCARD, SHORT, THICK, curve, lay_out_box, random_board
from toolkit.measures import Rule
from toolkit.plan import plan
from toolkit.stock import (
    Blank,
    Board,
    BoxLayouts,
    blanks_of,
    corner_prices,
)
from toolkit.stock.blanks import can_give
from toolkit.stock.layout import BoardLayouts

RACK = (THICK, SHORT, PANEL)


def test_the_parts_of_the_postcard_box():
    found = blanks_of(plan(postcard()).parts)
    up = Rule.millimetres().sawn
    assert [(b.name, b.length, b.width, b.thickness, b.finished) for b in found] == [
        (b.name, up(b.length), up(b.width), b.thickness, b.finished) for b in POSTCARD
    ]
    named = blanks_of(plan(postcard()).parts, boxes=2)
    assert len({blank.name for blank in named}) == 12
    assert named[-1].name == "box 2: lid"


def test_walls_from_the_wall_board_and_panels_from_the_panel_board():
    """By hand: 186 + 5 + 136 of the one, 169 + 5 + 178 of the other."""
    laid = lay_out_box(POSTCARD, RACK)
    assert [one.used for one in laid.boards] == [0, 327, 352]
    assert laid.least == laid.used == 679
    assert laid.volume == 327 * 180 * 16 + 352 * 140 * 13
    assert_complete(laid.boards, POSTCARD, [])
    assert "679 mm of board" in laid.proof(Rule.millimetres())


def least_by_assigning(blanks, boards) -> float | None:
    """Least wood over every way to give each part to a board, each board by itself. [mm³]"""
    if not boards:
        return None if blanks else 0.0
    best = None
    for size in range(len(blanks) + 1):
        for some in combinations(blanks, size):
            if not all(can_give(boards[0], blank) for blank in some):
                continue
            here = 0.0
            if some:
                points = curve(BoardLayouts(boards[0], some, cell=4))
                if not points:
                    continue
                here = points[0].volume
            rest = least_by_assigning([b for b in blanks if b not in some], boards[1:])
            if rest is not None and (best is None or here + rest < best):
                best = here + rest
    return best


@pytest.mark.parametrize("seed", range(6))
def test_no_way_to_share_out_the_parts_takes_less_wood(seed):
    rng = random.Random(seed)
    boards = [
        random_board(
            rng, name=f"{n}", length=(200, 500), width=(80, 150), thickness=(13.0, 16.0, 25.0)
        )
        for n in range(3)
    ]
    least = least_by_assigning(POSTCARD, boards)
    laid = lay_out_box(POSTCARD, boards, cell=4)
    if least is None:
        assert laid.missing
    else:
        assert not laid.missing
        assert laid.volume == pytest.approx(least)


@pytest.mark.parametrize("seed", range(12))
def test_legal_on_every_rack(seed):
    rng = random.Random(100 + seed)
    boards = [
        random_board(rng, name=f"{n}", length=(150, 900), thickness=(13.0, 16.0, 25.0))
        for n in range(rng.randint(1, 4))
    ]
    layouts = BoxLayouts(POSTCARD, boards)
    seen = [layouts.laid(looks) for looks in (0, 0.3, 0.7, 1)]
    assert [laid.looks for laid in seen] == sorted(laid.looks for laid in seen)
    assert [laid.volume for laid in seen] == sorted(laid.volume for laid in seen)
    for laid in seen:
        assert_complete(laid.boards, POSTCARD, laid.missing)
        for one in laid.boards:
            assert_legal(one)
            for piece in one.pieces:
                part = next(blank for blank in POSTCARD if blank.name == piece.part)
                assert one.board.thickness >= part.thickness
    for one, other in pairwise(seen[0].curve):
        assert one.volume < other.volume
        assert one.looks < other.looks


def test_as_many_parts_as_there_is_room_for():
    stub = Board("stub", "black cherry", 330, 145, 16)
    laid = lay_out_box(POSTCARD, [stub])
    assert [blank.name for blank in laid.missing] == ["bottom", "lid"]
    assert len(laid.boards[0].pieces) == 4


def test_a_rack_of_the_wrong_wood_gives_nothing():
    laid = lay_out_box(POSTCARD, [Board("oak", "white oak", 2200, 225, 25)])
    assert len(laid.missing) == 6
    assert laid.used == laid.looks == 0
    assert lay_out_box((), RACK).missing == ()


def test_a_wood_goes_by_any_of_its_names():
    board = Board("b", "Prunus serotina", 2200, 225, 25)
    assert not lay_out_box(POSTCARD, [board]).missing
    own = Board("b", "garden plum", 900, 100, 16)
    assert can_give(own, Blank("part", 100, 50, 10, "Garden Plum"))
    assert not can_give(own, POSTCARD[0])


def test_the_price_of_grain_round_the_corners():
    free, one, two = corner_prices(POSTCARD, [SHORT])
    assert (free.used, one.used, two.used) == (684, 659 + 5 + 169 + 5 + 178, 684)
    assert one.sentence(Rule.millimetres()).endswith(
        "1016 mm of board instead of 684 mm, 49 % more wood."
    )
    assert two.sentence(Rule.millimetres()).endswith("no more wood.")
    stub = Board("stub", "black cherry", 600, 180, 16)
    (_, one, _) = corner_prices(POSTCARD[:4], [stub])
    assert one.used is None
    assert "not all parts fit so" in one.sentence(Rule.millimetres())
    with pytest.raises(ValueError, match="two sides"):
        corner_prices(POSTCARD[4:], [SHORT])
