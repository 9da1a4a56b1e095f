"""The moisture that wood comes to in a given air."""

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
    if not COLDEST <= temperature <= HOTTEST:
        raise ValueError(
            f"temperature was given as {temperature:g} °C: the equation for wood's moisture holds "
            f"from {COLDEST:g} to {HOTTEST:g} °C. Give the room's temperature in degrees Celsius, "
            "for example 20."
        )
    if not 0 <= humidity < 100:
        raise ValueError(
            f"humidity was given as {humidity:g} %: relative humidity runs from 0 to just under "
            "100 %. Give a reading such as 50 for a heated room or 75 for a damp summer."
        )
    return _moisture(temperature, humidity / 100)


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
