"""What an experienced maker would say of lid and bottom, on the bench and through the seasons."""

from __future__ import annotations

from typing import Any

from toolkit.box.bevels import width_for
from toolkit.box.choices import Change
from toolkit.box.content_sizes import contents
from toolkit.box.designing import Design
from toolkit.box.lid_way import sliding
from toolkit.box.panels import Panel
from toolkit.box.saying import Said
from toolkit.box.seasons import season
from toolkit.box.walls import DEFAULT_EASE
from toolkit.results import Finding, above, below

_ROOMY = (25.0, 50.0, 100.0)  # inside a box in which nothing was left, tried in turn [mm]


def check_space(d: Design) -> list[Finding]:
    """A space inside at all, and room in it for what the box is made for."""
    c, f, found = d.choices, d.frame, Said(d)
    show = c.rule.exact
    for axis in ("length", "width", "height"):
        inside = getattr(f, f"inside_{axis}")
        if not above(inside.value, 0.0):
            found.say(
                "inside-negative",
                where=f"inside {axis}",
                working=inside.sentence(c.rule),
                axis=axis,
                cures=(found.inside(axis, room) for room in _ROOMY),
            )
    if c.size.contents is None or found:
        return found
    thing = contents(c.size.contents)
    for axis, need in (("length", thing.length), ("width", thing.width)):
        have = getattr(f, f"inside_{axis}").value
        if below(have, need):
            found.say(
                "contents-dont-fit",
                at=f"inside {axis}",
                thing=thing.name,
                need=need,
                have=have,
                source=str(thing.source),
                cures=(found.inside(axis, need + DEFAULT_EASE),),
            )
    if not found:
        spare = [
            f"{show(getattr(f, f'inside_{axis}').value - need)} in {axis}"
            for axis, need in (("length", thing.length), ("width", thing.width))
        ]
        found.say(
            "good-contents", thing=thing.name, spare=" and ".join(spare), source=str(thing.source)
        )
    return found


def check_thickness(d: Design) -> list[Finding]:
    """Panels that stand out of the box, or whose edge does not suit the groove."""
    c, found = d.choices, Said(d)
    show, width = c.rule.exact, c.groove.width
    if below(d.bottom.low, 0.0):
        low, key = -d.bottom.low, found.made_or("bottom_thickness", "thickness.bottom")
        thinner = {key: found.down(d.bottom.high)}
        higher = {"groove.bottom_edge": found.up(c.groove.bottom_edge + low)}
        found.say("bottom-below-walls", piece=d.bottom, low=low, cures=(thinner, higher))
    rim, lid = d.frame.wall_height.value, d.sliding_lid
    if lid is not None and above(lid.high, rim):
        left, key = lid.high - rim, found.made_or("lid_thickness", "thickness.lid")
        lower = {"groove.top_edge": found.up(c.groove.top_edge + left)}
        ways = ({key: found.down(rim - lid.low)}, lower)
        found.say("lid-proud", thickness=lid.thickness.value, left=left, cures=ways)
    for panel in d.grooved:
        play = c.panels.lid_tongue if panel.name == "lid" else c.panels.bottom_tongue
        if above(panel.tongue, width):
            found.say("panel-too-thick", part=panel.name, piece=panel, cures=(_rebated(panel),))
        elif below(panel.tongue, width - play - 0.5):
            thicker: Change = {f"thickness.{panel.name}": found.up(width - play)}
            found.say("panel-loose-in-thickness", part=panel.name, piece=panel, cures=(thicker,))
    if not found:
        message = f"the bottom lies {show(d.bottom.low)} up inside the walls"
        if lid is not None:
            message += f", the lid {show(rim - lid.high)} under the rim"
        found.say("good-thickness", where=d.panel_words, message=message + ".")
    return found


def _rebated(panel: Panel) -> Change:
    return {f"panels.{panel.name}_profile": "rebated"}


def check_lid_reach(d: Design) -> list[Finding]:
    """A lid that, closed flush with the front, falls short of the back groove."""
    lid = d.sliding_lid
    if lid is None:
        return []
    c, f = d.choices, d.frame
    depth = c.groove.depth
    reach = lid.length.value - f.front_thickness.value - f.inside_length.value
    need = c.customs.lid_reach_share * depth
    if below(reach, need):
        name = "lid-short" if below(reach, 0.0) else "lid-short, a little"
        return Said(d).say(
            name,
            reach=reach,
            short=-reach,
            need=need,
            left=lid.length.value + need - reach,
            there=max(reach, 0.0),
            cures=({"made.lid_length": None},),
        )
    return Said(d).say("good-lid-reach", reach=reach)


def check_closure(d: Design) -> list[Finding]:
    """What there is to say of the way the box is closed, and of keys that it has no use for."""
    closure = d.choices.lid.closure
    ignored = f" Ignored: {', '.join(d.stray)}." if d.stray else ""
    message, found = closure.remark + ignored, Said(d)
    return found.say("good-closure", message=message) if message else found


def check_bevels(d: Design) -> list[Finding]:
    """Bevels too narrow to leave a rim, or one thick enough not to chip."""
    customs, found = d.choices.customs, Said(d)
    for panel in d.grooved:
        if panel.profile != "bevelled" or not above(panel.rebate_depth, 0.0):
            continue
        rim, width = panel.bevel
        ways = [_rebated(panel)]
        if above(panel.tongue, customs.bevel_rim_least):
            wide = width_for(
                panel.thickness.value,
                tongue=panel.tongue,
                reach=panel.reach,
                rim=customs.bevel_rim_least,
            )
            ways.insert(0, {"panels.bevel_width": found.up(wide)})
        if not above(rim, 0.0):
            found.say("bevel-too-narrow", part=panel.name, piece=panel, width=width, cures=ways)
        elif below(rim, customs.bevel_rim_least):
            found.say("bevel-rim-thin", part=panel.name, width=width, rim=rim, cures=ways)
    return found


def check_lid_way(d: Design) -> list[Finding]:
    """A front that rises in the damp until the lid no longer passes over it.

    It reckons with the worst that walls can do, a flat-sawn front beside quarter-sawn sides, so
    that it warns and forbids nothing; a front too high on the bench is another finding.
    """
    if d.sliding_lid is None:
        return []
    at, found, made = sliding(d), Said(d), d.choices.made.front_width
    if at.passes or below(at.gap, 0.0) or below(at.up, 0.0):
        return []
    lower = {"panels.under_lid": found.up(at.gap - at.gap_damp)}
    if made is not None:
        lower = {"made.front_width": found.down(made + at.gap_damp)}
    return found.say(
        "front-rises",
        front_rise=round(at.front_rise, 2),
        floor_rise=round(at.floor_rise, 2),
        gap_damp=round(-at.gap_damp, 2),
        up=round(at.up, 2),
        told=season(d.choices, "ends").told or season(d.choices, "sides").told,
        cures=(lower,),
    )


def check_seasons(d: Design) -> list[Finding]:
    """Panels that swell until they burst the joint, or shrink until they drop out."""
    customs, found = d.choices.customs, Said(d)
    if d.choices.panels.grain != "along":
        moves = max(panel.swelling + panel.shrinking for panel in d.grooved)
        told = max(panel.season.told for panel in d.grooved)
        values: dict[str, Any] = {"moves": moves, "panels": d.panel_words, "told": told}
        along: Change = {"panels.grain": "along"}
        return found.say("panel-grain-across", where=d.panel_words, cures=(along,), **values)
    for panel in d.grooved:
        need, name, before = panel.swelling + panel.season.room, panel.name, len(found)
        if below(panel.across, need):
            custom = "swelling_room"
            if not below(panel.across, panel.swelling + customs.swelling_room):
                custom = "memory_room"
            bursts = below(panel.across, panel.swelling)
            tight = "swells-tight" if bursts else "swells-tight, a little"
            left = panel.across - panel.swelling
            found.say(tight, part=name, piece=panel, need=need, left=left, custom=custom)
        grip = panel.worst_grip
        if below(grip, customs.grip_least):
            loose = "drops-out" if below(grip, 0.0) else "drops-out, a little"
            found.say(loose, part=name, piece=panel, grip=max(grip, 0.0), out=-grip)
        if len(found) == before:
            found.say("good-season", part=name, piece=panel, need=need)
    return found


def check_lift_off(d: Design) -> list[Finding]:
    """A lid that lies on the rim."""
    lid, f, found = d.lift_off_lid, d.frame, Said(d)
    if lid is None:
        return found
    thick = lid.thickness.value
    if lid.seat == "rebate" and not below(lid.down, thick):
        shallower = {"lid.rebate_depth": found.down(thick / 2)}
        found.say("lid-rebate-through", down=lid.down, thick=thick, cures=(shallower,))
    moves = f.outside_width.value * (lid.season.swelling - lid.season.shrinking)
    overhang = (lid.width.value - f.outside_width.value) / 2
    if below(2 * overhang, moves):
        wider: Change = {"lid.overhang": found.up(moves / 2)}
        values: dict[str, Any] = {"moves": moves, "overhang": overhang}
        found.say("lid-overhang-small", piece=lid, cures=(wider,), **values)
    usable = f.inside_height.value - lid.down
    if not above(usable, 0.0):
        deeper = (found.inside("height", lid.down + room) for room in _ROOMY)
        found.say("inside-negative, under the lid", down=lid.down, cures=deeper)
    if not found:
        found.say("good-lift-off", piece=lid, moves=moves, usable=usable)
    return found


CHECKS = (
    check_thickness,
    check_lid_reach,
    check_closure,
    check_bevels,
    check_lid_way,
    check_seasons,
    check_lift_off,
)
