"""Dust: typed rows, the way to the regulator, and the right row for each wood."""

import pytest

from toolkit.wood import (
    LINK_NOTE,
    UnknownSpecies,
    dust_limits,
    sensitiser,
    sensitisers,
    species,
)


def test_every_limit_has_its_source_and_its_regulator():
    assert len(dust_limits()) == 10
    for row in dust_limits():
        assert row.source
        assert row.link.startswith("https://")
        assert (row.limit is None) is bool(row.carcinogen_class)
        assert LINK_NOTE in row.sentence()
        assert row.link in row.sentence()


def test_limits_in_words():
    texts = [row.sentence() for row in dust_limits()]
    assert texts[1].startswith("OSHA, all: 5 mg/m³ of respirable dust over 8 hours (")
    assert any(text.startswith("ACGIH, oak, beech: class A1, confirmed") for text in texts)


@pytest.mark.parametrize(
    ("wood", "row"),
    [
        ("oak", "oak"),
        ("red oak", "oak"),
        ("white oak", "oak"),
        ("maple", "maple"),
        ("hard maple", "maple"),
        ("soft maple", "maple"),
        ("black walnut", "walnut"),
        ("butternut", "walnut"),
        ("quaking aspen", "poplar"),
        ("western red cedar", "western redcedar"),
        ("Spanish cedar", "Spanish-cedar"),
        ("true mahogany", "American mahogany"),
        ("Douglas fir", "Douglas-fir"),
    ],
)
def test_listed_woods(wood, row):
    assert sensitiser(wood).wood == row


@pytest.mark.parametrize(
    "wood", ["black cherry", "yellow-poplar", "northern white-cedar", "American basswood", "pine"]
)
def test_woods_that_are_not_listed(wood):
    assert sensitiser(wood) is None


def test_a_wood_may_be_given_itself():
    assert sensitiser(species("white ash")).wood == "ash"


def test_a_name_whose_woods_fare_differently_is_not_guessed():
    with pytest.raises(UnknownSpecies, match="'western redcedar'"):
        sensitiser("cedar")


def test_an_unknown_wood_is_answered_with_the_nearest():
    with pytest.raises(UnknownSpecies, match="did you mean"):
        sensitiser("beach")


def test_the_list_keeps_its_caution():
    assert len(sensitisers()) == 12
    assert "not thereby harmless" in sensitisers()[0].sentence()
