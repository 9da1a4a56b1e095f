"""Questions of lesson 4 about the wood: what a groove leaves, a rebate takes, a tail adds."""

from __future__ import annotations

from toolkit.measures import MM_PER_INCH
from toolkit.plan import plan as planned
from toolkit.results import Working, above
from toolkit.study.asking import Asking, turned, without
from toolkit.study.marking import Question


def behind_groove(ask: Asking) -> Question | None:
    """What is left of a side behind its groove."""
    f, g = ask.frame, ask.design.choices.groove
    side, lap = f.side_thickness.value, f.lap_back.value
    sum_ = Working.of(
        "wood behind the groove", ("side thickness", side), ("groove depth", -g.depth)
    )
    return ask.question(
        "lesson4.behind-groove",
        sum_,
        {
            "width-for-depth": side - g.width,
            "groove": g.depth,
            "both-faces": side - 2 * g.depth,
            "lap-too": side - g.depth - lap,
            "tail": side - lap,
        },
    )


def rebate(ask: Asking) -> Question | None:
    """How deep a panel's edge is rebated so that its tongue runs in the groove."""
    d = ask.design
    panel = d.upper_panel
    if panel.profile != "rebated" or not above(panel.rebate_depth, 0.0):
        return None
    panels, width = d.choices.panels, d.choices.groove.width
    play = panels.lid_tongue if panel.name == "lid" else panels.bottom_tongue
    sum_ = Working.of(
        f"rebate of the {panel.name}",
        (f"{panel.name} thickness", panel.thickness.value),
        ("groove width", -width),
        ("play", play),
    )
    return ask.question(
        "lesson4.{panel.name}-rebate",
        sum_,
        {
            "no-play": without(sum_, "play"),
            "play-wrong-way": turned(sum_, "play"),
            "tongue": panel.tongue,
            "both-faces": sum_.value / 2,
            "width": panel.rebate_width,
        },
        panel=panel,
        play=play,
    )


def end_length(ask: Asking) -> Question | None:
    """What a change of the tails' length does to the boards that carry them."""
    d, f, rule = ask.design, ask.frame, ask.rule
    ends = d.choices.corner.tails_on == "ends"
    tail, lap = f.tail_back.value, f.lap_back.value
    before = f.back_length if ends else f.side_length
    more = 1.0 if rule.units == "mm" else MM_PER_INCH / 32
    settled = d.choices
    if before.given or settled.made.tail_length is not None or not above(lap, more):
        return None
    if f.tail_front.value != tail:
        return None
    longer = settled.having({"corner.lap": None, "corner.tail_length": tail + more})
    g = planned(longer).design.frame
    boards, other = ("ends", "sides") if ends else ("sides", "ends")
    sum_ = Working(f"length of the {boards}", (g.back_length if ends else g.side_length).terms)
    if sum_.value == before.value:
        return None
    return ask.question(
        "lesson4.tail-change",
        sum_,
        {
            "no-change": before.value,
            "one-tail": before.value + more,
            "other-way": before.value - 2 * more,
            "front-too": before.value + 2 * more,
            "one-tail-other-way": before.value - more,
        },
        boards=boards,
        before=before.value,
        more=more,
        longer=tail + more,
        other=other,
    )
