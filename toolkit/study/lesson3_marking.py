"""Lesson 3, marking and sawing: gauges, knife lines, what a saw reaches, glue."""

from __future__ import annotations

from math import cos, floor, radians

from toolkit.box.joinery import between_baselines, gauge_settings, holds
from toolkit.study.asking import Asking
from toolkit.study.marking import Question

CM2 = 100.0  # [mm²]


def second_gauge(ask: Asking) -> Question:
    """The gauge that marks the pins' baseline."""
    d, rule = ask.design, ask.rule
    s, say = gauge_settings(d), rule.exact
    tail, thick, pins = d.back.tail_length, d.tail_board_thickness[0], d.pin_board_thickness[0]
    proud, setting = abs(s.proud), s.board_back
    way = "stand proud by" if s.proud >= 0 else "end shy by"
    asked = f"The pins are to {way} {say(proud)}, to be planed flush." if proud else ""
    slips = {
        "first-gauge": tail,
        "proud-tails": tail + s.proud,
        "flush": thick,
        "other-way": thick - s.proud,
        "other-board": pins + s.proud,
        "both-boards": thick + tail,
        "halved": thick / 2,
    }
    return ask.question("lesson3.second-gauge", setting, slips, asked=asked)


def between(ask: Asking) -> Question:
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
    slips = {
        "one-end": outside - back,
        "tails": outside - 2 * s.tail_back.value,
        "added": outside + back + front,
        "whole-board": outside,
    }
    return ask.question(
        "lesson3.between",
        outside - back - front,
        slips,
        board=board,
        outside=outside,
        gauges=gauges,
        sum=sum_.sentence(rule),
    )


def knife_lines(ask: Asking) -> Question:
    """How many knife lines the tails of a box give."""
    d = ask.design
    back, front = len(d.back.tails), len(d.front.tails)
    answer = 4 * (back + front)
    slips = {
        "two-corners": 2 * (back + front),
        "tails": back + front,
        "half-pins": answer + 8,
        "back-only": 8 * back,
        "one-corner": 2 * back,
    }
    return ask.question("lesson3.knife-lines", answer, slips, back=back, front=front)


def saw_reach(ask: Asking) -> Question:
    """How much of a socket's cheek a saw can cut."""
    d = ask.design
    found = holds(d)
    socket = ask.known(found[0].socket if found else None)
    long, thick = socket.tail_length, socket.thickness
    answer = socket.share * 100
    ratio = min(long, thick) / max(long, thick) * 100
    slips = {
        "square": ratio,
        "chisel": 100 - answer,
        "half": 50.0,
        "all": 100.0,
        "quarter": ratio / 4,
    }
    return ask.question(
        "lesson3.saw-reach",
        answer,
        slips,
        socket=socket,
        shorter=min(long, thick),
        longer=max(long, thick),
    )


def glued(ask: Asking) -> Question:
    """Long grain glued to long grain at a back corner, in whole square centimetres."""
    d, rule = ask.design, ask.rule
    back, thick = d.back, d.tail_board_thickness[0]
    ask.only_if(rule.units == "mm")
    long, n = back.tail_length, len(back.tails)

    def whole(area: float) -> float:
        return float(floor(area / CM2))

    answer = whole(back.glue_area(thick))
    # Whether flanks are taken along their slope or square to the baseline must not matter.
    along = whole(back.glue_area(thick) * cos(radians(back.angle)))
    ask.only_if(along == answer >= 2)
    flank = round(long / cos(radians(back.angle)), 2)
    slips = {
        "one-flank": whole(back.glue_area(thick) / 2),
        "all-corners": whole(back.glue_area(thick) * 4),
        "one-tail": whole(back.glue_area(thick) / n),
        "tenfold": whole(back.glue_area(thick)) * 10,
        "end-grain": whole(back.glue_area(thick) + back.height * thick),
    }
    return ask.question(
        "lesson3.glued", answer, slips, n=n, flank=flank, area=back.glue_area(thick)
    )
