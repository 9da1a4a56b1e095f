"""Moisture against the handbook: USDA Forest Products Laboratory, FPL-GTR-190 (2010)."""

import csv
from pathlib import Path

import pytest

from tests.published.fahrenheit import moisture_by_fahrenheit
from toolkit.wood import equilibrium_moisture

TABLE = Path(__file__).parent / "data" / "emc_table.csv"


@pytest.mark.parametrize(
    ("temperature", "humidity", "moisture"),
    [(20, 50, 9.271), (20, 65, 11.996), (25, 30, 6.096), (10, 80, 16.382), (0, 90, 21.026)],
)
def test_values_worked_from_the_equation(temperature, humidity, moisture):
    """Eq. 4-5 with its Celsius coefficients, worked separately; half the last digit kept."""
    found = equilibrium_moisture(temperature=temperature, humidity=humidity)
    assert found == pytest.approx(moisture, abs=0.0005)


@pytest.mark.parametrize(
    ("temperature", "humidity", "moisture"),
    [(20, 30, 6.2), (20, 40, 7.7), (20, 50, 9.3), (20, 65, 12.0), (22, 75, 14.4)],
)
def test_values_kept_to_one_decimal(temperature, humidity, moisture):
    """Eq. 4-5, as FPL-RN-268 (Simpson 1998) gives it; half the last digit kept."""
    found = equilibrium_moisture(temperature=temperature, humidity=humidity)
    assert found == pytest.approx(moisture, abs=0.05)


def cells():
    with TABLE.open(encoding="utf-8") as file:
        return list(csv.DictReader(file))


def test_the_table_of_the_handbook_is_whole():
    assert len(cells()) == 152


@pytest.mark.parametrize("cell", cells(), ids=lambda c: f"{c['temp_F']}F-{c['RH_pct']}%")
def test_cell_of_the_handbook_table(cell):
    """Table 4-2, its cells from memory.

    Within 0.07, not the 0.05 of their last digit: a few printed cells are rounded a unit low.
    """
    celsius = (float(cell["temp_F"]) - 32) / 1.8
    found = equilibrium_moisture(temperature=celsius, humidity=float(cell["RH_pct"]))
    assert found == pytest.approx(float(cell["EMC_table_pct"]), abs=0.07)


@pytest.mark.parametrize("fahrenheit", range(30, 141, 10))
@pytest.mark.parametrize("humidity", range(5, 96, 10))
def test_both_printed_sets_of_coefficients_agree(fahrenheit, humidity):
    """Eq. 4-5 is printed for °C and for °F; a slip in copying either would part them.

    The two fits differ by up to 0.013 % over 30 to 140 °F and 5 to 95 %.
    """
    by_fahrenheit = moisture_by_fahrenheit(temperature=fahrenheit, humidity=humidity)
    found = equilibrium_moisture(temperature=(fahrenheit - 32) / 1.8, humidity=humidity)
    assert found == pytest.approx(by_fahrenheit, abs=0.0135)
