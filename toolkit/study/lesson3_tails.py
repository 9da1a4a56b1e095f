"""Lesson 3, dovetails: lengths, angles, pins, and the dividers that set them out."""

from __future__ import annotations

from toolkit.box.joinery import setting_error
from toolkit.results import below
from toolkit.study.asking import Asking, turned, without
from toolkit.study.marking import Question

MISSED = (3, 2, 4, 5)  # by how many marks of the rule each step was out, made up


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
    step, pin = round(walked.step, 3), walked.pin
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
    pin, out = back.whole_pins[0], round(back.overhang, 2)
    answer = pin.width - 2 * out
    slips = {
        "one-flank": pin.width - out,
        "added": pin.width + 2 * out,
        "wide-face": pin.width,
        "halved": pin.width / 2,
    }
    return ask.question("lesson3.narrow-pin", answer, slips, out=out)


def narrow_half_pin(ask: Asking) -> Question:
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


def bevel(ask: Asking) -> Question:
    """The angle to which a bevel gauge is set."""
    slope, angle = ask.design.back.slope, ask.design.back.angle
    slips = {"from-the-baseline": 90 - angle, "slope": slope, "both-flanks": 2 * angle}
    return ask.question("lesson3.bevel", angle, slips)
