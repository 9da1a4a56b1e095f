"""Ready to cut: each thing a maker looks at, at its limit and beyond, and silence on the rest."""

import math

import pytest

from toolkit.wood import BoardSeen, ready_to_cut

ROOM = 9.3


def codes(*boards: BoardSeen) -> dict[str, str]:
    """Code of each finding and where it is."""
    found = ready_to_cut(boards, room_moisture=ROOM)
    return {row.code: row.where for row in found}


def only(code: str, *boards: BoardSeen):
    """The one finding with this code."""
    found = [r for r in ready_to_cut(boards, room_moisture=ROOM) if r.code == code]
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


def test_pieces_are_weighed_against_the_lightest():
    weights = {"1": 430, "2": 512, "3": 441, "4": None}
    pieces = [BoardSeen(name, moisture=9, weight=grams) for name, grams in weights.items()]
    found = only("heavy-piece", *pieces)
    assert found.where == "2"
    assert "512 g, 19.1 % more than the lightest alike (430 g)" in found.message
    assert "good-weights" not in codes(*pieces)
    assert set(codes(pieces[0])) == {"good-moisture"}


def test_fifteen_percent_is_still_good():
    assert (
        "15 %"
        in only("good-weights", BoardSeen("1", weight=400), BoardSeen("2", weight=460)).message
    )
    assert "heavy-piece" in codes(BoardSeen("1", weight=400), BoardSeen("2", weight=460.4))


def test_grain_that_runs_out_too_soon():
    assert "1 in 8. It tears" in only("grain-runs-out", BoardSeen("A", grain=8)).message
    assert "grain-runs-out" in codes(BoardSeen("A", grain=11.99))


def test_grain_at_the_limit_and_straight_grain_are_good():
    good = only("good-grain", BoardSeen("A", grain=12), BoardSeen("B", grain=20))
    assert good.where == "A and B" and "1 in 12 at worst" in good.message
    assert only("good-grain", BoardSeen("A", grain=math.inf)).message == "straight grain."


def test_nothing_is_said_of_what_was_not_looked_at():
    assert codes(BoardSeen("A", moisture=9)) == {"good-moisture": "A"}
    assert codes(BoardSeen("A"), BoardSeen("B")) == {"moisture-unknown": "A and B"}
    assert ready_to_cut([], room_moisture=ROOM) == ()


@pytest.mark.parametrize(
    ("given", "told"),
    [
        ({"moisture": -1}, "A: its moisture was given as -1 %"),
        ({"moisture": math.nan}, "A: its moisture"),
        ({"weight": 0}, "A: its weight was given as 0 g"),
        ({"grain": 0}, "A: its grain was given as 1 in 0"),
        ({"grain": math.nan}, "A: its grain"),
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
