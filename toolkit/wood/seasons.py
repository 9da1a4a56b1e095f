"""How wet wood gets through the year, by place."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache

from toolkit.results import number, read_table
from toolkit.wood import _names
from toolkit.wood._checks import moisture_in_range
from toolkit.wood.air import equilibrium_moisture
from toolkit.wood.law import movement
from toolkit.wood.woods import Species

MONTHS = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
)  # fmt: skip


class UnknownPlace(ValueError):  # noqa: N818 - its name is what went wrong
    """The table has no full year for this place; the message suggests what to type."""


@dataclass(frozen=True, slots=True)
class Climate:
    """A place and the moisture that wood tends to there in each month.

    The table's figures are for sheltered wood outdoors; heated rooms are drier in winter.

    Attributes
    ----------
    name : str
        The place.
    moisture : tuple of float
        Equilibrium moisture content, January to December. [%]
    source, seen, note : str
        Where the figures come from, and what to know before using them.
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
    found = _names.candidates(name, spellings)
    if len(found) > 1:
        raise UnknownPlace(f"'{name}' may be several places: type {_names.quoted(found)}.")
    if not found:
        near = _names.nearest(name, {town: (town,) for town in whole})
        hint = (
            f"did you mean {_names.quoted(near)}? Type that"
            if near
            else "places() lists those it knows"
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
