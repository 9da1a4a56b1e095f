"""Questions of lesson 4 about lid and bottom: how far each reaches, and the room it needs."""

from __future__ import annotations

from toolkit.box import LiftOffLid, Panel
from toolkit.results import Working
from toolkit.study.asking import Asking, once, turned, without
from toolkit.study.marking import Question


def lid_length(ask: Asking) -> Question | None:
    """A sliding lid runs from the back groove to the face of the front."""
    d, f = ask.design, ask.frame
    lid = d.lid
    if isinstance(lid, LiftOffLid) or lid.length.given:
        return None
    sum_, depth = lid.length, lid.reach
    return ask.question(
        "lesson4.lid-length",
        sum_,
        {
            "no-front": without(sum_, "front thickness"),
            "no-back-groove": without(sum_, "back groove"),
            "two-grooves": f.inside_length.value + 2 * depth,
            "groove-too-many": sum_.value + depth,
            "whole-box": f.outside_length.value,
        },
    )


def _panel_width(ask: Asking, panel: Panel) -> Question | None:
    f = ask.frame
    sum_ = panel.width
    if sum_.given:
        return None
    across = -without(Working("", sum_.terms), "inside width", "groove depth")
    inside, outside = f.inside_width.value, f.outside_width.value
    return ask.question(
        "lesson4.{panel.name}-width",
        sum_,
        {
            "one-groove": once(sum_, "groove depth"),
            "no-clearance": without(sum_, "clearance across"),
            "clearance-added": turned(sum_, "clearance across"),
            "no-grooves": without(sum_, "groove depth"),
            "one-groove-no-clearance": inside + panel.reach,
            "from-outside": outside + 2 * panel.reach - across,
            "whole-box": outside,
        },
        panel=panel,
        across=across,
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
    lid, f = ask.design.lid, ask.frame
    if not isinstance(lid, LiftOffLid) or lid.width.given:
        return None
    sum_, over = lid.width, ask.plan.choices.lid.overhang
    inside = f.inside_width.value
    return ask.question(
        "lesson4.lift-off-width",
        sum_,
        {
            "one-side": once(sum_, "overhang"),
            "flush": without(sum_, "overhang"),
            "taken-off": turned(sum_, "overhang"),
            "from-inside": inside + 2 * over,
        },
    )


def bottom_length(ask: Asking) -> Question | None:
    """The captive bottom sits in the grooves of both ends."""
    f, bottom = ask.frame, ask.design.bottom
    sum_ = bottom.length
    if sum_.given:
        return None
    inside, front = f.inside_length.value, f.front_thickness.value
    return ask.question(
        "lesson4.bottom-length",
        sum_,
        {
            "one-groove": once(sum_, "groove depth"),
            "no-clearance": without(sum_, "clearance along"),
            "clearance-added": turned(sum_, "clearance along"),
            "no-grooves": without(sum_, "groove depth"),
            "sliding-lid": inside + bottom.reach + front,
            "whole-box": f.outside_length.value,
        },
    )
