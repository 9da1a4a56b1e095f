"""Refuses numbers that nothing at the bench can have, and says what to give instead."""

from __future__ import annotations

from collections.abc import Collection
from math import isfinite


def above_zero(value: float, *, name: str, unit: str = "mm", example: str) -> float:
    """The value, refused unless it is a finite number above zero. [the unit named]"""
    if not (isfinite(value) and value > 0):
        raise ValueError(
            f"{name} was given as {value:g} {unit}; give a number above 0, such as {example}"
        )
    return float(value)


def not_negative(value: float, *, name: str, unit: str = "mm", example: str) -> float:
    """The value, refused unless it is a finite number from zero up. [the unit named]"""
    if not (isfinite(value) and value >= 0):
        raise ValueError(f"{name} was given as {value:g} {unit}; give 0 or more, such as {example}")
    return float(value)


def finite(value: float, *, name: str, example: str) -> float:
    """The value, refused unless it is a finite number of either sign. [mm]"""
    if not isfinite(value):
        raise ValueError(f"{name} was given as {value:g} mm; give a number, such as {example}")
    return float(value)


def between(
    value: float, *, low: float, high: float, name: str, unit: str = "degrees", example: str
) -> float:
    """The value, refused unless it lies between two limits or on them. [the unit named]"""
    if not low <= value <= high:
        raise ValueError(
            f"{name} was given as {value:g} {unit}; give a number from {low:g} to {high:g}, "
            f"such as {example}"
        )
    return value


def one_of(value: str, *, name: str, allowed: Collection[str]) -> None:
    """Raise unless the word is one of those allowed."""
    if value not in allowed:
        raise ValueError(f"{name} was given as {value!r}; give one of {', '.join(allowed)}")
