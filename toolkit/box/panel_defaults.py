"""Rules for lid and bottom where a box file leaves their keys out: rings, clearances, overhang."""

from __future__ import annotations

from dataclasses import replace

from toolkit.box.change import key_at
from toolkit.box.choices import SWELLS, Choices
from toolkit.box.choosing import Chooser
from toolkit.box.seasons import quartered, season
from toolkit.box.settled import SettledLid, SettledPanels, values_of
from toolkit.box.walls import Frame
from toolkit.results import Chosen, above, below
from toolkit.wood import RING_WORDS

UNDER_LID = (0.6, 0.8)  # clearance that is usual, and the most of it [mm]
_OVERHANG = 2.0  # of a lift-off lid [mm]


def across(c: Choices, panel: str, span: float) -> float:
    """Clearance, on a mark of the rule, to swell from the bench to the dampest room. [mm]"""
    return c.rule.round(season(c, panel).clearance(span), direction="up")


def _grooved(c: Choices) -> tuple[str, ...]:
    return ("bottom", "lid") if c.lid.closure.grooved else ("bottom",)


def turned_rings(c: Choices, span: float, depth: float, choose: Chooser) -> Choices:
    """With rings for which every panel has room in the damp and is held in the dry."""
    if c.wood.rings is not None:
        return c
    word, turned = "", c
    # Where none has both, the stillest is left.
    for tried, rings in RING_WORDS.items():
        word, turned = tried, replace(c, wood=replace(c.wood, rings=rings))
        if all(_stays(turned, panel, span, depth) for panel in _grooved(c)):
            break
    choose.notes.append(Chosen("wood.rings", word, key_at("wood.rings").rule))
    return turned


def _stays(c: Choices, panel: str, span: float, depth: float) -> bool:
    given: float | None = getattr(c.panels, f"{panel}_across")
    has, year = across(c, panel, span) if given is None else given, season(c, panel)
    grip = depth - has + (span - has) * year.shrinking
    return not below(has, year.clearance(span)) and not below(grip, c.customs.grip_least)


def settled_panels(c: Choices, span: float, under_lid: float, choose: Chooser) -> SettledPanels:
    """Room for a panel to swell from the bench to its dampest room."""
    values = values_of(c.panels) | {"under_lid": under_lid}
    for panel in ("bottom", "lid"):
        key = f"{panel}_across"
        if values[key] is None:
            values[key] = 0.0
            if span > 0 and panel in _grooved(c):
                why = SWELLS + (", its movement from memory" if season(c, panel).caution else "")
                asked = across(c, panel, span)
                values[key] = choose.pick(f"panels.{key}", asked, why, direction=None)
    return SettledPanels(**values)


def clearance_under_lid(c: Choices, f: Frame, width: float, choose: Chooser) -> float:
    """So much that a flat-sawn front beside quarter-sawn sides doesn't rise into the lid. [mm]"""
    if c.panels.under_lid is not None or f.lid_floor is None:
        return c.panels.under_lid or 0.0
    least, most = UNDER_LID
    front = season(c, "ends").swelling
    floor = min(quartered(c, "sides").swelling, season(c, "sides").swelling)
    play = max(c.panels.lid_tongue, width - (c.thickness.lid or 0.0))
    rises = (f.lid_floor.value * (front - floor) - play) / (1 + front)
    chosen = c.rule.round(max(least, rises), direction="up")
    if above(chosen, most):
        chosen = c.rule.round(most, direction="down")
    return choose.pick("panels.under_lid", chosen, direction=None)


def settled_lid(c: Choices, f: Frame, choose: Chooser) -> SettledLid:
    """A lift-off lid that hangs over the walls when it is at its narrowest, too."""
    overhang = c.lid.overhang
    if overhang is None:
        overhang = _OVERHANG
        if "on the rim" in c.lid.closure.lids:
            year = season(c, "lid")
            moves = f.outside_width.value * (year.swelling - year.shrinking)
            overhang = choose.pick("lid.overhang", max(overhang, moves / 2), direction="up")
    return SettledLid(**values_of(c.lid) | {"overhang": overhang})
