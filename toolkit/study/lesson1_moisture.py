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
        answer,
        {
            "air": room.humidity,
            "row-below": low,
            "row-above": high,
            "point-for-point": low + room.humidity - row,
            "from-wrong-row": high - share * (high - low),
            "row-too-low": table[row - 10],
        },
        room=room,
        rows=rows,
        where=ROOMS[name],
        way=way,
        curve=settles_to(room.humidity),
        row=row,
        next_row=row + 10,
        row_before=row - 10,
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
    more = heavy - light
    answer = 100 * more / light if light else 0.0
    if not above(answer, 5.0):
        return None
    return ask.question(
        "lesson1.heavy-blank",
        answer,
        {
            "by-heavier": 100 * more / heavy,
            "grams": more,
            "whole-weight": 100 * heavy / light,
            "by-mean": 200 * more / (light + heavy),
        },
        length=length,
        width=width,
        thickness=thickness,
        light=light,
        heavy=heavy,
    )
