"""What an experienced maker would say of a panel's bevels, and of the lid's way in the damp."""

from __future__ import annotations

from toolkit.box.customs import cite
from toolkit.box.design import Design
from toolkit.box.panel_checks import grooved_panels
from toolkit.box.panels import Panel
from toolkit.box.season_checks import MOVEMENT
from toolkit.box.sliding import sliding
from toolkit.results import About, Finding, Place, above, below

_lid, _panel = About("lid"), About("panel")


def check_bevels(d: Design) -> list[Finding]:
    """Bevels too narrow to leave a rim, or one thick enough not to chip."""
    show, customs, found = d.choices.rule.exact, d.choices.customs, []
    for panel in grooved_panels(d):
        if panel.profile != "bevelled" or not above(panel.rebate_depth, 0.0):
            continue
        rim, width = panel.bevel
        if not above(rim, 0.0):
            found.append(
                _panel(
                    "wont_work",
                    "bevel-too-narrow",
                    Place("bevel", panel.name),
                    f"a bevel {show(width)} wide, {show(panel.tongue)} thick where it enters the "
                    f"groove and {show(panel.reach)} deep in it, comes to nothing before "
                    "its edge.",
                    "Make it wider (panels.bevel_width), rebate the edge, or plane the panel "
                    "thinner.",
                    brief="a bevel is too narrow and comes to nothing",
                )
            )
        elif below(rim, customs.bevel_rim_least):
            found.append(
                _panel(
                    "care",
                    "bevel-rim-thin",
                    Place("bevel", panel.name),
                    f"a bevel {show(width)} wide leaves an edge of {show(round(rim, 2))}, under "
                    f"{show(customs.bevel_rim_least)}: it chips where the panel is pushed in.",
                    "Make the bevel wider (panels.bevel_width), or rebate the edge.",
                    cite("bevel_rim_least"),
                    brief="a bevel leaves a thin edge",
                )
            )
    return found


def check_lid_way(d: Design) -> list[Finding]:
    """A front that rises in the damp until the lid no longer passes over it.

    It reckons with the worst that walls can do, a flat-sawn front beside quarter-sawn sides, so
    that it warns and forbids nothing; a front too high on the bench is another finding.
    """
    if not isinstance(d.lid, Panel) or d.frame.lid_floor is None:
        return []
    at, show, rule = sliding(d), d.choices.rule.exact, d.choices.rule
    if at.passes or below(at.gap, 0.0):
        return []
    lower = rule.round(-at.gap_damp, fineness="joints", direction="up")
    return [
        _lid(
            "care",
            "front-rises",
            Place("front in the damp", "front", name="front end"),
            f"in the damp a flat-sawn front rises {show(round(at.front_rise, 2))}, the floor of "
            f"the lid groove in quarter-sawn sides only {show(round(at.floor_rise, 2))}: the front "
            f"then stands {show(round(-at.gap_damp, 2))} over it, more than the lid's play of "
            f"{show(round(at.up, 2))}, and the lid jams.",
            f"Plane the front {show(lower)} lower, or saw front and sides out of one board.",
            MOVEMENT,
            brief="the front can rise into the lid's way in the damp",
        )
    ]


CHECKS = (check_bevels, check_lid_way)
