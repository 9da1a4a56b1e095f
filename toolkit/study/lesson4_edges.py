"""Lesson 4, the wood: edges in their grooves, what a rebate or a tail takes, what goes in."""

from __future__ import annotations

from math import ceil, floor

from toolkit.box import bevel
from toolkit.measures import MM_PER_INCH
from toolkit.plan import plan as planned
from toolkit.results import TOLERANCE, Working, above, below
from toolkit.study.asking import Asking, NotAskedError, turned, without
from toolkit.study.marking import Question

# How wide a bevel is worked: common practice, no source. [mm]
WIDTHS = {
    "mm": (16.0, 18.0, 20.0, 24.0),
    "in": (MM_PER_INCH * 5 / 8, MM_PER_INCH * 3 / 4, MM_PER_INCH),
}
CARDS = {"mm": (0.4, 0.3, 0.25, 0.5), "in": (MM_PER_INCH / 64, 0.008 * MM_PER_INCH)}


def rebate(ask: Asking) -> Question:
    """How deep a panel's edge is rebated so that its tongue runs in the groove."""
    d = ask.design
    panel = d.upper_panel
    ask.only_if(panel.profile == "rebated" and above(panel.rebate_depth, 0.0))
    panels, width = d.choices.panels, d.choices.groove.width
    play = panels.lid_tongue if panel.name == "lid" else panels.bottom_tongue
    sum_ = Working.of(
        f"rebate of the {panel.name}",
        (f"{panel.name} thickness", panel.thickness.value),
        ("groove width", -width),
        ("play", play),
    )
    slips = {
        "no-play": without(sum_, "play"),
        "play-wrong-way": turned(sum_, "play"),
        "tongue": panel.tongue,
        "both-faces": sum_.value / 2,
        "width": panel.rebate_width,
    }
    return ask.question("lesson4.{panel.name}-rebate", sum_, slips, panel=panel, play=play)


def end_length(ask: Asking) -> Question:
    """What a change of the tails' length does to the boards that carry them."""
    d, f, rule = ask.design, ask.frame, ask.rule
    ends = d.choices.corner.tails_on == "ends"
    tail, lap = f.tail_back.value, f.lap_back.value
    before = f.back_cut if ends else f.side_cut
    more = 1.0 if rule.units == "mm" else MM_PER_INCH / 32
    settled = d.choices
    ask.only_if(not before.given and settled.made.tail_length is None and above(lap, more))
    ask.only_if(f.tail_front.value == tail)
    longer = settled.having({"corner.lap": None, "corner.tail_length": tail + more})
    g = planned(longer).design.frame
    boards, other = ("ends", "sides") if ends else ("sides", "ends")
    sum_ = Working(f"length of the {boards}", (g.back_cut if ends else g.side_cut).terms)
    ask.only_if(sum_.value != before.value)
    slips = {
        "no-change": before.value,
        "one-tail": before.value + more,
        "other-way": before.value - 2 * more,
        "front-too": before.value + 2 * more,
        "one-tail-other-way": before.value - more,
    }
    return ask.question(
        "lesson4.tail-change",
        sum_,
        slips,
        boards=boards,
        before=before.value,
        more=more,
        longer=tail + more,
        other=other,
    )


def way_up(ask: Asking) -> Question:
    """How much higher a groove may be ploughed before it comes out beside its tail."""
    f = ask.frame
    groove = f.bottom_groove
    inside = (
        one
        for one in ask.design.back.tails
        if not below(groove.low, one.low) and not above(groove.high, one.high)
    )
    tail = ask.known(next(inside, None))
    ask.only_if(above(tail.high, groove.high))
    slips = {
        "from-lower-side": tail.high - groove.low,
        "way-down": groove.low - tail.low,
        "both-ways": tail.high - tail.low - (groove.high - groove.low),
        "whole-tail": tail.high - tail.low,
    }
    top, floor = ask.rule.written(tail.high), ask.rule.written(groove.high)
    return ask.question("lesson4.way-up", top - floor, slips, tail=tail)


def thin_edge(ask: Asking) -> Question:
    """How thick a bevel leaves the edge, so that it fits where it enters its groove."""
    panel, rule = ask.design.upper_panel, ask.rule
    thick, reach = panel.thickness.value, panel.reach
    tongue = rule.written(panel.tongue)
    width, say = ask.pick(WIDTHS[rule.units]), rule.exact
    ask.only_if(above(thick, tongue))
    try:
        edge = bevel(thick, tongue=tongue, reach=reach, width=width).rim
    except ValueError as error:
        raise NotAskedError from error
    ask.only_if(above(edge, 0.0))
    share = f"{say(reach)} ÷ {say(width)}"
    slips = {
        "at-the-lip": tongue,
        "whole-bevel": tongue - (thick - tongue) * reach / width,
        "too-steep": thick - (thick - tongue) * width / reach,
        "taken-off": thick - tongue,
    }
    named = {"panel": panel, "tongue": tongue, "width": width, "share": share}
    return ask.question("lesson4.{panel.name}-thin-edge", edge, slips, **named)


def room_in_the_damp(ask: Asking) -> Question:
    """What the damp leaves of the clearance at each side."""
    panel = ask.design.upper_panel
    swells = ask.rule.written(panel.swelling)
    room = panel.along if panel.grain_across else panel.across
    ask.only_if(above(swells, 0.0) and not below(room, swells))
    slips = {
        "both-sides": room - swells,
        "swelling-each-side": room / 2 - swells,
        "on-the-bench": room / 2,
        "dry-winter": (room + swells) / 2,
        "swelling-only": swells / 2,
    }
    return ask.question(
        "lesson4.{panel.name}-damp",
        (room - swells) / 2,
        slips,
        panel=panel,
        room=room,
        swells=swells,
        memory=" (from memory)" if panel.season.caution else "",
    )


def cards(ask: Asking) -> Question:
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
