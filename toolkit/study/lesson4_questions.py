"""Lesson 4, grooves, bottom and lid: what to reckon before ploughing, and how it goes wrong."""

from __future__ import annotations

from math import ceil, floor

from toolkit.measures import MM_PER_INCH
from toolkit.results import TOLERANCE
from toolkit.study.asking import Asking
from toolkit.study.lesson4_edges import (
    behind_groove,
    end_length,
    rebate,
    room_in_the_damp,
    thin_edge,
    way_up,
)
from toolkit.study.lesson4_panels import (
    bottom_length,
    bottom_width,
    front_height,
    lid_fence,
    lid_length,
    lid_width,
    lift_off_width,
    wall_height,
)
from toolkit.study.marking import Question

# What a plough takes off in one pass, and how thick a card is: common practice, no source. [mm]
SHAVINGS = {
    "mm": (0.25, 0.2, 0.3, 0.15),
    "in": (0.01 * MM_PER_INCH, 0.008 * MM_PER_INCH, 0.012 * MM_PER_INCH),
}
CARDS = {"mm": (0.4, 0.3, 0.25, 0.5), "in": (MM_PER_INCH / 64, MM_PER_INCH / 128)}


def passes(ask: Asking) -> Question | None:
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


def cards(ask: Asking) -> Question | None:
    """How many cards lie in the box."""
    d, rule = ask.design, ask.rule
    inside, wall = d.frame.inside_height.value, d.frame.wall_height.value
    down = d.lift_off_lid.down if d.lift_off_lid is not None else 0.0
    thick, say = ask.pick(CARDS[rule.units]), rule.exact

    def count(height: float) -> float:
        return float(floor(height / thick * (1 + TOLERANCE)))

    answer = count(inside - down)
    reaches = f"; the lid reaches {say(down)} down into it" if down else ""
    free = f"({say(inside, unit=False)} − {say(down)})" if down else say(inside)
    slips = {"wall-height": count(wall)}
    for lid in d.lids:
        slips["lid-taken-off"] = count(inside - down - lid.thickness.value)
        slips["lid-forgotten"] = count(inside)
    slips["rounded-up"] = float(ceil((inside - down) / thick * (1 - TOLERANCE)))
    return ask.question("lesson4.cards", answer, slips, reaches=reaches, thick=thick, free=free)


TEMPLATES = (
    wall_height,
    front_height,
    lid_fence,
    behind_groove,
    passes,
    lid_length,
    lid_width,
    bottom_length,
    bottom_width,
    lift_off_width,
    rebate,
    end_length,
    way_up,
    thin_edge,
    room_in_the_damp,
    cards,
)
