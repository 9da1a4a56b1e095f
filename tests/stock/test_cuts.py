"""The cuts, made one after another on a board of paper, give the parts and nothing else."""

import random
from dataclasses import dataclass

import pytest
from hypothesis import given, strategies as st

from tests.files.calm import calm
from tests.stock.racks import POSTCARD, SHORT, THICK, lay_out, random_board
from toolkit.measures import Rule
from toolkit.stock import CORNERS, Blank, Board, BoxLayouts, Laid, saw_cuts
from toolkit.stock.cuts import section_name

NOISE = 1e-6


@dataclass(frozen=True)
class Sheet:
    """A rectangle of wood: left, right, lower and upper edge."""

    left: float
    right: float
    low: float
    high: float


def sawn(laid: Laid) -> list[Sheet]:
    """All that is left of a board after its cuts, each made right through one piece of wood."""
    sheets = [Sheet(0, laid.board.length, 0, laid.board.width)]
    for number, cut in enumerate(saw_cuts(laid), 1):
        assert cut.number == number
        (x1, y1), (x2, y2) = cut.start, cut.end
        crosscut = cut.kind == "crosscut"
        through = [
            sheet
            for sheet in sheets
            if (
                crosscut
                and sheet.left < x1 < sheet.right
                and (sheet.low, sheet.high) == (pytest.approx(y1), pytest.approx(y2))
            )
            or (
                not crosscut
                and sheet.low < y1 < sheet.high
                and (sheet.left, sheet.right) == (pytest.approx(x1), pytest.approx(x2))
            )
        ]
        assert len(through) == 1, f"cut {number} does not go right through one piece of wood"
        (sheet,) = through
        sheets.remove(sheet)
        if crosscut:
            assert x1 == x2
            sheets += [
                Sheet(sheet.left, x1, sheet.low, sheet.high),
                Sheet(x1, sheet.right, sheet.low, sheet.high),
            ]
        else:
            assert y1 == y2
            sheets += [
                Sheet(sheet.left, sheet.right, sheet.low, y1),
                Sheet(sheet.left, sheet.right, y1, sheet.high),
            ]
    return sheets


def assert_parts_come_out(laid: Laid) -> None:
    sheets = sawn(laid)
    taken = []
    for piece in laid.pieces:
        around = [
            sheet
            for sheet in sheets
            if sheet.left <= piece.x + NOISE
            and sheet.right >= piece.x + piece.length - NOISE
            and sheet.low <= piece.y + NOISE
            and sheet.high >= piece.y + piece.width - NOISE
        ]
        assert len(around) == 1, f"{piece.part} was cut through"
        (sheet,) = around
        taken.append(sheet)
        # Saw and plane have half a gap beside every cut; less waste than a gap stays on a part.
        board = laid.board
        for room, edge in (
            (piece.x - sheet.left, sheet.left == 0),
            (sheet.right - piece.x - piece.length, sheet.right == board.length),
            (piece.y - sheet.low, sheet.low == 0),
            (sheet.high - piece.y - piece.width, sheet.high == board.width),
        ):
            least = 0 if edge else laid.gap / 2
            assert least - NOISE <= room <= laid.gap + NOISE, (piece.part, room)
    assert len(set(taken)) == len(laid.pieces), "two parts are still one piece of wood"


@calm(60)
@given(st.integers(0, 10**9), st.sampled_from([2.0, 3.0, 5.0]))
def test_random_boards(seed, gap):
    rng = random.Random(seed)
    sizes = [(rng.uniform(60, 260), rng.uniform(30, 130)) for _ in range(3)]
    parts = [Blank(f"part {n}", *rng.choice(sizes)) for n in range(rng.randint(1, 6))]
    layouts = BoxLayouts(parts, [random_board(rng)], gap=gap)
    for looks in (0.0, 1.0):
        assert_parts_come_out(layouts.laid(looks).boards[0])


@pytest.mark.parametrize("corners", CORNERS)
def test_runs_are_cut_apart_after_ripping(corners):
    assert_parts_come_out(lay_out(THICK, POSTCARD, corners=corners))


def test_no_gap_at_all():
    assert_parts_come_out(lay_out(SHORT, POSTCARD[:4], gap=0))


def test_in_the_order_of_the_bench_with_dimensions_from_one_end_and_one_edge():
    """Two sides side by side, then two ends: worked out by hand."""
    told = [cut.sentence(Rule.millimetres()) for cut in saw_cuts(lay_out(SHORT, POSTCARD[:4]))]
    assert told == [
        "Crosscut the board 188.5 mm from its left end; what comes off is section A.",
        "Crosscut the board 329.5 mm from its left end; what comes off is section B.",
        "Rip section A 72.5 mm from its lower edge; what comes off is side 1.",
        "Rip section A 147.5 mm from its lower edge; what comes off is side 2.",
        "Rip section B 72.5 mm from its lower edge; what comes off is back.",
        "Rip section B 147.5 mm from its lower edge; what comes off is front.",
    ]


def test_what_is_left_is_told_where_no_cut_frees_it():
    board = Board("narrow", "black cherry", 400, 147, 16)
    (_, rip) = saw_cuts(lay_out(board, POSTCARD[:2]))
    assert (rip.frees, rip.leaves) == ("side 1", "side 2")


def test_more_sections_than_letters():
    assert [section_name(n) for n in (0, 25, 26, 53)] == [
        "section A",
        "section Z",
        "section A2",
        "section B3",
    ]


def test_an_unused_board_has_no_cuts():
    assert saw_cuts(Laid(SHORT, 5, 0.0)) == ()
