"""Questions of lesson 4 about edges in their grooves: a bevel, room in the damp, a way out."""

from __future__ import annotations

from toolkit.box.bevels import bevel
from toolkit.measures import MM_PER_INCH
from toolkit.results import above, below
from toolkit.study.asking import Asking
from toolkit.study.marking import Question

# How wide a bevel is worked: common practice, no source. [mm]
WIDTHS = {
    "mm": (16.0, 18.0, 20.0, 24.0),
    "in": (MM_PER_INCH * 5 / 8, MM_PER_INCH * 3 / 4, MM_PER_INCH),
}


def thin_edge(ask: Asking) -> Question | None:
    """How thick a bevel leaves the edge, so that it fits where it enters its groove."""
    panel, rule = ask.design.upper_panel, ask.rule
    thick, tongue, reach = panel.thickness.value, panel.tongue, panel.reach
    width, say = ask.pick(WIDTHS[rule.units]), rule.exact
    if not above(thick, tongue):
        return None
    try:
        edge = bevel(thick, tongue=tongue, reach=reach, width=width).rim
    except ValueError:
        return None
    if not above(edge, 0.0):
        return None
    share = f"{say(reach)} ÷ {say(width)}"
    return ask.question(
        "lesson4.{panel.name}-thin-edge",
        edge,
        {
            "at-the-lip": tongue,
            "whole-bevel": tongue - (thick - tongue) * reach / width,
            "too-steep": thick - (thick - tongue) * width / reach,
            "taken-off": thick - tongue,
        },
        panel=panel,
        width=width,
        share=share,
    )


def room_in_the_damp(ask: Asking) -> Question | None:
    """What the damp leaves of the clearance at each side."""
    panel = ask.design.upper_panel
    swells = round(panel.swelling, 2)
    room = panel.along if panel.grain_across else panel.across
    if not above(swells, 0.0) or below(room, swells):
        return None
    return ask.question(
        "lesson4.{panel.name}-damp",
        (room - swells) / 2,
        {
            "both-sides": room - swells,
            "swelling-each-side": room / 2 - swells,
            "on-the-bench": room / 2,
            "dry-winter": (room + swells) / 2,
            "swelling-only": swells / 2,
        },
        panel=panel,
        room=room,
        swells=swells,
    )


def way_up(ask: Asking) -> Question | None:
    """How much higher a groove may be ploughed before it comes out beside its tail."""
    f = ask.frame
    groove = f.bottom_groove
    tail = next(
        (
            one
            for one in ask.design.back.tails
            if not below(groove.low, one.low) and not above(groove.high, one.high)
        ),
        None,
    )
    if tail is None or not above(tail.high, groove.high):
        return None
    return ask.question(
        "lesson4.way-up",
        tail.high - groove.high,
        {
            "from-lower-side": tail.high - groove.low,
            "way-down": groove.low - tail.low,
            "both-ways": tail.high - tail.low - (groove.high - groove.low),
            "whole-tail": tail.high - tail.low,
        },
        tail=tail,
    )
