"""Lesson 4, the lid's edges: how wide a bevel, and what then lies in the groove."""

from __future__ import annotations

from typing import Any

from toolkit.box import Choices
from toolkit.box.bevels import slope
from toolkit.box.edges import edge_table
from toolkit.lesson.controls import ChoiceControl, LengthControl
from toolkit.lesson.lesson3_corner import settled
from toolkit.lesson.scene import Moment, Scene
from toolkit.lesson.view import View
from toolkit.lesson.worked import possible, worked_out
from toolkit.pictures import section_across
from toolkit.plan import Plan
from toolkit.results import Table

EDGE = "try.edge"
WIDTH = "try.bevel"


def with_edge(choices: Choices, edge: str, width: float | None) -> Choices:
    """The same box with its lid's edges worked so, or its bottom's under a lid that lifts off."""
    panel = "lid" if choices.lid.kind == "sliding" else "bottom"
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
        (("flat", "flat"), ("rebated", "rebated"), ("bevelled", "bevelled")),
        start=lambda _: "bevelled",
    ),
)


def numbers(made: Plan) -> Table:
    """Thin edge, slope and tongue of the edge, and how each edge is worked."""
    rule, panel = made.choices.rule, made.design.upper_panel

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
    rows += [(name, work, then) for name, work, then in edge_table(made.design).rows]
    return Table("The edges", ("what", "how much", "where it comes from"), tuple(rows))


def _view(at: Moment) -> View:
    made, ghost = possible(with_edge(at.choices, at.tried[EDGE], at.tried[WIDTH])), None
    if at.moved:
        kept = worked_out(with_edge(at.kept, at.before[EDGE], at.before[WIDTH]))
        ghost = kept if kept.design.exists else None
    found = made.about("panel", "season")
    return View(section_across(made, ghost=ghost), numbers(made), found)


def _more(at: Moment) -> dict[str, Any]:
    """The kind of edge and its width, when one of them was moved."""
    if dict(at.tried) == dict(at.before):
        return {}
    panel = "lid" if at.choices.lid.kind == "sliding" else "bottom"
    changes = {f"panels.{panel}_profile": at.tried[EDGE]}
    if at.tried[EDGE] == "bevelled":
        changes["panels.bevel_width"] = at.choices.rule.exact(at.tried[WIDTH])
    return changes


EDGES = Scene("edges", CONTROLS, _view, height=440, more=_more)
