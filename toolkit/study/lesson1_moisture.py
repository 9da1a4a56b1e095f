"""Questions of lesson 1 about water in wood: how wet a room makes it, and what that weighs."""

from __future__ import annotations

from toolkit.box.choices import Room
from toolkit.results import above
from toolkit.study.asking import Asking
from toolkit.study.marking import Question
from toolkit.wood import equilibrium_moisture, part_weight, species

# Between these the table of moistures is straight enough from row to row: a straight line between
# two of them misses the equation by less than 0.15 %. [% humidity]
_STRAIGHT = (20.0, 80.0)
# How much heavier the second blank is; wetter wood or denser, nobody knows yet (made up). [share]
_HEAVIER = (0.18, 0.22, 0.12, 0.27)
ROOMS = {"damp": "dampest", "dry": "driest"}


def room_moisture(ask: Asking) -> Question | None:
    """How wet wood gets in one of the box's rooms, read from a table between its rows."""
    rooms: dict[str, Room] = {name: getattr(ask.plan.choices.rooms, name) for name in ROOMS}
    known = [name for name, one in rooms.items() if _STRAIGHT[0] <= one.humidity <= _STRAIGHT[1]]
    if not known:
        return None
    name = ask.pick(known)
    room = rooms[name]
    row = int(room.humidity // 10) * 10

    def settles_to(humidity: float) -> float:
        return equilibrium_moisture(temperature=room.temperature, humidity=humidity)

    listed = range(row - 10, min(row + 30, 100), 10)
    table = {humidity: round(settles_to(float(humidity)), 1) for humidity in listed}
    rows = ", ".join(f"{moisture:.1f} % at {humidity} %" for humidity, moisture in table.items())
    low, high, share = table[row], table[row + 10], round((room.humidity - row) / 10, 3)
    answer = low + share * (high - low)
    way = (
        f"{low:.1f} % + {share:g} × ({high:.1f} % − {low:.1f} %)"
        if share
        else f"the row for {row} %"
    )
    return ask.question(
        "lesson1.room-moisture",
        f"Humidity of the air makes wood as wet as this, at {room.temperature:g} °C: {rows}. "
        f"Your {ROOMS[name]} room has {room.humidity:g} % humidity. How wet does wood get "
        f"there in the end?",
        (
            answer,
            f"moisture = {way} = {answer:.1f} %; the curve between the rows gives "
            f"{settles_to(room.humidity):.1f} %",
        ),
        (
            room.humidity,
            "That is the air's humidity. Wood's moisture is water in percent of its own dry "
            "weight: read it beside the humidity.",
        ),
        (low, f"That is the row for {row} %; this air is damper. Go on towards the next."),
        (
            high,
            f"That is the row for {row + 10} %; this air is drier. Go back towards the one before.",
        ),
        (
            low + room.humidity - row,
            "A point of humidity is not a point of moisture: between two rows moisture rises less.",
        ),
        (high - share * (high - low), "You went that share of the way from the wrong row."),
        (table[row - 10], f"That is the row for {row - 10} %, one too low."),
        kind="%",
        senses=("too wet", "too dry"),
        nudge="Find the rows on either side of the room's humidity and go part of the way.",
    )


def heavy_blank(ask: Asking) -> Question | None:
    """How much heavier one of two blanks of a size is: perhaps it is wet."""
    side = ask.part("side")
    if side is None or species(side.wood).specific_gravity_green is None:
        return None
    length, width, thickness = (size.value for size in side.rough)
    light = float(
        round(
            part_weight(
                length,
                width=width,
                thickness=thickness,
                species=side.wood,
                moisture=ask.design.lid.season.make,
            )
        )
    )
    heavy = float(round(light * (1 + ask.pick(_HEAVIER))))
    more, say = heavy - light, ask.rule.exact
    answer = 100 * more / light if light else 0.0
    if not above(answer, 5.0):
        return None
    return ask.question(
        "lesson1.heavy-blank",
        f"Two rough sides are sawn to one size, {say(length)} × {say(width)} × "
        f"{say(thickness)}. One weighs {light:g} g and the other {heavy:g} g. By how many "
        f"percent does it outweigh the lighter one?",
        (answer, f"({heavy:g} g − {light:g} g) ÷ {light:g} g = {answer:.1f} %"),
        (
            100 * more / heavy,
            "You divided by the heavier one, which is the one in doubt: divide by the lighter.",
        ),
        (more, "That is the difference in grams; divide it by the lighter weight."),
        (
            100 * heavy / light,
            "That is the whole weight in percent of the lighter; take the first 100 % off.",
        ),
        (200 * more / (light + heavy), "You divided by the mean of both: divide by the lighter."),
        kind="%",
        nudge="The difference, divided by the lighter weight.",
    )
