"""Ready to cut: each thing a maker looks at, at its limit and beyond, and silence on the rest."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from toolkit.results import LEVELS
from toolkit.wood import BoardSeen, cup, pith_in_section, ready_to_cut
from toolkit.wood.cup import PithInside

ROOM = 9.3


def codes(*boards: BoardSeen, **more) -> dict[str, str]:
    """Code of each finding and where it is."""
    found = ready_to_cut(boards, room_moisture=ROOM, **more)
    return {row.code: row.where for row in found}


def only(code: str, *boards: BoardSeen, **more):
    """The one finding with this code."""
    found = [r for r in ready_to_cut(boards, room_moisture=ROOM, **more) if r.code == code]
    assert len(found) == 1, (code, found)
    return found[0]


def test_wet_and_dry_boards_are_held_against_the_room():
    wet = only("moisture-above-room", BoardSeen("A", moisture=12.5))
    assert (wet.level, wet.where) == ("care", "A")
    assert "12.5 %" in wet.message and "3.2 points more" in wet.message and "shrink" in wet.message
    assert "2 weeks in stick" in wet.remedy
    assert "custom" in wet.source
    dry = only("moisture-below-room", BoardSeen("B", moisture=6.0))
    assert "3.3 points less" in dry.message and "swell" in dry.message


@pytest.mark.parametrize("moisture", [ROOM - 2, ROOM, ROOM + 2])
def test_two_points_from_the_room_are_still_good(moisture):
    assert codes(BoardSeen("A", moisture=moisture)) == {"good-moisture": "A"}


def test_a_hair_over_the_limit_does_not_read_as_the_limit():
    found = only("moisture-above-room", BoardSeen("A", moisture=ROOM + 2.04))
    assert "2.04 points more" in found.message


def test_boards_that_will_disagree_by_spring():
    set_ = [BoardSeen(name, moisture=m) for name, m in (("A", 9.0), ("B", 11.2), ("C", 8.9))]
    found = only("boards-disagree", *set_)
    assert found.where == "C and B"
    assert "8.9 % and 11.2 %" in found.message and "2.3 points apart" in found.message
    # Each is near enough to the room by itself.
    assert codes(*set_)["good-moisture"] == "A, B and C"
    assert "good-set" not in codes(*set_)


def test_boards_exactly_two_points_apart_agree():
    found = codes(BoardSeen("A", moisture=8.3), BoardSeen("B", moisture=10.3))
    assert found == {"good-moisture": "A and B", "good-set": "A and B"}


def test_only_pieces_of_one_size_are_weighed_against_each_other():
    pieces = [
        BoardSeen("1", weight=430, size="wall stick"),
        BoardSeen("2", weight=512, size="wall stick"),
        BoardSeen("3", weight=441, size="wall stick"),
        BoardSeen("4", weight=210, size="panel stick"),
        BoardSeen("5", weight=9000),
        BoardSeen("6", size="panel stick"),
    ]
    found = only("heavy-piece", *pieces)
    assert found.where == "2"
    assert "512 g, 19.1 % more than the lightest wall stick (430 g)" in found.message
    assert "good-weights" not in codes(*pieces)


def test_fifteen_percent_is_still_good():
    pieces = [BoardSeen("1", weight=400, size="side"), BoardSeen("2", weight=460, size="side")]
    good = only("good-weights", *pieces)
    assert good.where == "side" and "15 %" in good.message
    assert "heavy-piece" in codes(*pieces, weight_spread_most=14.9)


SETTLED = ((0, 2300), (3, 2239), (6, 2200), (9, 2176), (12, 2161), (15, 2151), (20, 2143))


@pytest.mark.parametrize(
    ("log", "code", "level"),
    [
        (SETTLED, "good-settled", "good"),
        (((0, 500), (2, 470)), "not-settled", "care"),
        (((0, 300), (4, 300), (8, 300)), "settling-unknown", "care"),
    ],
)
def test_a_log_is_level_or_not_or_says_too_little(log, code, level):
    found = only(code, BoardSeen("A", log=log))
    assert found.level == level
    assert ("weigh it again" in found.remedy) is (level == "care")
    # A log is a measure of how wet it is.
    assert "moisture-unknown" not in codes(BoardSeen("A", log=log))


def test_a_finer_scale_may_settle_it():
    board = BoardSeen("A", log=((0, 300.0), (4, 300.0), (8, 300.0)))
    assert "good-settled" in codes(board, scale_step=0.1)


def test_a_flat_sawn_lid_of_a_wood_that_moves_much():
    lid = BoardSeen("A", moisture=9, lid_rings=10, species="sugar maple")
    found = only("lid-rings-flat", lid)
    assert "rings at 10°" in found.message and "0.35 %" in found.message
    assert "rift" in found.remedy and "clearance" in found.remedy


@pytest.mark.parametrize(
    ("rings", "wood"),
    [(30, "sugar maple"), (90, "American beech"), (0, "black cherry"), (0, "butternut")],
)
def test_rift_lids_and_woods_that_move_little_are_good(rings, wood):
    lid = BoardSeen("A", moisture=9, lid_rings=rings, species=wood)
    assert codes(lid)["good-lid-rings"] == "lid from A"
    assert "lid-rings-flat" not in codes(lid)


def test_which_woods_move_much():
    """Sorted by the coefficients of Table 13-5: those above 0.003 for 1 % of moisture."""
    much = {
        name
        for name in (
            "black cherry", "black walnut", "sugar maple", "American basswood", "American beech",
            "white ash", "red oak, commercial group", "red alder", "butternut",
        )
        if "lid-rings-flat" in codes(BoardSeen("A", moisture=9, lid_rings=0, species=name))
    }  # fmt: skip
    assert much == {
        "sugar maple", "American basswood", "American beech", "red oak, commercial group",
    }  # fmt: skip


def test_the_pith_rejects_a_piece():
    found = only("pith-in-piece", BoardSeen("A", moisture=9, pith=True))
    assert found.level == "wont_work"
    assert codes(BoardSeen("A", moisture=9, pith=False))["good-pith"] == "A"


def test_grain_that_runs_out_too_soon():
    found = only("grain-runs-out", BoardSeen("A", moisture=9, grain=8, thickness=12))
    assert "1 in 8" in found.message and "12 mm of wood in 96 mm" in found.message
    inches = only(
        "grain-runs-out",
        BoardSeen("A", moisture=9, grain=8, thickness=12.7),
        show=lambda mm: f"{mm / 25.4:g} in",
    )
    assert "0.5 in of wood in 4 in" in inches.message
    assert "mm" not in only("grain-runs-out", BoardSeen("A", moisture=9, grain=8)).message


def test_grain_at_the_limit_and_straight_grain_are_good():
    good = only("good-grain", BoardSeen("A", grain=12), BoardSeen("B", grain=20))
    assert good.where == "A and B" and "1 in 12 at worst" in good.message
    assert only("good-grain", BoardSeen("A", grain=math.inf)).message == "straight grain."


def test_nothing_is_said_of_what_was_not_looked_at():
    assert codes(BoardSeen("A", moisture=9)) == {"good-moisture": "A"}
    assert codes(BoardSeen("A"), BoardSeen("B")) == {"moisture-unknown": "A and B"}
    assert ready_to_cut([], room_moisture=ROOM) == ()


def test_every_limit_can_be_edited():
    board = BoardSeen("A", moisture=10.5, grain=13, lid_rings=35, species="black cherry")
    assert all(code.startswith("good") for code in codes(board))
    other = BoardSeen("B", moisture=9.5)
    strict = codes(
        board,
        other,
        moisture_off_most=1,
        moisture_spread_most=0.5,
        rings_least=45,
        moves_much=0.2,
        grain_least=15,
    )
    bad = {code for code in strict if not code.startswith("good")}
    assert bad == {"moisture-above-room", "boards-disagree", "lid-rings-flat", "grain-runs-out"}


def test_the_worst_comes_first():
    found = ready_to_cut(
        [BoardSeen("A", moisture=9.2, pith=True), BoardSeen("B", moisture=13, pith=False)],
        room_moisture=ROOM,
    )
    levels = [LEVELS.index(row.level) for row in found]
    assert levels == sorted(levels) and set(levels) == {0, 1, 2}


@pytest.mark.parametrize(
    ("given", "told"),
    [
        ({"moisture": -1}, "A: its moisture was given as -1 %"),
        ({"moisture": math.nan}, "A: its moisture"),
        ({"weight": 0}, "A: its weight was given as 0 g"),
        ({"grain": 0}, "A: its grain was given as 1 in 0"),
        ({"grain": math.nan}, "A: its grain"),
        ({"thickness": -12}, "A: thickness was given as -12 mm"),
        ({"lid_rings": 91, "species": "cherry"}, "91 degrees"),
        ({"lid_rings": 10}, "of which wood"),
    ],
)
def test_what_cannot_be_measured_is_refused_by_name(given, told):
    with pytest.raises(ValueError, match=told):
        BoardSeen("A", **given)


def test_two_boards_of_one_name_and_an_impossible_room_are_refused():
    with pytest.raises(ValueError, match="Two boards are called 'A'"):
        ready_to_cut([BoardSeen("A"), BoardSeen("A")], room_moisture=ROOM)
    with pytest.raises(ValueError, match="room_moisture was given as -3"):
        ready_to_cut([BoardSeen("A")], room_moisture=-3)


@given(st.floats(5, 300), st.floats(5, 60), st.floats(1, 400), st.floats(0, 90))
def test_the_pith_is_inside_where_a_cup_cannot_be_foretold(width, thickness, radius, rings):
    def cups() -> bool:
        try:
            cup(
                width,
                thickness=thickness,
                ring_radius=radius,
                rings=rings,
                species="cherry",
                moisture_from=14,
                moisture_to=8,
            )
        except PithInside:
            return False
        return True

    found = pith_in_section(width, thickness=thickness, ring_radius=radius, rings=rings)
    assert found is not cups()
    if radius > math.hypot(width, thickness) / 2:
        assert not found
    if radius < min(width, thickness) / 2 * 0.999:
        assert found
