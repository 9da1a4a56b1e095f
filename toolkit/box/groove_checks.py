"""What an experienced maker would say of the grooves and the walls round them."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from toolkit.box.designing import Design
from toolkit.box.saying import Said
from toolkit.results import Finding, Place, above, below


def _walls(d: Design) -> tuple[tuple[Place, float], ...]:
    f = d.frame
    return (
        (Place("groove floor", "side", name="sides"), f.side_thickness.value),
        (Place("groove floor", "back", name="back end"), f.back_thickness.value),
        (Place("groove floor", "front", name="front end"), f.front_thickness.value),
    )


def check_depth(d: Design) -> list[Finding]:
    """Grooves so deep that little of the wall, or of the lap, is left behind them."""
    c, found = d.choices, Said(d)
    depth, customs = c.groove.depth, c.customs
    for where, wall in _walls(d):
        wanted, most = wall * customs.groove_share_wanted, wall * customs.groove_share_most
        sizes: dict[str, Any] = {"depth": depth, "wall": wall, "left": wall - depth}
        if not below(depth, wall):
            found.say("groove-through-wall", at=where, wanted=wanted, **sizes)
        elif above(depth, most):
            found.say("groove-deep", at=where, most=most, **sizes)
        elif above(depth, wanted):
            found.say("groove-over-third", at=replace(where, spot=""), wanted=wanted, **sizes)
    if not found:
        behind = min(wall for _, wall in _walls(d)) - depth
        found.say("good-depth", depth=depth, behind=behind)
    return found + _beside_lap(d)


def _beside_lap(d: Design) -> list[Finding]:
    c = d.choices
    depth = c.groove.depth
    if c.corner.joint == "through":
        return []
    found = Said(d)
    laps = (d.frame.lap_back.value, d.frame.lap_front.value)
    for name, board, lap in zip(("back", "front"), d.pin_board_thickness, laps, strict=True):
        if above(depth + lap, board):
            found.say(
                "groove-and-lap",
                corner=name,
                depth=depth,
                lap=lap,
                together=depth + lap,
                board=board,
                left=board - lap,
            )
    return found


def check_exits(d: Design) -> list[Finding]:
    """Grooves that come out into daylight, and those with a sliver of tail beside them."""
    c = d.choices
    show, ends, found = c.rule.exact, c.groove.ends, Said(d)
    for hole in d.holes if ends == "through" else ():
        size = f"{show(hole.height)} × {show(hole.depth)}"
        place = f"from {show(hole.low)} to {show(hole.high)} above the bottom edge"
        shows = {"pin": "groove-outside-tail", "tip": "groove-shows-through-joint"}[hole.cause]
        names = {"groove": hole.groove, "corner": hole.corner}
        found.say(shows, at=hole.face, size=size, place=place, **names)
    if ends != "through" and d.holes:
        verb = "stopped short of" if ends == "stopped" else "plugged at"
        found.say("good-exits", holes=len(d.holes), verb=verb)
    return found + _margins(d)


def _margins(d: Design) -> list[Finding]:
    c = d.choices
    least, found = c.customs.groove_margin_least, Said(d)
    inside = [(fit, min(fit.margins)) for fit in d.fits if fit.margins is not None]
    for fit, narrow in inside:
        if below(narrow, least):
            found.say(
                "groove-sliver",
                part=f"{fit.groove} groove",
                corner=fit.corner,
                groove=fit.groove,
                narrow=narrow,
                least=least,
            )
    if inside and len(inside) == len(d.fits) and not found:
        room = min(narrow for _, narrow in inside)
        found.say("good-margins", room=room)
    return found


def check_rim_and_front(d: Design) -> list[Finding]:
    """The strip above the lid groove, and the low front under it."""
    c, f = d.choices, d.frame
    if f.lid_groove is None or f.lid_floor is None:
        return []
    customs, found = c.customs, Said(d)
    rim = f.wall_height.value - f.lid_groove.high
    least = max(customs.rim_least, c.groove.width)
    if below(rim, least):
        found.say("rim-thin", rim=rim, least=least)
    gap = f.lid_floor.value - f.front_height.value
    if below(gap, 0.0):
        found.say("front-too-high", gap=-gap, left=f.lid_floor.value - c.panels.under_lid)
    elif above(gap, customs.front_gap_most):
        found.say("front-too-low", gap=gap)
    if not found:
        found.say("good-rim", rim=rim, gap=gap)
    return found


CHECKS = (check_depth, check_exits, check_rim_and_front)
