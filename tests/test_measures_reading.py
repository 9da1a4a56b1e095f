"""What the doors read: every spelling that people use, and the value it stands for."""

import math
import subprocess
import sys
import unicodedata
from collections.abc import Callable
from decimal import Decimal

import pytest
from hypothesis import given, strategies as st

from toolkit.measures import angle, humidity, length, percent, slope, temperature

LENGTHS = {
    # metric
    186: ["186 mm", "186mm", "  186   mm ", "186 MM", "186 mm.", "+186 mm", "18.6 cm"],
    12: ["12 millimetres", "12 millimeters"],
    0.05: ["50 microns", "50 µm", "50 μm"],
    1: ["1 millimetre"],
    20: ["2 centimeters"],
    1200: ["1.2 m"],
    2000: ["2 metres"],
    0.5: [".5 mm"],
    12.5: ["12,5 mm"],
    0.125: ["0,125 mm"],
    1.234: ["1.234 mm"],
    1234.567: ["1234,567 mm"],
    # inches
    185.7375: ["7 5/16 in", '7-5/16"', "7 5⁄16 in", "7 5 / 16 in", "7–5/16 in"],
    9.525: ['3/8"', "⅜ in"],
    127: ["40/8 in", "5''"],
    190.5: ['7½"', '7 ½"', '7-½"'],
    184.15: ["7.25 in"],
    177.8: ["7 in."],
    25.4: ["1 inch"],
    76.2: ["3 inches"],
    28.575: ["9/8 in"],
    314.325: ["99/8 in"],
    23.8125: ["15/16 in"],
    12.7: ["½ in"],
    3.175: ["⅟8 in"],
    182.5625: ['7³⁄₁₆"'],
    0.0508: ["2 thou"],
    # feet
    609.6: ["2 ft", "2'"],
    381: ["1 ft 3 in", "1 foot 3 inches", "1 ft. 3 in.", "1' - 3\"", "1′ 3″", "1’ 3”"],
    368.3: ["1' 2 1/2\"", "1'-2 1/2\""],
    152.4: ["1/2 ft"],
    393.7: ["1'3½\""],
    1828.8: ["2 yd"],
}
LOOKING_ALIKE = {
    # curly and prime marks
    185.7375: ["7 5/16″", "7 5/16”", "7 5/16′′", "7\N{NO-BREAK SPACE}5/16\N{THIN SPACE}in"],
    # spaces that nobody sees
    12: [
        *("12\N{NO-BREAK SPACE}mm", "12\N{THIN SPACE}mm", "12\N{NARROW NO-BREAK SPACE}mm"),
        "12\N{ZERO WIDTH SPACE} mm",
    ],
}


@pytest.mark.parametrize(
    ("mm", "text"),
    [(mm, text) for table in (LENGTHS, LOOKING_ALIKE) for mm in table for text in table[mm]],
)
def test_length_reads(mm: float, text: str) -> None:
    assert length(text) == pytest.approx(mm, rel=1e-15)


@pytest.mark.parametrize("one", "¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞")
def test_fractions_of_one_character(one: str) -> None:
    part = unicodedata.numeric(one)
    for before, whole in (("", 0), ("7", 7), ("7 ", 7), ("7-", 7)):
        assert length(f'{before}{one}"') == pytest.approx(25.4 * (whole + part), rel=1e-14)


@pytest.mark.parametrize("text", ["1 1/2 in", '1-1/2"', "1½ in", "1.5 in", "1,5 in", "3.81 cm"])
def test_spellings_of_one_length_agree_to_the_last_bit(text: str) -> None:
    assert length(text) == length("38.1 mm") == 38.1


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        ("-5 mm", -5),
        ("\N{MINUS SIGN}5 mm", -5),
        ("\N{EN DASH}5 mm", -5),
        ("- 5 mm", -5),
        ("+5 mm", 5),
        ("-1 1/2 in", -38.1),
        ("-½ in", -12.7),
        # One sign goes for the feet and for the inches.
        ("-1' 3\"", -381),
    ],
)
def test_a_place_may_lie_below_nothing(text: str, mm: float) -> None:
    assert length(text, allow="any") == mm


def test_zero_where_it_is_allowed() -> None:
    assert length("0 mm", allow="zero") == 0
    assert length("0 in", allow="any") == 0


@given(
    whole=st.integers(0, 100),
    parts=st.sampled_from([2, 4, 8, 16, 32, 64, 128]),
    data=st.data(),
    join=st.sampled_from([" ", "-", "\N{NO-BREAK SPACE}"]),
    bar=st.sampled_from(["/", "\N{FRACTION SLASH}"]),
    mark=st.sampled_from([" in", '"', "\N{DOUBLE PRIME}", " inches"]),
)
def test_any_mixed_fraction(whole, parts, data, join, bar, mark) -> None:
    top = data.draw(st.integers(1, parts - 1))
    read = length(f"{whole}{join}{top}{bar}{parts}{mark}")
    assert read == pytest.approx(25.4 * whole + 25.4 * top / parts, rel=1e-14)


@given(st.decimals("0.001", "99999", places=3))
def test_decimals_with_point_or_comma(number: Decimal) -> None:
    text = str(number)
    assert length(f"{text} mm") == float(number)
    # A comma and three digits after one to three others may as well mark thousands.
    if number < 1 or number >= 1000:
        assert length(f"{text.replace('.', ',')} mm") == float(number)


OTHERS = [
    (angle, 30, ["30 deg", "30°", "30 º", "30 degrees"]),
    (angle, 7.5, ["7,5 deg"]),
    (angle, 22.5, ["22 1/2°"]),
    (angle, -30, ["-30 deg"]),
    (angle, 0, ["0 deg"]),
    (angle, 28.64788975654116, ["0.5 rad"]),
    (slope, 7, ["1:7", "1 : 7", "1 in 7", "1-in-7", "1 to 7", "8.130102354155978°"]),
    (slope, 7.5, ["1:7.5", "1:7 1/2"]),
    (slope, 1, ["45 deg"]),
    (temperature, 20, ["20 °C", "20 C", "20°C", "20 º C", "20 degC", "20 deg C", "20 ℃"]),
    (temperature, 20, ["20 degrees Celsius", "68 °F", "68 F", "68 degrees fahrenheit", "293.15 K"]),
    (temperature, -10, ["-10 °C", "\N{MINUS SIGN}10 °C"]),
    (temperature, 0, ["32 °F"]),
    (temperature, -40, ["-40 °F"]),
    (temperature, -273.15, ["0 K"]),
    (humidity, 50, ["50 %", "50%", "50 % RH", "50 %RH", "50 percent"]),
    (humidity, 50, ["50 per cent relative humidity"]),
    (humidity, 0, ["0 %"]),
    (humidity, 100, ["100 %"]),
    (humidity, 47.5, ["47,5 %"]),
    (percent, 8, ["8 %"]),
    (percent, 8.5, ["8,5 percent"]),
    (percent, 120, ["120 % MC"]),
    (percent, 0, ["0 %"]),
]


@pytest.mark.parametrize(
    ("door", "value", "text"), [(door, value, text) for door, value, row in OTHERS for text in row]
)
def test_other_doors_read(door: Callable[[str], float], value: float, text: str) -> None:
    assert door(text) == pytest.approx(value, rel=1e-12, abs=1e-12)


@given(st.floats(0.1, 89.9))
def test_a_slope_given_as_an_angle_has_that_angle(degrees: float) -> None:
    run = slope(f"{degrees:.6f} deg")
    assert math.degrees(math.atan2(1, run)) == pytest.approx(degrees, abs=1e-6)


def test_percent_below_zero_is_a_loss_where_it_is_allowed() -> None:
    assert percent("-2 %", allow="any") == -2


def test_the_door_opens_without_pint() -> None:
    code = (
        "import sys, toolkit.measures as m\n"
        "m.length('1 1/2 in'), m.temperature('68 °F'), m.Rule.inches().show(38.1)\n"
        "loaded = {'pint', 'numpy', 'matplotlib'} & set(sys.modules)\n"
        "assert not loaded, loaded\n"
        "m.convert(1.0, unit='m', to='ft')\n"
        "assert 'pint' in sys.modules\n"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
