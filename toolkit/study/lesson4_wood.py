"""Questions of lesson 4 about the wood: what a groove leaves, a rebate takes, a tail adds."""

from __future__ import annotations

from toolkit.measures import MM_PER_INCH
from toolkit.plan import plan as planned
from toolkit.results import Working, above
from toolkit.study.asking import Asking, turned, without
from toolkit.study.marking import Question


def behind_groove(ask: Asking) -> Question | None:
    """What is left of a side behind its groove."""
    f, g, rule = ask.frame, ask.design.choices.groove, ask.rule
    side, lap, say = f.side_thickness.value, f.lap_back.value, rule.exact
    sum_ = Working.of(
        "wood behind the groove", ("side thickness", side), ("groove depth", -g.depth)
    )
    return ask.question(
        "lesson4.behind-groove",
        f"The sides are {say(side)} thick. The groove is {say(g.width)} wide and "
        f"{say(g.depth)} deep. How much wood is left behind it?",
        sum_,
        (
            side - g.width,
            "You took the groove's width off, which runs up the wall. Take its depth off.",
        ),
        (g.depth, "That is the groove itself; the question is what it leaves."),
        (side - 2 * g.depth, "That is a wall grooved on both faces; the outside has no groove."),
        (
            side - g.depth - lap,
            "The lap is at the corner only; along the wall nothing but the groove is gone.",
        ),
        (side - lap, "That is the tail's length. Here the groove's depth is gone."),
        senses=("too much", "too little"),
        nudge="Go through the side from its outside face to the floor of the groove.",
    )


def rebate(ask: Asking) -> Question | None:
    """How deep a panel's edge is rebated so that its tongue runs in the groove."""
    d, rule = ask.design, ask.rule
    panel = d.upper_panel
    if panel.profile != "rebated" or not above(panel.rebate_depth, 0.0):
        return None
    panels, width, say = d.choices.panels, d.choices.groove.width, rule.exact
    play = panels.lid_tongue if panel.name == "lid" else panels.bottom_tongue
    sum_ = Working.of(
        f"rebate of the {panel.name}",
        (f"{panel.name} thickness", panel.thickness.value),
        ("groove width", -width),
        ("play", play),
    )
    return ask.question(
        f"lesson4.{panel.name}-rebate",
        f"The {panel.name} is {say(panel.thickness.value)} thick and its grooves are "
        f"{say(width)} wide. Its tongue is to be {say(play)} thinner than the groove. How "
        "deep is the rebate, cut on one face only?",
        sum_,
        (
            without(sum_, "play"),
            "That tongue is as thick as the groove is wide and sticks in it. Cut deeper, by "
            "the play.",
        ),
        (
            turned(sum_, "play"),
            "The play went the wrong way: that tongue is thicker than the groove.",
        ),
        (panel.tongue, "That is the tongue, the wood that stays; cut the rest away."),
        (sum_.value / 2, "That is a rebate on both faces; this one is on one face only."),
        (panel.rebate_width, "That is how wide it is; the question is how deep."),
        fineness="joints",
        senses=("too deep", "too shallow"),
        nudge="Tongue and rebate together are the panel's thickness.",
    )


def end_length(ask: Asking) -> Question | None:
    """What a change of the tails' length does to the boards that carry them."""
    d, f, rule = ask.design, ask.frame, ask.rule
    ends = d.choices.corner.tails_on == "ends"
    tail, lap, say = f.tail_back.value, f.lap_back.value, rule.exact
    before = f.back_length if ends else f.side_length
    more = 1.0 if rule.units == "mm" else MM_PER_INCH / 32
    settled = d.choices
    if before.given or settled.made.tail_length is not None or not above(lap, more):
        return None
    if f.tail_front.value != tail:
        return None
    longer = settled.having({"corner.lap": None, "corner.tail_length": tail + more})
    g = planned(longer).design.frame
    boards, other = ("ends", "sides") if ends else ("sides", "ends")
    sum_ = Working(f"length of the {boards}", (g.back_length if ends else g.side_length).terms)
    if sum_.value == before.value:
        return None
    return ask.question(
        "lesson4.tail-change",
        f"The tails are on the {boards}: they are {say(tail)} long, the lap is {say(lap)} and "
        f"the {boards} are {say(before.value)} long. You thin the lap by {say(more)}, so that "
        f"the tails are {say(tail + more)}; inside and outside the box stays the same. How "
        f"long are the {boards} now?",
        sum_,
        (before.value, f"They do change: longer tails reach further into the {other}."),
        (
            before.value + more,
            f"That is one tail longer. There are tails at both ends of the {boards}.",
        ),
        (before.value - 2 * more, f"The other way: longer tails reach further into the {other}."),
        (
            before.value + 2 * more,
            "At the front the side already runs on to the face, as an ear beside the lid; "
            "only the back lap changes it.",
        ),
        (before.value - more, f"The other way: longer tails reach further into the {other}."),
        nudge=f"Go along one of the {boards}, from tip to tip of its tails.",
    )
