"""What ends and edges out of square do to a box, against sums done by hand."""

from math import hypot

import pytest
from hypothesis import given, strategies as st

from tests.boxes import (
    first_ears as ears,
    first_inch_postcard as inch_postcard,
    first_lift_off as lift_off,
    first_postcard as postcard,
)
from toolkit.box import Choices
from toolkit.plan import compare, plan
from toolkit.plan.squareness import WALLS, Slack, check_square, measured, rooms
from toolkit.results import Finding

KEYS = [f"{wall}_{gap}" for wall in WALLS for gap in ("end_out", "end_lean", "edge_out")]
KEYS += ["bottom_end_out", "lid_end_out"]


def having(choices: Choices, **gaps: float) -> Choices:
    return choices.having({f"made.{key}": gap for key, gap in gaps.items()})


def room(panel: str, kind: str, **gaps: float) -> Slack:
    found = rooms(plan(having(postcard(), **gaps)).design)
    return next(row for row in found if (row.panel.name, row.kind) == (panel, kind))


def said(**gaps: float) -> dict[str, Finding]:
    return {row.code: row for row in check_square(plan(having(postcard(), **gaps)).design)}


@pytest.mark.parametrize("choices", [postcard(), inch_postcard(), ears(), lift_off()])
def test_what_was_not_measured_is_not_spoken_of(choices: Choices) -> None:
    assert measured(plan(choices).design) == {}
    assert check_square(plan(choices).design) == []


@pytest.mark.parametrize(
    ("panel", "kind", "gaps", "left"),
    [
        # The lid's groove lies from 51 to 57 mm up a wall of 64, the bottom's from 7 to 13.
        ("lid", "across", {"back_end_out": 0.64}, 2 - 0.64 * 54 / 64),
        ("bottom", "across", {"back_end_out": 0.64}, 2 - 0.64 * 10 / 64),
        ("bottom", "along", {"side_end_out": 0.64}, 1 - 0.1),
        ("bottom", "along", {"back_end_out": 0.64}, 1),
        # The front is 50.7 mm high, so that the lid lies above all of it.
        ("lid", "across", {"front_end_out": 0.5}, 2 - 0.5),
        ("lid", "across", {"front_end_out": 0.5, "back_end_out": 0.64}, 2 - 0.54),
        # Half of a panel's own end lies beyond its middle, where it was read, half this side.
        ("bottom", "along", {"bottom_end_out": 0.4}, 1 - 0.2),
        ("bottom", "hold", {"bottom_end_out": 0.4}, 4 - 1 - 0.2),
        # Read over 12 mm of thickness and a groove 4 mm deep: a third of it.
        ("bottom", "tongue", {"side_edge_out": 0.3}, 0.2 - 0.1),
        ("lid", "tongue", {"side_edge_out": 0.3, "back_edge_out": 0.15}, 0.3 - 0.1),
        # A lid as long as it can be: its longer corner stands on the groove's floor.
        ("lid", "reach", {"lid_end_out": 0.5}, 4 - 0.5),
        ("lid", "reach", {"lid_end_out": 0.5, "lid_length": 167.0}, 3 - 0.25),
        ("lid", "reach", {"side_end_out": 0.64}, 4 - 0.54),
    ],
)
def test_what_is_left_at_the_worst_corner(
    panel: str, kind: str, gaps: dict[str, float], left: float
) -> None:
    assert room(panel, kind, **gaps).left.value == pytest.approx(left)


def test_what_fails_for_certain_won_t_work_and_what_breaks_a_custom_wants_care() -> None:
    # 4 mm of back groove, of which a custom asks for 2.4: gone at 4 mm out of square.
    assert said(lid_end_out=3.9)["lid-corner-short"].level == "care"
    assert said(lid_end_out=4.1)["lid-corner-short"].level == "wont_work"
    # Cherry swells 1.48 of the 2 mm beside the lid; dry, it holds 1.11 mm.
    close, far = {"back_end_out": 0.5}, {"back_end_out": 0.7}
    assert {said(**gap)["swells-tight-at-an-end"].level for gap in (close,)} == {"care"}
    assert said(**far)["swells-tight-at-an-end"].level == "wont_work"


@pytest.mark.parametrize(
    ("gap", "limit", "code", "level"),
    [
        ("bottom_end_out", 2.0, "panel-corner-tight", "wont_work"),  # half of it: 1 mm along
        ("side_edge_out", 0.6, "tongue-binds", "wont_work"),  # a third of it: 0.2 mm of play
        ("lid_end_out", 1.6, "lid-corner-short", "care"),  # 60 % of 4 mm must be left
        ("side_end_out", 0.1, "end-out-of-square", "care"),
        ("side_end_lean", 0.1, "end-leans", "care"),
        ("back_edge_out", 0.1, "edge-out-of-square", "care"),
    ],
)
def test_each_limit_is_told_just_beyond_it(gap: str, limit: float, code: str, level: str) -> None:
    assert code not in said(**{gap: limit})
    found = said(**{gap: limit * 1.01})
    assert found[code].level == level
    assert found[code].remedy


def test_a_corner_that_hardly_holds_is_care_until_it_holds_no_more() -> None:
    # 4 mm of groove less 1 mm of clearance, and half of the end: 0.5 mm, then nothing.
    assert said(bottom_end_out=5.0)["panel-corner-drops-out"].level == "care"
    assert said(bottom_end_out=6.1)["panel-corner-drops-out"].level == "wont_work"


def test_a_corner_that_leans_makes_the_diagonals_differ() -> None:
    found = said(side_end_lean=0.3)["end-leans"]
    # By the corners themselves: 0.3 in 12, and a box of 176 × 134 mm.
    lean = 0.3 / hypot(0.3, 12.0)
    up = 134.0 * (1 - lean**2) ** 0.5
    differ = hypot(176 + 134 * lean, up) - hypot(176 - 134 * lean, up)
    assert f"differ by {differ:.2f} mm" in found.message
    assert "keeps the box from leaning" in found.message  # 116 / 40 = 2.9 mm, and 1 mm to move
    assert "keeps the box" not in said(side_end_lean=0.103)["end-leans"].message


def test_what_is_square_enough_is_said_too() -> None:
    gaps = {"side_end_out": 0.0, "back_edge_out": 0.1, "bottom_end_out": 0.4}
    measured_box = plan(having(postcard(), **gaps)).design
    found = said(**gaps)
    assert all(row.level == "good" for row in found.values())
    walls = [row.where for row in check_square(measured_box) if row.code == "good-square"]
    assert walls == ["side, end square to the edge", "back, edge square to the face"]
    assert "clearance along the grain 0.8 mm" in found["good-panel-square"].message


def test_a_custom_decides_how_square_is_square() -> None:
    loose = having(postcard(), side_end_out=0.3).having({"customs.square_most": 0.5})
    assert [row.code for row in check_square(plan(loose).design)] == ["good-square"]


def test_a_lift_off_lid_shows_it_at_its_overhang() -> None:
    found = check_square(plan(having(lift_off(), lid_end_out=0.5)).design)
    assert [row.code for row in found] == ["lid-end-out"]


def test_a_comparison_says_what_it_takes() -> None:
    before = plan(postcard())
    told = compare(before, plan(having(postcard(), bottom_end_out=0.4)))
    rule = postcard().rule
    assert {(row.where, row.why(rule)) for row in told.changes} == {
        ("bottom, clearance along the grain", "its longer corner − 0.2 mm"),
        ("bottom, hold at an end, pushed to the other", "its shorter corner − 0.2 mm"),
    }
    thicker = compare(before, plan(postcard().having({"thickness.side": 13.0})))
    assert not {row.where for row in thicker.changes} & {row.name for row in rooms(before.design)}


@given(st.dictionaries(st.sampled_from(KEYS), st.floats(0.0, 3.0), min_size=1))
def test_more_out_of_square_never_leaves_more(gaps: dict[str, float]) -> None:
    half = {key: gap / 2 for key, gap in gaps.items()}
    some, more = (rooms(plan(having(postcard(), **each)).design) for each in (half, gaps))
    square = rooms(plan(postcard()).design)
    for true, less, least in zip(square, some, more, strict=True):
        assert least.left.value <= less.left.value + 1e-12 <= true.left.value + 2e-12
    worst = {row.level for row in check_square(plan(having(postcard(), **gaps)).design)}
    assert worst
