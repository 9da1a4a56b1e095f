"""Questions of lesson 4 about heights: the walls, the low front, the fence of the plough."""

from __future__ import annotations

from toolkit.results import Working
from toolkit.study.asking import Asking, turned, without
from toolkit.study.marking import Question

HIGH = ("too high", "too low")


def wall_height(ask: Asking) -> Question | None:
    """How high the walls must be for what is to go between bottom and lid."""
    f, g, rule = ask.frame, ask.design.choices.groove, ask.rule
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
        (
            without(sum_, *grooves),
            "You left the grooves themselves out: each takes its width of the height.",
        ),
        (without(sum_, *edges), "You left out the wood between groove and edge."),
        (deep, "You took the grooves' depth. Up the wall it is their width that counts."),
        (
            without(sum_, *grooves, *edges),
            "That is only the space inside: add the grooves and the wood beyond them.",
        ),
    ]
    if f.lid_groove is not None:
        slips += [
            (without(sum_, "lid groove"), "That is one groove; the sides have two."),
            (
                without(sum_, "groove to top edge"),
                "You left out the rim, the wood above the lid groove.",
            ),
        ]
    return ask.question(
        "lesson4.wall-height",
        f"The bottom groove begins {say(f.bottom_groove.low)} above the bottom edge.{lid} "
        f"Every groove is {say(g.width)} wide and {say(g.depth)} deep, and there is to be "
        f"{say(f.inside_height.value)} of height inside, from the top of the bottom groove to "
        f"the {top}. How high are the walls?",
        sum_,
        *(tuple(slips)),
        senses=HIGH,
        nudge="Climb the wall from its bottom edge: edge, groove, space inside, and so on.",
    )


def front_height(ask: Asking) -> Question | None:
    """How low the front is ripped so that the lid passes over it."""
    d, f, rule = ask.design, ask.frame, ask.rule
    sum_, say = f.front_height, rule.exact
    if f.lid_groove is None or f.lid_floor is None or sum_.given:
        return None
    wall, low, high = f.wall_height.value, f.lid_groove.low, f.lid_groove.high
    return ask.question(
        "lesson4.front-height",
        f"The walls are {say(wall)} high. The lid groove runs from {say(low)} to {say(high)} "
        f"above the bottom edge and the lid is {say(d.lid.thickness.value)} thick. The front "
        f"end has to clear the lid by {say(d.choices.panels.front_drop)}. How high is it?",
        sum_,
        (
            without(sum_, "front drop"),
            "That is level with the floor of the lid groove; take the clearance off, or the "
            "lid drags when the front swells.",
        ),
        (turned(sum_, "front drop"), "The clearance makes the front lower, not higher."),
        (
            wall - d.lid.thickness.value,
            "That is low by the lid's thickness only. The lid's underside runs on the floor "
            "of its groove, and there is a rim above the lid.",
        ),
        (high, "That is the roof of the lid groove: the lid can't pass. Take its floor."),
        ((low + high) / 2, "That is the middle of the lid groove. Take its floor."),
        (wall, "That is a full wall: the lid can't come out."),
        fineness="joints",
        senses=HIGH,
        nudge="The lid slides on the floor of its groove, and the front stays just under that.",
    )


def lid_fence(ask: Asking) -> Question | None:
    """Where the plough's fence is set for the lid groove when it runs on the bottom edge."""
    f, g, rule = ask.frame, ask.design.choices.groove, ask.rule
    if f.lid_groove is None:
        return None
    wall, say = f.wall_height.value, rule.exact
    sum_ = Working.of(
        "fence, lid groove",
        ("wall height", wall),
        ("groove to top edge", -g.top_edge),
        ("lid groove", -g.width),
    )
    return ask.question(
        "lesson4.lid-fence",
        "The walls are not of one width, so the plough's fence runs on the bottom edge for "
        f"both grooves. The wall is {say(wall)} high, the lid groove ends {say(g.top_edge)} "
        f"under the top edge, and it is {say(g.width)} wide and {say(g.depth)} deep. To how "
        "much do you set the fence for the lid groove, from the bottom edge to the near "
        "side of the iron?",
        sum_,
        (
            without(sum_, "lid groove"),
            "That is the far side of the groove. The fence sets the near side of the iron: "
            "take the groove's width off too.",
        ),
        (
            g.top_edge,
            "That is the setting from the top edge; this time the fence runs on the bottom edge.",
        ),
        (
            without(sum_, "groove to top edge"),
            "That groove opens at the rim: leave the wood above it.",
        ),
        (
            wall - g.top_edge - g.depth,
            "You took the groove's depth off. Up the wall it is the width that counts.",
        ),
        (g.bottom_edge, "That is the setting for the bottom groove."),
        fineness="joints",
        senses=HIGH,
        nudge="Come down from the top edge: the rim, then the groove; what is left is the fence.",
    )
