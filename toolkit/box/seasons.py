"""How far a panel of this box moves between the bench and the rooms it will live in."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from toolkit.box.choices import Choices
from toolkit.box.customs import Customs
from toolkit.box.rooms import Room, Rooms
from toolkit.wood import Climate, equilibrium_moisture, species, strain

# From the driest room in January to the dampest in July: an even swing is assumed.
_SWING = (0.0, 0.07, 0.25, 0.5, 0.75, 0.93, 1.0, 0.93, 0.75, 0.5, 0.25, 0.07)


@dataclass(frozen=True, slots=True)
class Season:
    """Moisture as made and in two rooms [%], and the change of each unit of width from as it is
    made to its widest, 0 or more, and to its narrowest, 0 or less.

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

    def clearance(self, span: float) -> float:
        """The least that a panel needs, bottom to bottom of its grooves ``span`` apart. [mm]

        A panel that is made narrower by its clearance also swells by less.
        """
        return (span * self.swelling + self.room) / (1 + self.swelling)


def making(rooms: Rooms) -> float:
    """Moisture of the wood as panels are fitted: as measured, or what its room brings it to. [%]"""
    return rooms.make_moisture or _settles_to(rooms.make)


def making_told(rooms: Rooms) -> str:
    """The same with where it comes from, for a sentence."""
    moisture = f"{making(rooms):.1f} %"
    if rooms.make_moisture:
        return f"{moisture}, as measured"
    air = f"{rooms.make.temperature:g} °C and {rooms.make.humidity:g} % humidity"
    return f"{moisture}, what air of {air} brings it to"


@lru_cache(maxsize=256)
def _settles_to(room: Room) -> float:
    return equilibrium_moisture(temperature=room.temperature, humidity=room.humidity)


@lru_cache(maxsize=256)
def _season(
    name: str, rings: float, make: float, damp: Room, dry: Room, customs: Customs
) -> Season:
    wood, b, c = species(name), _settles_to(damp), _settles_to(dry)
    return Season(
        make=make,
        damp=b,
        dry=c,
        # Wood that is wetter than its dampest room is at its widest as it is made.
        swelling=max(strain(wood, rings=rings, moisture_from=make, moisture_to=b), 0.0),
        shrinking=min(strain(wood, rings=rings, moisture_from=make, moisture_to=c), 0.0),
        room=customs.swelling_room + (customs.memory_room if wood.from_memory else 0.0),
        caution=wood.caution,
    )


def _year(c: Choices, part: str, rings: float) -> Season:
    rooms, wood = c.rooms, getattr(c.wood, part)
    return _season(wood, rings, making(rooms), rooms.damp, rooms.dry, c.customs)


def season(c: Choices, part: str) -> Season:
    """The season of one part; walls as if flat-sawn, the worst that their height can do."""
    rings = (c.wood.rings or 0.0) if part in ("bottom", "lid") else 0.0
    return _year(c, part, rings)


def quartered(c: Choices, part: str) -> Season:
    """The season of one part as if it were quarter-sawn."""
    return _year(c, part, 90.0)


def year_between(rooms: Rooms) -> Climate:
    """A year between the driest room in January and the dampest in July, with an even swing. [%]"""
    dry, damp = rooms.dry, rooms.damp
    readings = [
        (
            dry.temperature + share * (damp.temperature - dry.temperature),
            dry.humidity + share * (damp.humidity - dry.humidity),
        )
        for share in _SWING
    ]
    return Climate.from_readings(readings, name="a house between your driest and dampest room")
