"""Questions of lesson 3 about marking and sawing: gauges, knife lines, what a saw reaches, glue."""

from __future__ import annotations

from math import cos, floor, radians

from toolkit.box.joinery import between_baselines, gauge_settings, holds
from toolkit.study.asking import Asking
from toolkit.study.marking import Question

CM2 = 100.0  # [mm²]


def second_gauge(ask: Asking) -> Question | None:
    """The gauge that marks the pins' baseline."""
    d, rule = ask.design, ask.rule
    s, say = gauge_settings(d), rule.exact
    tail, thick, pins = d.back.tail_length, d.tail_board_thickness[0], d.pin_board_thickness[0]
    proud, setting = abs(s.proud), s.board_back
    way = "stand proud by" if s.proud >= 0 else "end shy by"
    asked = f"The pins are to {way} {say(proud)}, to be planed flush." if proud else ""
    return ask.question(
        "lesson3.second-gauge",
        f"The board with the tails is {say(thick)} thick, the board with the pins "
        f"{say(pins)}, the tails are {say(tail)} long. {asked} To how much do you set the "
        "gauge for the pins' baseline?",
        (setting.value, setting.sentence(rule)),
        (tail, "That is the first gauge, for the length of the tails."),
        (
            tail + s.proud,
            "Never to the tail length: a half-blind tail would meet its lap "
            "before its shoulder closes.",
        ),
        (thick, "Flush on paper; you were to leave a little to plane."),
        (thick - s.proud, "The other way: that leaves the pins on the other side of flush."),
        (pins + s.proud, "Gauge the thickness of the other board, the one with the tails."),
        (thick + tail, "One board only: the pins are as long as the tail board is thick."),
        (thick / 2, "All of the board, not half of it."),
        fineness="joints",
        senses=("too much", "too little"),
        nudge="The pins go right through the tail board: gauge its thickness, and a little over.",
    )


def between(ask: Asking) -> Question | None:
    """What proud pins leave between the two baselines of a pin board."""
    d, rule = ask.design, ask.rule
    sum_, s, say = between_baselines(d), gauge_settings(d), rule.exact
    on_ends = d.choices.corner.tails_on == "ends"
    outside = (d.frame.outside_length if on_ends else d.frame.outside_width).value
    board = "side" if on_ends else "back end"
    back, front = s.board_back.value, (s.board_front if on_ends else s.board_back).value
    gauges = f"{say(back)} from each end"
    if abs(back - front) > 1e-6:
        gauges = f"{say(back)} from one end and {say(front)} from the other"
    return ask.question(
        "lesson3.between",
        f"A {board} is {say(outside)} long, its pins' baselines are gauged {gauges}. How much "
        "is there between the two baselines?",
        (outside - back - front, sum_.sentence(rule)),
        (outside - back, "You took one end off; there is a baseline at each end."),
        (
            outside - 2 * s.tail_back.value,
            "You took the tails' length. Pins are as long as the tail board is thick.",
        ),
        (outside + back + front, "Baselines lie inside the board: take them off."),
        (outside, "That is the whole board, from end to end."),
        nudge="Take what is gauged at each end off the length.",
    )


def knife_lines(ask: Asking) -> Question | None:
    """How many knife lines the tails of a box give."""
    d = ask.design
    back, front = len(d.back.tails), len(d.front.tails)
    answer = 4 * (back + front)
    return ask.question(
        "lesson3.knife-lines",
        f"A box has {back} tails at each back corner and {front} at each front corner. You "
        "knife a line along every flank of every tail onto the pin boards. How many lines are "
        "there in the whole box?",
        (answer, f"lines = 2 flanks × 2 corners × {back} tails + 2 × 2 × {front} tails = {answer}"),
        (
            2 * (back + front),
            "A tail has two flanks, and there are four corners: two at the back, two at the front.",
        ),
        (back + front, "Those are the tails of one back and one front corner."),
        (answer + 8, "Half pins have one flank: their other side is the edge."),
        (8 * back, "The front has its own number of tails."),
        (2 * back, "That is one back corner."),
        kind="count",
        nudge="Count the flanks of one tail, the tails of each corner, and all four corners.",
    )


def saw_reach(ask: Asking) -> Question | None:
    """How much of a socket's cheek a saw can cut."""
    d, rule = ask.design, ask.rule
    found = holds(d)
    socket = found[0].socket if found else None
    if socket is None:
        return None
    say, long, thick = rule.exact, socket.tail_length, socket.thickness
    answer = socket.share * 100
    ratio = min(long, thick) / max(long, thick) * 100
    return ask.question(
        "lesson3.saw-reach",
        f"The cheek of a half-blind socket is {say(long)} × {say(thick)}. A saw held at 45° "
        "cuts a triangle of it, whose two short sides are as long as the shorter side of the "
        "cheek. What share of the cheek does the saw cut?",
        (
            answer,
            f"share = {say(min(long, thick), unit=False)} ÷ (2 × "
            f"{say(max(long, thick), unit=False)}) = {answer:.1f} %; the chisel does the rest",
        ),
        (ratio, "You took a square of it. The saw cuts a triangle: half of that."),
        (100 - answer, "That is what is left to the chisel."),
        (50.0, "Half is the most, when the saw is held from corner to corner."),
        (100.0, "A saw that cut it all would come out through the lap."),
        (ratio / 4, "Half of the square once, not twice."),
        kind="%",
        nudge="Area of the triangle over the area of the cheek.",
    )


def glued(ask: Asking) -> Question | None:
    """Long grain glued to long grain at a back corner, in whole square centimetres."""
    d, rule = ask.design, ask.rule
    back, thick = d.back, d.tail_board_thickness[0]
    if rule.units == "in":
        return None
    say, long, n = rule.exact, back.tail_length, len(back.tails)

    def whole(area: float) -> float:
        return float(floor(area / CM2))

    answer = whole(back.glue_area(thick))
    # Whether flanks are taken along their slope or square to the baseline must not matter.
    if answer < 2 or whole(back.glue_area(thick) * cos(radians(back.angle))) != answer:
        return None
    flank = round(long / cos(radians(back.angle)), 2)
    return ask.question(
        "lesson3.glued",
        f"A back corner has {n} tails {say(long)} long on a board {say(thick)} thick; along "
        f"its slope a flank measures {say(flank)}. How many whole square centimetres, 100 mm² "
        "each, of long grain does it glue to long grain?",
        (
            answer,
            f"glue = 2 flanks × {n} tails × {say(flank)} × {say(thick)} = "
            f"{back.glue_area(thick):.0f} mm², {answer:g} whole cm²",
        ),
        (whole(back.glue_area(thick) / 2), "A tail has two flanks: you took one."),
        (whole(back.glue_area(thick) * 4), "That is four such corners; one was asked."),
        (whole(back.glue_area(thick) / n), "That is one tail."),
        (whole(back.glue_area(thick)) * 10, "100 mm² are one square centimetre."),
        (
            whole(back.glue_area(thick) + back.height * thick),
            "You added end grain at the shoulder; it hardly holds glue.",
        ),
        kind="count",
        nudge="One flank is its length times the tail board's thickness; how many flanks?",
    )
