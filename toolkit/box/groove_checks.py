"""What an experienced maker would say of the grooves and the walls round them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Any

from toolkit.box.choices import Change
from toolkit.box.designing import Design
from toolkit.box.joint_checks import with_lap
from toolkit.box.panel_defaults import UNDER_LID
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
        thickness = "thickness.side" if where.part == "side" else "thickness.end"

        def ways(
            share: float, wall: float = wall, thickness: str = thickness
        ) -> tuple[Change, ...]:
            stout = found.up(depth / share, fineness="sizes")
            return {"groove.depth": found.down(wall * share)}, {thickness: stout}

        if not below(depth, wall):
            cures = ways(customs.groove_share_wanted)
            found.say("groove-through-wall", at=where, cures=cures, **sizes)
        elif above(depth, most):
            found.say("groove-deep", at=where, cures=ways(customs.groove_share_most), **sizes)
        elif above(depth, wanted):
            at, cures = replace(where, spot=""), ways(customs.groove_share_wanted)
            found.say("groove-over-third", at=at, cures=cures, **sizes)
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
                cures=(
                    {"groove.depth": found.down(board - lap)},
                    with_lap(d, found.down(board - depth), board=board),
                ),
            )
    return found


def check_exits(d: Design) -> list[Finding]:
    """Grooves that come out into daylight, and those with a sliver of tail beside them."""
    c = d.choices
    show, ends, found = c.rule.exact, c.groove.ends, Said(d)
    for hole in d.holes if ends == "through" else ():
        size = f"{show(hole.height)} × {show(hole.depth)}"
        place = f"from {show(hole.low)} to {show(hole.high)} above the bottom edge"
        values: dict[str, Any] = {"at": hole.place, "size": size, "place": place}
        values |= {"groove": hole.groove, "corner": hole.corner}
        if hole.cause == "pin":
            ways = (*_into_a_tail(d, hole.groove, hole.corner), _STOPPED)
            found.say("groove-outside-tail", cures=ways, **values)
        else:
            found.say("groove-shows-through-joint", cures=(_STOPPED,), **values)
    if ends != "through" and d.holes:
        verb = "stopped short of" if ends == "stopped" else "plugged at"
        found.say("good-exits", holes=len(d.holes), verb=verb)
    return found + _margins(d)


_STOPPED: Change = {"groove.ends": "stopped"}


def _into_a_tail(d: Design, groove: str, name: str) -> Iterator[Change]:
    """A groove ploughed inside the nearest tails, or tails that are set out round it."""
    c, found, f = d.choices, Said(d), d.frame
    g, customs = c.groove, c.customs
    corner = d.back if name == "back" else d.front
    own = "bottom_edge" if groove == "bottom" else "top_edge"
    span = f.bottom_groove if groove == "bottom" else f.lid_groove
    if span is None:
        return
    alike = f.lid_groove is not None and g.bottom_edge == g.top_edge
    keys = ("bottom_edge", "top_edge") if alike else (own,)
    margin, edge = customs.groove_margin_least, getattr(g, own)
    moves = []
    for tail in corner.tails:
        low, high = tail.low + margin, tail.high - margin - g.width
        if not above(low, high):
            moves.append(min(max(span.low, low), high) - span.low)
    for by in sorted(moves, key=abs)[:2]:
        new = edge + by if groove == "bottom" else edge - by
        new = found.up(new) if new > edge else found.down(new)
        if new >= 0:
            yield {f"groove.{key}": new for key in keys}
    thinner = found.down(edge - margin)
    if above(thinner, customs.half_pin_least):
        yield {"corner.half_pin": thinner}
    count = len(corner.tails)
    yield from ({f"corner.tails_{name}": other} for other in (count + 1, count - 1) if other)


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
                cures=_into_a_tail(d, fit.groove, fit.corner),
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
        found.say("rim-thin", rim=rim, least=least, cures=({"groove.top_edge": found.up(least)},))
    gap = f.lid_floor.value - f.front_height.value
    usual = found.up(UNDER_LID[0])
    if below(gap, 0.0):
        play = 0.0 if d.sliding_lid is None else c.groove.width - d.sliding_lid.tongue
        high = "front-too-high" if above(-gap, play) else "front-too-high, within its play"
        made = {"made.front_width": found.down(f.lid_floor.value - usual)}
        planned = c.made.front_width is None
        ways = ({"panels.under_lid": usual} if planned else made,)
        found.say(high, gap=-gap, play=play, cures=ways)
    elif above(gap, customs.front_gap_most):
        anew = {"made.front_width": None, "panels.under_lid": usual}
        found.say("front-too-low", gap=gap, cures=({"panels.under_lid": usual}, anew))
    if not found:
        found.say("good-rim", rim=rim, gap=gap)
    return found


CHECKS = (check_depth, check_exits, check_rim_and_front)
