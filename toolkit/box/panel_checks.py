"""What an experienced maker would say of lid and bottom, on the bench and through the seasons."""

from __future__ import annotations

from toolkit.box.clearances import window
from toolkit.box.content_sizes import contents
from toolkit.box.designing import Design
from toolkit.box.lid_way import sliding
from toolkit.box.saying import Said
from toolkit.results import Finding, above, below


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
        found.say("bottom-below-walls", piece=d.bottom, low=-d.bottom.low)
    rim, lid = d.frame.wall_height.value, d.sliding_lid
    if lid is not None and above(lid.high, rim):
        found.say(
            "lid-proud",
            thickness=lid.thickness.value,
            left=lid.high - rim,
            down_to=rim - lid.low,
        )
    for panel in d.grooved:
        play = c.panels.lid_tongue if panel.name == "lid" else c.panels.bottom_tongue
        if above(panel.tongue, width):
            found.say("panel-too-thick", part=panel.name, piece=panel, left=width - play)
        elif below(panel.tongue, width - play - 0.5):
            found.say("panel-loose-in-thickness", part=panel.name, piece=panel)
    if not found:
        message = f"the bottom lies {show(d.bottom.low)} up inside the walls"
        if lid is not None:
            message += f", the lid {show(rim - lid.high)} under the rim"
        found.say("good-thickness", where=d.panel_words, message=message + ".")
    return found


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
        return Said(d).say(
            "lid-short",
            reach=reach,
            need=need,
            left=lid.length.value + need - reach,
            there=max(reach, 0.0),
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
        if not above(rim, 0.0):
            found.say("bevel-too-narrow", part=panel.name, piece=panel, width=width)
        elif below(rim, customs.bevel_rim_least):
            found.say("bevel-rim-thin", part=panel.name, width=width, rim=round(rim, 2))
    return found


def check_lid_way(d: Design) -> list[Finding]:
    """A front that rises in the damp until the lid no longer passes over it.

    It reckons with the worst that walls can do, a flat-sawn front beside quarter-sawn sides, so
    that it warns and forbids nothing; a front too high on the bench is another finding.
    """
    if d.sliding_lid is None:
        return []
    at, rule = sliding(d), d.choices.rule
    if at.passes or below(at.gap, 0.0):
        return []
    lower = rule.round(-at.gap_damp, fineness="joints", direction="up")
    return Said(d).say(
        "front-rises",
        front_rise=round(at.front_rise, 2),
        floor_rise=round(at.floor_rise, 2),
        gap_damp=round(-at.gap_damp, 2),
        up=round(at.up, 2),
        lower=lower,
    )


def check_seasons(d: Design) -> list[Finding]:
    """Panels that swell until they burst the joint, or shrink until they drop out."""
    customs, found = d.choices.customs, Said(d)
    if d.choices.panels.grain != "along":
        moves = max(panel.swelling + panel.shrinking for panel in d.grooved)
        words = d.panel_words
        return found.say("panel-grain-across", where=words, moves=moves, panels=words)
    for panel in d.grooved:
        need, name, before = panel.swelling + panel.season.room, panel.name, len(found)
        if below(panel.across, need):
            tighter = need - panel.across
            fits = window(d, panel=name).open
            tight = "swells-tight" if fits else "swells-tight, at any clearance"
            if not below(panel.across, panel.swelling + customs.swelling_room):
                memory = "swells-tight, from memory"
                tight = memory if fits else "swells-tight, from memory, at any clearance"
            found.say(tight, part=name, piece=panel, need=need, tighter=tighter)
        grip = panel.worst_grip
        if below(grip, customs.grip_least):
            found.say("drops-out", part=name, piece=panel, grip=max(grip, 0.0))
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
        found.say("lid-rebate-through", down=lid.down, thick=thick, half=thick / 2)
    moves = f.outside_width.value * (lid.season.swelling - lid.season.shrinking)
    overhang = (lid.width.value - f.outside_width.value) / 2
    if below(2 * overhang, moves):
        found.say("lid-overhang-small", piece=lid, moves=moves, overhang=overhang, enough=moves / 2)
    usable = f.inside_height.value - lid.down
    if not above(usable, 0.0):
        found.say("inside-negative, under the lid", down=lid.down)
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
