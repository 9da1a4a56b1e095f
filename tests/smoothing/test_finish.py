"""Finish: quantities against worked numbers, and what is said of a plan."""

import pytest
from hypothesis import given, strategies as st

from toolkit.measures import Rule
from toolkit.results import Working
from toolkit.smoothing import (
    FinishPlan,
    check_finish,
    check_flushing,
    check_lid_play,
    finish_needed,
    shellac_cut,
)
from toolkit.smoothing.finish import spreads

MM = Rule.millimetres()


def test_oil_by_the_spoon():
    """One teaspoon of 5 mL to a square foot (a trade page, read): 4 mL on 0.073 m²."""
    assert finish_needed("oil", area=0.073e6).least == pytest.approx(4, abs=0.5)
    one_foot = finish_needed("oil", area=304.8**2)
    assert one_foot.least == pytest.approx(5, rel=1e-4)
    assert (
        "1.00 sq ft take" in (said := one_foot.sentence(Rule.inches())) and "1.0 teaspoons" in said
    )


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
        ("oil-beside-paper", "care", {"inside": ("thinned oil",)}, {"inside": ()}),
        ("one-side-bare", "care", {"inside": ()}, {"inside": (), "outside": ()}),
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


def _left(size: float, planed: float) -> Working:
    return Working.of("lap", ("as made", size), ("planed off the face", -planed))


@pytest.mark.parametrize(
    ("code", "beyond", "inside"),
    [
        ("rim-planed", (4.0, 0.3, 0.51), (4.0, 0.3, 0.5)),
        ("flushing-allowance", (4.0, 0.31, 0.0), (4.0, 0.3, 0.0)),
        ("flushing-allowance", (4.0, 0.19, 0.0), (4.0, 0.2, 0.0)),
        ("planed-through", (0.3, 0.3, 0.0), (0.31, 0.3, 0.0)),
    ],
)
def test_each_finding_of_flushing(code, beyond, inside):
    def codes(lap, skim, rim):
        left = [_left(lap, skim)]
        return {row.code for row in check_flushing(left, skim=skim, rim_planed=rim, rule=MM)}

    assert code in codes(*beyond)
    assert code not in codes(*inside)


def test_end_grain_that_ends_shy_is_reached_or_told():
    def codes(skim):
        rows = check_flushing([_left(4.0, skim)], skim=skim, rim_planed=0.0, shy=0.25, rule=MM)
        return {row.code for row in rows}

    assert "end-grain-shy" in codes(0.24)
    assert "end-grain-shy" not in codes(0.25)


def test_a_lid_that_rattles():
    assert [row.code for row in check_lid_play(0.51, rule=MM)] == ["lid-rattles"]
    assert check_lid_play(0.5, rule=MM) == []


@pytest.mark.parametrize(
    ("make", "words"),
    [
        (lambda: finish_needed("varnish", area=1), "oil, thinned oil, shellac, wax"),
        (lambda: finish_needed("oil", area=1, coats=0), "coats was given as 0"),
        (lambda: shellac_cut(24, alcohol=0), "alcohol was given as 0"),
        (lambda: check_finish(FinishPlan(inside=("paint",))), "finish was given as 'paint'"),
    ],
)
def test_refusals_say_what_would_do(make, words):
    with pytest.raises(ValueError, match="give") as caught:
        make()
    assert words in str(caught.value)
