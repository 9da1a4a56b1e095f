"""Questions of lesson 4 about heights: the walls, the low front, the fence of the plough."""

from __future__ import annotations

from random import Random

from toolkit.plan import Plan
from toolkit.results import Working
from toolkit.study.marking import Question, Slip
from toolkit.study.sums import answer_in, turned, without

HIGH = ("too high", "too low")


def wall_height(plan: Plan, _: Random | None) -> Question | None:
    """How high the walls must be for what is to go between bottom and lid."""
    f, g, rule = plan.design.frame, plan.design.choices.groove, plan.choices.rule
    sum_, say = f.wall_height, rule.exact
    if sum_.given:
        return None
    grooves, edges, lid, top = ["bottom groove"], ["bottom edge to groove"], "", "rim"
    if f.lid_groove is not None:
        grooves.append("lid groove")
        edges.append("groove to top edge")
        top = "floor of the lid groove"
        lid = f" The lid groove ends {say(g.top_edge)} under the top edge."
    # Depth runs into the wood and width up the wall: the commonest mix-up of the two.
    deep = sum_.value + len(grooves) * (g.depth - g.width)
    slips = [
        Slip(
            without(sum_, *grooves),
            "You left the grooves themselves out: each takes its width of the height.",
        ),
        Slip(
            without(sum_, *edges),
            "You left out the wood between groove and edge.",
        ),
        Slip(deep, "You took the grooves' depth. Up the wall it is their width that counts."),
        Slip(
            without(sum_, *grooves, *edges),
            "That is only the space inside: add the grooves and the wood beyond them.",
        ),
    ]
    if f.lid_groove is not None:
        slips += [
            Slip(without(sum_, "lid groove"), "That is one groove; the sides have two."),
            Slip(
                without(sum_, "groove to top edge"),
                "You left out the rim, the wood above the lid groove.",
            ),
        ]
    return Question(
        id="lesson4.wall-height",
        prompt=(
            f"The bottom groove begins {say(f.bottom_groove.low)} above the bottom edge.{lid} "
            f"Every groove is {say(g.width)} wide and {say(g.depth)} deep, and there is to be "
            f"{say(f.inside_height.value)} of height inside, from the top of the bottom groove to "
            f"the {top}. How high are the walls? {answer_in(rule)}"
        ),
        answer=sum_.value,
        working=sum_.sentence(rule),
        rule=rule,
        slips=tuple(slips),
        senses=HIGH,
        nudge="Climb the wall from its bottom edge: edge, groove, space inside, and so on.",
    )


def front_height(plan: Plan, _: Random | None) -> Question | None:
    """How low the front is ripped so that the lid passes over it."""
    d, f, rule = plan.design, plan.design.frame, plan.choices.rule
    sum_, say = f.front_height, rule.exact
    if f.lid_groove is None or f.lid_floor is None or sum_.given:
        return None
    wall, low, high = f.wall_height.value, f.lid_groove.low, f.lid_groove.high
    return Question(
        id="lesson4.front-height",
        prompt=(
            f"The walls are {say(wall)} high. The lid groove runs from {say(low)} to {say(high)} "
            f"above the bottom edge and the lid is {say(d.lid.thickness.value)} thick. The front "
            f"end has to clear the lid by {say(d.choices.panels.front_drop)}. How high is it? "
            f"{answer_in(rule, 'joints')}"
        ),
        answer=sum_.value,
        working=sum_.sentence(rule),
        rule=rule,
        fineness="joints",
        slips=(
            Slip(
                without(sum_, "front drop"),
                "That is level with the floor of the lid groove; take the clearance off, or the "
                "lid drags when the front swells.",
            ),
            Slip(turned(sum_, "front drop"), "The clearance makes the front lower, not higher."),
            Slip(
                wall - d.lid.thickness.value,
                "That is low by the lid's thickness only. The lid's underside runs on the floor "
                "of its groove, and there is a rim above the lid.",
            ),
            Slip(high, "That is the roof of the lid groove: the lid can't pass. Take its floor."),
            Slip((low + high) / 2, "That is the middle of the lid groove. Take its floor."),
            Slip(wall, "That is a full wall: the lid can't come out."),
        ),
        senses=HIGH,
        nudge="The lid slides on the floor of its groove, and the front stays just under that.",
    )


def lid_fence(plan: Plan, _: Random | None) -> Question | None:
    """Where the plough's fence is set for the lid groove when it runs on the bottom edge."""
    f, g, rule = plan.design.frame, plan.design.choices.groove, plan.choices.rule
    if f.lid_groove is None:
        return None
    wall, say = f.wall_height.value, rule.exact
    sum_ = Working.of(
        "fence, lid groove",
        ("wall height", wall),
        ("groove to top edge", -g.top_edge),
        ("lid groove", -g.width),
    )
    return Question(
        id="lesson4.lid-fence",
        prompt=(
            "The walls are not of one width, so the plough's fence runs on the bottom edge for "
            f"both grooves. The wall is {say(wall)} high, the lid groove ends {say(g.top_edge)} "
            f"under the top edge, and it is {say(g.width)} wide and {say(g.depth)} deep. To how "
            f"much do you set the fence for the lid groove, from the bottom edge to the near "
            f"side of the iron? {answer_in(rule, 'joints')}"
        ),
        answer=sum_.value,
        working=sum_.sentence(rule),
        rule=rule,
        fineness="joints",
        slips=(
            Slip(
                without(sum_, "lid groove"),
                "That is the far side of the groove. The fence sets the near side of the iron: "
                "take the groove's width off too.",
            ),
            Slip(
                g.top_edge,
                "That is the setting from the top edge; this time the fence runs on the bottom "
                "edge.",
            ),
            Slip(
                without(sum_, "groove to top edge"),
                "That groove opens at the rim: leave the wood above it.",
            ),
            Slip(
                wall - g.top_edge - g.depth,
                "You took the groove's depth off. Up the wall it is the width that counts.",
            ),
            Slip(g.bottom_edge, "That is the setting for the bottom groove."),
        ),
        senses=HIGH,
        nudge="Come down from the top edge: the rim, then the groove; what is left is the fence.",
    )
