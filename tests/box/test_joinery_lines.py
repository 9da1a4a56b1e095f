"""Which line goes on which face: every gauge line is laid on the box and must meet its joint.

End grain is left standing proud, or ends shy, by another amount from box to box.
"""

from collections.abc import Callable, Iterator
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

PROUD = (0.2, 0.0, -0.2, 0.5)  # from box to box [mm]
THROUGH = {"corner.joint": "through", "corner.lap": None, "corner.tail_length": None}


def standing(arrangement: Arrangement, boxes: int) -> Iterator[Design]:
    """Random boxes of one arrangement that can be set out."""

    def able() -> Iterator[Design]:
        for seed in count():
            proud = {"corner.proud": PROUD[seed % len(PROUD)]}
            d = design(random_box(arrangement, seed).having(proud))
            if d.exists:
                yield d

    return islice(able(), boxes)


def lines(d: Design, **wanted: str) -> list[Line]:
    """Gauged lines that have these values."""
    rows = [row for row in setting_out_lines(d) if row.setting is not None]
    return [row for row in rows if all(getattr(row, k) == v for k, v in wanted.items())]


def value(row: Line) -> float:
    assert row.setting is not None
    return row.setting.value


def level(d: Design, row: Line) -> float:
    """How far a line lies from the end of its wall once that is planed flush. [mm]"""
    f = d.frame
    over = getattr(f, f"{row.part}_cut").value - getattr(f, f"{row.part}_length").value
    return value(row) - over / 2


def inside_of(d: Design, part: str) -> float:
    """What lies between the two baselines of a wall, from its length as cut. [mm]"""
    ends = ("each end", "each end") if part != "side" else ("back end", "front end")
    bases = [
        max(value(row) for row in lines(d, part=part, end=end, gauged_from="the end"))
        for end in ends
    ]
    return float(getattr(d.frame, f"{part}_cut").value) - sum(bases)


@pytest.mark.parametrize("arrangement", ARRANGEMENTS, ids=str)
def test_every_wall_as_cut_has_the_inside_between_its_baselines(arrangement: Arrangement) -> None:
    """What is cut longer is what the gauges are set over: the space inside stays as planned."""
    for d in standing(arrangement, 24):
        f = d.frame
        assert inside_of(d, "side") == pytest.approx(f.inside_length.value)
        # Of two unlike ends that are made already the shorter rules.
        shorter = min(inside_of(d, "back"), inside_of(d, "front"))
        assert shorter == pytest.approx(f.inside_width.value)
        assert between_baselines(d).value == pytest.approx(
            inside_of(d, "side" if arrangement.tails_on == "ends" else "back")
        )


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
                    assert lap + level(d, row) == pytest.approx(f.side_thickness.value)
                pins, at = "side", f"{corner} end"
                far = board
            else:
                # A side begins at the lap, or at the face where an ear runs on over a low front.
                begins = 0.0 if corner == "front" and arrangement.lid == "sliding" else lap
                side = lines(d, part="side", end=f"{corner} end", gauged_from="the end")
                reach = {round(begins + level(d, row), 9) for row in side}
                assert round(board, 9) in reach
                assert reach <= {round(board, 9), round(lap, 9)}
                pins, at = corner, "each end"
                far = f.side_thickness.value
            base = lines(d, part=pins, end=at, gauged_from="the end")
            assert all(level(d, row) == pytest.approx(far) for row in base)
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
    box = ears() if joint == "half-blind" else ears().having(THROUGH | {"corner.proud": 0.0})
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
@pytest.mark.parametrize("joint", ["half-blind", "through"])
@pytest.mark.parametrize("make", [postcard, ears])
def test_proud_moves_the_lines_of_end_grain_that_shows(
    make: Callable[[], Choices], joint: str, proud: float
) -> None:
    box = make() if joint == "half-blind" else make().having(THROUGH)
    flush, moved = (
        setting_out_lines(design(box.having({"corner.proud": by}))) for by in (0.0, proud)
    )
    for one, other in zip(flush, moved, strict=True):
        before = None if one.setting is None else one.setting.value
        after = None if other.setting is None else other.setting.value
        moves = ("gauge 1", "gauge 2") if joint == "through" else ("gauge 2",)
        if one.name.startswith(moves):
            assert after == pytest.approx((before or 0.0) + proud)
        else:
            assert after == before


@pytest.mark.parametrize(
    ("box", "cut", "inside"),
    [(postcard(), "176.4 mm", "152 mm"), (ears(), "134.4 mm", "110 mm")],
    ids=["ends", "sides"],
)
def test_what_is_said_of_proud_pins(box: Choices, cut: str, inside: str) -> None:
    def said(proud: float | None) -> str:
        return proud_sentence(design(box.having({"corner.proud": proud})))

    assert said(None) == said(0.2)
    assert f"cut 0.4 mm longer for it, {'a side' if cut[2] == '6' else 'an end'} {cut}" in said(0.2)
    assert f"{inside} apart" in said(0.2) and f"{inside} apart" in said(-0.2)
    assert "more than is planed off" not in said(0.5)
    assert "more than is planed off" in said(0.6)
    assert "more than is planed off" in said(-0.3)
    assert "shy" in said(-0.2) and "flush" in said(0.0)


def test_settings_of_a_low_front_with_an_ear_are_a_pair() -> None:
    assert gauge_settings(design(postcard())).ear is None
    assert gauge_settings(design(lift_off().having({"corner.tails_on": "sides"}))).ear is None
    assert gauge_settings(design(ears())).ear is not None


@pytest.mark.parametrize("arrangement", ARRANGEMENTS, ids=str)
def test_the_plans_settings_say_the_same_gauges(arrangement: Arrangement) -> None:
    for d in standing(arrangement, 6):
        told = {row.tool: row for row in plan(d.choices).settings if row.tool.startswith("gauge")}
        s, show = gauge_settings(d), d.choices.rule.show
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
                assert row.value == show((s.board_front if "front" in tool else s.board_back).value)
        assert ("gauge for the ear" in told) == (
            s.ear is not None and arrangement.joint == "half-blind"
        )
