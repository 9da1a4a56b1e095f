"""The units that each door reads, by the words that people type for them."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field

MM_PER_INCH = 25.4


@dataclass(frozen=True, slots=True)
class Unit:
    """One unit: its short name, how to turn it into the kind's own, and its spellings.

    An inch is 254/10 mm and not 25.4 times 1 mm: with the multiplication first, any fraction of an
    inch comes out as the nearest float to its true length, and 1 1/2 in is 38.1 mm to the last bit.
    """

    name: str
    times: float
    per: float = 1
    spellings: tuple[str, ...] = ()
    shift: float = 0

    def own(self, number: float) -> float:
        """A number of this unit in the kind's own unit."""
        return (number + self.shift) * self.times / self.per


@dataclass(frozen=True, slots=True)
class Kind:
    """What one door reads: its units, those to offer when none was typed, and an example."""

    noun: str
    units: tuple[Unit, ...]
    offered: tuple[str, ...]
    example: str
    quantity_unit: str
    quantity_names: frozenset[str] = frozenset()
    words: Mapping[str, Unit] = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        words = {word: unit for unit in self.units for word in (unit.name, *unit.spellings)}
        folded = {word.casefold(): unit for word, unit in words.items()}
        object.__setattr__(self, "words", folded)

    def find(self, word: str) -> Unit | None:
        """The unit that a word names, or None."""
        return self.words.get(plain_word(word))

    def nearest(self, word: str) -> Unit | None:
        """The unit whose spelling is closest to a mistyped word, or None when all are far."""
        word = plain_word(word).strip(",;:-")
        if not word:
            return None
        reach = 1 if len(word) <= 3 else 2
        ranked = [
            (distance, spelling[0] != word[0], len(spelling) != len(word), order, unit)
            for order, (spelling, unit) in enumerate(self.words.items())
            if spelling[0].isalpha()
            and (distance := _edits(word, spelling)) <= reach
            # One letter is one change away from any other, which says nothing.
            and (len(word) > 1 or spelling[0] == word)
        ]
        return min(ranked, key=lambda entry: entry[:4])[4] if ranked else None


def plain_word(word: str) -> str:
    """A unit's word without its closing full stop, in small letters."""
    return word.strip().rstrip(".").strip().casefold()


def _edits(one: str, other: str) -> int:
    """How many letters to put in, leave out or change to get from one word to the other."""
    row = list(range(len(other) + 1))
    for i, a in enumerate(one, start=1):
        above, row[0] = row[0], i
        for j, b in enumerate(other, start=1):
            above, row[j] = row[j], min(row[j] + 1, row[j - 1] + 1, above + (a != b))
    return row[-1]


def _metric(stem: str) -> tuple[str, ...]:
    return tuple(f"{stem}{ending}" for ending in ("metre", "metres", "meter", "meters"))


def _scale_words(letter: str, name: str) -> tuple[str, ...]:
    degrees = ("° ", "deg", "deg ", "degree ", "degrees ")
    return letter, name, *(f"{degree}{word}" for degree in degrees for word in (letter, name))


LENGTH = Kind(
    noun="a length",
    units=(
        Unit("mm", 1, 1, _metric("milli")),
        Unit("in", 254, 10, ("inch", "inches", '"')),
        Unit("cm", 10, 1, _metric("centi")),
        Unit("m", 1000, 1, _metric("")),
        Unit("ft", 12 * 254, 10, ("foot", "feet", "'")),
        Unit("um", 1, 1000, (*_metric("micro"), "micron", "microns")),
        Unit("thou", 254, 10_000),
        Unit("yd", 36 * 254, 10, ("yard", "yards")),
    ),
    offered=("mm", "in"),
    example="12 mm",
    quantity_unit="millimeter",
)

ANGLE = Kind(
    noun="an angle",
    units=(
        Unit("deg", 1, 1, ("°", "degree", "degrees")),
        Unit("rad", 180, math.pi, ("radian", "radians")),
    ),
    offered=("deg",),
    example="30 deg",
    quantity_unit="degree",
    # A plain number has the dimension of an angle too, so only these names are an angle here.
    quantity_names=frozenset(
        {"degree", "radian", "milliradian", "arcminute", "arcsecond", "turn", "gradian"}
    ),
)

TEMPERATURE = Kind(
    noun="a temperature",
    units=(
        Unit("°C", 1, 1, _scale_words("c", "celsius")),
        Unit("°F", 5, 9, _scale_words("f", "fahrenheit"), shift=-32),
        Unit("K", 1, 1, ("kelvin", "kelvins"), shift=-273.15),
    ),
    offered=("°C", "°F"),
    example="20 °C",
    quantity_unit="degree_Celsius",
)

_PERCENT = ("percent", "per cent")
_OF_THE_AIR = ("rh", "relative humidity")

PERCENT = Kind(
    noun="a percentage",
    units=(Unit("%", 1, 1, (*_PERCENT, "% mc")),),
    offered=("%",),
    example="8 %",
    quantity_unit="percent",
    quantity_names=frozenset({"percent"}),
)

HUMIDITY = Kind(
    noun="a humidity",
    units=(
        Unit(
            "%",
            1,
            1,
            (*_PERCENT, "%rh", *(f"{p} {air}" for p in ("%", *_PERCENT) for air in _OF_THE_AIR)),
        ),
    ),
    offered=("%",),
    example="50 %",
    quantity_unit="percent",
    quantity_names=frozenset({"percent"}),
)

SLOPE = Kind(
    noun="a slope",
    units=ANGLE.units,
    offered=(),
    example="1:7",
    quantity_unit="degree",
    quantity_names=ANGLE.quantity_names,
)

MASS = Kind(
    noun="a weight",
    units=(
        Unit("g", 1, 1, ("gram", "grams", "gramme", "grammes")),
        Unit("kg", 1000, 1, ("kilogram", "kilograms")),
        Unit("oz", 45_359_237, 1_600_000, ("ounce", "ounces")),
        Unit("lb", 45_359_237, 100_000, ("pound", "pounds", "lbs")),
    ),
    offered=("g", "oz"),
    example="412 g",
    quantity_unit="gram",
)

KINDS = (LENGTH, ANGLE, TEMPERATURE, PERCENT, MASS)
