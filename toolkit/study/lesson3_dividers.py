"""Questions of lesson 3 about dividers: where they are set, and what their last mark tells."""

from __future__ import annotations

from random import Random

from toolkit.box.joinery import setting_error, walk
from toolkit.plan import Plan
from toolkit.results import below
from toolkit.study.marking import Question, Slip
from toolkit.study.sums import answer_in, pick

WIDE = ("too wide", "too narrow")
MISSED = (3, 2, 4, 5)  # by how many marks of the rule each step was out, made up


def divider_step(plan: Plan, _: Random | None) -> Question | None:
    """The setting of the dividers that walks off equal tails."""
    walked, rule = walk(plan.design.back), plan.choices.rule
    if walked is None:
        return None
    say, high, half, pin, n = rule.exact, walked.height, walked.half_pin, walked.pin, walked.steps
    bare = rule.exact(half, unit=False)
    return Question(
        id="lesson3.divider-step",
        prompt=(
            f"Walls {say(high)} high get {n} equal tails. At the baseline the two half pins are "
            f"{say(half)} wide each, the pins {say(pin)}. How far apart are the dividers set, "
            f"one tail and one pin? {answer_in(rule, 'joints')}"
        ),
        answer=walked.step,
        working=(
            f"step = ({say(high, unit=False)} height − 2 × {bare} half pin + "
            f"{say(pin, unit=False)} pin) ÷ {n} = {say(round(walked.step, 3))}"
        ),
        rule=rule,
        fineness="joints",
        slips=(
            Slip(high / n, "You forgot half pins and pin: the walls are not all step."),
            Slip((high + pin) / n, "You forgot the two half pins."),
            Slip((high - half + pin) / n, "There are two half pins, one at each edge."),
            Slip(
                (high - 2 * half) / n,
                "The last step ends a pin beyond the far half-pin mark: add that pin first.",
            ),
            Slip(
                (high - 2 * half - pin) / n,
                "Add one pin, don't take it off: there are as many tails as steps, but one pin "
                "fewer.",
            ),
            Slip(walked.tail_width, "That is the tail alone; a step is one tail and one pin."),
            Slip((high - 2 * half + pin) / (n + 1), "As many steps as tails, not one more."),
        ),
        senses=WIDE,
        nudge="Take both half pins off the height, add one pin, share it out.",
    )


def tail_width(plan: Plan, _: Random | None) -> Question | None:
    """Width of a tail, from the dividers' step."""
    walked, rule = walk(plan.design.back), plan.choices.rule
    if walked is None:
        return None
    say, step, pin, n = rule.exact, round(walked.step, 3), walked.pin, walked.steps
    answer = step - pin
    return Question(
        id="lesson3.tail-width",
        prompt=(
            f"The dividers stand at {say(step)} and walk {n} steps; the pins are {say(pin)} wide "
            f"at the baseline, the half pins {say(walked.half_pin)}. How wide is a tail there? "
            f"{answer_in(rule, 'joints')}"
        ),
        answer=answer,
        working=f"tail = {say(step)} step − {say(pin)} pin = {say(round(answer, 3))}",
        rule=rule,
        fineness="joints",
        slips=(
            Slip(step, "That is the whole step: a tail and a pin."),
            Slip(step - 2 * pin, "One step has one pin in it."),
            Slip(step + pin, "A step holds tail and pin: take the pin off."),
            Slip(step - walked.half_pin, "You took a half pin off; half pins are at the edges."),
            Slip(pin, "That is the pin."),
        ),
        senses=WIDE,
        nudge="A step runs from the edge of one tail to the same edge of the next.",
    )


def divider_error(plan: Plan, chance: Random | None) -> Question | None:
    """Dividers that end wrong: by how much to close them."""
    walked, rule = walk(plan.design.back), plan.choices.rule
    if walked is None or walked.steps < 2:
        return None
    say, n, pin = rule.exact, walked.steps, walked.pin
    out = pick(chance, MISSED) * rule.mark("joints")
    past = pin + n * out
    return Question(
        id="lesson3.divider-error",
        prompt=(
            f"After {n} steps the last mark should fall {say(pin)} past the far half-pin mark. It "
            f"falls {say(past)} past. By how much do you close the dividers? "
            f"{answer_in(rule, 'joints')}"
        ),
        answer=setting_error(past, pin=pin, steps=n),
        working=(
            f"close by ({say(past, unit=False)} − {say(pin, unit=False)}) ÷ {n} steps = {say(out)}"
        ),
        rule=rule,
        fineness="joints",
        slips=(
            Slip(n * out, "That is the whole miss. Each step made its share of it."),
            Slip(past / n, "Share out only what is too much, not the pin that belongs there."),
            Slip(past, "That is where the mark fell; how far is it from where it should be?"),
            Slip(pin, "That is the pin, which belongs there."),
        ),
        senses=("too much", "too little"),
        nudge="How far is the mark from where it should be, and how many steps made that?",
    )


def off_edge(plan: Plan, _: Random | None) -> Question | None:
    """Where the dividers' last mark has no wood to fall on."""
    walked, rule = walk(plan.design.back), plan.choices.rule
    if walked is None or not below(walked.half_pin, walked.pin):
        return None
    say, half, pin = rule.exact, walked.half_pin, walked.pin
    return Question(
        id="lesson3.off-edge",
        prompt=(
            f"Pins are {say(pin)} wide at the baseline and half pins {say(half)}. The dividers' "
            "last mark falls one pin past the far half-pin mark. How far off the edge of the "
            f"board is that? {answer_in(rule, 'joints')}"
        ),
        answer=pin - half,
        working=f"off the edge = {say(pin)} pin − {say(half)} half pin = {say(pin - half)}",
        rule=rule,
        fineness="joints",
        slips=(
            Slip(pin, "That is from the half-pin mark; part of it is still on the board."),
            Slip(pin + half, "The half pin is wood: take it off."),
            Slip(half, "That is the half pin, which is wood."),
            Slip(pin - half / 2, "All of the half pin is wood."),
        ),
        senses=("too far", "too little"),
        nudge="From the half-pin mark to the edge is one half pin.",
    )
