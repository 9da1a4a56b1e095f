"""How far a panel of this box moves between the bench and the rooms it will live in."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from toolkit.box.choices import Choices, Room, Rooms
from toolkit.box.customs import Customs
from toolkit.wood import Climate, equilibrium_moisture, species, strain

# From the driest room in January to the dampest in July: an even swing is assumed.
_SWING = (0.0, 0.07, 0.25, 0.5, 0.75, 0.93, 1.0, 0.93, 0.75, 0.5, 0.25, 0.07)


@dataclass(frozen=True, slots=True)
class Season:
    """Moisture in three rooms [%], and the change of each unit of width when made-to-damp and
    made-to-dry (the second is negative).

    ``room`` must still be free beside a panel at its widest [mm]; ``caution`` is what to say of
    these numbers, empty unless the wood's movement is from memory.
    """

    make: float
    damp: float
    dry: float
    swelling: float
    shrinking: float
    room: float
    caution: str

    @property
    def told(self) -> str:
        """The caution as it follows a sentence; nothing where there is none."""
        return self.caution and f" {self.caution}"


@lru_cache(maxsize=256)
def _settles_to(room: Room) -> float:
    return equilibrium_moisture(temperature=room.temperature, humidity=room.humidity)


@lru_cache(maxsize=256)
def _season(name: str, rings: float, make: Room, damp: Room, dry: Room, customs: Customs) -> Season:
    wood = species(name)
    a, b, c = _settles_to(make), _settles_to(damp), _settles_to(dry)
    return Season(
        make=a,
        damp=b,
        dry=c,
        swelling=strain(species=wood, rings=rings, moisture_from=a, moisture_to=b),
        shrinking=strain(species=wood, rings=rings, moisture_from=a, moisture_to=c),
        room=customs.swelling_room + (customs.memory_room if wood.from_memory else 0.0),
        caution=wood.caution,
    )


def _year(c: Choices, part: str, rings: float) -> Season:
    rooms, wood = c.rooms, getattr(c.wood, part)
    return _season(wood, rings, rooms.make, rooms.damp, rooms.dry, c.customs)


def season(c: Choices, part: str) -> Season:
    """The season of one part; walls as if flat-sawn, the worst that their height can do."""
    rings = (c.wood.rings or 0.0) if part in ("bottom", "lid") else 0.0
    return _year(c, part, rings)


def quartered(c: Choices, part: str) -> Season:
    """The season of one part as if it were quarter-sawn."""
    return _year(c, part, 90.0)


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
