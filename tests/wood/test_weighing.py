"""Weights: densities pass through the printed values, and weighing tells the water."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from toolkit.wood import (
    all_species,
    density,
    moisture_by_weight,
    part_weight,
    specific_gravity,
    weight_spread,
)

WEIGHED = [wood for wood in all_species() if wood.specific_gravity_green is not None]
both_printed = st.sampled_from([wood for wood in WEIGHED if wood.specific_gravity_12])


@given(both_printed)
def test_specific_gravity_passes_through_both_printed_values(wood):
    assert specific_gravity(wood, moisture=12) == pytest.approx(wood.specific_gravity_12)
    for wet in (wood.fibre_saturation, 90):
        assert specific_gravity(wood, moisture=wet) == pytest.approx(wood.specific_gravity_green)


def test_a_wood_printed_green_only_shrinks_by_its_volume():
    """Teak: 0.55 green, 7 % of volume lost oven-dry, so 0.55 / 0.93."""
    assert specific_gravity("teak", moisture=0) == pytest.approx(0.55 / 0.93)
    assert specific_gravity("teak", moisture=30) == 0.55


@given(st.sampled_from(WEIGHED), st.floats(0, 150), st.floats(0.1, 20))
def test_wetter_wood_is_denser_and_has_the_lower_specific_gravity(wood, moisture, more):
    assert density(wood, moisture=moisture + more) > density(wood, moisture=moisture)
    drier = specific_gravity(wood, moisture=moisture)
    assert specific_gravity(wood, moisture=moisture + more) <= drier


def test_a_wall_stick_by_hand():
    """700 x 70 x 16 mm is 0.784 litres; cherry at 12 %: 0.50 kg/l dry, 12 % of water on top."""
    weight = part_weight(700, width=70, thickness=16, species="cherry", moisture=12)
    assert weight == pytest.approx(784 * 0.50 * 1.12)


def test_a_wood_without_a_density_is_refused():
    with pytest.raises(ValueError, match="no specific gravity for white fir: weigh a piece"):
        density("white fir", moisture=12)


@given(st.floats(1, 5000), st.floats(0, 100), st.floats(0, 100))
def test_moisture_by_weight_is_the_definition(dry, then, now):
    found = moisture_by_weight(
        dry * (1 + now / 100), weight_then=dry * (1 + then / 100), moisture_then=then
    )
    assert found == pytest.approx(now, abs=1e-9)


def test_a_piece_lighter_than_dry_is_refused():
    with pytest.raises(ValueError, match="would hold less than no water"):
        moisture_by_weight(300, weight_then=440, moisture_then=12)


def test_pieces_that_agree():
    spread = weight_spread([430, 441, 452])
    assert spread.suspects == ()
    assert spread.sentence() == "The pieces agree within 5 %."


def test_exactly_at_the_custom_is_not_over_it():
    assert weight_spread([100, 115]).suspects == ()
    assert weight_spread([100, 125], limit=25).suspects == ()
    assert weight_spread([100, 115.1]).suspects == (1,)


def test_heavy_pieces_are_named_as_a_person_counts():
    spread = weight_spread([430, 512, 441, 600])
    assert spread.suspects == (1, 3)
    assert spread.spread == pytest.approx(100 * (600 / 430 - 1))
    assert spread.sentence().startswith("Pieces 2 and 4 outweigh the lightest by more than 15 %")
    assert weight_spread([430, 512]).sentence().startswith("Piece 2 outweighs")


def test_the_custom_can_be_changed():
    assert weight_spread([100, 112], limit=10).suspects == (1,)


@pytest.mark.parametrize("weights", [[], [430]])
def test_one_piece_has_nothing_to_be_compared_with(weights):
    with pytest.raises(ValueError, match="weigh two or more"):
        weight_spread(weights)


def test_a_weight_of_nothing_is_refused():
    with pytest.raises(ValueError, match="a weight was given as 0 g"):
        weight_spread([430, 0])
    with pytest.raises(ValueError, match="thickness was given as 0 mm"):
        part_weight(700, width=70, thickness=0, species="cherry", moisture=12)
