"""Refuses numbers that wood or weather cannot have, and says what to give instead."""

from __future__ import annotations

import math

# Green sapwood of the lightest woods holds about twice its dry weight in water (handbook, ch. 4,
# from memory); beyond this a number is a slip of the hand.
MOISTURE_MOST = 300.0


def above_zero(value: float, *, name: str, unit: str, example: str) -> None:
    """Raise unless the value is a finite number above zero. [the unit named]"""
    if not (math.isfinite(value) and value > 0):
        raise ValueError(
            f"{name} was given as {value:g} {unit}: it must be above 0. Give for example {example}."
        )


def moisture_in_range(value: float, *, name: str) -> None:
    """Raise unless the value can be a moisture content. [%]"""
    if not 0 <= value <= MOISTURE_MOST:
        raise ValueError(
            f"{name} was given as {value:g} %: wood holds between 0 and {MOISTURE_MOST:g} % of its "
            "dry weight in water. Give a percentage, for example 9 for wood in a heated room."
        )


def rings_in_range(value: float) -> None:
    """Raise unless the value can be the angle between the rings and the board's width. [degrees]"""
    if not 0 <= value <= 90:
        raise ValueError(
            f"rings was given as {value:g} degrees: give 0 for flat-sawn, 90 for quarter-sawn, "
            "or an angle between."
        )
