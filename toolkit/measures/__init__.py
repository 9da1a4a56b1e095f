"""The one door for measures: reads and writes lengths, angles, temperatures, shares, weights.

Text and pint quantities become floats here and nowhere else: millimetres, degrees, degrees
Celsius, percent, grams. A ``Rule`` writes a length back as its owner reads it.
"""

from toolkit.measures.angles import angle, slope
from toolkit.measures.conversion import convert
from toolkit.measures.doors import humidity, length, mass, percent, temperature
from toolkit.measures.errors import MeasureError, decimals
from toolkit.measures.keys import Key, declared, key, keys_of
from toolkit.measures.marks import Direction, Fineness, Units
from toolkit.measures.rule import Rule, length_text
from toolkit.measures.text import whole
from toolkit.measures.units import MM_PER_INCH
