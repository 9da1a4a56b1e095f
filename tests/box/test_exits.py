"""Cures of holes, bevels and the lid's way in the damp: each proved by another road."""

import pytest
from hypothesis import assume, given, settings, strategies as st

from tests.boxes import (
    first_ears as ears,
    first_inch_postcard as inch_postcard,
    first_lift_off as lift_off,
    first_postcard as postcard,
)
from toolkit.box import Choices, design
from toolkit.box.bevels import bevel, width_for
from toolkit.box.clearances import window
from toolkit.box.fitting import fitted_at, fitting_tables, months
from toolkit.box.holes import exit_table, exits
from toolkit.box.panel_checks import check_bevels, check_lid_way
from toolkit.box.seasons import year_between
from toolkit.document import as_text
from toolkit.plan import plan
from toolkit.wood import MONTHS, all_species

THROUGH = {"corner.joint": "through", "corner.lap": None}


def kinds(choices: Choices) -> list[list[str]]:
    return [[cure.kind for cure in one.cures] for one in exits(choices)]


# Exits


@pytest.mark.parametrize("make", [postcard, inch_postcard, ears, lift_off])
def test_a_box_without_holes_needs_no_cure(make) -> None:  # type: ignore[no-untyped-def]
    assert exits(make()) == ()
    assert "nothing shows outside" in as_text(exit_table(make()))


def test_every_through_combination_is_named_by_face_place_and_size() -> None:
    rule = postcard().rule
    for box, face in ((postcard(), "sides"), (ears(), "back end")):
        first = exits(box.having(THROUGH))[0]
        assert first.sentence(rule) == (
            f"bottom groove at the back corners, {face}, outside face: 6 mm × 4 mm, from 7 mm to "
            "13 mm above the bottom edge; it comes out of the tip of a through tail"
        )
        assert [cure.kind for cure in first.cures] == ["lap", "stop", "plug"]


def test_a_groove_that_meets_a_pin_is_moved_first() -> None:
    low = exits(postcard().having({"groove.bottom_edge": 3.0}))
    assert {one.hole.corner for one in low} == {"back", "front"}
    first = low[0].cures[0]
    # The tail begins at 5 and a groove wants 1.5 beside it: 6.5, as the rule's half marks have it.
    assert dict(first.changes) == {"groove.bottom_edge": pytest.approx(6.5)}
    assert first.sentence == (
        "Plough the bottom groove 3.5 mm farther from the bottom edge, at 6.5 mm."
    )
    # The tails are on the ends and 12 less 4 long; the panel stands 4 in a wall 12 thick.
    assert low[0].cures[1].sentence.startswith("Stop the bottom groove 8 mm short of the end of")


def test_one_fence_stays_one_fence() -> None:
    box = postcard().having({"groove.bottom_edge": 3.0, "groove.top_edge": 3.0})
    for one in exits(box):
        assert set(dict(one.cures[0].changes)) == {"groove.bottom_edge", "groove.top_edge"}


def test_a_thinner_half_pin_may_do() -> None:
    box = postcard().having({"groove.bottom_edge": 4.6, "groove.top_edge": 4.6})
    assert all("shift the tails" in found for found in kinds(box))
    cure = next(cure for cure in exits(box)[0].cures if cure.kind == "shift the tails")
    assert dict(cure.changes) == {"corner.half_pin": pytest.approx(3.0)}


def test_a_pin_in_the_groove_may_be_cured_by_other_tails() -> None:
    box = postcard().having({"corner.tails_back": ((2.0, 8.0), (16.0, 30.0), (36.0, 59.0))})
    found = kinds(box)
    assert found and all("more or fewer tails" in one for one in found)


@settings(max_examples=40, deadline=None)
@given(
    edge=st.integers(10, 90),
    top=st.integers(10, 90),
    half=st.integers(30, 70),
    back=st.integers(1, 5),
    on=st.sampled_from(["ends", "sides"]),
    through=st.booleans(),
)
def test_cured_boxes_have_that_hole_no_longer_and_nothing_new_is_impossible(
    edge: int, top: int, half: int, back: int, on: str, through: bool
) -> None:
    box = postcard().having(
        {
            "groove.bottom_edge": edge / 10,
            "groove.top_edge": top / 10,
            "corner.half_pin": half / 10,
            "corner.tails_back": back,
            "corner.tails_on": on,
            **(THROUGH if through else {}),
        }
    )
    found = exits(box)
    assume(found)
    before = {(row.code, row.where) for row in plan(box).found if row.level == "wont_work"}
    for one in found:
        assert [cure.rank for cure in one.cures] == list(range(1, len(one.cures) + 1))
        assert {"stop", "plug"} <= {cure.kind for cure in one.cures}
        for cure in one.cures:
            after = plan(box.having(cure.changes))
            wrong = {(row.code, row.where) for row in after.found if row.level == "wont_work"}
            assert wrong <= before
            holes = {"groove-outside-tail", "groove-shows-through-joint"}
            shown = sum(row.code in holes for row in after.found)
            assert shown < len(found)
            if cure.kind not in ("stop", "plug"):
                gone = {(h.groove, h.corner, h.cause) for h in after.design.holes}
                assert (one.hole.groove, one.hole.corner, one.hole.cause) not in gone


# Bevels


@pytest.mark.parametrize("wide", [10.0, 12.5, 16.0, 20.0])
def test_a_chosen_bevel_has_its_tongue_at_the_lip(wide: float) -> None:
    box = postcard().having({"panels.lid_profile": "bevelled", "panels.bevel_width": wide})
    lid = design(box).lid
    rim, width = lid.bevel
    assert width == wide
    at_lip = rim + (lid.thickness.value - rim) * lid.reach / width
    assert at_lip == pytest.approx(lid.tongue)
    assert width_for(9, tongue=lid.tongue, reach=lid.reach, rim=rim) == pytest.approx(wide)
    assert rim < bevel(9, tongue=lid.tongue, reach=lid.reach, width=wide + 1).rim


@pytest.mark.parametrize(
    ("wide", "code"),
    [(4.0, "bevel-too-narrow"), (6.0, "bevel-too-narrow"), (7.0, "bevel-rim-thin")],
)
def test_narrow_bevels_are_told(wide: float, code: str) -> None:
    box = postcard().having({"panels.lid_profile": "bevelled", "panels.bevel_width": wide})
    assert [row.code for row in check_bevels(design(box))] == [code]
    assert code in {row.code for row in plan(box).found}
    assert check_bevels(design(box.having({"panels.lid_profile": "rebated"}))) == []


def test_a_width_slopes_the_right_way_only() -> None:
    with pytest.raises(ValueError, match="slopes the wrong way"):
        width_for(9, tongue=5.8, reach=3, rim=5.8)


# The front in the damp


def test_a_front_of_beech_rises_into_the_lid_and_a_lower_one_does_not() -> None:
    box = postcard().having({"wood.sides": "American beech", "wood.ends": "American beech"})
    found = plan(box).about("lid")[:1]
    assert [(row.level, row.code) for row in found] == [("care", "front-rises")]
    assert "Plane the front 0.7 mm lower than the floor" in found[0].remedy
    assert check_lid_way(design(box.having({"panels.under_lid": 0.7}))) == []
    assert check_lid_way(design(postcard())) == []
    assert check_lid_way(design(lift_off())) == []


def test_a_front_too_high_on_the_bench_is_said_once() -> None:
    codes = [row.code for row in plan(postcard().having({"made.front_width": 53.0})).findings]
    assert "front-too-high" in codes and "front-rises" not in codes


# Month by month


@pytest.mark.parametrize("inches", [False, True])
def test_a_clearance_by_the_meter_is_what_the_box_would_choose(inches: bool) -> None:
    """For every wood of the table, at every month of the box's rooms and at whole percents."""
    first = inch_postcard() if inches else postcard()
    moistures = (*year_between(first.rooms).moisture, *(float(percent) for percent in range(4, 21)))
    for wood in all_species():
        box = first.having({"wood.panels": wood.name, "wood.rings": 30.0, "panels.across": None})
        d = design(box)
        for moisture in moistures:
            there = design(box.having({"rooms.make_moisture": moisture}))
            for panel in ("bottom", "lid"):
                at, limits = (
                    fitted_at(d, panel=panel, moisture=moisture),
                    window(there, panel=panel),
                )
                chosen = getattr(there.choices.panels, f"{panel}_across")
                assert at.clearance == chosen, (wood.name, moisture)
                assert (at.least, at.most) == pytest.approx((limits.least, limits.most))
                assert at.open == (not limits.loose)
                assert at.fits(chosen) == ("right" if at.open else "too loose")


def test_the_table_is_for_both_panels_where_they_are_alike() -> None:
    (table,) = fitting_tables(design(postcard()))
    assert [row[0] for row in table.rows][3:6] == ["9 %", "9.3 %, as reckoned here", "10 %"]
    # Worked by hand: cherry made at 9.3 % needs 1.77 and made in the damp the room over alone.
    assert table.rows[4][1:] == ("1.8 mm", "2.1 mm", "right")
    assert table.rows[-1][1] == "0.3 mm"
    two = fitting_tables(design(postcard().having({"wood.lid": "American beech"})))
    assert [table.title.split()[2] for table in two] == ["lid", "bottom"]
    assert "none does" in two[0].rows[4][2]
    # Between 2.45 and 2.70 mm lies no sixty-fourth, and yet something does: 7/64 is 2.78.
    (inch,) = fitting_tables(design(inch_postcard()))
    assert {row[0]: row[2] for row in inch.rows}["7 %"] == "a hair under 7/64 in"


def test_wood_wetter_than_its_dampest_room_still_gets_room() -> None:
    box = postcard().having({"panels.across": None, "rooms.make_moisture": 20.0})
    d = design(box)
    assert d.choices.panels.lid_across == pytest.approx(0.3)
    assert d.lid.swelling == 0 and d.lid.shrinking > 0


def test_the_months_are_those_of_the_panel_as_it_is() -> None:
    box = postcard()
    d = design(box)
    rows = months(d, panel="lid", place=year_between(box.rooms))
    assert [row.month for row in rows] == list(MONTHS)
    assert rows[0].grip == pytest.approx(d.lid.worst_grip)
    assert rows[6].room == pytest.approx(d.lid.across - d.lid.swelling)
