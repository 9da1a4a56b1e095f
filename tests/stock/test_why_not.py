"""Why parts do not fit, in numbers that a rule on the board would give."""

import random
from itertools import product

import pytest

from tests.stock.racks import PANEL, POSTCARD, lay_out_box, random_board
from toolkit.measures import Rule
from toolkit.stock import (
    Blank,
    Board,
    Defect,
    missing_sentences,
)
from toolkit.stock.board_grid import grid
from toolkit.stock.box_layout import longest_clear

MM = Rule.millimetres()


def test_the_longest_clear_stretch():
    """Knots leave 331 mm before the first, and a strip 63 mm wide below both; margins are 3 mm."""
    knots = Defect("knot", 331, 63, 371, 93), Defect("knot", 640, 63, 680, 150)
    board = Board("knotty", "black cherry", 960, 160, 16, knots)
    laid = lay_out_box([Blank("shelf", 900, 150)], [board])
    assert missing_sentences(laid, rule=MM) == (
        "Missing: shelf; it needs 900 mm; the longest clear stretch 150 mm wide on any board is "
        "328 mm.",
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

        width = rng.randint(2, 10)
        longest = max((n for n in range(1, on.along + 1) if clear(n, width)), default=0)
        assert longest_clear(on, width=width) == longest


@pytest.mark.parametrize(
    ("boards", "reason"),
    [
        ((Board("oak", "white oak", 2200, 225, 25),), "no board is black cherry"),
        ((PANEL,), "it needs 16 mm of thickness; the thickest board is 13 mm"),
        (
            (Board("short", "black cherry", 900, 69, 16),),
            "it needs 186 mm; the longest clear stretch 70 mm wide on any board is 0 mm",
        ),
        ((Board("stub", "black cherry", 187, 70, 16),), "no room is left beside the others"),
    ],
)
def test_why_parts_of_a_box_are_missing(boards, reason):
    laid = lay_out_box(POSTCARD, boards)
    told = missing_sentences(laid, rule=MM)
    assert [line for line in told if "side 2" in line and reason in line], told
