"""Which line goes on which face: every gauge line is laid on the box and must meet its joint."""

from collections.abc import Iterator
from itertools import count, islice

import pytest

from tests.boxes import first_ears as ears, first_lift_off as lift_off, first_postcard as postcard
from tests.oracle.designs import ARRANGEMENTS, Arrangement, random_box
from toolkit.box import (
    Choices,
    Design,
    Line,
    between_baselines,
    design,
    gauge_settings,
    proud_sentence,
    setting_out_lines,
)
from toolkit.plan import plan

THROUGH = {"corner.joint": "through", "corner.lap": None, "corner.tail_length": None}


def standing(arrangement: Arrangement, boxes: int) -> Iterator[Design]:
    """Random boxes of one arrangement that can be set out."""

    def able() -> Iterator[Design]:
        for seed in count():
            d = design(random_box(arrangement, seed))
            if d.exists:
                yield d

    return islice(able(), boxes)


def lines(d: Design, **wanted: str) -> list[Line]:
    """Gauged lines, without any proud, that have these values."""
    rows = [row for row in setting_out_lines(d, proud=0.0) if row.setting is not None]
    return [row for row in rows if all(getattr(row, k) == v for k, v in wanted.items())]


def value(row: Line) -> float:
    assert row.setting is not None
    return row.setting.value


@pytest.mark.parametrize("arrangement", ARRANGEMENTS, ids=str)
def test_every_line_meets_its_joint(arrangement: Arrangement) -> None:
    """Measured from the board's end in the box's own axes, each line lies on a plane of the joint:
    tails end where the lap begins, and both baselines lie in the inside corner."""
    for d in standing(arrangement, 40):
        f = d.frame
        half_blind = arrangement.joint == "half-blind"
        on_ends = arrangement.tails_on == "ends"
        tops = {"back": f.wall_height.value, "front": f.front_height.value}
        for corner, board in (("back", f.back_thickness.value), ("front", f.front_thickness.value)):
            lap = getattr(f, f"lap_{corner}").value
            if on_ends:
                # An end lies between the laps, so its baseline is at the side's inside face.
                end_lines = lines(d, part=corner, end="each end", gauged_from="the end")
                assert {row.face for row in end_lines} == {
                    "inside face",
                    "outside face",
                    "bottom edge",
                    "top edge",
                }
                for row in end_lines:
                    assert lap + value(row) == pytest.approx(f.side_thickness.value)
                pins, at = "side", f"{corner} end"
                far = board
            else:
                # A side begins at the lap, or at the face where an ear runs on over a low front.
                begins = 0.0 if corner == "front" and arrangement.lid == "sliding" else lap
                side = lines(d, part="side", end=f"{corner} end", gauged_from="the end")
                reach = {round(begins + value(row), 9) for row in side}
                assert round(board, 9) in reach
                assert reach <= {round(board, 9), round(lap, 9)}
                pins, at = corner, "each end"
                far = f.side_thickness.value
            base = lines(d, part=pins, end=at, gauged_from="the end")
            assert all(value(row) == pytest.approx(far) for row in base)
            assert {row.face for row in base} == (
                {"inside face"} if half_blind else {"inside face", "outside face"}
            )
            tips = lines(d, part=pins, end=at, gauged_from="the inside face")
            assert bool(tips) == half_blind
            thick = f.side_thickness.value if on_ends else board
            for row in tips:
                assert row.face == "end grain"
                assert thick - value(row) == pytest.approx(lap)
            assert all(row.high == pytest.approx(tops[corner]) for row in (*base, *tips))


@pytest.mark.parametrize("joint", ["half-blind", "through"])
def test_an_ears_end_has_its_own_lines(joint: str) -> None:
    box = ears() if joint == "half-blind" else ears().having(THROUGH)
    rows = lines(design(box), part="side", end="front end")
    from_end = {(row.face, value(row)) for row in rows if row.gauged_from == "the end"}
    faces = ("inside face", "outside face", "bottom edge")
    expected = {(face, 12.0) for face in faces}
    if joint == "half-blind":
        expected |= {(face, 4.0) for face in faces}
    assert from_end == expected
    under = [row for row in rows if row.gauged_from == "the bottom edge"]
    assert {row.face for row in under} == {"inside face", "outside face", "end grain"}
    assert all(value(row) == pytest.approx(50.7) for row in under)


def test_the_top_edge_of_an_ear_is_never_marked() -> None:
    front = lines(design(ears()), part="side", end="front end")
    assert "top edge" not in {row.face for row in front}
    lifted = lines(design(lift_off().having({"corner.tails_on": "sides"})), end="front end")
    assert "top edge" in {row.face for row in lifted}


def test_lines_that_no_gauge_makes_are_told_too() -> None:
    by_hand = [row for row in setting_out_lines(design(postcard())) if row.setting is None]
    told = {(row.part, row.face, row.tool) for row in by_hand}
    assert told == {
        ("side", "end grain", "knife"),
        ("side", "inside face", "square"),
        ("back", "outside face", "bevel gauge"),
        ("back", "end grain", "square"),
        ("front", "outside face", "bevel gauge"),
        ("front", "end grain", "square"),
    }


def test_one_name_is_one_setting() -> None:
    for arrangement in ARRANGEMENTS:
        for d in standing(arrangement, 15):
            named: dict[str, float] = {}
            for row in lines(d):
                assert named.setdefault(row.name, value(row)) == pytest.approx(value(row)), row


def test_unlike_ends_have_settings_of_their_own() -> None:
    thin = design(ears().having({"made.front_thickness": 11.0}))
    names = {row.name for row in lines(thin)}
    assert {"gauge 1, back", "gauge 1, front", "gauge 2"} <= names


@pytest.mark.parametrize("proud", [-0.2, 0.2, 0.5])
@pytest.mark.parametrize("box", [postcard(), ears(), postcard().having(THROUGH)], ids=str)
def test_proud_moves_the_pins_baseline_and_nothing_else(box: Choices, proud: float) -> None:
    d = design(box)
    flush, moved = setting_out_lines(d, proud=0.0), setting_out_lines(d, proud=proud)
    for one, other in zip(flush, moved, strict=True):
        before = None if one.setting is None else one.setting.value
        after = None if other.setting is None else other.setting.value
        if one.name.startswith("gauge 2"):
            assert after == pytest.approx((before or 0.0) + proud)
        else:
            assert after == before


@pytest.mark.parametrize(
    ("box", "inside"), [(postcard(), 152.0), (ears(), 110.0)], ids=["ends", "sides"]
)
def test_what_proud_takes_from_the_inside(box: Choices, inside: float) -> None:
    d = design(box)
    assert between_baselines(d, proud=0.0).value == pytest.approx(inside)
    assert between_baselines(d, proud=0.2).value == pytest.approx(inside - 0.4)
    assert f"{inside - 0.4:g} mm between" in proud_sentence(d)
    assert "more than is planed off" not in proud_sentence(d, proud=0.5)
    assert "more than is planed off" in proud_sentence(d, proud=0.6)
    assert "more than is planed off" in proud_sentence(d, proud=-0.3)
    assert "shy" in proud_sentence(d, proud=-0.2)


def test_settings_of_a_low_front_with_an_ear_are_a_pair() -> None:
    assert gauge_settings(design(postcard())).ear is None
    assert gauge_settings(design(lift_off().having({"corner.tails_on": "sides"}))).ear is None
    assert gauge_settings(design(ears())).ear is not None


@pytest.mark.parametrize("arrangement", ARRANGEMENTS, ids=str)
def test_the_plans_settings_say_the_same_gauges(arrangement: Arrangement) -> None:
    for d in standing(arrangement, 6):
        told = {row.tool: row for row in plan(d.choices).settings if row.tool.startswith("gauge")}
        s, show = gauge_settings(d, proud=0.0), d.choices.rule.show
        values = {row.value for row in told.values()}
        for one in (s.board_back, s.board_front):
            assert show(one.value) in values
        pin_boards = "sides" if arrangement.tails_on == "ends" else "ends"
        for tool, row in told.items():
            if tool.startswith("gauge 1"):
                # A through joint's pins never see the first gauge.
                assert (f"{pin_boards}: the end grain" in row.use) == (
                    arrangement.joint == "half-blind"
                )
            if tool.startswith("gauge 2"):
                assert row.use.startswith(f"{pin_boards}: ")
                assert show(gauge_settings(d).board_back.value) in row.use or "front" in tool
        assert ("gauge for the ear" in told) == (
            s.ear is not None and arrangement.joint == "half-blind"
        )
