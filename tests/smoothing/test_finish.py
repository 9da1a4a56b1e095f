"""Finish: quantities against worked numbers, and what is said of a plan."""

import pytest
from hypothesis import given, strategies as st

from toolkit.measures import Rule
from toolkit.smoothing import (
    FinishPlan,
    after_flushing,
    check_finish,
    finish_needed,
    shellac_cut,
)
from toolkit.smoothing.customs import SurfaceCustoms
from toolkit.smoothing.finish import spreads

MM = Rule.millimetres()


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
        (lambda: finish_needed("varnish", area=1), "oil, thinned oil, shellac, wax"),
        (lambda: finish_needed("oil", area=1, coats=0), "coats was given as 0"),
        (lambda: shellac_cut(24, alcohol=0), "alcohol was given as 0"),
        (lambda: check_finish(FinishPlan(inside=("paint",))), "finish was given as 'paint'"),
        (lambda: after_flushing(-1), "planed off was given as -1"),
    ],
)
def test_refusals_say_what_would_do(make, words):
    with pytest.raises(ValueError, match="give") as caught:
        make()
    assert words in str(caught.value)
