"""Questions of lesson 5 about the box: what flushing the joints takes from it."""

from __future__ import annotations

from random import Random

from toolkit.box import LiftOffLid
from toolkit.measures import MM_PER_INCH
from toolkit.plan import Plan
from toolkit.study.marking import Question, Slip
from toolkit.study.sums import answer_in, pick

_SKIMS = {"mm": (0.3, 0.2, 0.4), "in": (MM_PER_INCH / 64, MM_PER_INCH / 32)}


def lap_left(plan: Plan, chance: Random | None) -> Question | None:
    """What flushing leaves of the lap."""
    f, rule = plan.design.frame, plan.choices.rule
    lap, tail = f.lap_back.value, f.tail_back.value
    skim, say = pick(chance, _SKIMS[rule.units]), rule.exact
    if plan.design.choices.corner.joint != "half-blind" or lap <= skim:
        return None
    return Question(
        id="lesson5.lap",
        prompt=(
            f"The lap is {say(lap)} and the tails are {say(tail)} long, both cut. {say(skim)} is "
            f"planed off every outside face. How thick is the lap then? {answer_in(rule, 'joints')}"
        ),
        answer=lap - skim,
        working=f"lap = {say(lap)} − {say(skim)} = {say(round(lap - skim, 4))}",
        rule=rule,
        fineness="joints",
        slips=(
            Slip(lap, "The lap is the outside of the wall: what is planed comes off it."),
            Slip(lap - 2 * skim, "One face only: the lap has no other outside."),
            Slip(lap - skim / 2, "The sockets are cut: the lap pays for all of it."),
            Slip(tail - skim, "The tail stays as long as it was cut."),
        ),
        senses=("too thick", "too thin"),
        nudge="Go from the floor of the socket to the outside face.",
    )


def outside_left(plan: Plan, chance: Random | None) -> Question | None:
    """What flushing makes of the outside length."""
    f, rule = plan.design.frame, plan.choices.rule
    whole = f.outside_length.value
    skim, say = pick(chance, _SKIMS[rule.units]), rule.exact
    return Question(
        id="lesson5.outside",
        prompt=(
            f"The box is {say(whole)} long outside. {say(skim)} is planed off every outside face. "
            f"How long is it then? {answer_in(rule, 'joints')}"
        ),
        answer=whole - 2 * skim,
        working=f"length = {say(whole)} − 2 × {say(skim)} = {say(round(whole - 2 * skim, 4))}",
        rule=rule,
        fineness="joints",
        slips=(
            Slip(whole - skim, "It has a back and a front: two faces."),
            Slip(whole - 4 * skim, "Only the two faces that the length ends at."),
            Slip(f.inside_length.value, "That is the inside, which no plane reaches now."),
            Slip(f.inside_length.value - 2 * skim, "The inside stays as it is."),
        ),
        nudge="Which two faces does the length end at?",
    )


def lid_left(plan: Plan, chance: Random | None) -> Question | None:
    """What flushing makes of a lid that is planed flush with the front."""
    d, rule = plan.design, plan.choices.rule
    if isinstance(d.lid, LiftOffLid):
        return None
    long, say = d.lid.length.value, rule.exact
    skim = pick(chance, _SKIMS[rule.units])
    return Question(
        id="lesson5.lid",
        prompt=(
            f"The lid is {say(long)} long and flush with the front. The front's face is planed by "
            f"{say(skim)}, the lid with it. How long is the lid then? {answer_in(rule, 'joints')}"
        ),
        answer=long - skim,
        working=f"lid = {say(long)} − {say(skim)} = {say(round(long - skim, 4))}",
        rule=rule,
        fineness="joints",
        slips=(
            Slip(long, "Flush with the front: what comes off the one comes off the other."),
            Slip(long - 2 * skim, "Its back end lies in the groove, where no plane comes."),
            Slip(long + skim, "It grows shorter."),
        ),
        nudge="Only its front end shows.",
    )
