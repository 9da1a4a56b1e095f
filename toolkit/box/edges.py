"""Edges of lid and bottom, flat, rebated or bevelled, and the hollow a finger pulls the lid by."""

from __future__ import annotations

from dataclasses import dataclass

from toolkit.box.bevels import slope
from toolkit.box.designing import Design
from toolkit.box.panels import Panel
from toolkit.measures import Rule
from toolkit.results import Table, above

# The hollow for one finger: common practice, no source.
_PULL = (24.0, 12.0)  # across and along the lid [mm]
_PULL_BEHIND = 12.0  # from the lid's front end [mm]
_PULL_SHARE = 1 / 3  # of the lid's thickness


@dataclass(frozen=True, slots=True)
class FingerPull:
    """The hollow in the top of a lid, at mid-width, and what is left under it. [mm]"""

    across: float
    along: float
    depth: float
    behind: float
    left: float


def finger_pull(design: Design) -> FingerPull:
    """A hollow for one finger that leaves two thirds of a sliding lid under it. [mm]"""
    lid = design.sliding_lid
    if lid is None:
        says = design.choices.lid.closure.says
        raise ValueError(f"{says}, and needs no finger pull: set lid.kind to sliding")
    across = min(_PULL[0], lid.width.value / 3)
    along = min(_PULL[1], lid.length.value / 6)
    depth = lid.thickness.value * _PULL_SHARE
    behind = min(_PULL_BEHIND, lid.length.value / 6)
    return FingerPull(across, along, depth, behind, lid.thickness.value - depth)


def _worked(panel: Panel, rule: Rule) -> str:
    """How a panel's edges are worked."""
    show = rule.show
    where = "on top, not the front" if panel.name == "lid" else "underneath, four edges"
    if panel.profile == "flat":
        return "flat: planed to its tongue all over"
    if panel.profile == "rebated":
        if not above(panel.rebate_depth, 0.0):
            return "no rebate: as thin as its tongue already"
        deep, wide = show(panel.rebate_depth), show(panel.rebate_width)
        return f"rebate {deep} deep, {wide} wide, {where}"
    rim, width = panel.bevel
    angle = slope(panel.thickness.value, rim=rim, width=width)
    return (
        f"bevel {show(width)} wide at {angle:.1f}° to a thin edge of {show(rim)}, {where}; it "
        "touches only at the lip of the groove and wears there"
    )


def edge_table(design: Design) -> Table:
    """The edges of lid and bottom, and the finger pull, as rows for the bench."""
    rule, width = design.choices.rule, design.choices.groove.width
    rows = []
    for panel in design.grooved:
        play = rule.exact(round(max(width - panel.tongue, 0.0), 2))
        rows.append(
            (
                panel.name,
                _worked(panel, rule),
                f"tongue {rule.show(panel.tongue, direction='down')}, {play} of play in its groove",
            )
        )
    if design.sliding_lid is not None:
        pull = finger_pull(design)
        rows.append(
            (
                "finger pull",
                f"{rule.show(pull.across)} across, {rule.show(pull.along)} along, "
                f"{rule.show(pull.depth)} deep at mid-width",
                f"{rule.show(pull.behind)} behind the lid's front end; {rule.show(pull.left)} is "
                "left under it",
            )
        )
    title = "Edges and finger pull" if design.sliding_lid else "Edges of the bottom"
    note = ""
    if any(panel.profile == "rebated" for panel in design.grooved):
        note = (
            "Knife the lines of a rebate. Work it across the grain first, then along it, which "
            "cleans the breakout away."
        )
    return Table(title, ("part", "work", "and then"), tuple(rows), note=note)
