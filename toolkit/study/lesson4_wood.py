"""Questions of lesson 4 about the wood: what a groove leaves, a rebate takes, a tail adds."""

from __future__ import annotations

from random import Random

from toolkit.measures import MM_PER_INCH
from toolkit.plan import Plan, plan as worked_out
from toolkit.results import Working, above
from toolkit.study.marking import Question, Slip
from toolkit.study.sums import answer_in, turned, without


def behind_groove(plan: Plan, _: Random | None) -> Question | None:
    """What is left of a side behind its groove."""
    f, g, rule = plan.design.frame, plan.design.choices.groove, plan.choices.rule
    side, lap, say = f.side_thickness.value, f.lap_back.value, rule.exact
    sum_ = Working.of(
        "wood behind the groove", ("side thickness", side), ("groove depth", -g.depth)
    )
    return Question(
        id="lesson4.behind-groove",
        prompt=(
            f"The sides are {say(side)} thick. The groove is {say(g.width)} wide and "
            f"{say(g.depth)} deep. How much wood is left behind it? {answer_in(rule)}"
        ),
        answer=sum_.value,
        working=sum_.sentence(rule),
        rule=rule,
        slips=(
            Slip(
                side - g.width,
                "You took the groove's width off, which runs up the wall. Take its depth off.",
            ),
            Slip(g.depth, "That is the groove itself; the question is what it leaves."),
            Slip(
                side - 2 * g.depth,
                "That is a wall grooved on both faces; the outside has no groove.",
            ),
            Slip(
                side - g.depth - lap,
                "The lap is at the corner only; along the wall nothing but the groove is gone.",
            ),
            Slip(side - lap, "That is the tail's length. Here the groove's depth is gone."),
        ),
        senses=("too much", "too little"),
        nudge="Go through the side from its outside face to the floor of the groove.",
    )


def rebate(plan: Plan, _: Random | None) -> Question | None:
    """How deep a panel's edge is rebated so that its tongue runs in the groove."""
    d, rule = plan.design, plan.choices.rule
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
    return Question(
        id=f"lesson4.{panel.name}-rebate",
        prompt=(
            f"The {panel.name} is {say(panel.thickness.value)} thick and its grooves are "
            f"{say(width)} wide. Its tongue is to be {say(play)} thinner than the groove. How "
            f"deep is the rebate, cut on one face only? {answer_in(rule, 'joints')}"
        ),
        answer=sum_.value,
        working=sum_.sentence(rule),
        rule=rule,
        fineness="joints",
        slips=(
            Slip(
                without(sum_, "play"),
                "That tongue is as thick as the groove is wide and sticks in it. Cut deeper, by "
                "the play.",
            ),
            Slip(
                turned(sum_, "play"),
                "The play went the wrong way: that tongue is thicker than the groove.",
            ),
            Slip(panel.tongue, "That is the tongue, the wood that stays; cut the rest away."),
            Slip(sum_.value / 2, "That is a rebate on both faces; this one is on one face only."),
            Slip(panel.rebate_width, "That is how wide it is; the question is how deep."),
        ),
        senses=("too deep", "too shallow"),
        nudge="Tongue and rebate together are the panel's thickness.",
    )


def end_length(plan: Plan, _: Random | None) -> Question | None:
    """What a change of the tails' length does to the boards that carry them."""
    d, f, rule = plan.design, plan.design.frame, plan.choices.rule
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
    g = worked_out(longer).design.frame
    boards, other = ("ends", "sides") if ends else ("sides", "ends")
    sum_ = Working(f"length of the {boards}", (g.back_length if ends else g.side_length).terms)
    if sum_.value == before.value:
        return None
    return Question(
        id="lesson4.tail-change",
        prompt=(
            f"The tails are on the {boards}: they are {say(tail)} long, the lap is {say(lap)} and "
            f"the {boards} are {say(before.value)} long. You thin the lap by {say(more)}, so that "
            f"the tails are {say(tail + more)}; inside and outside the box stays the same. How "
            f"long are the {boards} now? {answer_in(rule)}"
        ),
        answer=sum_.value,
        working=sum_.sentence(rule),
        rule=rule,
        slips=(
            Slip(
                before.value,
                f"They do change: longer tails reach further into the {other}.",
            ),
            Slip(
                before.value + more,
                f"That is one tail longer. There are tails at both ends of the {boards}.",
            ),
            Slip(
                before.value - 2 * more,
                f"The other way: longer tails reach further into the {other}.",
            ),
            Slip(
                before.value + 2 * more,
                "At the front the side already runs on to the face, as an ear beside the lid; "
                "only the back lap changes it.",
            ),
            Slip(
                before.value - more,
                f"The other way: longer tails reach further into the {other}.",
            ),
        ),
        nudge=f"Go along one of the {boards}, from tip to tip of its tails.",
    )
