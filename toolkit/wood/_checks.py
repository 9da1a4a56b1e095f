"""What wood and its rings can be; refused beyond it."""

from __future__ import annotations

from toolkit.results import between

# Green sapwood of the lightest woods holds about twice its dry weight in water (handbook, ch. 4,
# from memory); beyond this a number is a slip of the hand.
MOISTURE_MOST = 300.0


def moisture_in_range(value: float, *, name: str) -> None:
    """Raise unless the value can be a moisture content. [%]"""
    heated = "9 for wood in a heated room"
    between(value, low=0, high=MOISTURE_MOST, name=name, unit="%", example=heated)


def rings_in_range(value: float) -> None:
    """Raise unless the value can be the angle between the rings and the board's width. [degrees]"""
    between(value, low=0, high=90, name="rings", example="0 for flat-sawn, 90 for quarter-sawn")
