"""Questions of lesson 1 about lid and bottom: how far they move, and the room they need for it."""

from __future__ import annotations

from toolkit.results import Working, above
from toolkit.study.asking import Asking, without
from toolkit.study.lesson1_moisture import ROOMS
from toolkit.study.marking import Question
from toolkit.wood import strain


def lid_movement(ask: Asking) -> Question | None:
    """How much wider or narrower the lid is in another room than on the bench."""
    c, lid, rule = ask.design.choices, ask.design.lid, ask.rule
    if c.panels.grain == "across":
        return None
    name = ask.pick(("damp", "dry"))
    room, bench = getattr(c.rooms, name), c.rooms.make
    start, end = round(lid.season.make, 1), round(getattr(lid.season, name), 1)
    change = abs(end - start)
    if change == 0:
        return None

    def rate(rings: float) -> float:
        """Movement for a point of moisture, of the width. [%]"""
        moves = strain(c.wood.lid, rings=rings, moisture_from=start, moisture_to=end)
        return float(round(100 * moves / (end - start), 3))

    width, along, across, rings = lid.width.value, rate(0), rate(90), c.wood.rings
    own = rate(rings)
    told = f"For each point of moisture this wood moves {along:g} % of a size along its rings"
    told += f" and {across:g} % across them"
    if rings == 0:
        cut = "flat-sawn, its rings along the width"
    elif rings == 90:
        cut = "quarter-sawn, its rings across the width"
    else:
        cut = f"sawn with its rings at {rings:g}° to the width"
        told += f"; at {rings:g}° it is {own:g} %"
    answer = width * own / 100 * change
    if not above(answer, rule.mark("joints")):
        return None
    wide = "wider" if end > start else "narrower"
    return ask.question(
        "lesson1.lid-movement",
        answer,
        {
            "across-rings": width * across / 100 * change,
            "along-rings": width * along / 100 * change,
            "length": lid.length.value * own / 100 * change,
            "thickness": lid.thickness.value * own / 100 * change,
            "all-water": width * own / 100 * end,
            "humidity": width * own / 100 * abs(room.humidity - bench.humidity),
            "one-point": width * own / 100,
            "hundredfold": width * own * change,
        },
        cut=cut,
        told=told,
        start=start,
        end=end,
        where=ROOMS[name],
        room=room,
        wide=wide,
        own=own,
        change=change,
    )


def bottom_clearance(ask: Asking) -> Question | None:
    """The room that the captive bottom needs across its grain."""
    c, bottom = ask.design.choices, ask.design.bottom
    percent = round(100 * bottom.season.swelling, 2)
    if c.panels.grain == "across" or not above(percent, 0.0):
        return None
    width, over = bottom.width.value, c.customs.swelling_room
    swelling = width * percent / 100
    sum_ = Working.of("clearance", ("swelling", swelling), ("still free", over))
    long = bottom.length.value * percent / 100 + over
    return ask.question(
        "lesson1.bottom-clearance",
        sum_,
        {
            "swelling-only": without(sum_, "still free"),
            "free-only": over,
            "as-given": bottom.across,
            "free-taken-off": swelling - over,
            "swelling-twice": 2 * swelling + over,
            "swelling-halved": swelling / 2 + over,
            "free-twice": swelling + 2 * over,
            "length": long,
            "hundredfold": width * percent + over,
        },
        percent=percent,
    )
