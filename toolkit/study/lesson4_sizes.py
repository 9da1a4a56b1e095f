"""Lesson 4, sizes: walls, the low front, the fence, passes; lid and bottom."""

from __future__ import annotations

from math import ceil, floor

from toolkit.box import Panel
from toolkit.measures import MM_PER_INCH
from toolkit.results import TOLERANCE, Working
from toolkit.study.asking import Asking, once, turned, without
from toolkit.study.marking import Question

# What a plough takes off in one pass, and how thick a card is: common practice, no source. [mm]
SHAVINGS = {
    "mm": (0.25, 0.2, 0.3, 0.15),
    "in": (0.01 * MM_PER_INCH, 0.008 * MM_PER_INCH, 0.012 * MM_PER_INCH),
}


def _panel_width(ask: Asking, panel: Panel) -> Question:
    f = ask.frame
    sum_ = panel.width
    ask.only_if(not sum_.given)
    across = -without(Working("", sum_.terms), "inside width", "groove depth")
    inside, outside = f.inside_width.value, f.outside_width.value
    slips = {
        "one-groove": once(sum_, "groove depth"),
        "clearance-left-on": without(sum_, "clearance across"),
        "clearance-added": turned(sum_, "clearance across"),
        "no-grooves": without(sum_, "groove depth"),
        "one-groove-clearance-left-on": inside + panel.reach,
        "from-outside": outside + 2 * panel.reach - across,
        "whole-box": outside,
    }
    return ask.question("lesson4.{panel.name}-width", sum_, slips, panel=panel, across=across)


def wall_height(ask: Asking) -> Question:
    """How high the walls must be for what is to go between bottom and lid."""
    f, g, rule = ask.frame, ask.design.choices.groove, ask.rule
    sum_ = f.wall_height
    ask.only_if(not sum_.given)
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


def front_height(ask: Asking) -> Question:
    """How low the front is ripped so that the lid passes over it."""
    d, f = ask.design, ask.frame
    sum_ = f.front_height
    groove = ask.known(f.lid_groove)
    ask.only_if(f.lid_floor is not None and not sum_.given)
    wall, low, high = f.wall_height.value, groove.low, groove.high
    slips = {
        "clearance-left-on": without(sum_, "clearance under the lid"),
        "clearance-added": turned(sum_, "clearance under the lid"),
        "lid-thickness": wall - d.lid.thickness.value,
        "roof": high,
        "middle": (low + high) / 2,
        "full-wall": wall,
    }
    return ask.question("lesson4.front-height", sum_, slips)


def lid_fence(ask: Asking) -> Question:
    """Where the plough's fence is set for the lid groove when it runs on the bottom edge."""
    f, g = ask.frame, ask.design.choices.groove
    ask.only_if(f.lid_groove is not None)
    wall = f.wall_height.value
    sum_ = Working.of(
        "fence, lid groove",
        ("wall height", wall),
        ("groove to top edge", -g.top_edge),
        ("lid groove", -g.width),
    )
    slips = {
        "far-side": without(sum_, "lid groove"),
        "from-the-top": g.top_edge,
        "no-rim": without(sum_, "groove to top edge"),
        "depth-for-width": wall - g.top_edge - g.depth,
        "bottom-groove": g.bottom_edge,
    }
    return ask.question("lesson4.lid-fence", sum_, slips)


def behind_groove(ask: Asking) -> Question:
    """What is left of a side behind its groove."""
    f, g = ask.frame, ask.design.choices.groove
    side, lap = f.side_thickness.value, f.lap_back.value
    sum_ = Working.of(
        "wood behind the groove", ("side thickness", side), ("groove depth", -g.depth)
    )
    slips = {
        "width-for-depth": side - g.width,
        "groove": g.depth,
        "both-faces": side - 2 * g.depth,
        "lap-too": side - g.depth - lap,
        "tail": f.tail_back.value,
    }
    return ask.question("lesson4.behind-groove", sum_, slips)


def passes(ask: Asking) -> Question:
    """How many times the plough goes along one groove."""
    c, rule = ask.design.choices, ask.rule
    depth, width = c.groove.depth, c.groove.width
    shaving = ask.pick(SHAVINGS[rule.units])

    def count(size: float) -> float:
        return float(ceil(size / shaving * (1 - TOLERANCE)))

    answer = count(depth)
    slips = {
        "width": count(width),
        "rounded-down": floor(depth / shaving * (1 + TOLERANCE)),
        "both-grooves": count(2 * depth),
        "whole-side": count(ask.frame.side_thickness.value),
    }
    return ask.question("lesson4.passes", answer, slips, shaving=shaving)


def lid_length(ask: Asking) -> Question:
    """A sliding lid runs from the back groove to the face of the front."""
    f, lid = ask.frame, ask.known(ask.design.sliding_lid)
    ask.only_if(not lid.length.given)
    sum_, depth = lid.length, lid.reach
    slips = {
        "no-front": without(sum_, "front thickness"),
        "no-back-groove": without(sum_, "back groove"),
        "two-grooves": f.inside_length.value + 2 * depth,
        "groove-too-many": sum_.value + depth,
        "whole-box": f.outside_length.value,
    }
    return ask.question("lesson4.lid-length", sum_, slips)


def lid_width(ask: Asking) -> Question:
    """A sliding lid in the grooves of both sides, with room to swell."""
    return _panel_width(ask, ask.known(ask.design.sliding_lid))


def bottom_length(ask: Asking) -> Question:
    """The captive bottom sits in the grooves of both ends."""
    f, bottom = ask.frame, ask.design.bottom
    sum_ = bottom.length
    ask.only_if(not sum_.given)
    inside, front = f.inside_length.value, f.front_thickness.value
    slips = {
        "one-groove": once(sum_, "groove depth"),
        "clearance-left-on": without(sum_, "clearance along"),
        "clearance-added": turned(sum_, "clearance along"),
        "no-grooves": without(sum_, "groove depth"),
    }
    if ask.design.lids:
        slips["sliding-lid"] = inside + bottom.reach + front
    slips["whole-box"] = f.outside_length.value
    return ask.question("lesson4.bottom-length", sum_, slips)


def bottom_width(ask: Asking) -> Question:
    """The bottom's width, where there is no lid in grooves to ask the same of."""
    ask.only_if(ask.design.sliding_lid is None)
    return _panel_width(ask, ask.design.bottom)


def lift_off_width(ask: Asking) -> Question:
    """A lid that lies on the rim stands out over both sides."""
    lid, f = ask.known(ask.design.lift_off_lid), ask.frame
    ask.only_if(not lid.width.given)
    sum_, over = lid.width, ask.design.choices.lid.overhang
    inside = f.inside_width.value
    slips = {
        "one-side": once(sum_, "overhang"),
        "flush": without(sum_, "overhang"),
        "taken-off": turned(sum_, "overhang"),
        "from-inside": inside + 2 * over,
    }
    return ask.question("lesson4.lift-off-width", sum_, slips)
