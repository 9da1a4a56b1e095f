"""Lid and bottom by stage: the blank to saw now, and the size to fit from the box as it is."""

from __future__ import annotations

from toolkit.plan.plan import Plan
from toolkit.results import AXES, Size, Table, capital


def panel_stages(plan: Plan, *, alike: bool = False) -> Table:
    """What lid and bottom measure now, and what they are fitted to when the walls stand.

    With ``alike`` both blanks are of one size until the last fitting: either may become the lid.
    """
    rule, d = plan.choices.rule, plan.design
    panels = {panel.name: panel for panel in d.panels}
    blanks = {name: [size.value for size in plan.part(name).rough] for name in panels}
    if alike:
        both = [max(sizes) for sizes in zip(*blanks.values(), strict=True)]
        blanks = dict.fromkeys(panels, both)
    rows = []
    for name, panel in panels.items():
        sizes = (panel.length, panel.width, panel.thickness)
        for axis, size, blank in zip(AXES, sizes, blanks[name], strict=True):
            now = rule.show(blank, fineness="rough", direction="up")
            then = rule.show(size.value, direction="down")
            rows.append(
                (
                    f"{name} {axis}",
                    Size(now, name, f"rough {axis}", blank),
                    Size(then, name, f"finished {axis}", size.value),
                    size.reckoned(rule),
                )
            )
    note = "Saw the blanks now; fit the panels last, from the box as it stands dry."
    if alike and d.lids:
        note += " Both blanks are alike: choose the better face for the lid at the end."
    if any(panel.width.given for panel in d.grooved):
        note += " A panel that is made already keeps its size."
    return Table(
        f"{capital(d.panel_words)} by stage",
        ("size", "blank now", "fitted to", "from the box as it is"),
        tuple(rows),
        note=note,
        numeric=(1, 2),
    )
