"""Finish: areas against solids, quantities against worked numbers, and what is said of a plan."""

import pytest
from hypothesis import given, settings, strategies as st
from manifold3d import Manifold

from toolkit.measures import Rule
from toolkit.smoothing import (
    Areas,
    FinishPlan,
    after_flushing,
    box_areas,
    check_finish,
    finish_needed,
    shellac_cut,
)
from toolkit.smoothing.customs import SurfaceCustoms
from toolkit.smoothing.finish import spreads

MM = Rule.millimetres()
POSTCARD = {
    "outside_width": 134.0,
    "wall_height": 64.0,
    "side_thickness": 12.0,
    "end_thickness": 12.0,
    "inside_height": 38.0,
    "lid_thickness": 9.0,
}


def test_the_postcard_box():
    """Walls, top of the lid and underside 0.073 m² (0.79 sq ft); everything about 0.13 m².

    Worked separately; "about" is taken as half its last digit, with the edges that a hand's sum
    leaves out (7 per cent) beside it.
    """
    box = box_areas(176, front_height=51, **POSTCARD)
    seen = {"sides", "back end", "top of the lid", "underside of the bottom"}
    shown = sum(row.size for row in box.rows if row.name in seen) + 134 * 51
    assert shown / 1e6 == pytest.approx(0.073, abs=5e-4)
    assert shown / 304.8**2 == pytest.approx(0.79, abs=0.01)
    edges = sum(row.size for row in box.rows if "edge" in row.name)
    assert (box.total - edges) / 1e6 == pytest.approx(0.13, abs=5e-3)


SIZE = st.floats(60, 300)


@settings(max_examples=40, deadline=None)
@given(
    length=SIZE,
    width=SIZE,
    height=st.floats(30, 150),
    side=st.floats(5, 20),
    end=st.floats(5, 20),
    bottom=st.floats(4, 9),
    recess=st.floats(0.5, 8),
)
def test_areas_of_a_box_against_solids(length, width, height, side, end, bottom, recess):
    """Four walls and a bottom as one solid: outside and inside together are its whole surface."""
    inside = (length - 2 * end, width - 2 * side)
    room = height - recess - bottom
    walls = Manifold.cube([length, width, height])
    below = Manifold.cube([*inside, recess]).translate([end, side, 0])
    above = Manifold.cube([*inside, room + 10]).translate([end, side, recess + bottom])
    solid = walls - below - above
    areas = box_areas(
        length,
        outside_width=width,
        wall_height=height,
        side_thickness=side,
        end_thickness=end,
        inside_height=room,
        lid_thickness=8,
        recess=recess,
        lid="lift-off",
    )
    assert areas.outside + areas.inside == pytest.approx(solid.surface_area(), rel=1e-5)
    lid = Manifold.cube([length, width, 8])
    # Underneath, the lid shows inside the walls only: what lies on their rims is not finished.
    on_rims = length * width - inside[0] * inside[1]
    assert areas.lid == pytest.approx(lid.surface_area() - on_rims, rel=1e-5)


def test_groups_add_up():
    box = box_areas(176, front_height=51, recess=5, **POSTCARD)
    assert box.total == pytest.approx(box.outside + box.inside + box.lid)
    assert "sq ft" in box.sentence()


def test_a_lowered_front_has_less_to_finish():
    low, high = (box_areas(176, front_height=h, **POSTCARD).outside for h in (51, 64))
    assert high - low == pytest.approx(13 * (134 - 2 * 12))


def test_oil_by_the_spoon():
    """One teaspoon of 5 mL to a square foot (a trade page, read): 4 mL on 0.073 m²."""
    assert finish_needed("oil", area=0.073e6).least == pytest.approx(4, abs=0.5)
    one_foot = finish_needed("oil", area=304.8**2)
    assert one_foot.least == pytest.approx(5, rel=1e-4) and "1.0 teaspoons" in one_foot.sentence()


def test_shellac_by_its_spread():
    """7 to 10 m² to a litre (custom): a square metre takes 100 to 143 mL."""
    row = finish_needed("shellac", area=1e6)
    assert row.least == pytest.approx(1000 / 10) and row.most == pytest.approx(1000 / 7, rel=1e-5)


@pytest.mark.parametrize(("pounds", "grams"), [(2, 240), (1, 120)])
def test_the_cut_of_shellac(pounds, grams):
    """2 lb to a US gallon is 240 g/L, 1 lb 120: printed to 10 g, so within 5."""
    made = shellac_cut(grams, alcohol=1000)
    assert made.pounds_to_gallon == pytest.approx(pounds, abs=0.005)


@given(st.floats(1e3, 1e6), st.integers(1, 6), st.integers(1, 20))
def test_quantities_grow_with_area_coats_and_boxes(area, coats, boxes):
    for name in ("oil", "thinned oil", "shellac", "wax"):
        one = finish_needed(name, area=area)
        many = finish_needed(name, area=area, coats=coats, boxes=boxes)
        assert many.most == pytest.approx(one.most * coats)
        assert many.to_buy == pytest.approx(one.most * coats * boxes * 1.15)


def test_spare_is_a_custom():
    assert finish_needed("oil", area=1e6, customs=SurfaceCustoms(spare=0)).to_buy == pytest.approx(
        finish_needed("oil", area=1e6).most
    )


def test_every_spread_says_that_it_is_a_custom():
    for row in spreads():
        assert "custom" in row.source.text and row.least <= row.most
        assert row.source.seen in ("read", "memory")


def _codes(**plan):
    return {row.code: row.level for row in check_finish(FinishPlan(**plan))}


@pytest.mark.parametrize(
    ("code", "level", "beyond", "inside"),
    [
        ("finish-over-wax", "wont_work", {"outside": ("wax", "shellac")}, {}),
        ("oil-beside-paper", "care", {"inside": ("oil",)}, {"inside": ("shellac",)}),
        (
            "oil-beside-paper",
            "care",
            {"inside": ("thinned oil",)},
            {"inside": ("oil",), "holds_paper": False},
        ),
        ("one-side-bare", "care", {"inside": ()}, {"inside": (), "outside": ()}),
        ("finish-in-grooves", "wont_work", {"in_grooves": True}, {}),
        ("bottom-finished-late", "care", {"bottom_before_glue": False}, {}),
        ("wax-on-stiff-lid", "care", {"lid_slides": False}, {"outside": (), "lid_slides": False}),
        ("oily-rags", "care", {"outside": ("oil",)}, {"outside": ("wax",)}),
        ("solvents", "care", {"outside": ("shellac",)}, {"outside": ("oil",), "inside": ("oil",)}),
    ],
)
def test_each_finding_of_a_finish(code, level, beyond, inside):
    assert _codes(**beyond).get(code) == level
    assert code not in _codes(**inside)


def test_a_good_plan_is_told_so_and_still_warned():
    assert _codes() == {"good-finish": "good", "solvents": "care"}


def test_cautions_defer_to_local_rules():
    for row in check_finish(FinishPlan(outside=("thinned oil", "wax"))):
        if row.code in ("oily-rags", "solvents"):
            assert (
                "Local rules and the shop's licensed or insured practice come first" in row.remedy
            )
    remedies = " ".join(row.remedy for row in check_finish(FinishPlan()))
    assert "Never warm wax and turpentine over a flame" in remedies


def test_flushing_takes_from_the_lap():
    """0.3 off a lap of 4.0 leaves 3.7: exact."""
    left = after_flushing(0.3, lap=4, rim=7, groove_wall=8, lid_play=0.3, tongue_planed=0.1)
    assert left.lap.value == pytest.approx(3.7)
    assert left.rim.value == 7 and left.groove_wall.value == pytest.approx(7.7)
    assert left.lid_play.value == pytest.approx(0.4)
    assert "lap = 4 as made − 0.3 planed off the face = 3.7 mm" in left.sentence(MM)


@pytest.mark.parametrize(
    ("code", "beyond", "inside"),
    [
        ("rim-planed", {"outside": 0.3, "rim_planed": 0.51}, {"outside": 0.3, "rim_planed": 0.5}),
        ("flushing-allowance", {"outside": 0.31}, {"outside": 0.3}),
        ("flushing-allowance", {"outside": 0.19}, {"outside": 0.2}),
        (
            "lid-rattles",
            {"outside": 0.3, "lid_play": 0.3, "tongue_planed": 0.21},
            {"outside": 0.3, "lid_play": 0.3, "tongue_planed": 0.2},
        ),
        ("planed-through", {"outside": 0.3, "lap": 0.3}, {"outside": 0.3, "lap": 0.31}),
    ],
)
def test_each_finding_of_flushing(code, beyond, inside):
    def codes(outside, **sizes):
        return {row.code for row in after_flushing(outside, **sizes).findings(rule=MM)}

    assert code in codes(**beyond)
    assert code not in codes(**inside)


@pytest.mark.parametrize(
    ("make", "words"),
    [
        (lambda: box_areas(20, **POSTCARD), "leave -4 by 110 mm inside"),
        (lambda: box_areas(176, front_height=65, **POSTCARD), "front height was given as 65"),
        (lambda: finish_needed("varnish", area=1), "oil, thinned oil, shellac, wax"),
        (lambda: finish_needed("oil", area=1, coats=0), "coats was given as 0"),
        (lambda: shellac_cut(24, alcohol=0), "alcohol was given as 0"),
        (lambda: check_finish(FinishPlan(inside=("paint",))), "finish was given as 'paint'"),
        (lambda: after_flushing(-1), "planed off was given as -1"),
        (lambda: Areas.of([]).group("feet"), "outside, inside, lid"),
    ],
)
def test_refusals_say_what_would_do(make, words):
    with pytest.raises(ValueError, match="give") as caught:
        make()
    assert words in str(caught.value)
