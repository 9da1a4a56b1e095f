"""What an experienced maker would say of lid and bottom, on the bench."""

from __future__ import annotations

from toolkit.box.contents import contents
from toolkit.box.customs import cite
from toolkit.box.design import Design
from toolkit.box.panels import Panel
from toolkit.results import CUSTOM, About, Finding, Place, above, below

_lid, _panel, _space = About("lid"), About("panel"), About("space")


def grooved_panels(d: Design) -> tuple[Panel, ...]:
    """The panels that stand in grooves: the bottom, and a sliding lid."""
    return (d.bottom, d.lid) if isinstance(d.lid, Panel) else (d.bottom,)


def check_space(d: Design) -> list[Finding]:
    """A space inside at all, and room in it for what the box is made for."""
    c, f, found = d.choices, d.frame, []
    show = c.rule.exact
    for axis in ("length", "width", "height"):
        inside = getattr(f, f"inside_{axis}")
        if not above(inside.value, 0.0):
            found.append(
                _space(
                    "wont_work",
                    "inside-negative",
                    Place("inside", name=f"inside {axis}"),
                    f"nothing is left inside: {inside.sentence(c.rule)}.",
                    f"Make the outside {axis} larger, or the walls thinner.",
                    brief="nothing is left inside",
                )
            )
    if c.size.contents is None or found:
        return found
    thing = contents(c.size.contents)
    for axis, need in (("length", thing.length), ("width", thing.width)):
        have = getattr(f, f"inside_{axis}").value
        if below(have, need):
            found.append(
                _space(
                    "wont_work",
                    "contents-dont-fit",
                    f"inside {axis}",
                    f"{thing.name} are {show(need)} and the box is {show(have)} inside.",
                    f"Make it {show(need)} and some ease inside.",
                    str(thing.source),
                )
            )
    if not found:
        spare = [
            f"{show(getattr(f, f'inside_{axis}').value - need)} in {axis}"
            for axis, need in (("length", thing.length), ("width", thing.width))
        ]
        message = f"{thing.name} go in with {' and '.join(spare)} to spare."
        found.append(_space("good", "good-contents", "inside", message, "", str(thing.source)))
    return found


def check_thickness(d: Design) -> list[Finding]:
    """Panels that stand out of the box, or whose edge does not suit the groove."""
    c, found = d.choices, []
    show, width = c.rule.exact, c.groove.width
    if below(d.bottom.low, 0.0):
        found.append(
            _panel(
                "wont_work",
                "bottom-below-walls",
                Place("underside", "bottom"),
                f"the bottom is {show(d.bottom.thickness.value)} thick and hangs "
                f"{show(-d.bottom.low)} below the walls: the box rocks on it.",
                f"Plane it to {show(d.bottom.high)} or less, or raise its groove.",
                brief="the bottom hangs below the walls",
                note=f"{c.rule.show(-d.bottom.low)} below the walls",
            )
        )
    rim = d.frame.wall_height.value
    if isinstance(d.lid, Panel) and above(d.lid.high, rim):
        found.append(
            _panel(
                "care",
                "lid-proud",
                Place("lid top", "lid"),
                f"the lid is {show(d.lid.thickness.value)} thick and stands "
                f"{show(d.lid.high - rim)} above the rim.",
                f"Plane it to {show(rim - d.lid.low)} or less.",
                brief="the lid stands above the rim",
                note=f"{c.rule.show(d.lid.high - rim)} above the rim",
            )
        )
    for panel in grooved_panels(d):
        play = c.panels.lid_tongue if panel.name == "lid" else c.panels.bottom_tongue
        if above(panel.tongue, width):
            found.append(
                _panel(
                    "wont_work",
                    "panel-too-thick",
                    Place("tongue", panel.name),
                    f"a flat {panel.name} of {show(panel.thickness.value)} does not enter a "
                    f"groove of {show(width)}.",
                    f"Plane it to {show(width - play)}, or rebate its edges.",
                    brief="a panel does not enter its groove",
                    note=f"{panel.name} does not enter its groove",
                )
            )
        elif below(panel.tongue, width - play - 0.5):
            found.append(
                _panel(
                    "care",
                    "panel-loose-in-thickness",
                    Place("play", panel.name),
                    f"its edge is {show(panel.tongue)} in a groove of {show(width)}: it rattles.",
                    "Use thicker wood, or a narrower plough iron.",
                    CUSTOM,
                    brief="a panel is loose in its groove",
                )
            )
    if not found:
        message = f"the bottom lies {show(d.bottom.low)} up inside the walls"
        if isinstance(d.lid, Panel):
            message += f", the lid {show(rim - d.lid.high)} under the rim"
        found.append(_panel("good", "good-thickness", "lid and bottom", message + "."))
    return found


def check_lid_reach(d: Design) -> list[Finding]:
    """A lid that, closed flush with the front, falls short of the back groove."""
    if not isinstance(d.lid, Panel):
        return []
    c, f = d.choices, d.frame
    show, depth = c.rule.exact, c.groove.depth
    reach = d.lid.length.value - f.front_thickness.value - f.inside_length.value
    need = c.customs.lid_reach_share * depth
    if below(reach, need):
        return [
            _lid(
                "wont_work",
                "lid-short",
                Place("lid end", "lid"),
                f"flush with the front it reaches {show(reach)} into the back groove, under "
                f"{show(need)}: it falls short and tips.",
                f"It has to be {show(d.lid.length.value + need - reach)} long at least; cut the "
                "back groove's lid anew.",
                cite("lid_reach_share"),
                brief="the lid falls short of the back groove",
                note=f"only {c.rule.show(max(reach, 0.0))}\nin the back groove",
            )
        ]
    message = f"it reaches {show(reach)} into the back groove."
    return [_lid("good", "good-lid-reach", Place(part="lid"), message)]


CHECKS = (check_thickness, check_lid_reach)
