"""What the doors refuse, and that each refusal says what was read and something that works."""

import copy
import math
import pickle
import re
from collections.abc import Callable
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import example, given, settings, strategies as st

from toolkit.measures import (
    MeasureError,
    angle,
    humidity,
    length,
    percent,
    slope,
    temperature,
)

Door = Callable[..., float]

DOORS: tuple[Door, ...] = (length, angle, slope, temperature, humidity, percent)


def suggestions(error: MeasureError) -> list[str]:
    """The texts that a hint tells to type."""
    return re.findall('"([^"]*)"', error.hint)


def refused(door: Door, value: object, **options: object) -> MeasureError:
    with pytest.raises(MeasureError) as caught:
        door(value, **options)
    return caught.value


LENGTH_REFUSALS = [
    # no unit: the student's own number comes back with one
    ("200", 'has no unit: type "200 mm" or "200 in"'),
    (200, 'has no unit: type "200 mm" or "200 in"'),
    (200.0, 'has no unit: type "200 mm" or "200 in"'),
    (7.25, 'has no unit: type "7.25 mm" or "7.25 in"'),
    (Decimal("12.5"), 'has no unit: type "12.5 mm" or "12.5 in"'),
    (Fraction(3, 8), 'has no unit: type "3/8 in"'),
    ("1 1/2", 'has no unit: type "1 1/2 in"'),
    ("1-1/2", 'has no unit: type "1-1/2 in"'),
    ("½", 'has no unit: type "1/2 in"'),
    ("12,5", 'has no unit: type "12,5 mm" or "12,5 in"'),
    ("5' 6", 'has no unit after 6: type "5\' 6 in"'),
    ("5' 6 1/2", 'has no unit after 6 1/2: type "5\' 6 1/2 in"'),
    # more than one length
    ("12 mm 5", 'has a second number, 5: type "12 mm"'),
    ("12 mm x 5 mm", 'has a second number, 5: type "12 mm" or "5 mm"'),
    ("5 x 12 mm", 'has a second number, 12: type "5 mm" or "12 mm"'),
    ("1 m 20 cm", 'has a second number, 20: type "1 m" or "20 cm"'),
    ("1 1/2 3/4 in", 'has a second number, 3/4: type "1 1/2 in" or "3/4 in"'),
    ("1 ft 3 mm", 'has a second number, 3: type "1 ft" or "3 mm"'),
    ("12 mm long", 'has "long" after its unit: type "12 mm"'),
    ("about 12 mm", 'begins with "about", not with a number: type "12 mm"'),
    ('about 7 5/16"', 'begins with "about", not with a number: type "7 5/16 in"'),
    # areas and volumes
    ("12 mm²", 'is an area, not a length: type "12 mm"'),
    ("12 mm^2", 'is an area, not a length: type "12 mm"'),
    ("12 mm**2", 'is an area, not a length: type "12 mm"'),
    ("12 mm2", 'is an area, not a length: type "12 mm"'),
    ("3 sq ft", 'is an area, not a length: type "3 ft"'),
    ("3 square inches", 'is an area, not a length: type "3 in"'),
    ("3 ft³", 'is a volume, not a length: type "3 ft"'),
    ("3 cu in", 'is a volume, not a length: type "3 in"'),
    # no number that a rule could show
    ("inf mm", 'is not a finite number: type for example "12 mm"'),
    ("-∞ mm", 'is not a finite number: type for example "12 mm"'),
    ("NaN mm", 'is not a finite number: type for example "12 mm"'),
    ("1e999 mm", 'is not a finite number: type for example "12 mm"'),
    (float("inf"), 'is not a finite number: type for example "12 mm"'),
    (float("nan"), 'is not a finite number: type for example "12 mm"'),
    (Decimal("sNaN"), 'is not a finite number: type for example "12 mm"'),
    ("1/0 in", 'has a zero under its fraction\'s bar: type for example "12 mm"'),
    ("1' 2 1/0\"", 'has a zero under its fraction\'s bar: type for example "12 mm"'),
    ("1e3 mm", 'is written with an exponent: type "1000 mm"'),
    ("1.5e-2 m", 'is written with an exponent: type "0.015 m"'),
    ("", 'is empty: type for example "12 mm"'),
    (" \N{NO-BREAK SPACE} ", 'is empty: type for example "12 mm"'),
    ("mm", 'has no number: type for example "12 mm"'),
    ("1.2.3 mm", 'has a number that cannot be read: type for example "12 mm"'),
    ("1/2/3 in", 'has a number that cannot be read: type for example "12 mm"'),
    ("1.5/2 in", 'has a number that cannot be read: type for example "12 mm"'),
    ("12. mm", 'has a number that cannot be read: type "12 mm"'),
    ("1 3/2 in", 'has a fraction that is not less than 1 beside its whole number: type "2.5 in"'),
    ("1 2/2 in", 'has a fraction that is not less than 1 beside its whole number: type "2 in"'),
    # a space or a figure too few
    (
        '71/2"',
        'is ambiguous, a space may be missing before its fraction: type "7 1/2 in" or "35 1/2 in"',
    ),
    (
        "16/8 in",
        'is ambiguous, a space may be missing before its fraction: type "1 6/8 in" or "2 in"',
    ),
    (
        "123/64 in",
        "is ambiguous, a space may be missing before its fraction: "
        'type "1 23/64 in" or "1 59/64 in"',
    ),
    ("½5 in", 'has a second number, 5: type "1/2 in" or "5 in"'),
    ("7 ¹⁄₂5 in", 'has a second number, 5: type "7 1/2 in" or "5 in"'),
    ("7 - 5/16 in", 'has a minus sign before its fraction: type "7 5/16 in"'),
    # thousands
    ("1,234.5 mm", 'is ambiguous, it has signs or spaces between its thousands: type "1234.5 mm"'),
    ("1.234,5 mm", 'is ambiguous, it has signs or spaces between its thousands: type "1234.5 mm"'),
    (
        "1,234,567 mm",
        'is ambiguous, it has signs or spaces between its thousands: type "1234567 mm"',
    ),
    ("1 200 mm", 'is ambiguous, it has signs or spaces between its thousands: type "1200 mm"'),
    (
        "1,234 mm",
        "is ambiguous, its comma may be a decimal point or mark the thousands: "
        'type "1.234 mm" or "1234 mm"',
    ),
    ("1,234", 'has no unit: type "1.234 mm" or "1234 mm"'),
    # signs
    ("0 mm", 'is zero, and must be above it: type for example "12 mm"'),
    ("-5 mm", 'is below zero: type "5 mm"'),
    ("\N{MINUS SIGN}5 mm", 'is below zero: type "5 mm"'),
    ('-7 5/16"', 'is below zero: type "7 5/16 in"'),
    (-5, 'has no unit: type "5 mm" or "5 in"'),
    ("--5 mm", 'begins with "--", not with a number: type "5 mm"'),
    # units
    ("12 mn", 'has an unknown unit, "mn" (mm?): type "12 mm"'),
    ("12 cn", 'has an unknown unit, "cn" (cm?): type "12 cm"'),
    ("12 milimetres", 'has an unknown unit, "milimetres" (mm?): type "12 mm"'),
    ("12 c", 'has an unknown unit, "c" (cm?): type "12 cm"'),
    ("1 1/2 ihc", 'has an unknown unit, "ihc": type "1 1/2 in"'),
    ("1 1/2 inhc", 'has an unknown unit, "inhc" (in?): type "1 1/2 in"'),
    ("12 kg", 'is a weight, not a length: type "12 mm" or "12 in"'),
    ("12 px", 'has an unknown unit, "px": type "12 mm" or "12 in"'),
    ("12 deg", 'is an angle, not a length: type "12 mm" or "12 in"'),
    ("20 °C", 'is a temperature, not a length: type "20 mm" or "20 in"'),
    # what is no text
    (None, 'is not a length: type for example "12 mm"'),
    (True, 'is not a length: type for example "12 mm"'),
    ([1, 2], 'is not a length: type for example "12 mm"'),
    (b"12 mm", 'is not a length: type for example "12 mm"'),
    (1 + 2j, 'is not a length: type for example "12 mm"'),
]


@pytest.mark.parametrize(("value", "message"), LENGTH_REFUSALS, ids=lambda x: repr(x)[:30])
def test_length_refuses(value: object, message: str) -> None:
    error = refused(length, value, what="lap")
    assert f"{error.problem}: {error.hint}" == message
    assert str(error).startswith("lap: ") and str(error).endswith(message)


OTHER_REFUSALS = [
    (angle, "30", 'has no unit: type "30 deg"'),
    (angle, 30, 'has no unit: type "30 deg"'),
    (angle, "30 mm", 'is a length, not an angle: type "30 deg"'),
    (angle, "30 degs", 'has an unknown unit, "degs" (deg?): type "30 deg"'),
    (slope, "1/7", 'is a fraction, not a ratio: type "1:7"'),
    (slope, "7", 'is a bare number: type "1:7" or "7 deg"'),
    (slope, 7, 'is a bare number: type "1:7" or "7 deg"'),
    (slope, "0.14", 'is a bare number: type for example "1:7"'),
    (slope, "7:1", 'does not begin with 1: type "1:7"'),
    (slope, "2 in 14", 'does not begin with 1: type "1:7"'),
    (slope, "0:7", 'does not begin with 1: type for example "1:7"'),
    (slope, "1:0", 'does not run along at all: type for example "1:7"'),
    (slope, "90 deg", 'is not a slope between 0 and 90 deg: type for example "1:7"'),
    (slope, "-8 deg", 'is not a slope between 0 and 90 deg: type "8 deg"'),
    (slope, "14 %", 'is a percentage, not a slope: type for example "1:7"'),
    (temperature, "20", 'has no unit: type "20 °C" or "20 °F"'),
    (temperature, "20 x", 'has an unknown unit, "x": type "20 °C" or "20 °F"'),
    (temperature, "20°", 'is an angle, not a temperature: type "20 °C" or "20 °F"'),
    (temperature, "-300 °C", 'is below absolute zero: type for example "20 °C"'),
    (humidity, "50", 'has no unit: type "50 %"'),
    (humidity, 0.5, 'has no unit: type "0.5 %"'),
    (humidity, "130 %", 'does not lie between 0 and 100 %: type for example "50 %"'),
    (humidity, "50 % MC", 'is a percentage, not a humidity: type "50 %"'),
    (percent, 8, 'has no unit: type "8 %"'),
    (percent, "-1 %", 'is below zero: type "1 %"'),
    (percent, "8 % RH", 'has "RH" after its unit: type "8 %"'),
]


@pytest.mark.parametrize(("door", "value", "message"), OTHER_REFUSALS)
def test_other_doors_refuse(door: Door, value: object, message: str) -> None:
    error = refused(door, value)
    assert f"{error.problem}: {error.hint}" == message


@pytest.mark.parametrize(
    ("door", "value"),
    [(length, value) for value, _ in LENGTH_REFUSALS] + [row[:2] for row in OTHER_REFUSALS],
)
def test_every_hint_in_the_tables_can_be_read(door: Door, value: object) -> None:
    texts = suggestions(refused(door, value))
    assert texts
    for text in texts:
        door(text)


SCRAPS = [
    *"0123456789",
    *" .,/-+:'\"°%²^()½⅜x\N{MINUS SIGN}\N{FRACTION SLASH}\N{DOUBLE PRIME}\N{NO-BREAK SPACE}",
    *("mm", "cm", "m", "in", "ft", "inch", "mn", "deg", "rad", "°C", "F", "K", "RH", "1/2", "12"),
    *("1 1/2", "1,234", "1e3", "inf", "sq ", "x 5 mm", "about ", " in 7"),
]


@pytest.mark.parametrize("door", DOORS)
@settings(max_examples=200, deadline=None)
@given(
    value=st.one_of(
        st.lists(st.sampled_from(SCRAPS), max_size=8).map("".join),
        st.text(max_size=70),
        st.floats(),
        st.integers(),
        st.fractions(),
        st.decimals(),
    )
)
@example(value=10**400)
@example(value=10**5000)
@example(value=1e-9)
def test_every_text_is_read_or_refused_with_a_hint_that_can_be_read(
    door: Door, value: object
) -> None:
    error = None
    try:
        number = door(value)
    except MeasureError as caught:
        error = caught
    if error is None:
        assert isinstance(value, str), "a number without a unit was let in"
        assert math.isfinite(number)
        return
    assert error.read == value if isinstance(value, str) else isinstance(error.read, str)
    texts = suggestions(error)
    assert 1 <= len(texts) <= 2
    for text in texts:
        assert math.isfinite(door(text))


@given(st.floats(0.01, 2000).map(lambda x: f"{x:.2f}"), st.sampled_from(["", " "]))
def test_a_bare_number_gets_its_own_number_back(number: str, space: str) -> None:
    error = refused(length, f"{space}{number}{space}")
    assert error.hint == f'type "{number} mm" or "{number} in"'


def test_a_place_keeps_its_sign_in_the_hint() -> None:
    assert refused(length, "-5", allow="any").hint == 'type "-5 mm" or "-5 in"'
    assert refused(length, "-1 1/2 inhc", allow="any").hint == 'type "-1 1/2 in"'


def test_a_size_that_may_be_nothing_is_not_below_it() -> None:
    assert str(refused(length, "-1 mm", allow="zero")) == (
        'length: "-1 mm" is below zero: type "1 mm"'
    )


def test_a_huge_text_is_not_even_looked_at() -> None:
    error = refused(length, "1" * 100_000 + " mm")
    assert "is longer than 64 characters" in str(error)
    assert len(str(error)) < 150
    assert length("0" * 60 + "5 mm") == 5
    assert "longer than 64" in str(refused(length, "0" * 60 + "5 mm "))


def test_what_was_read_is_shown_on_one_line() -> None:
    assert str(refused(length, "12\n\x1b[31m kg")).startswith('length: "12  [31m kg" has')


def test_the_error_can_be_asked_pickled_and_copied() -> None:
    error = refused(length, "200", what="side thickness")
    for same in (error, pickle.loads(pickle.dumps(error)), copy.copy(error)):
        assert isinstance(same, ValueError)
        assert same.what == "side thickness"
        assert same.read == "200"
        assert same.problem == "has no unit"
        assert same.hint == 'type "200 mm" or "200 in"'
        assert str(same) == 'side thickness: "200" has no unit: type "200 mm" or "200 in"'
