"""Questions of lesson 3 about dividers: where they are set, and what their last mark tells."""

from __future__ import annotations

from toolkit.box.joinery import setting_error, walk
from toolkit.results import below
from toolkit.study.asking import Asking
from toolkit.study.marking import Question

WIDE = ("too wide", "too narrow")
MISSED = (3, 2, 4, 5)  # by how many marks of the rule each step was out, made up


def divider_step(ask: Asking) -> Question | None:
    """The setting of the dividers that walks off equal tails."""
    walked, rule = walk(ask.design.back), ask.rule
    if walked is None:
        return None
    say, high, half, pin, n = rule.exact, walked.height, walked.half_pin, walked.pin, walked.steps
    bare = rule.exact(half, unit=False)
    return ask.question(
        "lesson3.divider-step",
        f"Walls {say(high)} high get {n} equal tails. At the baseline the two half pins are "
        f"{say(half)} wide each, the pins {say(pin)}. How far apart are the dividers set, "
        "one tail and one pin?",
        (
            walked.step,
            f"step = ({say(high, unit=False)} height − 2 × {bare} half pin + "
            f"{say(pin, unit=False)} pin) ÷ {n} = {say(round(walked.step, 3))}",
        ),
        (high / n, "You forgot half pins and pin: the walls are not all step."),
        ((high + pin) / n, "You forgot the two half pins."),
        ((high - half + pin) / n, "There are two half pins, one at each edge."),
        (
            (high - 2 * half) / n,
            "The last step ends a pin beyond the far half-pin mark: add that pin first.",
        ),
        (
            (high - 2 * half - pin) / n,
            "Add one pin, don't take it off: there are as many tails as steps, but one pin fewer.",
        ),
        (walked.tail_width, "That is the tail alone; a step is one tail and one pin."),
        ((high - 2 * half + pin) / (n + 1), "As many steps as tails, not one more."),
        fineness="joints",
        senses=WIDE,
        nudge="Take both half pins off the height, add one pin, share it out.",
    )


def tail_width(ask: Asking) -> Question | None:
    """Width of a tail, from the dividers' step."""
    walked, rule = walk(ask.design.back), ask.rule
    if walked is None:
        return None
    say, step, pin, n = rule.exact, round(walked.step, 3), walked.pin, walked.steps
    answer = step - pin
    return ask.question(
        "lesson3.tail-width",
        f"The dividers stand at {say(step)} and walk {n} steps; the pins are {say(pin)} wide "
        f"at the baseline, the half pins {say(walked.half_pin)}. How wide is a tail there?",
        (answer, f"tail = {say(step)} step − {say(pin)} pin = {say(round(answer, 3))}"),
        (step, "That is the whole step: a tail and a pin."),
        (step - 2 * pin, "One step has one pin in it."),
        (step + pin, "A step holds tail and pin: take the pin off."),
        (step - walked.half_pin, "You took a half pin off; half pins are at the edges."),
        (pin, "That is the pin."),
        fineness="joints",
        senses=WIDE,
        nudge="A step runs from the edge of one tail to the same edge of the next.",
    )


def divider_error(ask: Asking) -> Question | None:
    """Dividers that end wrong: by how much to close them."""
    walked, rule = walk(ask.design.back), ask.rule
    if walked is None or walked.steps < 2:
        return None
    say, n, pin = rule.exact, walked.steps, walked.pin
    out = ask.pick(MISSED) * rule.mark("joints")
    past = pin + n * out
    return ask.question(
        "lesson3.divider-error",
        f"After {n} steps the last mark should fall {say(pin)} past the far half-pin mark. It "
        f"falls {say(past)} past. By how much do you close the dividers?",
        (
            setting_error(past, pin=pin, steps=n),
            f"close by ({say(past, unit=False)} − {say(pin, unit=False)}) ÷ {n} steps = {say(out)}",
        ),
        (n * out, "That is the whole miss. Each step made its share of it."),
        (past / n, "Share out only what is too much, not the pin that belongs there."),
        (past, "That is where the mark fell; how far is it from where it should be?"),
        (pin, "That is the pin, which belongs there."),
        fineness="joints",
        senses=("too much", "too little"),
        nudge="How far is the mark from where it should be, and how many steps made that?",
    )


def off_edge(ask: Asking) -> Question | None:
    """Where the dividers' last mark has no wood to fall on."""
    walked, rule = walk(ask.design.back), ask.rule
    if walked is None or not below(walked.half_pin, walked.pin):
        return None
    say, half, pin = rule.exact, walked.half_pin, walked.pin
    return ask.question(
        "lesson3.off-edge",
        f"Pins are {say(pin)} wide at the baseline and half pins {say(half)}. The dividers' "
        "last mark falls one pin past the far half-pin mark. How far off the edge of the "
        "board is that?",
        (pin - half, f"off the edge = {say(pin)} pin − {say(half)} half pin = {say(pin - half)}"),
        (pin, "That is from the half-pin mark; part of it is still on the board."),
        (pin + half, "The half pin is wood: take it off."),
        (half, "That is the half pin, which is wood."),
        (pin - half / 2, "All of the half pin is wood."),
        fineness="joints",
        senses=("too far", "too little"),
        nudge="From the half-pin mark to the edge is one half pin.",
    )
