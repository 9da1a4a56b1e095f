"""The air of the rooms that a box knows, and the moisture of its wood as it is made."""

from __future__ import annotations

from dataclasses import dataclass, field

from toolkit.measures import declared, key


@dataclass(frozen=True, slots=True)
class Room:
    """The air of a room, which wood settles to: its temperature and its relative humidity."""

    temperature: float = field(metadata=declared(kind="temperature"))
    humidity: float = field(metadata=declared(kind="humidity"))


@dataclass(frozen=True, slots=True)
class Rooms:
    """Where the box is made, and the dampest and driest room it will live in."""

    make: Room = key("Over the last two or three weeks.", default=Room(20.0, 50.0))
    make_moisture: float | None = key(
        "Of the wood itself as lid and bottom are fitted, by a meter or a balance.",
        kind="moisture",
        least=3.0,
        most=30.0,
        rule="what the air of make brings wood to",
    )
    damp: Room = key(default=Room(22.0, 75.0))
    dry: Room = key(default=Room(20.0, 30.0))
