"""How far a panel of this box moves between the bench and the rooms it will live in."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from toolkit.box.choices import Choices, Room, Rooms
from toolkit.wood import Climate, equilibrium_moisture, strain

# From the driest room in January to the dampest in July: an even swing is assumed.
_SWING = (0.0, 0.07, 0.25, 0.5, 0.75, 0.93, 1.0, 0.93, 0.75, 0.5, 0.25, 0.07)


@dataclass(frozen=True, slots=True)
class Season:
    """Moisture in three rooms [%], and the change of each unit of width when made-to-damp and
    made-to-dry (the second is negative)."""

    make: float
    damp: float
    dry: float
    swelling: float
    shrinking: float


@lru_cache(maxsize=256)
def _settles_to(room: Room) -> float:
    return equilibrium_moisture(temperature=room.temperature, humidity=room.humidity)


@lru_cache(maxsize=256)
def _season(wood: str, rings: float, make: Room, damp: Room, dry: Room) -> Season:
    a, b, c = _settles_to(make), _settles_to(damp), _settles_to(dry)
    return Season(
        make=a,
        damp=b,
        dry=c,
        swelling=strain(species=wood, rings=rings, moisture_from=a, moisture_to=b),
        shrinking=strain(species=wood, rings=rings, moisture_from=a, moisture_to=c),
    )


def season(c: Choices, part: str) -> Season:
    """The season of one part; walls as if flat-sawn, the worst that their height can do."""
    rings = (c.wood.rings or 0.0) if part in ("bottom", "lid") else 0.0
    return _season(getattr(c.wood, part), rings, c.rooms.make, c.rooms.damp, c.rooms.dry)


def quartered(c: Choices, part: str) -> Season:
    """The season of one part as if it were quarter-sawn."""
    return _season(getattr(c.wood, part), 90.0, c.rooms.make, c.rooms.damp, c.rooms.dry)


def readings_between(rooms: Rooms) -> tuple[Room, ...]:
    """The air of each month between the driest room in January and the dampest in July. [°C, %]"""
    dry, damp = rooms.dry, rooms.damp
    return tuple(
        Room(
            dry.temperature + share * (damp.temperature - dry.temperature),
            dry.humidity + share * (damp.humidity - dry.humidity),
        )
        for share in _SWING
    )


def year_between(rooms: Rooms) -> Climate:
    """A year between the driest room in January and the dampest in July, with an even swing. [%]"""
    readings = [(room.temperature, room.humidity) for room in readings_between(rooms)]
    return Climate.from_readings(readings, name="a house between your driest and dampest room")
