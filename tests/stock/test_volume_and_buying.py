"""How much wood, what to ask for, and by when."""

from datetime import date

import pytest

from tests.stock.checks import assert_complete, assert_legal
from tests.stock.racks import POSTCARD, lay_out_box
from toolkit.measures import Rule
from toolkit.stock import (
    Blank,
    Board,
    board_feet,
    board_feet_by_volume,
    board_feet_of_sticks,
    cubic_metres,
    lumber_sizes,
    order_by,
    sets_needed,
    size_to_ask_for,
    tally,
    to_buy,
)
from toolkit.stock.sizes import counted_thickness

INCH, FOOT = 25.4, 304.8


@pytest.mark.parametrize(
    ("students", "spare", "sets"),
    [(10, 0.25, 13), (12, 0.25, 15), (8, 0.25, 10), (10, 0.1, 11), (1, 0, 1), (0, 0.25, 0)],
)
def test_sets_are_whole_and_rounding_noise_adds_none(students, spare, sets):
    assert sets_needed(students, spare=spare) == sets


def test_the_wood_of_ten_students():
    """9.1 m of wall blank, 4.7 m of panel blank and 3 m of practice, worked out separately."""
    sticks = (9100, 70, 16), (4700, 125, 11), (3000, 70, 16)
    volume = sum(cubic_metres(one, width=w, thickness=t) for one, w, t in sticks)
    assert volume == pytest.approx(0.020, abs=0.0005)
    assert board_feet_by_volume(volume) == pytest.approx(8.5, abs=0.05)
    yard = sum(board_feet_of_sticks(one, width=w, thickness=t) for one, w, t in sticks)
    assert yard == pytest.approx(15.4, abs=0.05)


def test_a_tally_takes_exact_halves_up_and_down_in_turn():
    """6 in × 9 ft is 4 1/2 ft²: 5, then 4, then 5; what is no half does not take a turn."""
    half = Board("half", "black cherry", 9 * FOOT, 6 * INCH, INCH)
    other = Board("other", "black cherry", 8 * FOOT, 6.25 * INCH, INCH)
    counted = tally([half, other, half, half])
    assert [row.surface for row in counted] == [5, 4, 4, 5]
    assert [row.half for row in counted] == [True, False, True, True]
    assert "exact half" in counted[0].sentence
    assert "exact half" not in counted[1].sentence


def test_a_foot_measured_a_hair_short_by_arithmetic_is_a_foot():
    assert board_feet(2438.4 - 1e-9, width=200, thickness=25).length == 8
    assert board_feet(2438.0, width=200, thickness=25).length == 7


@pytest.mark.parametrize(
    ("thickness", "inches"),
    [(6, 1.0), (25, 1.0), (25.4, 1.0), (30, 1.0), (31, 1.25), (52, 2.0), (101.6, 4.0), (127, 5.0)],
)
def test_thickness_as_a_yard_counts_it(thickness, inches):
    assert counted_thickness(thickness) == pytest.approx(inches)


def test_what_to_ask_for():
    assert size_to_ask_for(16).nominal == pytest.approx(0.75 * INCH)
    assert size_to_ask_for(25.4).quarter == "4/4"
    assert size_to_ask_for(25.5).quarter == "5/4"
    assert size_to_ask_for(19.05, kind="softwood").nominal == INCH  # planed to 3/4 in
    assert size_to_ask_for(200) is None
    for kind in ("hardwood", "softwood"):
        sold = [size.sold for size in lumber_sizes() if size.kind == kind]
        assert sold == sorted(sold)


def test_what_is_bought_supplies_what_was_missing():
    sticks = to_buy(POSTCARD, rule=Rule.millimetres())
    assert [[part.name for part in stick.parts] for stick in sticks] == [
        ["side 1", "side 2", "back", "front"],
        ["lid", "bottom"],
    ]
    walls, panels = sticks
    # 644 + 3 × 5 + 30 and 347 + 5 + 30, 122 wide: each up to 5 mm.
    assert (walls.length, walls.width, walls.thickness) == (690, 70, 16)
    assert (panels.length, panels.width, panels.thickness) == (385, 125, 13)
    boards = [
        Board(f"bought {n}", stick.wood, stick.length, stick.width, stick.thickness)
        for n, stick in enumerate(sticks)
    ]
    laid = lay_out_box(POSTCARD, boards)
    assert_complete(laid.boards, POSTCARD, [])
    for one in laid.boards:
        assert_legal(one)
    told = walls.sentence(Rule.millimetres())
    assert "black cherry at least 690 × 70 × 16 mm" in told
    assert "3/4 in rough" in told


def test_different_woods_and_widths_are_bought_apart():
    parts = (
        Blank("one", 200, 70, 16, "black cherry"),
        Blank("two", 200, 70, 16, "eastern white pine"),
        Blank("three", 200, 100, 16, "black cherry"),
        Blank("four", 200, 70, 10, "black cherry"),
    )
    sticks = to_buy(parts, rule=Rule.millimetres())
    assert sorted(stick.parts[0].name for stick in sticks) == ["four", "one", "three", "two"]
    pine = next(stick for stick in sticks if stick.wood == "eastern white pine")
    assert pine.size.kind == "softwood"
    assert "planed" in pine.sentence(Rule.inches())
    assert to_buy((), rule=Rule.millimetres()) == ()
    unknown = Blank("any", 100, 50, wood="garden plum")
    assert to_buy([unknown], rule=Rule.millimetres())[0].size is None


def test_order_by():
    told = order_by(date(2031, 5, 24), settling_days=14, delivery_days=7)
    assert told.day == date(2031, 5, 3)
    assert "2031-05-03" in told.sentence
    assert order_by(date(2031, 3, 1), settling_days=0, delivery_days=1).day == date(2031, 2, 28)


@pytest.mark.parametrize(
    "wrong",
    [
        lambda: board_feet(0, width=100, thickness=25),
        lambda: board_feet(1000, width=float("nan"), thickness=25),
        lambda: counted_thickness(-1),
        lambda: sets_needed(-1),
        lambda: sets_needed(10, spare=-0.5),
        lambda: order_by(date(2031, 5, 24), settling_days=-1),
    ],
)
def test_impossible_numbers_are_refused(wrong):
    with pytest.raises(ValueError, match="give"):
        wrong()
