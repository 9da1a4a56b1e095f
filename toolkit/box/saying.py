"""What is said of a box: a check fills the numbers of a row of a table in."""

from __future__ import annotations

from toolkit.box.choices import Change
from toolkit.box.customs import cite
from toolkit.box.designing import Design
from toolkit.measures import Fineness
from toolkit.results import Findings


class Said(Findings):
    """Findings of one box, in the order in which they are said."""

    def __init__(self, d: Design) -> None:
        c, rule = d.choices, d.choices.rule
        known = {"customs": c.customs, "groove": c.groove, "panels": c.panels}
        super().__init__("box/findings.csv", write=rule.exact, show=rule.show, cite=cite, **known)
        self._d = d

    def up(self, value: float, *, fineness: Fineness = "joints") -> float:
        """The mark of the student's rule at a length or above it. [mm]"""
        return self._d.choices.rule.round(value, fineness=fineness, direction="up")

    def down(self, value: float, *, fineness: Fineness = "joints") -> float:
        """The mark of the student's rule at a length or below it. [mm]"""
        return self._d.choices.rule.round(value, fineness=fineness, direction="down")

    def made_or(self, key: str, otherwise: str) -> str:
        """A key of ``[made]`` where that size is made already, else the one that plans it."""
        made = self._d.choices.value(f"made.{key}") is not None
        return f"made.{key}" if made else otherwise

    def inside(self, axis: str, wanted: float) -> Change:
        """The box so large inside, by the key that its file gives. [mm]"""
        d, size = self._d, self._d.choices.size
        more = wanted - getattr(d.frame, f"inside_{axis}").value
        outside = getattr(size, f"outside_{axis}")
        if outside is None:
            return {f"size.inside_{axis}": self.up(wanted, fineness="sizes")}
        return {f"size.outside_{axis}": self.up(outside + more, fineness="sizes")}
