"""Lengths too small for any rule: shavings, ridges, roughness."""

from __future__ import annotations

from toolkit.measures import MM_PER_INCH, Rule

_FINE = 0.0995  # below this a hundredth of a millimetre no longer says enough [mm]


def fine(value: float, *, rule: Rule, unit: bool = True) -> str:
    """A length of a shaving's size in millimetres or decimals of an inch. [mm]

    >>> fine(0.0100276, rule=Rule.millimetres()), fine(0.0100276, rule=Rule.inches())
    ('0.01 mm', '0.0004 in')
    """
    size = abs(value)
    if rule.units == "mm":
        places = 2 if size >= _FINE else 3 if size >= _FINE / 10 else 4
        text = f"{value:.{places}f}"
    else:
        text = f"{value / MM_PER_INCH:.{3 if size >= 10 * _FINE else 4}f}"
    text = text.rstrip("0").rstrip(".")
    return f"{'0' if text in ('-0', '') else text}{f' {rule.units}' if unit else ''}"


def microns(value: float) -> str:
    """A roughness as it is always given, in micrometres. [mm]"""
    return f"{value * 1000:.3g} µm"
