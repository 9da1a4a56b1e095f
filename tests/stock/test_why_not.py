"""Why parts do not fit, in numbers that a rule on the board would give."""

import random
from itertools import product

import pytest

from tests.stock.racks import PANEL, POSTCARD, SHORT, THICK, random_board
from toolkit.measures import Rule
from toolkit.stock import (
    Blank,
    Board,
    BoardLayouts,
    Defect,
    lay_out_box,
    missing_sentences,
    why_not_all_fit,
)
from toolkit.stock.grid import grid
from toolkit.stock.stretches import clearest

MM = Rule.millimetres()


def test_the_longest_and_the_widest_clear_stretch():
    """Knots leave 331 mm before the first, and a strip 63 mm wide below both; margins are 3 mm."""
    knots = Defect("knot", 331, 63, 371, 93), Defect("knot", 640, 63, 680, 150)
    board = Board("knotty", "cherry", 960, 160, 16, knots)
    told = why_not_all_fit(board, [Blank("shelf", 900, 150)])
    assert not told.fits
    assert told.sentences(MM) == (
        "shelf: the longest clear stretch 150 mm wide is 328 mm; "
        "the widest clear stretch 900 mm long is 60 mm.",
    )


def test_stretches_by_trying_every_rectangle():
    rng = random.Random(7)
    for _ in range(20):
        board = random_board(rng, length=(20, 40), width=(10, 20), defects=3)
        on = grid(board, cell=1, margin=0)
        spoilt = [[False] * on.along for _ in range(on.across)]
        for low, high, left, right in on.spoilt:
            for y, x in product(range(low, high), range(left, right)):
                spoilt[y][x] = True

        def clear(long, wide, on=on, spoilt=spoilt):
            return any(
                not any(spoilt[y + j][x + i] for i in range(long) for j in range(wide))
                for x in range(on.along - long + 1)
                for y in range(on.across - wide + 1)
            )

        length, width = rng.randint(2, 20), rng.randint(2, 10)
        longest = max((n for n in range(1, on.along + 1) if clear(n, width)), default=0)
        widest = max((n for n in range(1, on.across + 1) if clear(length, n)), default=0)
        assert clearest(on, length=length, width=width) == (longest, widest)


def test_each_fits_but_not_all():
    board = Board("stub", "black cherry", 330, 145, 16)
    told = why_not_all_fit(board, POSTCARD)
    assert not told.wrong
    assert not told.too_large
    assert {blank.name for blank in told.together} == {"side 1", "side 2", "back", "front"}
    (sentence,) = told.sentences(MM)
    assert "side 1, side 2, back and front" in sentence
    layouts = BoardLayouts(board, told.together)
    assert layouts.curve, "the set that is said to fit does not"
    for blank in set(POSTCARD) - set(told.together):
        assert not BoardLayouts(board, [*told.together, blank]).curve


def test_of_two_sets_of_one_size_the_one_with_more_wood():
    board = Board("stub", "cherry", 200, 80, 16)
    told = why_not_all_fit(board, [Blank("short", 150, 70), Blank("long", 190, 75)])
    assert [blank.name for blank in told.together] == ["long"]


def test_the_wrong_board():
    assert why_not_all_fit(PANEL, POSTCARD).sentences(MM) == (
        "side 1, side 2, back and front: 16 mm of thickness is needed, and this board has 13 mm.",
    )
    oak = Board("oak", "white oak", 2200, 225, 25)
    assert why_not_all_fit(oak, POSTCARD[:1]).sentences(MM) == (
        "side 1: to be black cherry, and this is white oak.",
    )


def test_everything_fits():
    told = why_not_all_fit(THICK, POSTCARD)
    assert told.fits
    assert told.sentences(MM) == ("Every part fits.",)


def test_no_clear_wood_at_all():
    board = Board("rotten", "cherry", 900, 140, 16, (Defect("decay", 0, 0, 900, 140),))
    (row,) = why_not_all_fit(board, [Blank("part", 100, 50)]).too_large
    assert (row.longest, row.widest) == (0, 0)


@pytest.mark.parametrize(
    ("boards", "reason"),
    [
        ((Board("oak", "white oak", 2200, 225, 25),), "no board is black cherry"),
        ((PANEL,), "it needs 16 mm of thickness; the thickest board is 13 mm"),
        (
            (Board("short", "cherry", 900, 69, 16),),
            "it needs 186 mm; the longest clear stretch 70 mm wide on any board is 0 mm",
        ),
        ((Board("stub", "cherry", 187, 70, 16),), "no room is left beside the others"),
    ],
)
def test_why_parts_of_a_box_are_missing(boards, reason):
    laid = lay_out_box(POSTCARD, boards)
    told = missing_sentences(laid, rule=MM)
    assert [line for line in told if "side 2" in line and reason in line], told


def test_in_inches():
    told = why_not_all_fit(SHORT, [Blank("beam", 1500, 25.4)]).sentences(Rule.inches())
    assert told[0].startswith("beam: the longest clear stretch 1 in wide is 47 7/32 in")
