"""Questions of lesson 4 about heights: the walls, the low front, the fence of the plough."""

from __future__ import annotations

from toolkit.results import Working
from toolkit.study.asking import Asking, turned, without
from toolkit.study.marking import Question


def wall_height(ask: Asking) -> Question | None:
    """How high the walls must be for what is to go between bottom and lid."""
    f, g, rule = ask.frame, ask.design.choices.groove, ask.rule
    sum_ = f.wall_height
    if sum_.given:
        return None
    grooves, edges, lid, top = ["bottom groove"], ["bottom edge to groove"], "", "rim"
    one_of_two = {}
    if f.lid_groove is not None:
        grooves.append("lid groove")
        edges.append("groove to top edge")
        top = "floor of the lid groove"
        lid = f" The lid groove ends {rule.exact(g.top_edge)} under the top edge."
        one_of_two = {"one-groove": without(sum_, grooves[1]), "no-rim": without(sum_, edges[1])}
    slips = {
        "no-grooves": without(sum_, *grooves),
        "no-edges": without(sum_, *edges),
        # Depth runs into the wood and width up the wall: the commonest mix-up of the two.
        "depth-for-width": sum_.value + len(grooves) * (g.depth - g.width),
        "inside-only": without(sum_, *grooves, *edges),
    }
    return ask.question("lesson4.wall-height", sum_, slips | one_of_two, lid=lid, top=top)


def front_height(ask: Asking) -> Question | None:
    """How low the front is ripped so that the lid passes over it."""
    d, f = ask.design, ask.frame
    sum_ = f.front_height
    if f.lid_groove is None or f.lid_floor is None or sum_.given:
        return None
    wall, low, high = f.wall_height.value, f.lid_groove.low, f.lid_groove.high
    return ask.question(
        "lesson4.front-height",
        sum_,
        {
            "no-clearance": without(sum_, "front drop"),
            "clearance-added": turned(sum_, "front drop"),
            "lid-thickness": wall - d.lid.thickness.value,
            "roof": high,
            "middle": (low + high) / 2,
            "full-wall": wall,
        },
    )


def lid_fence(ask: Asking) -> Question | None:
    """Where the plough's fence is set for the lid groove when it runs on the bottom edge."""
    f, g = ask.frame, ask.design.choices.groove
    if f.lid_groove is None:
        return None
    wall = f.wall_height.value
    sum_ = Working.of(
        "fence, lid groove",
        ("wall height", wall),
        ("groove to top edge", -g.top_edge),
        ("lid groove", -g.width),
    )
    return ask.question(
        "lesson4.lid-fence",
        sum_,
        {
            "far-side": without(sum_, "lid groove"),
            "from-the-top": g.top_edge,
            "no-rim": without(sum_, "groove to top edge"),
            "depth-for-width": wall - g.top_edge - g.depth,
            "bottom-groove": g.bottom_edge,
        },
    )
