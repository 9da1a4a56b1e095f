"""Lesson 3, dovetails: what to reckon before marking out, and how it goes wrong."""

from __future__ import annotations

from toolkit.study.asking import Asking, turned, without
from toolkit.study.lesson3_dividers import divider_error, divider_step, off_edge, tail_width
from toolkit.study.lesson3_marking import between, glued, knife_lines, saw_reach, second_gauge
from toolkit.study.marking import Question


def _pin_board(ask: Asking) -> str:
    return "side" if ask.design.choices.corner.tails_on == "ends" else "back end"


def tail_length(ask: Asking) -> Question | None:
    """A half-blind tail stops short of the pin board's outside by the lap."""
    d = ask.design
    sum_, board = d.frame.tail_back, _pin_board(ask)
    if sum_.given or not d.frame.lap_back.given:
        return None
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


def overhang(ask: Asking) -> Question | None:
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


def narrow_pin(ask: Asking) -> Question | None:
    """A pin's narrow face, which the chisel must pass."""
    back = ask.design.back
    if not back.whole_pins:
        return None
    pin, out = back.whole_pins[0], round(back.overhang, 2)
    answer = pin.width - 2 * out
    slips = {
        "one-flank": pin.width - out,
        "added": pin.width + 2 * out,
        "wide-face": pin.width,
        "halved": pin.width / 2,
    }
    return ask.question("lesson3.narrow-pin", answer, slips, out=out)


def narrow_half_pin(ask: Asking) -> Question | None:
    """A half pin slopes on one side; it need not be half as wide as a pin."""
    back = ask.design.back
    half, out = back.half_pins[0], round(back.overhang, 2)
    pin = ask.design.choices.corner.pin
    answer = half.width - out
    slips = {
        "two-flanks": half.width - 2 * out,
        "wide-face": half.width,
        "half-a-pin": pin / 2,
        "added": half.width + out,
        "whole-pin": pin - 2 * out,
    }
    return ask.question("lesson3.narrow-half-pin", answer, slips, out=out)


def bevel(ask: Asking) -> Question | None:
    """The angle to which a bevel gauge is set."""
    slope, angle = ask.design.back.slope, ask.design.back.angle
    slips = {"from-the-baseline": 90 - angle, "slope": slope, "both-flanks": 2 * angle}
    return ask.question("lesson3.bevel", angle, slips)


TEMPLATES = (
    tail_length,
    overhang,
    divider_step,
    tail_width,
    divider_error,
    off_edge,
    narrow_pin,
    narrow_half_pin,
    bevel,
    second_gauge,
    between,
    knife_lines,
    saw_reach,
    glued,
)
