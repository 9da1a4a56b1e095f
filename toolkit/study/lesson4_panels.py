"""Questions of lesson 4 about lid and bottom: how far each reaches, and the room it needs."""

from __future__ import annotations

from random import Random

from toolkit.box import LiftOffLid, Panel
from toolkit.plan import Plan
from toolkit.results import Working
from toolkit.study.marking import Question, Slip
from toolkit.study.sums import answer_in, once, turned, without


def lid_length(plan: Plan, _: Random | None) -> Question | None:
    """A sliding lid runs from the back groove to the face of the front."""
    d, f, rule = plan.design, plan.design.frame, plan.choices.rule
    lid, say = d.lid, rule.exact
    if isinstance(lid, LiftOffLid) or lid.length.given:
        return None
    sum_, depth = lid.length, lid.reach
    return Question(
        id="lesson4.lid-length",
        prompt=(
            f"Inside, the box is {say(f.inside_length.value)} long. The back groove is "
            f"{say(depth)} deep, the low front {say(f.front_thickness.value)} thick. How long is "
            f"the sliding lid, flush with the front when it is shut? {answer_in(rule)}"
        ),
        answer=sum_.value,
        working=sum_.sentence(rule),
        rule=rule,
        slips=(
            Slip(
                without(sum_, "front thickness"),
                "That lid ends inside the front wall. It passes over the low front and is flush "
                "with its face: add the front's thickness.",
            ),
            Slip(
                without(sum_, "back groove"),
                "That lid only reaches the back wall. It goes into the back groove: add its depth.",
            ),
            Slip(
                f.inside_length.value + 2 * depth,
                "That is a panel in two grooves. There is no groove in the low front: the lid "
                "passes right over it.",
            ),
            Slip(
                sum_.value + depth,
                "One groove too many: only the back wall has one for the end of the lid.",
            ),
            Slip(
                f.outside_length.value,
                "That is the whole box. At the back the lid stops inside the wall, in its groove.",
            ),
        ),
        nudge="Follow the lid from the back groove to the face of the front, and add as you go.",
    )


def _panel_width(panel: Panel, plan: Plan) -> Question | None:
    f, rule = plan.design.frame, plan.choices.rule
    say, name, sum_ = rule.exact, panel.name, panel.width
    if sum_.given:
        return None
    across = -without(Working("", sum_.terms), "inside width", "groove depth")
    inside, outside = f.inside_width.value, f.outside_width.value
    return Question(
        id=f"lesson4.{name}-width",
        prompt=(
            f"The box is {say(inside)} wide inside and {say(outside)} outside; the grooves are "
            f"{say(panel.reach)} deep. The {name} needs {say(across)} of clearance across the "
            f"grain, both sides together. How wide is it? {answer_in(rule)}"
        ),
        answer=sum_.value,
        working=sum_.sentence(rule),
        rule=rule,
        direction="down",
        slips=(
            Slip(
                once(sum_, "groove depth"),
                f"That is one groove; the {name} sits in two.",
            ),
            Slip(
                without(sum_, "clearance across"),
                "That fills both grooves: in a damp summer it pushes the sides apart. Take the "
                "clearance off.",
            ),
            Slip(
                turned(sum_, "clearance across"),
                "The clearance makes the panel narrower, not wider.",
            ),
            Slip(
                without(sum_, "groove depth"),
                f"That {name} falls between the sides: add the depth of both grooves.",
            ),
            Slip(
                inside + panel.reach,
                f"That is one groove and no clearance; the {name} sits in two and must swell.",
            ),
            Slip(
                outside + 2 * panel.reach - across,
                "You began from the outside width; grooves are cut into the inside faces.",
            ),
            Slip(outside, f"That is the whole box; the {name} ends inside its grooves."),
        ),
        senses=("too wide", "too narrow"),
        nudge="Go across: groove, inside width, groove; then the room to swell.",
    )


def lid_width(plan: Plan, _: Random | None) -> Question | None:
    """A sliding lid in the grooves of both sides, with room to swell."""
    lid = plan.design.lid
    return None if isinstance(lid, LiftOffLid) else _panel_width(lid, plan)


def bottom_width(plan: Plan, _: Random | None) -> Question | None:
    """The bottom's width, where there is no lid in grooves to ask the same of."""
    lid = plan.design.lid
    return _panel_width(plan.design.bottom, plan) if isinstance(lid, LiftOffLid) else None


def lift_off_width(plan: Plan, _: Random | None) -> Question | None:
    """A lid that lies on the rim stands out over both sides."""
    lid, f, rule = plan.design.lid, plan.design.frame, plan.choices.rule
    if not isinstance(lid, LiftOffLid) or lid.width.given:
        return None
    say, sum_, over = rule.exact, lid.width, plan.choices.lid.overhang
    inside, outside = f.inside_width.value, f.outside_width.value
    return Question(
        id="lesson4.lift-off-width",
        prompt=(
            f"The box is {say(inside)} wide inside and {say(outside)} outside. The lid lies on "
            f"the rim and stands out {say(over)} over each side. How wide is it? {answer_in(rule)}"
        ),
        answer=sum_.value,
        working=sum_.sentence(rule),
        rule=rule,
        slips=(
            Slip(once(sum_, "overhang"), "That stands out over one side only."),
            Slip(without(sum_, "overhang"), "That is flush with the sides: add what stands out."),
            Slip(turned(sum_, "overhang"), "The overhang makes the lid wider than the box."),
            Slip(
                inside + 2 * over,
                "You began from the inside width; the lid lies on top of the sides.",
            ),
        ),
        senses=("too wide", "too narrow"),
        nudge="Go across the rim: overhang, the whole box, overhang.",
    )


def bottom_length(plan: Plan, _: Random | None) -> Question | None:
    """The captive bottom sits in the grooves of both ends."""
    f, rule, bottom = plan.design.frame, plan.choices.rule, plan.design.bottom
    say, sum_ = rule.exact, bottom.length
    if sum_.given:
        return None
    inside, front = f.inside_length.value, f.front_thickness.value
    along = plan.choices.panels.along
    return Question(
        id="lesson4.bottom-length",
        prompt=(
            f"The box is {say(inside)} long inside; its front is {say(front)} thick, and both ends "
            f"are grooved {say(bottom.reach)} deep. The captive bottom has {say(along)} of "
            f"clearance along the grain, both ends together. How long is it? {answer_in(rule)}"
        ),
        answer=sum_.value,
        working=sum_.sentence(rule),
        rule=rule,
        direction="down",
        slips=(
            Slip(
                once(sum_, "groove depth"),
                "That is one groove; the bottom sits in two, back and front.",
            ),
            Slip(
                without(sum_, "clearance along"),
                "That touches the floor of both grooves and may hold the ends off their "
                "shoulders. Take the clearance off.",
            ),
            Slip(turned(sum_, "clearance along"), "The clearance makes it shorter, not longer."),
            Slip(
                without(sum_, "groove depth"),
                "That bottom falls through: add the depth of both grooves.",
            ),
            Slip(
                inside + bottom.reach + front,
                "That is the way of a sliding lid. The bottom is captive: grooves on both ends.",
            ),
            Slip(f.outside_length.value, "That is the whole box; the bottom ends in its grooves."),
        ),
        nudge="Go along: groove, inside length, groove; then the clearance.",
    )
