"""What the doors read: every spelling that people use, and the value it stands for."""

import math
import subprocess
import sys
import unicodedata
from decimal import Decimal

import pytest
from hypothesis import given, strategies as st

from toolkit.measures import angle, humidity, length, percent, slope, temperature

LENGTHS = {
    # metric
    "186 mm": 186,
    "186mm": 186,
    "  186   mm ": 186,
    "186 MM": 186,
    "186 mm.": 186,
    "+186 mm": 186,
    "18.6 cm": 186,
    "1.2 m": 1200,
    ".5 mm": 0.5,
    "12,5 mm": 12.5,
    "1234,567 mm": 1234.567,
    "0,125 mm": 0.125,
    "1.234 mm": 1.234,
    "12 millimetres": 12,
    "12 millimeters": 12,
    "1 millimetre": 1,
    "2 centimeters": 20,
    "2 metres": 2000,
    "50 microns": 0.05,
    "50 µm": 0.05,
    "50 μm": 0.05,
    # inches
    "7 5/16 in": 185.7375,
    '7-5/16"': 185.7375,
    "7 5⁄16 in": 185.7375,
    "7 5 / 16 in": 185.7375,
    '3/8"': 9.525,
    "7.25 in": 184.15,
    "7 in.": 177.8,
    "1 inch": 25.4,
    "3 inches": 76.2,
    "9/8 in": 28.575,
    "40/8 in": 127,
    "99/8 in": 314.325,
    "15/16 in": 23.8125,
    "½ in": 12.7,
    '7½"': 190.5,
    '7 ½"': 190.5,
    '7-½"': 190.5,
    "⅜ in": 9.525,
    "⅟8 in": 3.175,
    '7³⁄₁₆"': 182.5625,
    "5''": 127,
    "7–5/16 in": 185.7375,
    "2 thou": 0.0508,
    # curly and prime marks
    "7 5/16″": 185.7375,
    "7 5/16”": 185.7375,
    "7 5/16′′": 185.7375,
    "1′ 3″": 381,
    "1’ 3”": 381,
    # feet
    "2 ft": 609.6,
    "2'": 609.6,
    "1/2 ft": 152.4,
    "1 ft 3 in": 381,
    "1 foot 3 inches": 381,
    "1 ft. 3 in.": 381,
    "1' 2 1/2\"": 368.3,
    "1'-2 1/2\"": 368.3,
    "1' - 3\"": 381,
    "1'3½\"": 393.7,
    "2 yd": 1828.8,
    # spaces that nobody sees
    "12\N{NO-BREAK SPACE}mm": 12,
    "12\N{THIN SPACE}mm": 12,
    "12\N{NARROW NO-BREAK SPACE}mm": 12,
    "12\N{ZERO WIDTH SPACE} mm": 12,
    "7\N{NO-BREAK SPACE}5/16\N{THIN SPACE}in": 185.7375,
}


@pytest.mark.parametrize(("text", "mm"), LENGTHS.items())
def test_length_reads(text: str, mm: float) -> None:
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


@pytest.mark.parametrize(
    ("text", "degrees"),
    [
        ("30 deg", 30),
        ("30°", 30),
        ("30 º", 30),
        ("30 degrees", 30),
        ("7,5 deg", 7.5),
        ("22 1/2°", 22.5),
        ("-30 deg", -30),
        ("0 deg", 0),
        ("0.5 rad", 28.64788975654116),
    ],
)
def test_angle_reads(text: str, degrees: float) -> None:
    assert angle(text) == pytest.approx(degrees, rel=1e-15)


@pytest.mark.parametrize(
    ("text", "run"),
    [
        ("1:7", 7),
        ("1 : 7", 7),
        ("1 in 7", 7),
        ("1-in-7", 7),
        ("1 to 7", 7),
        ("1:7.5", 7.5),
        ("1:7 1/2", 7.5),
        ("45 deg", 1),
        ("8.130102354155978°", 7),
    ],
)
def test_slope_reads(text: str, run: float) -> None:
    assert slope(text) == pytest.approx(run, rel=1e-12)


@given(st.floats(0.1, 89.9))
def test_a_slope_given_as_an_angle_has_that_angle(degrees: float) -> None:
    run = slope(f"{degrees:.6f} deg")
    assert math.degrees(math.atan2(1, run)) == pytest.approx(degrees, abs=1e-6)


@pytest.mark.parametrize(
    ("text", "celsius"),
    [
        ("20 °C", 20),
        ("20 C", 20),
        ("20°C", 20),
        ("20 º C", 20),
        ("20 degC", 20),
        ("20 deg C", 20),
        ("20 degrees Celsius", 20),
        ("20 ℃", 20),
        ("-10 °C", -10),
        ("\N{MINUS SIGN}10 °C", -10),
        ("68 °F", 20),
        ("68 F", 20),
        ("68 degrees fahrenheit", 20),
        ("32 °F", 0),
        ("-40 °F", -40),
        ("293.15 K", 20),
        ("0 K", -273.15),
    ],
)
def test_temperature_reads(text: str, celsius: float) -> None:
    assert temperature(text) == pytest.approx(celsius, abs=1e-12)


@pytest.mark.parametrize(
    ("text", "share"),
    [
        ("50 %", 50),
        ("50%", 50),
        ("50 % RH", 50),
        ("50 %RH", 50),
        ("50 percent", 50),
        ("50 per cent relative humidity", 50),
        ("0 %", 0),
        ("100 %", 100),
        ("47,5 %", 47.5),
    ],
)
def test_humidity_reads(text: str, share: float) -> None:
    assert humidity(text) == share


@pytest.mark.parametrize(
    ("text", "share"), [("8 %", 8), ("8,5 percent", 8.5), ("120 % MC", 120), ("0 %", 0)]
)
def test_percent_reads(text: str, share: float) -> None:
    assert percent(text) == share


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
