"""The law of movement is one line: no jumps, no way to gain width by going round in a circle."""

import math

import pytest
from hypothesis import given, strategies as st

from toolkit.wood import (
    UnknownSpecies,
    all_species,
    movement,
    quick_rule,
    ring_angle,
    species,
    strain,
)

woods = st.sampled_from(all_species())
angles = st.floats(0, 90)
moistures = st.floats(0, 60)
widths = st.floats(1, 2000)


@given(widths, woods, angles, moistures, moistures)
def test_drying_back_returns_the_planed_width(width, wood, rings, made, damp):
    swollen = width + movement(
        width, species=wood, rings=rings, moisture_from=made, moisture_to=damp
    )
    back = movement(swollen, species=wood, rings=rings, moisture_from=damp, moisture_to=made)
    assert swollen + back == pytest.approx(width, rel=1e-12)


@given(woods, angles, moistures, moistures, moistures)
def test_the_way_does_not_matter(wood, rings, start, between, end):
    def factor(one, other):
        return 1 + strain(wood, rings=rings, moisture_from=one, moisture_to=other)

    assert factor(start, between) * factor(between, end) == pytest.approx(
        factor(start, end), rel=1e-12
    )


@given(woods, angles, moistures, st.floats(0, 60), st.floats(0.01, 5))
def test_wetter_is_never_narrower(wood, rings, start, end, more):
    less = strain(wood, rings=rings, moisture_from=start, moisture_to=end)
    wetter = strain(wood, rings=rings, moisture_from=start, moisture_to=end + more)
    if end + more <= wood.fibre_saturation:
        assert wetter > less
    else:
        assert wetter >= less


@given(woods, angles, moistures, moistures)
def test_a_little_more_water_moves_it_a_little(wood, rings, start, end):
    near = strain(wood, rings=rings, moisture_from=start, moisture_to=end)
    far = strain(wood, rings=rings, moisture_from=start, moisture_to=end + 1e-6)
    # No wood of the table moves by 1 % for each percent of moisture.
    assert abs(far - near) < 1e-8


@given(woods, angles, st.floats(0, 100), st.floats(0, 100))
def test_nothing_moves_above_fibre_saturation(wood, rings, more, other):
    above, also = wood.fibre_saturation + more, wood.fibre_saturation + other
    assert strain(wood, rings=rings, moisture_from=above, moisture_to=also) == 0


@given(woods)
def test_green_to_oven_dry_is_the_printed_shrinkage(wood):
    for rings, shrinkage in ((0, wood.shrinkage_tangential), (90, wood.shrinkage_radial)):
        dried = strain(wood, rings=rings, moisture_from=80, moisture_to=0)
        assert dried == pytest.approx(-shrinkage / 100, rel=1e-12)


@given(woods, angles, st.floats(0, 20), st.floats(0, 20))
def test_turning_the_shrinkages_or_the_strains_is_much_the_same(wood, rings, start, end):
    flat = strain(wood, rings=0, moisture_from=start, moisture_to=end)
    quartered = strain(wood, rings=90, moisture_from=start, moisture_to=end)
    turned = flat * math.cos(math.radians(rings)) ** 2 + (
        quartered * math.sin(math.radians(rings)) ** 2
    )
    found = strain(wood, rings=rings, moisture_from=start, moisture_to=end)
    assert found == pytest.approx(turned, rel=0.016, abs=1e-12)


@given(woods, st.floats(0, 89), st.floats(0.1, 1))
def test_flatter_rings_move_more(wood, rings, turn):
    flatter = strain(wood, rings=rings, moisture_from=9, moisture_to=14)
    assert strain(wood, rings=rings + turn, moisture_from=9, moisture_to=14) < flatter


@given(woods, angles)
def test_rule_and_law_part_slowly_from_10_percent(wood, rings):
    """Where the coefficients belong to the shrinkage the two touch at 10 %."""
    rule = quick_rule(100, species=wood, rings=rings, moisture_from=10, moisture_to=11)
    law = movement(100, species=wood, rings=rings, moisture_from=10, moisture_to=11)
    if rule.coefficients_fit:
        assert rule.change == pytest.approx(law, rel=0.015)


@pytest.mark.parametrize(
    ("start", "end", "valid"),
    [(6, 14, True), (14, 6, True), (5.9, 12, False), (8, 14.1, False), (14.1, 8, False)],
)
def test_the_quick_rule_knows_its_range(start, end, valid):
    rule = quick_rule(100, species="black cherry", rings=0, moisture_from=start, moisture_to=end)
    assert rule.valid is valid
    assert ("outside use the law" in rule.doubt) is not valid


def test_the_quick_rule_owns_up_to_borrowed_coefficients():
    rule = quick_rule(100, species="teak", rings=0, moisture_from=8, moisture_to=10)
    assert rule.valid
    assert not rule.coefficients_fit
    assert "do not fit" in rule.doubt


@pytest.mark.parametrize(
    ("word", "angle"),
    [
        ("flat-sawn", 0),
        ("plain-sawn", 0),
        ("Flat sawn", 0),
        ("flatsawn", 0),
        ("rift", 45),
        ("rift-sawn", 45),
        ("quarter-sawn", 90),
        ("Quartersawn", 90),
        ("quartered", 90),
    ],
)
def test_words_for_the_sawing(word, angle):
    assert ring_angle(word) == angle


@pytest.mark.parametrize("word", ["", "sawn", "sideways", "30"])
def test_other_words_are_refused(word):
    with pytest.raises(ValueError, match="type flat-sawn, rift or quarter-sawn"):
        ring_angle(word)


def law_and_rule(width=100.0, rings=0.0, start=8.0, end=12.0):
    wood = species("black cherry")
    for function in (movement, quick_rule):
        yield lambda f=function: f(
            width, species=wood, rings=rings, moisture_from=start, moisture_to=end
        )


@pytest.mark.parametrize(
    ("numbers", "words"),
    [
        ({"width": 0}, "width was given as 0 mm"),
        ({"width": -3}, "width was given as -3 mm"),
        ({"width": math.inf}, "width was given as inf mm"),
        ({"width": math.nan}, "width was given as nan mm"),
        (
            {"rings": 91},
            "rings was given as 91 degrees; give a number from 0 to 90",
        ),
        ({"rings": -1}, "rings was given as -1 degrees"),
        ({"rings": math.nan}, "rings was given as nan degrees"),
        ({"start": -1}, "moisture_from was given as -1 %"),
        ({"end": -1}, "moisture_to was given as -1 %"),
        ({"end": 1200}, "moisture_to was given as 1200 %"),
        ({"start": math.nan}, "moisture_from was given as nan %"),
    ],
)
def test_impossible_numbers_are_refused_in_words(numbers, words):
    for ask in law_and_rule(**numbers):
        with pytest.raises(ValueError, match=words):
            ask()


def test_a_wood_may_be_named_or_given():
    named = movement(100, species="black cherry", rings=20, moisture_from=8, moisture_to=12)
    given_ = movement(
        100, species=species("black cherry"), rings=20, moisture_from=8, moisture_to=12
    )
    assert named == given_
    with pytest.raises(UnknownSpecies, match="did you mean"):
        movement(100, species="chery", rings=0, moisture_from=8, moisture_to=12)
