"""What an experienced maker would say of lid and bottom, on the bench."""

from __future__ import annotations

from toolkit.box.contents import contents
from toolkit.box.design import Design
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
        found.say(
            "bottom-below-walls",
            thickness=d.bottom.thickness.value,
            low=-d.bottom.low,
            high=d.bottom.high,
        )
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
            found.say(
                "panel-too-thick",
                part=panel.name,
                panel=panel.name,
                thickness=panel.thickness.value,
                width=width,
                left=width - play,
            )
        elif below(panel.tongue, width - play - 0.5):
            found.say("panel-loose-in-thickness", part=panel.name, tongue=panel.tongue, width=width)
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


CHECKS = (check_thickness, check_lid_reach, check_closure)
