"""The doors for lengths, temperatures and shares: text or a pint quantity becomes a float."""

from __future__ import annotations

from typing import Literal

from toolkit.measures.reading import read
from toolkit.measures.units import HUMIDITY, LENGTH, MASS, PERCENT, TEMPERATURE

Allow = Literal["positive", "zero", "any"]

_ABSOLUTE_ZERO = -273.15


def length(value: object, *, what: str = "length", allow: Allow = "positive") -> float:
    """A length as people write it, in millimetres.

    Parameters
    ----------
    value : str or pint.Quantity
        A number with its unit, such as ``"186 mm"``, ``'7-5/16"'`` or ``"1 ft 3 in"``.
    what : str
        Name of the length, for the error.
    allow : str
        ``"positive"`` for a size, ``"zero"`` for a size that may be nothing, ``"any"`` for a
        place or a difference, which may lie on either side of nothing.

    Returns
    -------
    float
        The length. [mm]

    Raises
    ------
    MeasureError
        There is no unit, or more than one length, or no length at all, or its sign is not allowed.

    Source
    ------
    1 in = 25.4 mm exactly: international yard and pound agreement, 1959 (from memory).

    >>> length("1 1/2 in") == length('1-1/2"') == length("38.1 mm")
    True
    """
    return read(value, LENGTH, what=what, limit=_SIGN_LIMITS[allow])


def temperature(value: object, *, what: str = "temperature") -> float:
    """A temperature as people write it: ``"20 °C"``, ``"68 °F"``, ``"293 K"``. [°C]

    Reads and refuses as ``length`` does; nothing lies below absolute zero.

    >>> temperature("68 °F")
    20.0
    """

    def limit(celsius: float) -> str | None:
        # 0 K need not come out as exactly -273.15.
        return None if celsius >= _ABSOLUTE_ZERO - 1e-9 else "is below absolute zero"

    return read(value, TEMPERATURE, what=what, limit=limit)


def humidity(value: object, *, what: str = "humidity") -> float:
    """A relative humidity as people write it, 0 to 100: ``"50 %"``, ``"50 % RH"``. [%]

    Reads and refuses as ``length`` does.

    >>> humidity("50 % RH")
    50.0
    """

    def limit(share: float) -> str | None:
        return None if 0 <= share <= 100 else "does not lie between 0 and 100 %"

    return read(value, HUMIDITY, what=what, limit=limit)


def percent(value: object, *, what: str = "percentage", allow: Allow = "zero") -> float:
    """A moisture content, a shrinkage, a share as people write it: ``"8 %"``, ``"8 percent"``. [%]

    Reads and refuses as ``length`` does. Green wood holds more than 100 %: there is no upper limit.

    >>> percent("8,5 %")
    8.5
    """
    return read(value, PERCENT, what=what, limit=_SIGN_LIMITS[allow])


def mass(value: object, *, what: str = "weight") -> float:
    """The reading of a scale: ``"412 g"``, ``"14 1/2 oz"``. [g]

    Reads and refuses as ``length`` does. One pound is 0.45359237 kg (international yard and pound
    agreement, 1959).

    >>> mass("1 lb")
    453.59237
    """
    return read(value, MASS, what=what, limit=_above_zero)


def _above_zero(number: float) -> str | None:
    if number > 0:
        return None
    return "is below zero" if number < 0 else "is zero, and must be above it"


def _not_below_zero(number: float) -> str | None:
    return "is below zero" if number < 0 else None


def _no_limit(_: float) -> None:
    return None


_SIGN_LIMITS = {"positive": _above_zero, "zero": _not_below_zero, "any": _no_limit}
