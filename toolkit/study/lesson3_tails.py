"""Questions of lesson 3 about tails and pins: how long, how wide, where they are widest."""

from __future__ import annotations

from toolkit.study.asking import Asking, turned, without
from toolkit.study.marking import Question

WIDE = ("too wide", "too narrow")


def _pin_board(ask: Asking) -> str:
    return "side" if ask.design.choices.corner.tails_on == "ends" else "back end"


def tail_length(ask: Asking) -> Question | None:
    """A half-blind tail stops short of the pin board's outside by the lap."""
    d, rule = ask.design, ask.rule
    sum_, say, board = d.frame.tail_back, rule.exact, _pin_board(ask)
    if sum_.given or not d.frame.lap_back.given:
        return None
    thick, lap = d.pin_board_thickness[0], d.frame.lap_back.value
    other = d.tail_board_thickness[0]
    return ask.question(
        "lesson3.tail-length",
        f"The {board} is {say(thick)} thick and keeps a lap of {say(lap)} in front of the "
        f"tails; the board with the tails is {say(other)} thick. How long are the tails at "
        "the back?",
        sum_,
        (thick, "You did not take the lap off: those tails come out at the outside."),
        (lap, "That is the lap, the wood left in front of the tails."),
        (turned(sum_, "lap"), "The lap makes the tails shorter, not longer."),
        (
            other - lap,
            "You began from the tail board's own thickness. A tail is as long as it goes into "
            f"the {board}.",
        ),
        (
            without(sum_, "lap") + other,
            "Those are both boards together; a tail reaches through one of them.",
        ),
        fineness="joints",
        nudge=f"Go into the {board} from its inside face and stop before the outside.",
    )


def overhang(ask: Asking) -> Question | None:
    """How far the corner of a tail stands out beyond its baseline."""
    d, rule = ask.design, ask.rule
    say, back, thick = rule.exact, d.back, d.pin_board_thickness[0]
    long, slope = back.tail_length, back.slope
    return ask.question(
        "lesson3.overhang",
        f"Tails {say(long)} long go into a board {say(thick)} thick, at a slope of 1 in "
        f"{slope:g}. How far does each corner of a tail stand out beyond the baseline?",
        (
            back.overhang,
            f"overhang = {say(long)} tail ÷ {slope:g} = {say(round(back.overhang, 2))}",
        ),
        (2 * back.overhang, "That is both corners of a tail together."),
        (thick / slope, "You went through the whole board. The slope ends where the tail does."),
        (
            long * slope,
            f"You turned the slope about: it is 1 across in {slope:g} along, so divide.",
        ),
        (long, "That would be a slope of 1 in 1. Divide by the slope."),
        fineness="joints",
        senses=("too far", "too little"),
        nudge="One across for so many along: how often does that go into the tail's length?",
    )


def narrow_pin(ask: Asking) -> Question | None:
    """A pin's narrow face, which the chisel must pass."""
    back, say = ask.design.back, ask.rule.exact
    if not back.whole_pins:
        return None
    pin, out = back.whole_pins[0], round(back.overhang, 2)
    answer = pin.width - 2 * out
    return ask.question(
        "lesson3.narrow-pin",
        f"A pin is {say(pin.width)} wide at the baseline, and the corners of the tails stand "
        f"out {say(out)} on each side. How wide is the pin's narrow face?",
        (
            answer,
            f"narrow face = {say(pin.width)} pin − 2 × {say(out)} overhang = "
            f"{say(round(answer, 2))}",
        ),
        (pin.width - out, "You took one flank off; a whole pin slopes on both sides."),
        (pin.width + 2 * out, "That is how a tail grows. Where tails are wide, pins are narrow."),
        (pin.width, "That is its wide face, at the baseline."),
        (pin.width / 2, "Not half of it: take what the two flanks lose."),
        fineness="joints",
        senses=WIDE,
        nudge="Between two tails: each leans over the pin by its overhang.",
    )


def narrow_half_pin(ask: Asking) -> Question | None:
    """A half pin slopes on one side; it need not be half as wide as a pin."""
    back, rule = ask.design.back, ask.rule
    say, half, out = rule.exact, back.half_pins[0], round(back.overhang, 2)
    pin = ask.design.choices.corner.pin
    answer = half.width - out
    return ask.question(
        "lesson3.narrow-half-pin",
        f"The half pins are {say(half.width)} wide at the baseline, the pins {say(pin)}; the "
        f"corners of the tails stand out {say(out)}. How wide is a half pin where it is "
        "narrowest?",
        (
            answer,
            f"narrowest = {say(half.width)} half pin − {say(out)} overhang = "
            f"{say(round(answer, 2))}",
        ),
        (
            half.width - 2 * out,
            "You took off two flanks. A half pin slopes on one side only: that is its name.",
        ),
        (half.width, "That is its wide face, at the baseline."),
        (
            pin / 2,
            "A half pin is not half the width of a pin: the name says that it slopes on one side.",
        ),
        (half.width + out, "The tail leans over it: it gets narrower, not wider."),
        (pin - 2 * out, "That is a whole pin."),
        fineness="joints",
        senses=WIDE,
        nudge="One side is the edge of the board, square; the other leans.",
    )


def bevel(ask: Asking) -> Question | None:
    """The angle to which a bevel gauge is set."""
    slope, angle = ask.design.back.slope, ask.design.back.angle
    return ask.question(
        "lesson3.bevel",
        f"The tails slope 1 across in {slope:g} along. By how many degrees does their flank "
        "lean away from the length of the board? The tables say: tan 5° = 0.087, tan 7° = "
        f"0.123, tan 8° = 0.141, tan 10° = 0.176, tan 12° = 0.213, tan 15° = 0.268.",
        (angle, f"angle whose tangent is 1 ÷ {slope:g} = {angle:.1f}°"),
        (90 - angle, "That is the angle from the baseline. The question is from square."),
        (slope, f"1 in {slope:g} is a slope, not {slope:g} degrees."),
        (2 * angle, "That is the angle between the two flanks of a tail."),
        kind="deg",
        senses=("too steep", "too little"),
        nudge="Divide 1 by the slope and look the tangent up.",
        how="Answer in degrees with the unit, to the nearest 0.5 deg.",
    )
