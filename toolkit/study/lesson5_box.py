"""Questions of lesson 5 about the box: what flushing the joints takes from it."""

from __future__ import annotations

from toolkit.box import LiftOffLid
from toolkit.measures import MM_PER_INCH
from toolkit.study.asking import Asking
from toolkit.study.marking import Question

_SKIMS = {"mm": (0.3, 0.2, 0.4), "in": (MM_PER_INCH / 64, MM_PER_INCH / 32)}


def lap_left(ask: Asking) -> Question | None:
    """What flushing leaves of the lap."""
    f, rule = ask.frame, ask.rule
    lap, tail = f.lap_back.value, f.tail_back.value
    skim, say = ask.pick(_SKIMS[rule.units]), rule.exact
    if ask.design.choices.corner.joint != "half-blind" or lap <= skim:
        return None
    return ask.question(
        "lesson5.lap",
        f"The lap is {say(lap)} and the tails are {say(tail)} long, both cut. {say(skim)} is "
        "planed off every outside face. How thick is the lap then?",
        (lap - skim, f"lap = {say(lap)} − {say(skim)} = {say(round(lap - skim, 4))}"),
        (lap, "The lap is the outside of the wall: what is planed comes off it."),
        (lap - 2 * skim, "One face only: the lap has no other outside."),
        (lap - skim / 2, "The sockets are cut: the lap pays for all of it."),
        (tail - skim, "The tail stays as long as it was cut."),
        fineness="joints",
        senses=("too thick", "too thin"),
        nudge="Go from the floor of the socket to the outside face.",
    )


def outside_left(ask: Asking) -> Question | None:
    """What flushing makes of the outside length."""
    f, rule = ask.frame, ask.rule
    whole = f.outside_length.value
    skim, say = ask.pick(_SKIMS[rule.units]), rule.exact
    return ask.question(
        "lesson5.outside",
        f"The box is {say(whole)} long outside. {say(skim)} is planed off every outside face. "
        "How long is it then?",
        (
            whole - 2 * skim,
            f"length = {say(whole)} − 2 × {say(skim)} = {say(round(whole - 2 * skim, 4))}",
        ),
        (whole - skim, "It has a back and a front: two faces."),
        (whole - 4 * skim, "Only the two faces that the length ends at."),
        (f.inside_length.value, "That is the inside, which no plane reaches now."),
        (f.inside_length.value - 2 * skim, "The inside stays as it is."),
        fineness="joints",
        nudge="Which two faces does the length end at?",
    )


def lid_left(ask: Asking) -> Question | None:
    """What flushing makes of a lid that is planed flush with the front."""
    d, rule = ask.design, ask.rule
    if isinstance(d.lid, LiftOffLid):
        return None
    long, say = d.lid.length.value, rule.exact
    skim = ask.pick(_SKIMS[rule.units])
    return ask.question(
        "lesson5.lid",
        f"The lid is {say(long)} long and flush with the front. The front's face is planed by "
        f"{say(skim)}, the lid with it. How long is the lid then?",
        (long - skim, f"lid = {say(long)} − {say(skim)} = {say(round(long - skim, 4))}"),
        (long, "Flush with the front: what comes off the one comes off the other."),
        (long - 2 * skim, "Its back end lies in the groove, where no plane comes."),
        (long + skim, "It grows shorter."),
        fineness="joints",
        nudge="Only its front end shows.",
    )
