"""Cup of a cherry panel, worked separately from the polar map: no handbook prints one.

A flat-sawn panel, 116 mm wide, its middle 80 mm from the pith, dries by four points of moisture.
The strains of the worked numbers are four times the coefficients of black cherry, 0.00248 along
the rings and 0.00126 across them (FPL-GTR-190, Table 13-5), so they hold for drying from 10 to 6 %,
where those coefficients and the law meet.
"""

import pytest

from toolkit.wood import cup, cup_formula, cup_from_strains, quick_rule

TANGENTIAL, RADIAL = -4 * 0.00248, -4 * 0.00126
THIN = 1e-6  # the worked numbers are for a line, without thickness [mm]


def test_by_the_exact_map():
    """Hollow 0.1772, width 1.075 less; half the last digits."""
    found = cup_from_strains(
        116, thickness=THIN, ring_radius=80, tangential=TANGENTIAL, radial=RADIAL
    )
    assert found.bark_hollow == pytest.approx(0.1772, abs=0.00005)
    assert found.width_change == pytest.approx(-1.075, abs=0.0005)


def test_by_the_formula():
    """0.1776; half the last digit."""
    found = cup_formula(116, ring_radius=80, tangential=TANGENTIAL, radial=RADIAL)
    assert found == pytest.approx(0.1776, abs=0.00005)


def test_from_the_moisture_of_the_wood():
    """By the law from 10 to 6 %: within 0.003, as the coefficients are printed to three figures."""
    found = cup(
        116, thickness=THIN, ring_radius=80, species="black cherry", moisture_from=10, moisture_to=6
    )
    assert found.bark_hollow == pytest.approx(0.1772, abs=0.0003)
    assert found.width_change == pytest.approx(-1.075, abs=0.003)


def test_the_flat_sawn_sum_overstates_the_width():
    """The quick rule knows one ring angle for the whole width: 1.151, half the last digit."""
    rule = quick_rule(116, species="black cherry", rings=0, moisture_from=10, moisture_to=6)
    assert rule.change == pytest.approx(-1.151, abs=0.0005)


@pytest.mark.parametrize(("radius", "high"), [(80, 0.16), (116, 0.08)])
def test_the_parabola_overstates_the_cup(radius, high):
    """A parabola for the ring, w² / (4 r), is 16 % high here, 8 % at a radius of the width.

    Half the last digit.
    """
    parabola = (RADIAL - TANGENTIAL) * 116**2 / (4 * radius)
    found = cup_formula(116, ring_radius=radius, tangential=TANGENTIAL, radial=RADIAL)
    assert parabola / found - 1 == pytest.approx(high, abs=0.005)
