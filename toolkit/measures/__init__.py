"""The one door for measures: reads and writes lengths, angles, temperatures, shares, weights.

Text and pint quantities become floats here and nowhere else: millimetres, degrees, degrees
Celsius, percent, grams. A ``Rule`` writes a length back as its owner reads it.
"""

from toolkit.measures.angles import angle, slope
from toolkit.measures.doors import humidity, length, mass, percent, temperature
from toolkit.measures.errors import MeasureError
from toolkit.measures.marks import Direction, Fineness, Units
from toolkit.measures.registry import convert, registry
from toolkit.measures.rule import Rule
from toolkit.measures.typed import decimals, length_text
from toolkit.measures.units import MM_PER_INCH

__all__ = [
    "MM_PER_INCH",
    "Direction",
    "Fineness",
    "MeasureError",
    "Rule",
    "Units",
    "angle",
    "convert",
    "decimals",
    "humidity",
    "length",
    "length_text",
    "mass",
    "percent",
    "registry",
    "slope",
    "temperature",
]
