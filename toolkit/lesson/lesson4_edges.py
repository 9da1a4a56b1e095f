"""Lesson 4, the lid's edges: how wide a bevel, and what then lies in the groove."""

from __future__ import annotations

from typing import Any, Self

from toolkit.box import Choices
from toolkit.box.bevels import slope
from toolkit.box.edges import edge_table
from toolkit.lesson.controls import ChoiceControl, LengthControl
from toolkit.lesson.lesson3_corner import settled
from toolkit.lesson.scene import Scene, Shown, SliderState
from toolkit.lesson.view import MUCH, numbers
from toolkit.lesson.worked import worked_out
from toolkit.pictures import Picture, section_across
from toolkit.plan import Plan
from toolkit.results import Table

PROFILES = ("flat", "rebated", "bevelled")
EDGE = "try.edge"
WIDTH = "try.bevel"


def with_edge(choices: Choices, edge: str, width: float | None) -> Choices:
    """The same box with its lid's edges worked so, or its bottom's where no lid is in grooves."""
    panel = "lid" if choices.lid.closure.grooved else "bottom"
    return choices.having({f"panels.{panel}_profile": edge, "panels.bevel_width": width})


def _width_now(choices: Choices) -> float:
    """How wide a bevel this box has, or would have. [mm]"""
    if choices.panels.bevel_width is not None:
        return choices.panels.bevel_width
    panel = worked_out(with_edge(choices, "bevelled", None)).design.upper_panel
    return choices.rule.round(panel.bevel[1], fineness="sizes", direction="up")


CONTROLS = (
    LengthControl((WIDTH,), "bevel width", 3.0, 36.0, "sizes", start=_width_now),
    LengthControl(("thickness.lid",), "lid thickness", 4.0, 16.0, "sizes"),
    LengthControl(("groove.depth",), "groove depth", 1.0, 9.0, start=settled("groove.depth")),
    ChoiceControl(
        (EDGE,),
        "edges",
        PROFILES,
        start="bevelled",
    ),
)


class WorkedEdges(Shown):
    """The edges of lid and bottom in their grooves."""

    topics = ("panel", "season")

    def box(self) -> Choices:
        return with_edge(self.choices, self.tried[EDGE], self.tried[WIDTH])

    def picture(self, before: Self | None) -> Picture:
        return section_across(self.plan, ghost=before.plan if before else None)

    def values(self) -> Table:
        return numbers(_rows(self.plan), title="The edges", columns=MUCH, numeric=())


def _rows(plan: Plan) -> list[tuple[str, str, str]]:
    """Thin edge, slope and tongue of the edge, and how each edge is worked."""
    rule, panel = plan.choices.rule, plan.design.upper_panel

    def show(value: float) -> str:
        return rule.exact(round(value, 2))

    rows = [
        ("tongue", show(panel.tongue), "groove width less its play"),
        ("in the groove", show(panel.reach - panel.across / 2), "at each side when it lies midway"),
    ]
    if panel.profile == "bevelled" and panel.rebate_depth > 0:
        rim, width = panel.bevel
        rows.append(("bevel width", show(width), "from the thin edge to where it ends"))
        if rim > 0:
            angle = slope(panel.thickness.value, rim=rim, width=width)
            words = f"so that {show(panel.reach)} in, at the groove's lip, it is its tongue"
            rows.append(("thin edge", show(rim), words))
            rows.append(
                ("slope of the bevel", f"{angle:.1f}°", "panel less thin edge, over its width")
            )
    return rows + [(name, work, then) for name, work, then in edge_table(plan.design).rows]


def _more(at: SliderState) -> dict[str, Any]:
    """The kind of edge and its width, when one of them was moved."""
    if at.tried == at.before:
        return {}
    panel = "lid" if at.choices.lid.closure.grooved else "bottom"
    changes = {f"panels.{panel}_profile": at.tried[EDGE]}
    if at.tried[EDGE] == "bevelled":
        changes["panels.bevel_width"] = at.choices.rule.exact(at.tried[WIDTH])
    return changes


EDGES = Scene("edges", CONTROLS, WorkedEdges, height=440, more=_more)
