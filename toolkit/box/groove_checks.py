"""What an experienced maker would say of the grooves and the walls round them."""

from __future__ import annotations

from dataclasses import replace

from toolkit.box.customs import cite
from toolkit.box.design import Design
from toolkit.results import About, Finding, Place, above, below

_corner, _groove, _lid = About("corner"), About("groove"), About("lid")


def _walls(d: Design) -> tuple[tuple[Place, float], ...]:
    f = d.frame
    return (
        (Place("groove floor", "side", name="sides"), f.side_thickness.value),
        (Place("groove floor", "back", name="back end"), f.back_thickness.value),
        (Place("groove floor", "front", name="front end"), f.front_thickness.value),
    )


def check_depth(d: Design) -> list[Finding]:
    """Grooves so deep that little of the wall, or of the lap, is left behind them."""
    c, found = d.choices, []
    depth, show, customs = c.groove.depth, c.rule.exact, c.customs
    for where, wall in _walls(d):
        if not below(depth, wall):
            found.append(
                _groove(
                    "wont_work",
                    "groove-through-wall",
                    where,
                    f"a groove {show(depth)} deep goes right through a wall of {show(wall)}.",
                    f"Make it {show(wall * customs.groove_share_wanted)} deep.",
                    brief="the groove goes through the wall",
                )
            )
        elif above(depth, wall * customs.groove_share_most):
            found.append(
                _groove(
                    "care",
                    "groove-deep",
                    where,
                    f"the groove is {show(depth)} deep in {show(wall)}: only "
                    f"{show(wall - depth)} is left behind it, less than half.",
                    f"Make it {show(wall * customs.groove_share_most)} deep at most, or thicken "
                    "the wall.",
                    cite("groove_share_most"),
                    brief="the groove is deep for its wall",
                )
            )
        elif above(depth, wall * customs.groove_share_wanted):
            found.append(
                _groove(
                    "care",
                    "groove-over-third",
                    replace(where, spot=""),
                    f"the groove is {show(depth)} deep in {show(wall)}, over a third; "
                    f"{show(wall - depth)} is left behind it.",
                    f"{show(wall * customs.groove_share_wanted)} is deep enough unless a panel "
                    "moves much.",
                    cite("groove_share_wanted"),
                )
            )
    if not found:
        behind = min(wall for _, wall in _walls(d)) - depth
        message = f"{show(depth)} deep; at least {show(behind)} of wall is left behind."
        found.append(_groove("good", "good-depth", "grooves", message))
    return found + _beside_lap(d)


def _beside_lap(d: Design) -> list[Finding]:
    c = d.choices
    depth, show = c.groove.depth, c.rule.exact
    if c.corner.joint == "through":
        return []
    found = []
    laps = (d.frame.lap_back.value, d.frame.lap_front.value)
    for name, board, lap in zip(("back", "front"), d.pin_board_thickness, laps, strict=True):
        if above(depth + lap, board):
            found.append(
                _corner(
                    "wont_work",
                    "groove-and-lap",
                    Place("groove at lap", corner=name),
                    f"groove {show(depth)} and lap {show(lap)} together are {show(depth + lap)}, "
                    f"more than the {show(board)} pin board: the groove cuts into the lap and "
                    "runs out behind the tail.",
                    f"Make the groove {show(board - lap)} deep at most, or the lap thinner.",
                    brief="the groove cuts into the lap",
                    note="groove\ncuts into\nthe lap",
                )
            )
    return found


def check_exits(d: Design) -> list[Finding]:
    """Grooves that come out into daylight, and those with a sliver of tail beside them."""
    c = d.choices
    show, ends, found = c.rule.exact, c.groove.ends, []
    for hole in d.holes if ends == "through" else ():
        size = f"{show(hole.height)} × {show(hole.depth)}"
        place = f"from {show(hole.low)} to {show(hole.high)} above the bottom edge"
        if hole.cause == "pin":
            found.append(
                _corner(
                    "care",
                    "groove-outside-tail",
                    hole.face,
                    f"the {hole.groove} groove does not lie inside a tail at the {hole.corner} "
                    f"corners and leaves a hole of {size}, {place}.",
                    "Move the groove or the tails until one holds all of it, or stop or plug "
                    "the groove.",
                )
            )
        else:
            found.append(
                _corner(
                    "care",
                    "groove-shows-through-joint",
                    hole.face,
                    f"the {hole.groove} groove comes out at the tip of a through tail at the "
                    f"{hole.corner} corners: a hole of {size}, {place}.",
                    'Stop the groove short of the corner or plug it (groove.ends = "stopped" or '
                    '"plugged"), or lap that joint.',
                )
            )
    if ends != "through" and d.holes:
        verb = "stopped short of" if ends == "stopped" else "plugged at"
        message = f"{len(d.holes)} groove ends that would show are {verb} the corners."
        found.append(_corner("good", "good-exits", "grooves", message))
    return found + _margins(d)


def _margins(d: Design) -> list[Finding]:
    c = d.choices
    show, least, found = c.rule.exact, c.customs.groove_margin_least, []
    inside = [(fit, min(fit.margins)) for fit in d.fits if fit.margins is not None]
    for fit, narrow in inside:
        if below(narrow, least):
            found.append(
                _corner(
                    "care",
                    "groove-sliver",
                    Place("groove side", f"{fit.groove} groove", fit.corner),
                    f"beside the {fit.groove} groove the tail has only {show(narrow)}, under "
                    f"{show(least)}: that sliver breaks when the groove is ploughed.",
                    "Move the groove towards the middle of its tail, or widen the tail.",
                    cite("groove_margin_least"),
                    brief="only a sliver of tail is left beside a groove",
                    note=f"sliver {c.rule.show(narrow)}\nbeside the groove",
                )
            )
    if inside and len(inside) == len(d.fits) and not found:
        room = min(narrow for _, narrow in inside)
        message = f"every groove lies inside a tail, with {show(room)} of it or more beside."
        found.append(_corner("good", "good-margins", "grooves", message))
    return found


def check_rim_and_front(d: Design) -> list[Finding]:
    """The strip above the lid groove, and the low front under it."""
    c, f = d.choices, d.frame
    if f.lid_groove is None or f.lid_floor is None:
        return []
    show, customs, found = c.rule.exact, c.customs, []
    rim = f.wall_height.value - f.lid_groove.high
    least = max(customs.rim_least, c.groove.width)
    if below(rim, least):
        found.append(
            _lid(
                "care",
                "rim-thin",
                Place("rim", "side", name="sides, above the lid groove"),
                f"the strip above the lid groove is {show(rim)}, under {show(least)} (and no "
                "thinner than the groove is wide): it snaps when someone lifts the box by its lid.",
                f"Raise the rim: groove.top_edge {show(least)}.",
                cite("rim_least"),
                brief="the rim above the lid groove is thin",
            )
        )
    gap = f.lid_floor.value - f.front_height.value
    if below(gap, 0.0):
        found.append(
            _lid(
                "wont_work",
                "front-too-high",
                Place("front edge", "front", name="front end"),
                f"the front stands {show(-gap)} above the floor of the lid groove: the lid "
                "cannot pass.",
                f"Plane the front down to {show(f.lid_floor.value - c.panels.front_drop)}.",
                brief="the front is too high for the lid to pass",
                note=f"{c.rule.show(-gap)} too high:\nthe lid cannot pass",
            )
        )
    elif above(gap, customs.front_gap_most):
        found.append(
            _lid(
                "care",
                "front-too-low",
                Place("front edge", "front", name="front end"),
                f"the front ends {show(gap)} under the floor of the lid groove: a gap that a "
                "card slips through.",
                f"Aim at {show(c.panels.front_drop)}; {show(customs.front_gap_most)} is the most.",
                cite("front_gap_most"),
                brief="a gap is left under the lid",
                note=f"a gap of {c.rule.show(gap)}",
            )
        )
    if not found:
        message = f"rim strip {show(rim)}; the front clears the lid by {show(gap)}."
        found.append(_lid("good", "good-rim", "lid opening", message))
    return found


CHECKS = (check_depth, check_exits, check_rim_and_front)
