"""Questions of lesson 4 about edges in their grooves: a bevel, room in the damp, a way out."""

from __future__ import annotations

from toolkit.box.bevels import bevel
from toolkit.measures import MM_PER_INCH
from toolkit.results import above, below
from toolkit.study.asking import Asking
from toolkit.study.marking import Question

# How wide a bevel is worked: common practice, no source. [mm]
WIDTHS = {
    "mm": (16.0, 18.0, 20.0, 24.0),
    "in": (MM_PER_INCH * 5 / 8, MM_PER_INCH * 3 / 4, MM_PER_INCH),
}


def thin_edge(ask: Asking) -> Question | None:
    """How thick a bevel leaves the edge, so that it fits where it enters its groove."""
    panel, rule = ask.design.upper_panel, ask.rule
    thick, tongue, reach = panel.thickness.value, panel.tongue, panel.reach
    width, say = ask.pick(WIDTHS[rule.units]), rule.exact
    if not above(thick, tongue):
        return None
    try:
        edge = bevel(thick, tongue=tongue, reach=reach, width=width).rim
    except ValueError:
        return None
    if not above(edge, 0.0):
        return None
    share = f"{say(reach)} ÷ {say(width)}"
    return ask.question(
        f"lesson4.{panel.name}-thin-edge",
        f"The {panel.name} is {say(thick)} thick. You bevel it {say(width)} wide instead of "
        f"rebating it, so that it is {say(tongue)} thick where it enters its groove, which is "
        f"{say(reach)} deep. How thick is it at the very edge, right in the groove?",
        (
            edge,
            f"thin edge = ({say(tongue)} − {say(thick)} × {share}) ÷ (1 − {share}) "
            f"= {say(round(edge, 2))}",
        ),
        (
            tongue,
            "That is its thickness at the lip of the groove. A bevel goes on thinning to the edge.",
        ),
        (
            tongue - (thick - tongue) * reach / width,
            "You spread the slope over the whole bevel. From the lip to where it ends it has "
            "only the width less the depth of the groove.",
        ),
        (
            thick - (thick - tongue) * width / reach,
            "The slope is not so steep: it loses that much over the part outside the groove.",
        ),
        (
            thick - tongue,
            "That is what the bevel takes off at the lip; the question is what stays.",
        ),
        fineness="joints",
        senses=("too thick", "too thin"),
        nudge="Find how much the bevel falls for each unit of its width, outside the groove.",
    )


def room_in_the_damp(ask: Asking) -> Question | None:
    """What the damp leaves of the clearance at each side."""
    panel, say = ask.design.upper_panel, ask.rule.exact
    swells = round(panel.swelling, 2)
    room = panel.along if panel.grain_across else panel.across
    if not above(swells, 0.0) or below(room, swells):
        return None
    return ask.question(
        f"lesson4.{panel.name}-damp",
        f"The {panel.name} has {say(room)} of clearance across its grain, both sides "
        f"together, and swells {say(swells)} in its dampest room. It lies midway. How much "
        "room is then left at each side?",
        (
            (room - swells) / 2,
            f"room at each side = ({say(room)} clearance − {say(swells)} swelling) ÷ 2 "
            f"= {say(round((room - swells) / 2, 2))}",
        ),
        (room - swells, "That is what is left at both sides together."),
        (
            room / 2 - swells,
            "You let it swell as much at each side; it swells so much in all, half either way.",
        ),
        (room / 2, "That is the room on the bench: take half of the swelling off."),
        (
            (room + swells) / 2,
            "That is after a dry winter: in the damp a panel grows and the room shrinks.",
        ),
        (swells / 2, "That is how far each edge moves, not what is left beside it."),
        fineness="joints",
        senses=("too much", "too little"),
        nudge="Take the swelling off the clearance; then share out what is left.",
    )


def way_up(ask: Asking) -> Question | None:
    """How much higher a groove may be ploughed before it comes out beside its tail."""
    f, rule = ask.frame, ask.rule
    groove, say = f.bottom_groove, rule.exact
    tail = next(
        (
            one
            for one in ask.design.back.tails
            if not below(groove.low, one.low) and not above(groove.high, one.high)
        ),
        None,
    )
    if tail is None or not above(tail.high, groove.high):
        return None
    return ask.question(
        "lesson4.way-up",
        "At the back corners the bottom groove runs through a tail that is, at the baseline, "
        f"from {say(tail.low)} to {say(tail.high)} above the bottom edge. The groove is from "
        f"{say(groove.low)} to {say(groove.high)}. How much higher could you plough it before "
        "it comes out of the tail and shows?",
        (
            tail.high - groove.high,
            f"way up = {say(tail.high)} top of the tail − {say(groove.high)} top of the groove "
            f"= {say(tail.high - groove.high)}",
        ),
        (
            tail.high - groove.low,
            "You measured from the lower side of the groove; its upper side comes out first.",
        ),
        (groove.low - tail.low, "That is the way down, to the lower side of the tail."),
        (
            tail.high - tail.low - (groove.high - groove.low),
            "That is the room above and below together.",
        ),
        (tail.high - tail.low, "That is the whole tail; the groove fills a part of it."),
        senses=("too far", "not far enough"),
        nudge="Measure from the upper side of the groove to the upper side of the tail.",
    )
