"""Lesson 4, the corner: how deep the grooves are and where they run, with tails round them."""

from __future__ import annotations

from typing import Self

from toolkit.lesson.controls import CountControl, LengthControl
from toolkit.lesson.scene import Scene, Shown
from toolkit.lesson.view import numbers, size_row
from toolkit.pictures import Picture, corner_picture
from toolkit.results import Finding, Table

CONTROLS = (
    LengthControl(("groove.depth",), "groove depth", 1.0, 9.0),
    LengthControl(("groove.bottom_edge", "groove.top_edge"), "groove from the edge", 2.0, 20.0),
    LengthControl(("thickness.side", "thickness.end"), "wall thickness", 8.0, 20.0, "sizes"),
    CountControl(("corner.tails_back",), "tails at the back", 1, 6),
)


class GroovedCorner(Shown):
    """The back corner with its grooves."""

    def picture(self, before: Self | None) -> Picture:
        return corner_picture(self.plan, which="back", ghost=before.plan if before else None)

    def values(self) -> Table:
        rule, f, d = self.rule, self.plan.design.frame, self.plan.design
        lids = [size for lid in d.lids for size in (lid.length, lid.width)]
        sizes = (f.wall_height, f.front_height, *lids, d.bottom.length)
        rows = [size_row(size, rule) for size in (*sizes, f.back_length, f.tail_back)]
        depth = d.choices.groove.depth or 0.0
        behind = min(f.side_thickness.value, f.back_thickness.value) - depth
        rows.append(
            ("wood behind the groove", rule.show(behind), "thinnest wall less groove depth")
        )
        return numbers(rows, columns=("size", "value", "where it comes from"))

    def verdict(self) -> tuple[Finding, ...]:
        return self.plan.findings


CORNER = Scene("corner", CONTROLS, GroovedCorner)
