"""Lesson 3, dovetails: tails, pins and dividers; gauges, knife lines, what a saw reaches, glue."""

from __future__ import annotations

from math import cos, floor, radians

from toolkit.box import between_baselines, gauge_settings, holds, setting_error
from toolkit.results import below
from toolkit.study.asking import Asking, turned, without
from toolkit.study.marking import Question

MISSED = (3, 2, 4, 5)  # by how many marks of the rule each step was out, made up

CM2 = 100.0  # [mm²]


def _pin_board(ask: Asking) -> str:
    return "side" if ask.design.choices.corner.tails_on == "ends" else "back end"


def tail_length(ask: Asking) -> Question:
    """A half-blind tail stops short of the pin board's outside by the lap."""
    d = ask.design
    sum_, board = d.frame.tail_back, _pin_board(ask)
    ask.only_if(not sum_.given and d.frame.lap_back.given)
    thick, lap = d.pin_board_thickness[0], d.frame.lap_back.value
    other = d.tail_board_thickness[0]
    slips = {
        "no-lap": thick,
        "lap-only": lap,
        "lap-added": turned(sum_, "lap"),
        "tail-board": other - lap,
        "both-boards": without(sum_, "lap") + other,
    }
    return ask.question("lesson3.tail-length", sum_, slips, board=board)


def overhang(ask: Asking) -> Question:
    """How far the corner of a tail stands out beyond its baseline."""
    d = ask.design
    back, thick = d.back, d.pin_board_thickness[0]
    long, slope = back.tail_length, back.slope
    slips = {
        "both-corners": 2 * back.overhang,
        "whole-board": thick / slope,
        "multiplied": long * slope,
        "one-in-one": long,
    }
    return ask.question("lesson3.overhang", back.overhang, slips)


def divider_step(ask: Asking) -> Question:
    """The setting of the dividers that walks off equal tails."""
    walked = ask.walked
    high, half, pin, n = walked.height, walked.half_pin, walked.pin, walked.steps
    slips = {
        "whole-height": high / n,
        "no-half-pins": (high + pin) / n,
        "one-half-pin": (high - half + pin) / n,
        "no-pin": (high - 2 * half) / n,
        "pin-off": (high - 2 * half - pin) / n,
        "tail-only": walked.tail_width,
        "one-step-more": (high - 2 * half + pin) / (n + 1),
    }
    return ask.question("lesson3.divider-step", walked.step, slips, walked=walked)


def tail_width(ask: Asking) -> Question:
    """Width of a tail, from the dividers' step."""
    walked = ask.walked
    step, pin = ask.rule.written(walked.step), walked.pin
    answer = step - pin
    slips = {
        "whole-step": step,
        "two-pins": step - 2 * pin,
        "pin-added": step + pin,
        "half-pin": step - walked.half_pin,
        "pin-only": pin,
    }
    return ask.question("lesson3.tail-width", answer, slips, step=step, walked=walked)


def divider_error(ask: Asking) -> Question:
    """Dividers that end wrong: by how much to close them."""
    walked, rule = ask.walked, ask.rule
    ask.only_if(walked.steps >= 2)
    n, pin = walked.steps, walked.pin
    out = ask.pick(MISSED) * rule.mark("joints")
    past = pin + n * out
    slips = {"whole-miss": n * out, "with-pin": past / n, "where-it-fell": past, "pin-only": pin}
    return ask.question(
        "lesson3.divider-error",
        setting_error(past, pin=pin, steps=n),
        slips,
        walked=walked,
        past=past,
        out=out,
    )


def off_edge(ask: Asking) -> Question:
    """Where the dividers' last mark has no wood to fall on."""
    walked = ask.walked
    ask.only_if(below(walked.half_pin, walked.pin))
    half, pin = walked.half_pin, walked.pin
    slips = {
        "from-the-mark": pin,
        "half-pin-added": pin + half,
        "half-pin-only": half,
        "half-the-half-pin": pin - half / 2,
    }
    return ask.question("lesson3.off-edge", pin - half, slips, walked=walked)


def narrow_pin(ask: Asking) -> Question:
    """A pin's narrow face, which the chisel must pass."""
    back = ask.design.back
    ask.only_if(back.whole_pins)
    pin, out = back.whole_pins[0], ask.rule.written(back.overhang)
    answer = pin.width - 2 * out
    slips = {
        "one-cheek": pin.width - out,
        "added": pin.width + 2 * out,
        "wide-face": pin.width,
        "halved": pin.width / 2,
    }
    return ask.question("lesson3.narrow-pin", answer, slips, out=out)


def narrow_half_pin(ask: Asking) -> Question:
    """A half pin slopes on one side; it need not be half as wide as a pin."""
    back = ask.design.back
    half, out = back.half_pins[0], ask.rule.written(back.overhang)
    pin = ask.design.choices.corner.pin
    answer = half.width - out
    slips = {
        "two-cheeks": half.width - 2 * out,
        "wide-face": half.width,
        "half-a-pin": pin / 2,
        "added": half.width + out,
        "whole-pin": pin - 2 * out,
    }
    return ask.question("lesson3.narrow-half-pin", answer, slips, out=out)


def bevel(ask: Asking) -> Question:
    """The angle to which a bevel gauge is set."""
    slope, angle = ask.design.back.slope, ask.design.back.angle
    slips = {"from-the-baseline": 90 - angle, "slope": slope, "both-cheeks": 2 * angle}
    return ask.question("lesson3.bevel", angle, slips)


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
    """What lies between the two baselines of a pin board, which is cut longer for proud pins."""
    d, rule = ask.design, ask.rule
    sum_, s, say = between_baselines(d), gauge_settings(d), rule.exact
    on_ends = d.choices.corner.tails_on == "ends"
    cut = (d.frame.side_cut if on_ends else d.frame.back_cut).value
    back, front = s.board_back.value, (s.board_front if on_ends else s.board_back).value
    gauges = f"{say(back)} from each end"
    if abs(back - front) > 1e-6:
        gauges = f"{say(back)} from one end and {say(front)} from the other"
    slips = {
        "one-end": cut - back,
        "tails": cut - 2 * s.tail_back.value,
        "added": cut + back + front,
        "whole-board": cut,
    }
    return ask.question(
        "lesson3.between",
        cut - back - front,
        slips,
        board=_pin_board(ask),
        cut=cut,
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
    found = holds(ask.design)
    socket = ask.known(found[0].socket if found else None)
    short, long = sorted((socket.tail_length, socket.thickness))
    answer, ratio = socket.share * 100, short / long * 100
    slips = {
        "square": ratio,
        "chisel": 100 - answer,
        "half": 50.0,
        "all": 100.0,
        "quarter": ratio / 4,
    }
    named = {"socket": socket, "shorter": short, "longer": long}
    return ask.question("lesson3.saw-reach", answer, slips, **named)


def glued(ask: Asking) -> Question:
    """Long grain glued to long grain at a back corner, in whole square centimetres."""
    back, thick = ask.design.back, ask.design.tail_board_thickness[0]
    ask.only_if(ask.rule.units == "mm")
    n, sloped = len(back.tails), cos(radians(back.angle))
    cheek = ask.rule.written(back.tail_length / sloped)
    area = 2 * n * cheek * thick

    def whole(area: float) -> float:
        return float(floor(area / CM2))

    # Whether cheeks are taken along their slope or square to the baseline must not matter.
    ask.only_if(whole(area * sloped) == whole(area) >= 2)
    slips = {
        "one-cheek": whole(area / 2),
        "all-corners": whole(area * 4),
        "one-tail": whole(area / n),
        "tenfold": whole(area) * 10,
        "end-grain": whole(area + back.height * thick),
    }
    return ask.question("lesson3.glued", whole(area), slips, n=n, cheek=cheek, area=area)
