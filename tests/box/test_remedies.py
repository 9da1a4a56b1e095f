"""Remedies for panels: each is proved by another road than the one that found it."""

import pytest
from hypothesis import given, settings, strategies as st

from tests.boxes import (
    first_inch_postcard as inch_postcard,
    first_lift_off as lift_off,
    first_postcard as postcard,
)
from toolkit.box import Choices, Remedy, Room, design, droop, held, remedies, sliding
from toolkit.box.clearances import widest_span, window
from toolkit.box.panel_checks import check_seasons
from toolkit.wood import movement

WOODS = (
    "black cherry",
    "black walnut",
    "sugar maple",
    "American beech",
    "red oak, commercial group",
)


def of(wood: str, **values: float) -> Choices:
    return postcard().having({"wood.lid": wood, "wood.bottom": wood, **values})


def faults(choices: Choices) -> set[tuple[str, str]]:
    return {(row.code, row.where) for row in check_seasons(design(choices)) if row.level != "good"}


def kinds(found: tuple[Remedy, ...]) -> list[str]:
    return [row.kind for row in found]


def test_a_panel_that_is_right_needs_nothing() -> None:
    assert remedies(postcard(), panel="lid") == ()


def test_where_both_limits_fail_the_groove_comes_first_then_box_cut_and_wood() -> None:
    found = remedies(of("American beech"), panel="lid", woods=WOODS)
    assert kinds(found) == ["deeper groove", "narrower box", "rings", "species", "species"]
    assert [row.rank for row in found] == [1, 2, 3, 4, 5]
    assert found[0].sentence.startswith("Plough every groove 5.6 mm deep instead of 4 mm; the lid")
    # Quarter-sawn beech asks for 1.42 mm, so that 2 mm suits; at 45° it still needs more.
    assert dict(found[2].changes) == {"wood.rings": 90.0}
    assert "black cherry" in found[3].sentence


def test_no_moisture_helps_where_both_limits_fail() -> None:
    for wood in WOODS[2:]:
        assert "moisture" not in kinds(remedies(of(wood), panel="lid", woods=WOODS))


def test_a_shaving_comes_before_all_and_damper_wood_may_do() -> None:
    tight = of("black cherry", **{"panels.lid_across": 1.2, "panels.bottom_across": 1.2})
    found = remedies(tight, panel="lid", woods=WOODS)
    assert kinds(found) == ["clearance", "rings", "moisture"]
    assert found[0].sentence == "Plane the lid 116.2 mm wide, 1.8 mm clear."
    assert found[2].sentence == "Let its wood come to 12 % before you fit it."
    assert dict(found[2].changes) == {"rooms.make_moisture": 12.0}


def test_a_loose_lid_may_also_get_a_deeper_groove_as_it_is() -> None:
    found = remedies(of("black cherry", **{"panels.lid_across": 3.0}), panel="lid", woods=WOODS)
    assert kinds(found)[:2] == ["clearance", "deeper groove"]
    assert found[0].sentence.startswith("Make the lid")
    # 3 of clearance, 0.9 of shrinking, 1 to hold: 4.9.
    assert dict(found[1].changes) == {"groove.depth": pytest.approx(4.9)}


@settings(max_examples=60, deadline=None)
@given(
    wood=st.sampled_from(WOODS),
    clear=st.floats(0.2, 6.0),
    depth=st.sampled_from([3.0, 4.0, 5.0, 6.0]),
    width=st.floats(60.0, 220.0),
    inches=st.booleans(),
)
def test_every_remedy_makes_its_panel_right_and_no_other_wrong(
    wood: str, clear: float, depth: float, width: float, inches: bool
) -> None:
    start = inch_postcard() if inches else postcard()
    box = start.having(
        {
            "wood.lid": wood,
            "wood.bottom": wood,
            "panels.lid_across": clear,
            "groove.depth": depth,
            "size.inside_width": width,
        }
    )
    before = faults(box)
    found = remedies(box, panel="lid", woods=WOODS)
    assert not found or any(where == "lid" for _, where in before)
    for row in found:
        after = faults(box.having(row.changes))
        assert not any(where == "lid" for _, where in after), row
        assert after <= before
        # The movement by itself, without the box's own numbers.
        d = design(box.having(row.changes))
        lid, year = d.lid, d.lid.season
        asked = {"species": d.choices.wood.lid, "rings": d.choices.wood.rings}
        grown = movement(lid.width.value, moisture_from=year.make, moisture_to=year.damp, **asked)
        shrunk = movement(lid.width.value, moisture_from=year.make, moisture_to=year.dry, **asked)
        clear_now = d.frame.inside_width.value + 2 * d.choices.groove.depth - lid.width.value
        assert clear_now >= grown + 0.3 - 1e-6
        assert d.choices.groove.depth - clear_now + shrunk >= 1.0 - 1e-6


@settings(max_examples=60, deadline=None)
@given(clear=st.floats(0.5, 4.0), wood=st.sampled_from(WOODS), depth=st.floats(3.0, 6.0))
def test_the_window_says_the_same_as_the_findings(clear: float, wood: str, depth: float) -> None:
    d = design(of(wood, **{"panels.lid_across": clear, "groove.depth": depth}))
    at = window(d, panel="lid")
    codes = {row.code for row in check_seasons(d) if row.where == "lid"}
    assert at.tight == ("swells-tight" in codes)
    assert at.loose == ("drops-out" in codes)


def test_at_the_widest_span_the_limits_meet() -> None:
    d = design(of("sugar maple"))
    for spare in (0.0, 0.1):
        span = widest_span(d, panel="lid", reach=4.0, spare=spare)
        there = window(design(of("sugar maple", **{"size.inside_width": span - 8.0})), panel="lid")
        assert there.most - there.least == pytest.approx(spare, abs=1e-9)


def test_a_made_groove_is_ploughed_deeper_and_a_made_lid_planed_narrower() -> None:
    found = remedies(of("American beech", **{"made.groove_depth": 4.0}), panel="lid", woods=WOODS)
    assert "made.groove_depth" in dict(found[0].changes)
    tight = of("black cherry", **{"made.lid_width": 116.8})
    assert dict(remedies(tight, panel="lid")[0].changes) == {"made.lid_width": pytest.approx(116.2)}
    # The lid that is made gains room by both grooves: 1.8 asked for, 1.2 and twice 0.3.
    deeper = {row.kind: dict(row.changes) for row in remedies(tight, panel="lid")}["deeper groove"]
    assert deeper == {"groove.depth": pytest.approx(4.3)}
    loose = of("black cherry", **{"made.lid_width": 115.0})
    assert "clearance" not in kinds(remedies(loose, panel="lid"))


def test_contents_are_not_squeezed_out() -> None:
    box = of("American beech", **{"size.contents": "A6 cards"})
    assert "narrower box" not in kinds(remedies(box, panel="lid", woods=WOODS))


def test_panels_that_are_not_there_are_refused_by_name() -> None:
    with pytest.raises(ValueError, match="where the lid slides"):
        window(design(lift_off()), panel="lid")
    with pytest.raises(ValueError, match="lies in no groove"):
        remedies(postcard(), panel="side")


# The lid on its way


def test_a_flat_sawn_front_rises_beside_quartered_sides_and_the_lid_rides_over_it() -> None:
    at = sliding(design(postcard()))
    # 50.7 × 1.27 % and 51 × 0.65 %, from the handbook's movement of cherry.
    assert at.front_rise == pytest.approx(0.64, abs=0.01)
    assert at.floor_rise == pytest.approx(0.33, abs=0.01)
    assert at.gap_damp == pytest.approx(-0.01, abs=0.01) and at.passes and at.slides
    assert "within its play" in at.sentence(postcard().rule)


def test_a_front_level_with_the_floor_jams_a_lid_without_play() -> None:
    tight = postcard().having({"panels.under_lid": 0.0, "panels.lid_tongue": 0.1})
    at = sliding(design(tight))
    assert not at.passes and "it jams" in at.sentence(tight.rule)
    # In a bench as damp as its room nothing rises.
    still = tight.having({"rooms.make": Room(22.0, 75.0)})
    assert sliding(design(still)).front_rise == 0


def test_a_lid_half_out_hangs_by_its_whole_play() -> None:
    d = design(postcard())
    assert held(d, out=84.0) == 84.0
    assert droop(d, out=84.0) == pytest.approx(0.3)
    assert droop(d, out=42.0) == pytest.approx(0.1)
    assert droop(d, out=0.0) == 0.0
    assert droop(d, out=168.0) is None
