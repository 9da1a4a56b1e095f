"""What an experienced maker would say of a panel's bevels, and of the lid's way in the damp."""

from __future__ import annotations

from toolkit.box.design import Design
from toolkit.box.saying import Said
from toolkit.box.season_checks import MOVEMENT
from toolkit.box.sliding import sliding
from toolkit.results import Finding, above, below


def check_bevels(d: Design) -> list[Finding]:
    """Bevels too narrow to leave a rim, or one thick enough not to chip."""
    customs, found = d.choices.customs, Said(d)
    for panel in d.grooved:
        if panel.profile != "bevelled" or not above(panel.rebate_depth, 0.0):
            continue
        rim, width = panel.bevel
        if not above(rim, 0.0):
            found.say(
                "bevel-too-narrow",
                part=panel.name,
                width=width,
                tongue=panel.tongue,
                reach=panel.reach,
            )
        elif below(rim, customs.bevel_rim_least):
            found.say(
                "bevel-rim-thin",
                part=panel.name,
                width=width,
                rim=round(rim, 2),
                bevel_rim_least=customs.bevel_rim_least,
            )
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
        source=MOVEMENT,
    )


CHECKS = (check_bevels, check_lid_way)
