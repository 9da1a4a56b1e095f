"""Moisture of wood from the air as it is measured: two thermometers, and a year of weather.

Humidity is reckoned by psychrolib, which follows the ASHRAE Handbook of Fundamentals (2017). The
weather is two typical years of hours (TMY3, National Renewable Energy Laboratory) that come with
the pvlib package: Greensboro, North Carolina, and Sand Point, Alaska.

A month's moisture may be reckoned from the month's mean temperature and humidity, as FPL-RN-268
does for its table of towns, or hour by hour and averaged last. The workbook's table and its
``Climate.from_readings`` take the means first.
"""

import csv
from importlib.metadata import PackageNotFoundError, distribution
from statistics import fmean, median

import pytest

from tests.published.fahrenheit import moisture_by_fahrenheit
from toolkit.wood import MONTHS, Climate, equilibrium_moisture, place

psychrolib = pytest.importorskip("psychrolib")
try:
    WEATHER = distribution("pvlib")
except PackageNotFoundError:  # the test extra brings it
    pytest.skip("pvlib's weather is not installed", allow_module_level=True)

GREENSBORO, SAND_POINT = "723170TYA.CSV", "703165TY.csv"
# Hours of fog are written as 100 %, where the equation has no value: this is just under.
FOG = 99.99

Hours = list[tuple[float, float]]


@pytest.fixture(scope="module", autouse=True)
def _metric():
    psychrolib.SetUnitSystem(psychrolib.SI)


@pytest.mark.parametrize(
    ("dry", "wet", "humidity", "moisture"), [(20, 14, 51.56, 9.529), (25, 18, 50.68, 9.244)]
)
def test_two_thermometers(dry, wet, humidity, moisture):
    """Dry and wet bulb at 101.325 kPa: psychrolib 2.5.0, half the last digit kept.

    The moisture is from that rounded humidity by Eq. 4-5 with its coefficients for °F (0.005 % of
    humidity is 0.001 % of moisture here); those for °C differ from them by up to 0.013 %.
    """
    found = 100 * psychrolib.GetRelHumFromTWetBulb(dry, wet, 101325)
    assert found == pytest.approx(humidity, abs=0.005)
    by_fahrenheit = moisture_by_fahrenheit(temperature=1.8 * dry + 32, humidity=found)
    assert by_fahrenheit == pytest.approx(moisture, abs=0.001)
    reckoned = equilibrium_moisture(temperature=dry, humidity=found)
    assert reckoned == pytest.approx(by_fahrenheit, abs=0.0135)


def hours_by_month(filename: str) -> list[Hours]:
    """Temperature [°C] and humidity [%] of each hour, January to December.

    The file is read where it lies: importing pvlib for it would take two seconds.
    """
    path = WEATHER.locate_file(f"pvlib/data/{filename}")
    with open(str(path), encoding="ascii", newline="") as file:
        next(file)  # the station
        months: list[Hours] = [[] for _ in MONTHS]
        for row in csv.DictReader(file):
            hour = float(row["Dry-bulb (C)"]), min(float(row["RHum (%)"]), FOG)
            months[int(row["Date (MM/DD/YYYY)"][:2]) - 1].append(hour)
    return months


@pytest.fixture(scope="module", params=[GREENSBORO, SAND_POINT])
def year(request) -> list[Hours]:
    return hours_by_month(request.param)


def means_first(months: list[Hours]) -> Climate:
    """The place as the workbook makes it from twelve mean readings."""
    readings = [(fmean(t for t, _ in hours), fmean(h for _, h in hours)) for hours in months]
    return Climate.from_readings(readings)


def hour_by_hour(hours: Hours) -> float:
    """Mean over the hours of what each would bring wood to. [%]"""
    return fmean(equilibrium_moisture(temperature=t, humidity=h) for t, h in hours)


def test_the_year_is_whole(year):
    assert sum(len(hours) for hours in year) == 8760


def test_the_means_give_less_than_the_hours(year):
    """Moisture bends upwards over humidity, so damp hours add more than dry ones take away."""
    for monthly, hours in zip(means_first(year).moisture, year, strict=True):
        assert 0 < hour_by_hour(hours) - monthly < 3


def test_by_the_other_set_of_coefficients(year):
    """Both orders of reckoning with the °F set: within 0.03 %.

    The sets are as far as 0.013 % apart where the handbook tabulates them, from -1 °C and up to
    95 %; frost and fog lie beyond.
    """
    for monthly, hours in zip(means_first(year).moisture, year, strict=True):
        mean_t, mean_h = fmean(t for t, _ in hours), fmean(h for _, h in hours)
        by_means = moisture_by_fahrenheit(temperature=1.8 * mean_t + 32, humidity=mean_h)
        assert monthly == pytest.approx(by_means, abs=0.03)
        by_hours = fmean(
            moisture_by_fahrenheit(temperature=1.8 * t + 32, humidity=h) for t, h in hours
        )
        assert hour_by_hour(hours) == pytest.approx(by_hours, abs=0.03)


def test_by_how_much_the_two_orders_differ():
    """The 24 months: 0.2 to 2.6 % of moisture, worked separately; half the last digit.

    Half of the months lie under 1.1 % and their mean is 1.2 %: our own reckoning, which hangs a
    little on what is made of fog. A table made from means, such as the handbook's of towns, is
    therefore low by about a point, most in foggy autumns.
    """
    apart = []
    for filename in (GREENSBORO, SAND_POINT):
        months = hours_by_month(filename)
        monthly = means_first(months).moisture
        apart += [hour_by_hour(h) - m for h, m in zip(months, monthly, strict=True)]
    assert len(apart) == 24
    assert (min(apart), max(apart)) == pytest.approx((0.2, 2.6), abs=0.05)
    assert (median(apart), fmean(apart)) == pytest.approx((1.1, 1.2), abs=0.05)


def test_a_year_outdoors_beside_the_table_of_towns():
    """Raleigh in the table (FPL-RN-268, from memory) and Greensboro, 110 km off, by its weather.

    Both by means first. Over the year within half a point: two towns, and two sets of years.
    """
    reckoned = fmean(means_first(hours_by_month(GREENSBORO)).moisture)
    assert reckoned == pytest.approx(fmean(place("Raleigh NC").moisture), abs=0.5)
