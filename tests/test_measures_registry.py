"""The one pint registry: quantities at the doors, and conversions of what is not a length."""

import numpy as np
import pint
import pytest
from hypothesis import given, strategies as st

from toolkit.measures import (
    MeasureError,
    angle,
    convert,
    humidity,
    length,
    percent,
    slope,
    temperature,
)
from toolkit.measures.conversion import registry

OTHER = pint.UnitRegistry()
OTHER.formatter.default_format = "~P"
REGISTRIES = {"own": registry(), "other": OTHER}


@pytest.fixture(params=REGISTRIES)
def ureg(request: pytest.FixtureRequest) -> pint.UnitRegistry:
    return REGISTRIES[request.param]


def test_there_is_one_registry() -> None:
    assert registry() is registry()


@pytest.mark.parametrize(
    ("door", "magnitude", "unit", "value"),
    [
        (length, 1.5, "inch", 38.1),
        (length, 1.5, "foot", 457.2),
        (length, 3, "cm", 30),
        (length, 1.2, "decimeter", 120),
        (angle, 30, "degree", 30),
        (angle, 0.5, "radian", 28.64788975654116),
        (angle, 90, "arcminute", 1.5),
        (slope, 45, "degree", 1),
        (temperature, 68, "degF", 20),
        (temperature, -10, "degC", -10),
        (temperature, 293.15, "kelvin", 20),
        (humidity, 50, "percent", 50),
        (percent, 8, "percent", 8),
    ],
)
def test_quantities_of_any_registry_are_read(ureg, door, magnitude, unit, value) -> None:
    assert door(ureg.Quantity(magnitude, unit)) == pytest.approx(value, rel=1e-9)
    assert door(ureg.Quantity(np.float64(magnitude), unit)) == pytest.approx(value, rel=1e-9)


@pytest.mark.parametrize(
    ("door", "magnitude", "unit", "problem"),
    [
        (length, 12, "mm**2", "is not a length"),
        (length, 12, "degree", "is not a length"),
        (length, 12, "", "is not a length"),
        (length, -12, "mm", "is below zero"),
        (length, 0, "mm", "is zero, and must be above it"),
        (length, float("nan"), "mm", "is not a finite number"),
        (length, [1, 2], "mm", "does not hold one plain number"),
        (length, [12], "mm", "does not hold one plain number"),
        (length, 1 + 2j, "mm", "does not hold one plain number"),
        # A plain number has the dimension of an angle and of a percentage: it is neither here.
        (angle, 0.5, "", "is not an angle"),
        (angle, 50, "percent", "is not an angle"),
        (humidity, 0.5, "", "is not a humidity"),
        (humidity, 130, "percent", "does not lie between 0 and 100 %"),
        (slope, 7, "", "is not a slope"),
        (slope, 98, "degree", "is not a slope between 0 and 90 deg"),
        (temperature, 5, "delta_degC", "is not a temperature"),
        (temperature, -5, "kelvin", "is below absolute zero"),
    ],
)
def test_other_quantities_are_refused(ureg, door, magnitude, unit, problem) -> None:
    quantity = ureg.Quantity(magnitude, unit)
    with pytest.raises(MeasureError) as caught:
        door(quantity, what="it")
    assert caught.value.problem == problem
    assert caught.value.read == " ".join(str(quantity).split())
    assert str(caught.value).startswith("it: ")
    text = caught.value.hint.split('"')[1]
    assert isinstance(door(text), float)


def test_a_unit_that_only_another_registry_knows() -> None:
    other = pint.UnitRegistry()
    other.define("handspan = 229 mm")
    with pytest.raises(MeasureError, match="has a unit that the workbook does not know"):
        length(other.Quantity(2, "handspan"))


def test_a_unit_alone_is_not_a_length() -> None:
    with pytest.raises(MeasureError, match=r"^length: millimeter is not a length"):
        length(registry().mm)


def test_pint_never_reads_a_text() -> None:
    # This is what pint makes of it: the door reads text itself.
    assert registry().Quantity("1 1/2 in").magnitude == 0.5
    assert length("1 1/2 in") == 38.1


@given(mm=st.floats(0.001, 5000), unit=st.sampled_from(["inch", "foot", "mm", "cm", "m", "yard"]))
def test_a_quantity_agrees_with_pint(mm: float, unit: str) -> None:
    quantity = OTHER.Quantity(mm, "mm").to(unit)
    assert length(quantity) == pytest.approx(mm, rel=1e-12)


@pytest.mark.parametrize(
    ("value", "unit", "to", "expected"),
    [
        # A board 1 ft long, 1 ft wide and 1 in thick, by definition.
        (144, "in**3", "board_foot", 1),
        (144 * 25.4**3, "mm**3", "board_foot", 1),
        (2, "board_foot", "in³", 288),
        (68, "degF", "degC", 20),
        (20, "degC", "degF", 68),
        (0, "degC", "degF", 32),
        (9, "delta_degF", "delta_degC", 5),
        (1, "ft**2", "m**2", 0.09290304),
        (1, "ft²", "in^2", 144),
        (4, "mL", "metric_teaspoon", 0.8),
        (1, "teaspoon", "mL", 4.92892159375),
        (1, "psi", "kPa", 6.894757293168361),
    ],
)
def test_convert(value: float, unit: str, to: str, expected: float) -> None:
    # Twice, since the factor is kept.
    assert convert(value, unit=unit, to=to) == pytest.approx(expected, rel=1e-12)
    assert convert(value, unit=unit, to=to) == pytest.approx(expected, rel=1e-12)


@pytest.mark.parametrize(
    ("value", "unit", "to", "message"),
    [
        (1, "boardfoot", "mm**3", 'unit: "boardfoot" is not a unit that the workbook knows: type'),
        (1, "1 1/2 in", "mm", 'unit: "1 1/2 in" is not a unit that the workbook knows: type'),
        (1, "mm", "((", 'unit: "((" is not a unit that the workbook knows: type'),
        (1, "mm**3", "ft**2", 'unit: "ft**2" does not measure the same thing as mm**3: type a'),
        (float("nan"), "mm", "in", "value: nan is not a finite number: give a number of mm"),
        ("12", "mm", "in", 'value: "12" is not a finite number: give a number of mm'),
        (True, "mm", "in", "value: True is not a finite number: give a number of mm"),
    ],
)
def test_convert_refuses(value, unit: str, to: str, message: str) -> None:
    with pytest.raises(MeasureError) as caught:
        convert(value, unit=unit, to=to)
    assert str(caught.value).startswith(message)
