"""A person's rule: the marks they read, and lengths written as they would read them."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction
from functools import cache
from typing import Literal

from toolkit.measures.doors import length
from toolkit.measures.errors import decimals
from toolkit.measures.keys import declared
from toolkit.measures.marks import (
    FINENESSES,
    HUNDREDTHS,
    Direction,
    Fineness,
    Scale,
    Units,
    count_at,
    inches_text,
    length_at,
    no_such_fineness,
    scale_of,
    text_at,
    thickness_scale,
)
from toolkit.measures.units import MM_PER_INCH


@dataclass(frozen=True, slots=True)
class Rule:
    """The rule that somebody reads, with a fineness for each kind of work.

    Parameters
    ----------
    units : str
        ``"mm"`` for millimetres or ``"in"`` for fractions of an inch.
    joints : float
        Distance between marks for setting out joints. [mm]
    sizes : float
        Distance between marks for finished sizes. [mm]
    rough : float
        Distance between marks for sawn sizes. [mm]

    Raises
    ------
    MeasureError
        The units are neither, or no such rule has marks at that distance.

    Source
    ------
    The three finenesses of each unit: common practice, no source.

    >>> Rule.inches().show(92.9, fineness="sizes")
    '3 21/32 in'
    """

    units: Units = field(metadata=declared("Millimetres or inches."))
    joints: float = field(metadata=declared("Fineness of joints."))
    sizes: float = field(metadata=declared("Fineness of finished sizes."))
    rough: float = field(metadata=declared("Fineness of rough sizes."))
    _scales: dict[str, Scale] = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        """Lay each fineness on the mark that it names."""
        scales: dict[str, Scale] = {}
        for name in FINENESSES:
            scales[name] = scale = scale_of(name, getattr(self, name), self.units)
            object.__setattr__(self, name, scale.mark)
        object.__setattr__(self, "_scales", scales)

    @classmethod
    @cache
    def millimetres(cls) -> Rule:
        """A rule in millimetres: joints to 0.1 mm, sizes to 0.5 mm, rough sizes to 5 mm."""
        return cls("mm", 0.1, 0.5, 5.0)

    @classmethod
    @cache
    def inches(cls) -> Rule:
        """A rule in fractions of an inch: joints to 1/64, sizes to 1/32, rough sizes to 1/8 in."""
        return cls("in", MM_PER_INCH / 64, MM_PER_INCH / 32, MM_PER_INCH / 8)

    @property
    def words(self) -> Literal["us", "british"]:
        """The English of those who read it, unless they say otherwise: common practice."""
        return "us" if self.units == "in" else "british"

    def mark(self, fineness: Fineness) -> float:
        """The distance between two marks. [mm]"""
        return self._scale(fineness).mark

    def round(
        self, value: float, *, fineness: Fineness = "joints", direction: Direction = "nearest"
    ) -> float:
        """The mark at a length: the nearest (of two the one further from 0) or one beside it. [mm]

        ``direction`` is ``"up"`` for the mark not below it, ``"down"`` for the one not above.
        A length within a millionth of a mark lies on it.

        >>> Rule.millimetres().round(4.02, direction="up")
        4.1
        """
        scale = self._scale(fineness)
        return length_at(count_at(value, scale.mark, direction), scale)

    def error(
        self, value: float, *, fineness: Fineness = "joints", direction: Direction = "nearest"
    ) -> float:
        """How much longer the mark is than the length, negative where it is shorter. [mm]"""
        return self.round(value, fineness=fineness, direction=direction) - value

    def show(
        self,
        value: float,
        *,
        fineness: Fineness = "joints",
        direction: Direction = "nearest",
        unit: bool = True,
    ) -> str:
        """A length as it is read off the rule; without ``unit`` the text suits a sum.

        >>> Rule.inches().show(92.5, fineness="rough")
        '3 5/8 in'
        """
        scale = self._scale(fineness)
        text = text_at(count_at(value, scale.mark, direction), scale)
        return f"{text} {self.units}" if unit else text

    def sawn(self, value: float, *, axis: str = "length") -> float:
        """What to saw for a length at least: up to the rough mark, a thickness to a finer one. [mm]

        >>> Rule.millimetres().sawn(186), Rule.millimetres().sawn(15.2, axis="thickness")
        (190.0, 16.0)
        """
        scale = thickness_scale(self.units) if axis == "thickness" else self._scale("rough")
        return length_at(count_at(value, scale.mark, "up"), scale)

    def exact(self, value: float, *, unit: bool = True) -> str:
        """A length as closely as a working needs it, whether or not the rule has such a mark. [mm]

        Millimetres to 0.01; inches as a fraction where the length is a 64th, else to 0.001.

        >>> Rule.inches().exact(4.0), Rule.inches().exact(25.4 * 5 / 32)
        ('0.157 in', '5/32 in')
        """
        if self.units == "mm":
            text = text_at(count_at(value, 0.01, "nearest"), HUNDREDTHS)
        else:
            text = inches_text(value)
        return f"{text} {self.units}" if unit else text

    def written(self, value: float) -> float:
        """The length that ``exact`` writes, so that a sum comes out with the numbers in it. [mm]

        >>> Rule.millimetres().written(1.14286)
        1.14
        """
        return length(self.exact(value), allow="any")

    def fine(self, value: float, *, unit: bool = True) -> str:
        """A length of a shaving's size, in millimetres or decimals of an inch. [mm]

        >>> Rule.millimetres().fine(0.0100276), Rule.inches().fine(0.0100276)
        ('0.01 mm', '0.0004 in')
        """
        size = abs(value)
        if self.units == "mm":
            places = 2 if size >= _FINE else 3 if size >= _FINE / 10 else 4
            text = f"{value:.{places}f}"
        else:
            text = f"{value / MM_PER_INCH:.{3 if size >= 10 * _FINE else 4}f}"
        text = text.rstrip("0").rstrip(".")
        text = "0" if text in ("-0", "") else text
        return f"{text} {self.units}" if unit else text

    def roughness(self, value: float) -> str:
        """A roughness, in micrometres or microinches. [mm]

        >>> Rule.millimetres().roughness(0.00391), Rule.inches().roughness(0.00391)
        ('3.91 µm', '154 µin')
        """
        if self.units == "mm":
            return f"{value * 1000:.3g} µm"
        return f"{value / MM_PER_INCH * 1e6:.3g} µin"

    def area(self, value: float, *, large: bool = False) -> str:
        """An area of a joint, or a ``large`` one to be coated. [mm²]

        >>> Rule.inches().area(582.0), Rule.millimetres().area(108_000.0, large=True)
        ('0.9 sq in', '0.108 m²')
        """
        if self.units == "mm":
            return f"{value / 1e6:.3f} m²" if large else f"{value:.0f} mm²"
        inches = value / MM_PER_INCH**2
        return f"{inches / 144:.2f} sq ft" if large else f"{inches:.2g} sq in"

    def volume(self, value: float) -> str:
        """A volume of shavings. [mm³]"""
        if self.units == "mm":
            return f"{value / 1000:.0f} cm³"
        return f"{value / MM_PER_INCH**3:.1f} cu in"

    def _scale(self, fineness: Fineness) -> Scale:
        try:
            return self._scales[fineness]
        except (KeyError, TypeError):
            raise no_such_fineness(fineness) from None


_AS_A_FRACTION = 64
_FINE = 0.0995  # below this a hundredth of a millimetre no longer says enough [mm]
# A length is written as a fraction only where it is one: to a tenth of a nanometre. [mm]
_SAME = 1e-7


def length_text(value: float, *, rule: Rule) -> str:
    """A length that reads back as it was, in inches where it is a fraction of one. [mm]

    >>> length_text(38.1, rule=Rule.inches()), length_text(4.0, rule=Rule.inches())
    ('1 1/2 in', '4 mm')
    """
    parts = round(value / MM_PER_INCH * _AS_A_FRACTION)
    off_the_marks = abs(parts / _AS_A_FRACTION * MM_PER_INCH - value) > _SAME
    if rule.units == "mm" or parts < 0 or off_the_marks:
        return f"{decimals(value)} mm"
    whole, rest = divmod(parts, _AS_A_FRACTION)
    fraction = str(Fraction(rest, _AS_A_FRACTION)) if rest else ""
    return f"{f'{whole} {fraction}'.strip() if whole or not rest else fraction} in"
