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
    """A temperature as people write it, in degrees Celsius.

    Parameters
    ----------
    value : str or pint.Quantity
        A number with its scale, such as ``"20 °C"``, ``"68 °F"`` or ``"293 K"``.
    what : str
        Name of the temperature, for the error.

    Returns
    -------
    float
        The temperature. [°C]

    Raises
    ------
    MeasureError
        There is no scale, or more than one temperature, or it is below absolute zero.

    Source
    ------
    Definitions: °C = (°F - 32) * 5/9 = K - 273.15.

    >>> temperature("68 °F")
    20.0
    """

    def limit(celsius: float) -> str | None:
        # 0 K need not come out as exactly -273.15.
        return None if celsius >= _ABSOLUTE_ZERO - 1e-9 else "is below absolute zero"

    return read(value, TEMPERATURE, what=what, limit=limit)


def humidity(value: object, *, what: str = "humidity") -> float:
    """A relative humidity as people write it, in percent.

    Parameters
    ----------
    value : str or pint.Quantity
        A number with a percent sign, such as ``"50 %"`` or ``"50 % RH"``.
    what : str
        Name of the humidity, for the error.

    Returns
    -------
    float
        The relative humidity, 0 to 100. [%]

    Raises
    ------
    MeasureError
        There is no percent sign, or it does not lie between 0 and 100 %.

    Source
    ------
    Definition: a share of what saturated air holds.

    >>> humidity("50 % RH")
    50.0
    """

    def limit(share: float) -> str | None:
        return None if 0 <= share <= 100 else "does not lie between 0 and 100 %"

    return read(value, HUMIDITY, what=what, limit=limit)


def percent(value: object, *, what: str = "percentage", allow: Allow = "zero") -> float:
    """A percentage as people write it: a moisture content, a shrinkage, a share.

    Parameters
    ----------
    value : str or pint.Quantity
        A number with a percent sign, such as ``"8 %"`` or ``"8 percent"``.
    what : str
        Name of the percentage, for the error.
    allow : str
        As for a length. Green wood holds more than 100 % moisture, so there is no upper limit.

    Returns
    -------
    float
        The percentage. [%]

    Raises
    ------
    MeasureError
        There is no percent sign, or the sign of the number is not allowed.

    Source
    ------
    Definition: hundredths.

    >>> percent("8,5 %")
    8.5
    """
    return read(value, PERCENT, what=what, limit=_SIGN_LIMITS[allow])


def mass(value: object, *, what: str = "weight") -> float:
    """What a scale shows, in grams.

    Parameters
    ----------
    value : str or pint.Quantity
        A number with its unit, such as ``"412 g"`` or ``"14 1/2 oz"``.
    what : str
        Name of the weight, for the error.

    Returns
    -------
    float
        The mass. [g]

    Raises
    ------
    MeasureError
        There is no unit, or it is not above zero.

    Source
    ------
    Definition: one pound is 0.45359237 kg (international yard and pound agreement, 1959).

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
