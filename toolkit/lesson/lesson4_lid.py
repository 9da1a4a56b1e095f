"""Lesson 4, the lid: its edges in the grooves, its way home, the low front that it passes over."""

from __future__ import annotations

from typing import Any, Self

from toolkit.box import Choices, droop, edge_table, held, sliding, slope
from toolkit.lesson.controls import ChoiceControl, LengthControl, NumberControl
from toolkit.lesson.lesson3_corner import settled
from toolkit.lesson.scene import (
    MUCH,
    ImpossibleError,
    Scene,
    Shown,
    SliderState,
    Tried,
    numbers,
    size_row,
    worked_out,
)
from toolkit.pictures import Picture, lid_picture, section_across
from toolkit.plan import Plan
from toolkit.results import Table, capital

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


EDGE_CONTROLS = (
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


EDGES = Scene("edges", EDGE_CONTROLS, WorkedEdges, height=440, more=_more)


FRONTS = (
    ("as the box has it", "own"),
    ("floor of the lid groove", "floor"),
    ("middle of it", "middle"),
    ("roof of it", "roof"),
)
LID_CONTROLS = (
    NumberControl(("try.out",), "lid drawn out", 0, 100, 5, "%", start=50.0),
    ChoiceControl(("try.front",), "front ripped to the", FRONTS, start="own", slider=True),
    LengthControl(("thickness.lid",), "lid thickness", 4.0, 16.0, "sizes"),
    ChoiceControl(("panels.lid_profile",), "lid's edges", PROFILES),
)


def with_front(choices: Choices, front: str) -> Choices:
    """The same box with its front ripped to a line of the lid groove."""
    groove = worked_out(choices).design.frame.lid_groove
    if front == "own" or groove is None:
        return choices
    lines = {"floor": groove.low, "middle": (groove.low + groove.high) / 2, "roof": groove.high}
    return choices.having({"made.front_width": lines[front]})


def drawn_out(plan: Plan, share: float) -> float:
    """How far the lid is out, from its share in percent. [mm]"""
    return plan.design.lid.length.value * share / 100


class LidOnItsWay(Shown):
    """A box with its lid so far out."""

    topics = ("lid", "panel")

    def set_up(self, tried: Tried) -> None:
        if self.plan.design.sliding_lid is None:
            says = capital(self.choices.lid.closure.says)
            raise ImpossibleError(
                f'{says}: choose lid.kind = "sliding" to see one slide.',
                there_is="No such lid.",
            )
        self.out = drawn_out(self.plan, tried["try.out"])

    def box(self) -> Choices:
        return with_front(self.choices, self.tried["try.front"])

    def picture(self, before: Self | None) -> Picture:
        ghost, was = (before.plan, before.out) if before else (None, 0.0)
        return lid_picture(self.plan, out=self.out, ghost=ghost, ghost_out=was)

    def values(self) -> Table:
        """What holds the lid where it is, and its play."""
        d, rule = self.plan.design, self.rule
        inside, hang = held(d, out=self.out), droop(d, out=self.out)
        rows: list[tuple[str, ...]] = [
            ("lid length", *size_row(d.lid.length, rule)[1:]),
            ("still in its grooves", rule.show(inside), "lid length less what is out"),
            (
                "its front end hangs",
                "free" if hang is None else rule.exact(round(hang, 2)),
                "play in thickness × what is out ÷ what is held",
            ),
        ]
        rows += sliding(d).table(rule).rows
        return numbers(rows, title="The lid on its way", columns=MUCH)


LID = Scene("lid", LID_CONTROLS, LidOnItsWay, height=360)
