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
    own, say = rate(rings), rule.exact
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
        f"The lid is of {c.wood.lid}, {say(lid.length.value)} long with the grain, "
        f"{say(width)} wide and {say(lid.thickness.value)} thick, {cut}. {told}. It is made "
        f"at {start:.1f} % moisture ({bench.humidity:g} % humidity) and comes to {end:.1f} % "
        f"in the {ROOMS[name]} room ({room.humidity:g} % humidity). How much {wide} is it "
        "there?",
        (
            answer,
            f"change = {say(width)} width × {own:g} % × {change:.1f} points of moisture = "
            f"{say(answer)}",
        ),
        *(
            (width * other / 100 * change, hint)
            for other, hint in (
                (across, "That is across the rings, as in a quarter-sawn lid."),
                (along, "That is along the rings, as in a flat-sawn lid."),
            )
            if other != own
        ),
        (
            lid.length.value * own / 100 * change,
            "You took the length. Along the grain wood hardly moves; take the width.",
        ),
        (
            lid.thickness.value * own / 100 * change,
            "You took the thickness. The lid moves in that too, but it is asked for its width.",
        ),
        (
            width * own / 100 * end,
            "You took all the water in it. Only the change counts, from bench to room.",
        ),
        (
            width * own / 100 * abs(room.humidity - bench.humidity),
            "You took the change of humidity. Wood's own moisture changes far less.",
        ),
        (width * own / 100, "That is for one point of moisture; there are more."),
        (width * own * change, "That is a hundred times too much: 1 % is one hundredth."),
        fineness="joints",
        senses=("too much", "too little"),
        nudge="Width × percent for a point × points of moisture.",
    )


def bottom_clearance(ask: Asking) -> Question | None:
    """The room that the captive bottom needs across its grain."""
    c, bottom, rule = ask.design.choices, ask.design.bottom, ask.rule
    percent = round(100 * bottom.season.swelling, 2)
    if c.panels.grain == "across" or not above(percent, 0.0):
        return None
    width, over, say = bottom.width.value, c.customs.swelling_room, rule.exact
    swelling = width * percent / 100
    sum_ = Working.of("clearance", ("swelling", swelling), ("still free", over))
    long = bottom.length.value * percent / 100 + over
    return ask.question(
        "lesson1.bottom-clearance",
        f"The bottom is {say(bottom.length.value)} long with the grain and {say(width)} wide, "
        f"in grooves all round. From the bench to the dampest room it swells {percent:g} % "
        f"across its grain. Even then {say(over)} is to be free beside it, both sides "
        "together. How much clearance across the grain does it need on the bench, both sides "
        "together?",
        sum_,
        (
            without(sum_, "still free"),
            "That is full when it is damp: add what is still to be free.",
        ),
        (over, "That is what is free at the end; first it has to swell."),
        (
            bottom.across,
            "That is what your box gives it. The question is how much it needs at least.",
        ),
        (swelling - over, "You took the free room off. It comes on top of the swelling."),
        (2 * swelling + over, "The swelling is that of the whole width already, not of each side."),
        (swelling / 2 + over, "That is room for half of the swelling; take all of it."),
        (swelling + 2 * over, "What is free is told for both sides together: add it once."),
        (long, "You took the length. Along the grain wood hardly moves; take the width."),
        (
            width * percent + over,
            "That is a hundred times too much swelling: 1 % is one hundredth.",
        ),
        fineness="joints",
        direction="up",
        senses=("too much", "too little"),
        nudge="First what it swells, width × percent; then add what is still to be free.",
    )
