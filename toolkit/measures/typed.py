"""Lengths as one would type them into a file: they read back as they were."""

from __future__ import annotations

from fractions import Fraction

from toolkit.measures.rule import Rule
from toolkit.measures.units import MM_PER_INCH

_AS_A_FRACTION = 64
# A length is written as a fraction only where it is one: to a tenth of a nanometre. [mm]
_SAME = 1e-7


def decimals(value: float, *, places: int = 6) -> str:
    """A number in plain decimals, without needless zeros, whatever it counts. [1]"""
    text = f"{value:.{places}f}"
    return (text.rstrip("0").rstrip(".") if "." in text else text) or "0"


def length_text(value: float, *, rule: Rule) -> str:
    """A length [mm] that reads back as it was, to 1e-6: in inches where it is a fraction of one.

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
