"""Dust: the right row for each wood."""

import pytest

from toolkit.wood import UnknownSpecies, sensitiser


@pytest.mark.parametrize(
    ("wood", "row"),
    [
        ("red oak", "oak"),
        ("white oak", "oak"),
        ("hard maple", "maple"),
        ("black walnut", "walnut"),
        ("butternut", "walnut"),
        ("quaking aspen", "poplar"),
        ("western red cedar", "western redcedar"),
        ("Spanish cedar", "Spanish-cedar"),
        ("true mahogany", "American mahogany"),
        ("Douglas fir", "Douglas-fir"),
        ("white ash", "ash"),
    ],
)
def test_listed_woods(wood, row):
    assert sensitiser(wood).wood == row
    assert sensitiser(wood).sentence.startswith(f"Dust of {row}: ")


@pytest.mark.parametrize(
    "wood", ["black cherry", "yellow-poplar", "northern white-cedar", "American basswood"]
)
def test_woods_that_are_not_listed(wood):
    assert sensitiser(wood) is None


def test_an_unknown_wood_is_answered_with_the_nearest():
    with pytest.raises(UnknownSpecies, match="did you mean"):
        sensitiser("beach")
