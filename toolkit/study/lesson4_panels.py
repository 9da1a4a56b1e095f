"""Questions of lesson 4 about lid and bottom: how far each reaches, and the room it needs."""

from __future__ import annotations

from toolkit.box import LiftOffLid, Panel
from toolkit.results import Working
from toolkit.study.asking import Asking, once, turned, without
from toolkit.study.marking import Question


def lid_length(ask: Asking) -> Question | None:
    """A sliding lid runs from the back groove to the face of the front."""
    d, f, rule = ask.design, ask.frame, ask.rule
    lid, say = d.lid, rule.exact
    if isinstance(lid, LiftOffLid) or lid.length.given:
        return None
    sum_, depth = lid.length, lid.reach
    return ask.question(
        "lesson4.lid-length",
        f"Inside, the box is {say(f.inside_length.value)} long. The back groove is "
        f"{say(depth)} deep, the low front {say(f.front_thickness.value)} thick. How long is "
        "the sliding lid, flush with the front when it is shut?",
        sum_,
        (
            without(sum_, "front thickness"),
            "That lid ends inside the front wall. It passes over the low front and is flush "
            "with its face: add the front's thickness.",
        ),
        (
            without(sum_, "back groove"),
            "That lid only reaches the back wall. It goes into the back groove: add its depth.",
        ),
        (
            f.inside_length.value + 2 * depth,
            "That is a panel in two grooves. There is no groove in the low front: the lid "
            "passes right over it.",
        ),
        (
            sum_.value + depth,
            "One groove too many: only the back wall has one for the end of the lid.",
        ),
        (
            f.outside_length.value,
            "That is the whole box. At the back the lid stops inside the wall, in its groove.",
        ),
        nudge="Follow the lid from the back groove to the face of the front, and add as you go.",
    )


def _panel_width(ask: Asking, panel: Panel) -> Question | None:
    f, rule = ask.frame, ask.rule
    say, name, sum_ = rule.exact, panel.name, panel.width
    if sum_.given:
        return None
    across = -without(Working("", sum_.terms), "inside width", "groove depth")
    inside, outside = f.inside_width.value, f.outside_width.value
    return ask.question(
        f"lesson4.{name}-width",
        f"The box is {say(inside)} wide inside and {say(outside)} outside; the grooves are "
        f"{say(panel.reach)} deep. The {name} needs {say(across)} of clearance across the "
        "grain, both sides together. How wide is it?",
        sum_,
        (once(sum_, "groove depth"), f"That is one groove; the {name} sits in two."),
        (
            without(sum_, "clearance across"),
            "That fills both grooves: in a damp summer it pushes the sides apart. Take the "
            "clearance off.",
        ),
        (turned(sum_, "clearance across"), "The clearance makes the panel narrower, not wider."),
        (
            without(sum_, "groove depth"),
            f"That {name} falls between the sides: add the depth of both grooves.",
        ),
        (
            inside + panel.reach,
            f"That is one groove and no clearance; the {name} sits in two and must swell.",
        ),
        (
            outside + 2 * panel.reach - across,
            "You began from the outside width; grooves are cut into the inside faces.",
        ),
        (outside, f"That is the whole box; the {name} ends inside its grooves."),
        direction="down",
        senses=("too wide", "too narrow"),
        nudge="Go across: groove, inside width, groove; then the room to swell.",
    )


def lid_width(ask: Asking) -> Question | None:
    """A sliding lid in the grooves of both sides, with room to swell."""
    lid = ask.design.lid
    return None if isinstance(lid, LiftOffLid) else _panel_width(ask, lid)


def bottom_width(ask: Asking) -> Question | None:
    """The bottom's width, where there is no lid in grooves to ask the same of."""
    lid = ask.design.lid
    return _panel_width(ask, ask.design.bottom) if isinstance(lid, LiftOffLid) else None


def lift_off_width(ask: Asking) -> Question | None:
    """A lid that lies on the rim stands out over both sides."""
    lid, f, rule = ask.design.lid, ask.frame, ask.rule
    if not isinstance(lid, LiftOffLid) or lid.width.given:
        return None
    say, sum_, over = rule.exact, lid.width, ask.plan.choices.lid.overhang
    inside, outside = f.inside_width.value, f.outside_width.value
    return ask.question(
        "lesson4.lift-off-width",
        f"The box is {say(inside)} wide inside and {say(outside)} outside. The lid lies on "
        f"the rim and stands out {say(over)} over each side. How wide is it?",
        sum_,
        (once(sum_, "overhang"), "That stands out over one side only."),
        (without(sum_, "overhang"), "That is flush with the sides: add what stands out."),
        (turned(sum_, "overhang"), "The overhang makes the lid wider than the box."),
        (inside + 2 * over, "You began from the inside width; the lid lies on top of the sides."),
        senses=("too wide", "too narrow"),
        nudge="Go across the rim: overhang, the whole box, overhang.",
    )


def bottom_length(ask: Asking) -> Question | None:
    """The captive bottom sits in the grooves of both ends."""
    f, rule, bottom = ask.frame, ask.rule, ask.design.bottom
    say, sum_ = rule.exact, bottom.length
    if sum_.given:
        return None
    inside, front = f.inside_length.value, f.front_thickness.value
    along = ask.plan.choices.panels.along
    return ask.question(
        "lesson4.bottom-length",
        f"The box is {say(inside)} long inside; its front is {say(front)} thick, and both ends "
        f"are grooved {say(bottom.reach)} deep. The captive bottom has {say(along)} of "
        "clearance along the grain, both ends together. How long is it?",
        sum_,
        (once(sum_, "groove depth"), "That is one groove; the bottom sits in two, back and front."),
        (
            without(sum_, "clearance along"),
            "That touches the floor of both grooves and may hold the ends off their "
            "shoulders. Take the clearance off.",
        ),
        (turned(sum_, "clearance along"), "The clearance makes it shorter, not longer."),
        (
            without(sum_, "groove depth"),
            "That bottom falls through: add the depth of both grooves.",
        ),
        (
            inside + bottom.reach + front,
            "That is the way of a sliding lid. The bottom is captive: grooves on both ends.",
        ),
        (f.outside_length.value, "That is the whole box; the bottom ends in its grooves."),
        direction="down",
        nudge="Go along: groove, inside length, groove; then the clearance.",
    )
