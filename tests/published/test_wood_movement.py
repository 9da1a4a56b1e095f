"""Movement against the handbook: USDA Forest Products Laboratory, FPL-GTR-190 (2010)."""

from dataclasses import replace

import pytest

from toolkit.wood import (
    coefficient_from_shrinkage,
    coefficients_fit,
    equilibrium_moisture,
    movement,
    quick_rule,
    species,
)

# Woods whose coefficients in Table 13-5 do not belong to their shrinkage in Tables 4-3 and 4-4.
GROUP_COEFFICIENTS = {"northern red oak", "white oak"}
UNFIT_FROM_MEMORY = {"true mahogany", "Spanish-cedar", "teak"}
# Woods whose tables agree only with a fibre saturation of 22 %.
EARLY_SATURATION = {"western redcedar", "northern white-cedar"}
# The woods that the handbook's tables print; rows from elsewhere are none of theirs.
PRINTED_NAMES = """\
eastern white pine; western white pine; sugar pine; red pine; ponderosa pine;
yellow-poplar; American basswood; quaking aspen; butternut; black cherry; black walnut;
red maple; silver maple; sugar maple; northern red oak; white oak; white ash; yellow
birch; American beech; American sycamore; sweetgum; red alder; true mahogany;
Spanish-cedar; teak; western redcedar; northern white-cedar; yellow-cedar;
Port-Orford-cedar; coast Douglas-fir; Sitka spruce; white fir"""
PRINTED = [species(name) for name in PRINTED_NAMES.replace("\n", " ").split("; ")]


def test_handbook_example_by_its_quick_rule():
    """Ch. 13, white fir, flat grain, 232 mm, 8 to 11 %: prints +1.7 mm, so within 0.05."""
    rule = quick_rule(232, species="white fir", rings=0, moisture_from=8, moisture_to=11)
    assert rule.change == pytest.approx(1.7, abs=0.05)
    assert rule.valid


def test_handbook_example_by_the_law():
    """The same by Eq. 13-3 (its form from memory), worked separately to three decimals."""
    found = movement(232, species="white fir", rings=0, moisture_from=8, moisture_to=11)
    assert found == pytest.approx(1.712, abs=0.0005)


def test_cherry_by_the_quick_rule():
    """Eq. 13-2 with the coefficient 0.00248 of Table 13-5; exact arithmetic."""
    rule = quick_rule(100, species="black cherry", rings=0, moisture_from=6, moisture_to=12)
    assert rule.change == pytest.approx(1.488, abs=1e-9)


def test_what_changing_over_at_14_percent_would_do():
    """Red oak's mixed row, 116 mm from 9.3 %: the rule 2.01 mm at 14.0 %, the law 1.70 at 14.1 %.

    Worked separately to 0.01 mm. It is why the workbook never changes over between the two.
    """
    oak = species("northern red oak")
    rule = quick_rule(116, species=oak, rings=0, moisture_from=9.3, moisture_to=14.0)
    law = movement(116, species=oak, rings=0, moisture_from=9.3, moisture_to=14.1)
    assert (rule.change, law) == pytest.approx((2.01, 1.70), abs=0.005)


def test_table_has_its_32_printed_woods():
    assert len(PRINTED) == 32


@pytest.mark.parametrize("wood", PRINTED, ids=lambda wood: wood.name)
def test_coefficients_against_shrinkage(wood):
    """Tables 13-5 and 4-3 through C = S / (100 F - S (F - 10)), to one unit of the last digit.

    Half of each table is from memory, as each row says; the equation ties the two together.
    """
    expected = wood.name not in GROUP_COEFFICIENTS | UNFIT_FROM_MEMORY
    assert coefficients_fit(wood) is expected


def test_25_of_32_woods_fit_with_saturation_at_30_percent():
    at_30 = {wood.name for wood in PRINTED if coefficients_fit(replace(wood, fibre_saturation=30))}
    assert len(at_30) == 25
    assert {wood.name for wood in PRINTED} - at_30 == (
        GROUP_COEFFICIENTS | UNFIT_FROM_MEMORY | EARLY_SATURATION
    )


@pytest.mark.parametrize(
    ("name", "radial", "tangential"),
    [
        ("northern red oak", 0.00137, 0.00304),
        ("white oak", 0.00194, 0.00376),
        ("true mahogany", 0.00102, 0.00141),
        ("Spanish-cedar", 0.00144, 0.00219),
        ("teak", 0.00085, 0.00201),
        ("western redcedar", 0.00111, 0.00234),
        ("northern white-cedar", 0.00101, 0.00229),
    ],
)
def test_coefficients_that_the_shrinkage_would_give(name, radial, tangential):
    """Worked separately from Tables 4-3 and 4-4; half the last digit."""
    wood = species(name)
    found = [
        coefficient_from_shrinkage(shrinkage, fibre_saturation=wood.fibre_saturation)
        for shrinkage in (wood.shrinkage_radial, wood.shrinkage_tangential)
    ]
    assert found == pytest.approx([radial, tangential], abs=0.0000051)


@pytest.mark.parametrize(
    ("group", "coefficients", "implied"),
    [
        ("red oak, commercial group", (0.00158, 0.00369), (4.6, 10.3)),
        ("white oak, commercial group", (0.00180, 0.00365), (5.2, 10.2)),
    ],
)
def test_shrinkage_of_a_commercial_group(group, coefficients, implied):
    """Table 13-5 prints the groups' coefficients; the implied shrinkage to 0.1, its last digit."""
    wood = species(group)
    # Eq. 13-2 and 13-3 set equal at 10 % and solved for the shrinkage.
    found = [3000 * coefficient / (1 + 20 * coefficient) for coefficient in coefficients]
    assert found == pytest.approx(implied, abs=0.05)
    assert (wood.coefficient_radial, wood.coefficient_tangential) == coefficients
    assert (wood.shrinkage_radial, wood.shrinkage_tangential) == implied


# Clearance that a 116 mm panel needs, made at 20 °C and 50 %, in a damp room of 22 °C and 75 %,
# with 0.3 mm over: flat-sawn, quarter-sawn. Worked separately by the quick rule, with the
# coefficients of Table 13-5, although 14.4 % is a little beyond the rule's range.
PANEL = [
    ("black cherry", 1.77, 1.05),
    ("black walnut", 1.92, 1.42),
    ("American basswood", 2.25, 1.66),
    ("sugar maple", 2.39, 1.28),
    ("red oak", 2.48, 1.23),
    ("American beech", 2.85, 1.42),
]


MADE = equilibrium_moisture(temperature=20, humidity=50)
DAMP = equilibrium_moisture(temperature=22, humidity=75)


@pytest.mark.parametrize(("name", "flat", "quartered"), PANEL)
def test_panel_in_a_damp_room_by_the_quick_rule(name, flat, quartered):
    """As it was worked: half the last digit."""
    for rings, needed in ((0, flat), (90, quartered)):
        rule = quick_rule(116, species=name, rings=rings, moisture_from=MADE, moisture_to=DAMP)
        assert 0.3 + rule.change == pytest.approx(needed, abs=0.005)
        assert not rule.valid


@pytest.mark.parametrize(("name", "flat", "quartered"), PANEL)
def test_panel_in_a_damp_room_by_the_law(name, flat, quartered):
    """Eq. 13-3 from the shrinkage tables: within 0.01 of the rule so near to 10 %."""
    found = [
        0.3 + movement(116, species=name, rings=rings, moisture_from=MADE, moisture_to=DAMP)
        for rings in (0, 90)
    ]
    assert found == pytest.approx([flat, quartered], abs=0.01)


def test_cherry_panel_at_80_percent():
    """The same flat-sawn cherry panel at 22 °C and 80 %: 2.2, half the last digit."""
    damp = equilibrium_moisture(temperature=22, humidity=80)
    found = 0.3 + movement(
        116, species="black cherry", rings=0, moisture_from=MADE, moisture_to=damp
    )
    assert found == pytest.approx(2.2, abs=0.05)


@pytest.mark.parametrize(("name", "loss"), [("black cherry", 0.89), ("American beech", 1.54)])
def test_panel_in_a_dry_room(name, loss):
    """At 20 °C and 30 % the panel has lost this; within 0.01, as above."""
    dry = equilibrium_moisture(temperature=20, humidity=30)
    found = movement(116, species=name, rings=0, moisture_from=MADE, moisture_to=dry)
    assert found == pytest.approx(-loss, abs=0.01)
