"""Weights: densities pass through the printed values."""

import pytest
from hypothesis import given, strategies as st

from toolkit.wood import all_species, density, part_weight, specific_gravity

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
    weight = part_weight(700, width=70, thickness=16, species="black cherry", moisture=12)
    assert weight == pytest.approx(784 * 0.50 * 1.12)


def test_a_wood_without_a_density_is_refused():
    with pytest.raises(
        ValueError, match=r"Density .* of white fir are not known here: weigh a piece"
    ):
        density("white fir", moisture=12)


def test_a_part_of_nothing_is_refused():
    with pytest.raises(ValueError, match="thickness was given as 0 mm"):
        part_weight(700, width=70, thickness=0, species="black cherry", moisture=12)
