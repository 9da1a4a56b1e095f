"""Lesson 1, water in wood: how wet, how heavy, how far its panels move."""

from __future__ import annotations

from toolkit.box import Room
from toolkit.results import Working, above
from toolkit.study.asking import Asking, without
from toolkit.study.marking import Question
from toolkit.wood import equilibrium_moisture, part_weight, species, strain

# Between these the table of moistures is straight enough from row to row: a straight line between
# two of them misses the equation by less than 0.15 %. [% humidity]
_STRAIGHT = (20.0, 80.0)
# How much heavier the second blank is; wetter wood or denser, nobody knows yet (made up). [share]
_HEAVIER = (0.18, 0.22, 0.12, 0.27)
ROOMS = {"damp": "dampest", "dry": "driest"}


def room_moisture(ask: Asking) -> Question:
    """How wet wood gets in one of the box's rooms, read from a table between its rows."""
    rooms: dict[str, Room] = {name: getattr(ask.plan.choices.rooms, name) for name in ROOMS}
    known = [name for name, one in rooms.items() if _STRAIGHT[0] <= one.humidity <= _STRAIGHT[1]]
    ask.only_if(known)
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
    slips = {
        "air": room.humidity,
        "row-below": low,
        "row-above": high,
        "point-for-point": low + room.humidity - row,
        "from-wrong-row": high - share * (high - low),
        "row-too-low": table[row - 10],
    }
    return ask.question(
        "lesson1.room-moisture",
        answer,
        slips,
        room=room,
        rows=rows,
        where=ROOMS[name],
        way=way,
        curve=settles_to(room.humidity),
        row=row,
        next_row=row + 10,
        row_before=row - 10,
    )


def panel_movement(ask: Asking) -> Question:
    """How much wider or narrower the lid, or else the bottom, is in another room."""
    c, panel, rule = ask.design.choices, ask.design.uppermost, ask.rule
    wood = ask.design.wood_of(panel)
    ask.only_if(c.panels.grain != "across")
    name = ask.pick(("damp", "dry"))
    room, bench = getattr(c.rooms, name), c.rooms.make
    start, end = round(panel.season.make, 1), round(getattr(panel.season, name), 1)
    change = abs(end - start)
    ask.only_if(change != 0)

    def rate(rings: float) -> float:
        """Movement for a point of moisture, of the width. [%]"""
        moves = strain(wood, rings=rings, moisture_from=start, moisture_to=end)
        return float(round(100 * moves / (end - start), 3))

    by_air = c.rooms.make_moisture is None
    width, along, across, rings = panel.width.value, rate(0), rate(90), c.wood.rings
    own = rate(rings)
    told = f"For each point of moisture this wood moves {along:g} % of a size along its rings"
    told += f" and {across:g} % across them"
    if panel.season.caution:
        told += " (from memory)"
    if rings == 0:
        cut = "flat-sawn, its rings along the width"
    elif rings == 90:
        cut = "quarter-sawn, its rings across the width"
    else:
        cut = f"sawn with its rings at {rings:g}° to the width"
        told += f"; at {rings:g}° it is {own:g} %"
    answer = width * own / 100 * change
    ask.only_if(above(answer, rule.mark("joints")))
    wide = "wider" if end > start else "narrower"
    slips = {
        "across-rings": width * across / 100 * change,
        "along-rings": width * along / 100 * change,
        "length": panel.length.value * own / 100 * change,
        "thickness": panel.thickness.value * own / 100 * change,
        "all-water": width * own / 100 * end,
        "one-point": width * own / 100,
        "hundredfold": width * own * change,
    }
    if by_air:
        slips["humidity"] = width * own / 100 * abs(room.humidity - bench.humidity)
    return ask.question(
        "lesson1.{panel.name}-movement",
        answer,
        slips,
        panel=panel,
        wood=wood,
        cut=cut,
        told=told,
        start=start,
        bench=f" ({bench.humidity:g} % humidity)" if by_air else ", as measured,",
        end=end,
        where=ROOMS[name],
        room=room,
        wide=wide,
        own=own,
        change=change,
    )


def bottom_clearance(ask: Asking) -> Question:
    """The room that the captive bottom needs across its grain."""
    c, bottom = ask.design.choices, ask.design.bottom
    percent = round(100 * bottom.season.swelling, 2)
    ask.only_if(c.panels.grain != "across" and above(percent, 0.0))
    width, over = bottom.width.value, bottom.season.room
    swelling = width * percent / 100
    sum_ = Working.of("clearance", ("swelling", swelling), ("still free", over))
    memory = " (from memory)" if bottom.season.caution else ""
    long = bottom.length.value * percent / 100 + over
    slips = {
        "swelling-only": without(sum_, "still free"),
        "free-only": over,
        "as-given": bottom.across,
        "free-taken-off": swelling - over,
        "swelling-twice": 2 * swelling + over,
        "swelling-halved": swelling / 2 + over,
        "free-twice": swelling + 2 * over,
        "length": long,
        "hundredfold": width * percent + over,
    }
    return ask.question("lesson1.bottom-clearance", sum_, slips, percent=percent, memory=memory)


def heavy_blank(ask: Asking) -> Question:
    """How much heavier one of two blanks of a size is: perhaps it is wet."""
    side = ask.part("side")
    ask.only_if(species(side.wood).specific_gravity_green is not None)
    length, width, thickness = (size.value for size in side.rough)
    light = float(
        round(
            part_weight(
                length,
                width=width,
                thickness=thickness,
                species=side.wood,
                moisture=ask.design.uppermost.season.make,
            )
        )
    )
    heavy = float(round(light * (1 + ask.pick(_HEAVIER))))
    more = heavy - light
    answer = 100 * more / light if light else 0.0
    ask.only_if(above(answer, 5.0))
    slips = {
        "by-heavier": 100 * more / heavy,
        "grams": more,
        "whole-weight": 100 * heavy / light,
        "by-mean": 200 * more / (light + heavy),
    }
    return ask.question(
        "lesson1.heavy-blank",
        answer,
        slips,
        length=length,
        width=width,
        thickness=thickness,
        light=light,
        heavy=heavy,
    )
