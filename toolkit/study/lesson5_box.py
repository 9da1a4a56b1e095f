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
    skim = ask.pick(_SKIMS[rule.units])
    if ask.design.choices.corner.joint != "half-blind" or lap <= skim:
        return None
    return ask.question(
        "lesson5.lap",
        lap - skim,
        {
            "unplaned": lap,
            "both-faces": lap - 2 * skim,
            "halved": lap - skim / 2,
            "tail": tail - skim,
        },
        skim=skim,
    )


def outside_left(ask: Asking) -> Question | None:
    """What flushing makes of the outside length."""
    f, rule = ask.frame, ask.rule
    whole = f.outside_length.value
    skim = ask.pick(_SKIMS[rule.units])
    return ask.question(
        "lesson5.outside",
        whole - 2 * skim,
        {
            "one-face": whole - skim,
            "four-faces": whole - 4 * skim,
            "inside": f.inside_length.value,
            "inside-planed": f.inside_length.value - 2 * skim,
        },
        skim=skim,
    )


def lid_left(ask: Asking) -> Question | None:
    """What flushing makes of a lid that is planed flush with the front."""
    d, rule = ask.design, ask.rule
    if isinstance(d.lid, LiftOffLid):
        return None
    long = d.lid.length.value
    skim = ask.pick(_SKIMS[rule.units])
    return ask.question(
        "lesson5.lid",
        long - skim,
        {
            "unplaned": long,
            "both-ends": long - 2 * skim,
            "grown": long + skim,
        },
        skim=skim,
    )
