"""Lesson 4, the corner: how deep the grooves are and where they run, with tails round them."""

from __future__ import annotations

from toolkit.box import Choices
from toolkit.lesson.controls import CountControl, LengthControl
from toolkit.lesson.scene import Scene
from toolkit.lesson.view import View
from toolkit.lesson.worked import possible, worked_out
from toolkit.pictures import (
    corner_picture,
)
from toolkit.plan import Plan
from toolkit.results import Table

CONTROLS = (
    LengthControl(("groove.depth",), "groove depth", 1.0, 9.0),
    LengthControl(("groove.bottom_edge", "groove.top_edge"), "groove from the edge", 2.0, 20.0),
    LengthControl(("thickness.side", "thickness.end"), "wall thickness", 8.0, 20.0, "sizes"),
    CountControl(("corner.tails_back",), "tails at the back", 1, 6),
)


def numbers(made: Plan) -> Table:
    """What the sliders of this lesson move, each with its working."""
    rule, f, d = made.choices.rule, made.design.frame, made.design
    rows = []
    for size in (
        f.wall_height,
        f.front_height,
        d.lid.length,
        d.lid.width,
        d.bottom.length,
        f.back_length,
        f.tail_back,
    ):
        name, _, working = size.sentence(rule).partition(" = ")
        rows.append((name, rule.show(size.value), working))
    depth = d.choices.groove.depth or 0.0
    behind = min(d.frame.side_thickness.value, d.frame.back_thickness.value) - depth
    rows.append(("wood behind the groove", rule.show(behind), "thinnest wall less groove depth"))
    return Table("Numbers", ("size", "value", "where it comes from"), tuple(rows), numeric=(1,))


def view(choices: Choices, kept: Choices) -> View:
    """The back corner with its grooves, its numbers and findings; the kept box thinly behind."""
    made = possible(choices)
    ghost = None
    if kept != choices and worked_out(kept).design.exists:
        ghost = worked_out(kept)
    drawn = corner_picture(made, which="back", ghost=ghost)
    return View(drawn, numbers(made), made.findings)


CORNER = Scene("corner", CONTROLS, lambda at: view(at.choices, at.kept))
