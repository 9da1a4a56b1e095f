"""Air and the wood in it: what moisture wood settles to, and a place's year month by month."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache

from toolkit.results import number, read_table
from toolkit.wood._checks import moisture_in_range
from toolkit.wood.law import movement
from toolkit.wood.woods import Species, candidates, nearest, quoted

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


MONTHS = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
)  # fmt: skip


class UnknownPlace(ValueError):  # noqa: N818 - its name is what went wrong
    """The table has no full year for this place; the message suggests what to type."""


@dataclass(frozen=True, slots=True)
class Climate:
    """A place and the moisture that wood tends to there, January to December. [%]

    The table's figures are for sheltered wood outdoors; heated rooms are drier in winter.
    """

    name: str
    moisture: tuple[float, ...]
    source: str
    seen: str
    note: str

    def __post_init__(self) -> None:
        """Refuse a year that has not twelve possible months."""
        if len(self.moisture) != 12:
            raise ValueError(
                f"{self.name} was given {len(self.moisture)} months: give twelve, from January."
            )
        for month, moisture in zip(MONTHS, self.moisture, strict=True):
            moisture_in_range(moisture, name=f"the moisture of {month}")

    @classmethod
    def from_readings(
        cls, readings: Sequence[tuple[float, float]], *, name: str = "your own readings"
    ) -> Climate:
        """A place from twelve monthly means of temperature and humidity. [°C, %]

        The moisture of a mean reading runs about 1 % below the mean of the hourly moistures
        (computed from a year of hourly weather at two stations).
        """
        months = tuple(equilibrium_moisture(temperature=t, humidity=h) for t, h in readings)
        return cls(name, months, "own readings; GTR-190 Eq. 4-5", "measured", "")


@cache
def places() -> tuple[Climate, ...]:
    """Places of the table for which all twelve months are known.

    Handbook (FPL-GTR-190), Table 13-1, after Simpson 1998, FPL-RN-268: from memory.
    """
    found = []
    for row in read_table("wood/outdoor_emc.csv"):
        months = [number(row[month[:3]]) for month in MONTHS]
        full = tuple(moisture for moisture in months if moisture is not None)
        if len(full) == 12:
            found.append(Climate(row["place"], full, row["source"], row["seen"], row["note"]))
    return tuple(found)


def place(name: str) -> Climate:
    """The place with this name; part of the name will do where only one place has it.

    >>> max(place("boston").moisture)
    13.1
    """
    rows = {row["place"]: row for row in read_table("wood/outdoor_emc.csv")}
    whole = {one.name: one for one in places()}
    spellings = {town: (town,) for town in rows}
    found = candidates(name, spellings)
    if len(found) > 1:
        raise UnknownPlace(f"'{name}' may be several places: type {quoted(found)}.")
    if not found:
        near = nearest(name, {town: (town,) for town in whole})
        hint = (
            f"did you mean {quoted(near)}? Type that" if near else "places() lists those it knows"
        )
        raise UnknownPlace(f"'{name}' is not a place in the workbook's table: {hint}.")
    if found[0] not in whole:
        note = rows[found[0]]["note"]
        raise UnknownPlace(f"For {found[0]} {note}: choose a place nearby.")
    return whole[found[0]]


def widths_through_the_year(
    width: float, *, place: Climate, species: Species | str, rings: float, moisture_from: float
) -> tuple[float, ...]:
    """Width of a board in each month, were it to follow the air at once. [mm]

    Real boards lag by weeks and a finish slows them further, so these are the outer bounds.
    """
    return tuple(
        width
        + movement(
            width,
            species=species,
            rings=rings,
            moisture_from=moisture_from,
            moisture_to=moisture,
        )
        for moisture in place.moisture
    )
