"""Woods are found by what a person would type, and a slip is answered with a name."""

from contextlib import suppress

import pytest
from hypothesis import given, settings, strategies as st

from toolkit.wood import UnknownSpecies, all_species, species


@pytest.mark.parametrize(
    "typed",
    [
        "black cherry",
        "cherry, black",
        "American cherry",
        "BLACK  CHERRY",
        "Prunus serotina",
        "serotina",
    ],
)
def test_many_names_for_cherry(typed):
    assert species(typed).name == "black cherry"


@pytest.mark.parametrize(
    ("typed", "name"),
    [
        ("hard maple", "sugar maple"),
        ("maple, sugar (hard)", "sugar maple"),
        ("Scots pine", "Scots pine"),
        ("Pinus sylvestris", "Scots pine"),
        ("Quercus robur", "European oak"),
        ("English walnut", "European walnut"),
        ("Norway spruce", "European spruce"),
        ("larch", "European larch"),
        ("white walnut", "butternut"),
        ("western red cedar", "western redcedar"),
        ("Douglas fir", "coast Douglas-fir"),
        ("poplar", "yellow-poplar"),
        ("yellow cedar", "yellow-cedar"),
        ("red oak", "red oak, commercial group"),
        ("red oak, northern", "northern red oak"),
        ("Quercus rubra", "northern red oak"),
        ("Quercus alba", "white oak"),
        ("white oak", "white oak"),
    ],
)
def test_trade_names(typed, name):
    assert species(typed).name == name


@pytest.mark.parametrize("wood", all_species(), ids=lambda wood: wood.name)
def test_every_wood_is_found_by_each_of_its_own_names(wood):
    assert species(wood.name) is wood
    assert species(wood.listed_as) is wood
    assert species(wood.scientific) is wood


@pytest.mark.parametrize(
    ("typed", "some"),
    [
        ("maple", {"red maple", "silver maple", "sugar maple", "sycamore maple"}),
        ("soft maple", {"red maple", "silver maple"}),
        ("oak", {"northern red oak", "white oak", "European oak"}),
        ("ash", {"white ash", "European ash"}),
        ("Cherry", {"black cherry", "European cherry"}),
        ("beech", {"American beech", "European beech"}),
        ("walnut", {"black walnut", "European walnut"}),
        ("lime", {"American basswood", "European lime"}),
        ("birch", {"yellow birch", "silver birch"}),
        ("alder", {"red alder", "common alder"}),
        ("spruce", {"Sitka spruce", "European spruce"}),
        ("cedar", {"western redcedar", "Spanish-cedar", "yellow-cedar"}),
        ("pine", {"sugar pine", "red pine", "Scots pine"}),
    ],
)
def test_a_name_of_several_woods_lists_them(typed, some):
    with pytest.raises(UnknownSpecies) as caught:
        species(typed)
    assert all(f"'{name}'" in str(caught.value) for name in some)


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("chery", "black cherry"),
        ("wallnut", "black walnut"),
        ("mahogony", "true mahogany"),
        ("suger maple", "sugar maple"),
        ("northern red oka", "northern red oak"),
        ("Prunus serotinna", "black cherry"),
    ],
)
def test_a_near_miss_is_answered_with_the_nearest(typed, meant):
    with pytest.raises(UnknownSpecies, match=f"'{typed}'.*did you mean .*'{meant}'"):
        species(typed)


def test_a_near_miss_of_a_shared_name_lists_the_woods():
    with pytest.raises(UnknownSpecies, match="'red maple', 'silver maple' or 'sugar maple'"):
        species("mapel")


@pytest.mark.parametrize("typed", ["chery", "hornbeam", "wenge", "Prunus serotinna"])
def test_an_unknown_wood_is_answered_with_the_nearest_three(typed):
    with pytest.raises(UnknownSpecies) as caught:
        species(typed)
    text = str(caught.value).partition(": ")[2]
    assert len({species(name).name for name in text.split("'")[1::2]}) == 3


@pytest.mark.parametrize("typed", ["", "   ", "zzzz", "123"])
def test_nonsense_is_answered_without_a_guess(typed):
    with pytest.raises(UnknownSpecies, match="all_species"):
        species(typed)


@given(st.text(max_size=20))
@settings(max_examples=50, deadline=None)  # each refusal is a search through all spellings
def test_any_text_finds_a_wood_or_is_refused_in_words(typed):
    with suppress(UnknownSpecies):
        assert species(typed) in all_species()


def test_no_number_without_a_source():
    for wood in all_species():
        groups = [
            (wood.shrinkage_tangential, wood.shrinkage_from),
            (wood.coefficient_tangential, wood.coefficients_from),
            (wood.fibre_saturation, wood.fibre_saturation_from),
            (wood.specific_gravity_green, wood.specific_gravity_from),
        ]
        for value, origin in groups:
            assert bool(origin.text and origin.seen) is (value is not None), wood.name


@pytest.mark.parametrize("wood", all_species(), ids=lambda wood: wood.name)
def test_wood_moves_more_along_its_rings_than_across(wood):
    assert 0 < wood.shrinkage_radial < wood.shrinkage_tangential
    assert 0 < wood.coefficient_radial < wood.coefficient_tangential


@pytest.mark.parametrize("name", ["northern red oak", "white oak", "true mahogany", "teak"])
def test_a_doubtful_row_says_so(name):
    assert "law uses the shrinkage" in species(name).note
