"""The moisture that wood comes to in a given air, and the air that brings it there."""

from __future__ import annotations

# Below about -1 degC the published table ends and the equation runs on, as its author let it do
# for the winters of cold places; above 132 degC (270 degF) nothing was published.
COLDEST = -20.0
HOTTEST = 130.0


def equilibrium_moisture(*, temperature: float, humidity: float) -> float:
    """Moisture content that wood settles to in air of a temperature and a relative humidity.

    Parameters
    ----------
    temperature : float
        Temperature of the air, from -20 to 130. [°C]
    humidity : float
        Relative humidity, from 0 to just under 100. [%]

    Returns
    -------
    float
        Equilibrium moisture content, of the oven-dry weight. [%]

    Raises
    ------
    ValueError
        The temperature or the humidity lies outside that range.

    Source
    ------
    Handbook (FPL-GTR-190), Eq. 4-5, with its coefficients in degrees Celsius; Simpson 1998,
    FPL-RN-268. The handbook's table for it spans -1 to 132 °C (from memory).

    >>> round(equilibrium_moisture(temperature=20, humidity=50), 3)
    9.271
    """
    _check_temperature(temperature)
    if not 0 <= humidity < 100:
        raise ValueError(
            f"humidity was given as {humidity:g} %: relative humidity runs from 0 to just under "
            "100 %. Give a reading such as 50 for a heated room or 75 for a damp summer."
        )
    return _moisture(temperature, humidity / 100)


def humidity_for(*, temperature: float, moisture: float) -> float:
    """Relative humidity at which wood settles to a moisture content.

    Parameters
    ----------
    temperature : float
        Temperature of the air, from -20 to 130. [°C]
    moisture : float
        Moisture content wanted. [%]

    Returns
    -------
    float
        Relative humidity, found by halving an interval to within 1e-9. [%]

    Raises
    ------
    ValueError
        The temperature lies outside that range, or no air brings wood to this moisture.

    Source
    ------
    Handbook (FPL-GTR-190), Eq. 4-5, solved backwards.

    >>> round(humidity_for(temperature=20, moisture=9.2711407), 4)
    50.0
    """
    _check_temperature(temperature)
    most = _moisture(temperature, 1.0)
    if not 0 <= moisture < most:
        raise ValueError(
            f"moisture was given as {moisture:g} %: at {temperature:g} °C air brings wood to "
            f"between 0 and just under {most:.1f} %. Wetter wood has not yet dried; give a "
            "moisture in that range."
        )
    low, high = 0.0, 1.0
    while high - low > 0.5e-11:
        middle = (low + high) / 2
        if _moisture(temperature, middle) <= moisture:
            low = middle
        else:
            high = middle
    return 100 * low


def _check_temperature(temperature: float) -> None:
    """Raise where the equation has no standing."""
    if not COLDEST <= temperature <= HOTTEST:
        raise ValueError(
            f"temperature was given as {temperature:g} °C: the equation for wood's moisture holds "
            f"from {COLDEST:g} to {HOTTEST:g} °C. Give the room's temperature in degrees Celsius, "
            "for example 20."
        )


def _moisture(t: float, h: float) -> float:
    """The equation itself, humidity as a fraction; its letters are the handbook's."""
    w = 349 + 1.29 * t + 0.0135 * t * t
    k = 0.805 + 0.000736 * t - 0.00000273 * t * t
    k1 = 6.27 - 0.00938 * t - 0.000303 * t * t
    k2 = 1.91 + 0.0407 * t - 0.000293 * t * t
    kh = k * h
    one = k1 * kh
    two = k1 * k2 * kh * kh
    return 1800 / w * (kh / (1 - kh) + (one + 2 * two) / (1 + one + two))
