"""What is said of a box: a check fills the numbers of a row of a table in."""

from __future__ import annotations

from toolkit.box.customs import cite
from toolkit.box.designing import Design
from toolkit.results import Findings


class Said(Findings):
    """Findings of one box, in the order in which they are said."""

    def __init__(self, d: Design) -> None:
        c, rule = d.choices, d.choices.rule
        known = {"customs": c.customs, "groove": c.groove, "panels": c.panels}
        super().__init__("box/findings.csv", write=rule.exact, show=rule.show, cite=cite, **known)
