"""Lesson 4, groove layout: one plough setting, the tails round it, the panels in it."""

from __future__ import annotations

from typing import Literal

import ipywidgets as widgets

from toolkit.box import Choices, Panel
from toolkit.box.edges import edge_table
from toolkit.box.exits import exit_table
from toolkit.box.months import month_table, months as panel_months
from toolkit.box.plough_table import plough_table
from toolkit.box.seasons import year_between
from toolkit.box.window import window
from toolkit.explore.cards import YourTurn, compare_guess, guess_card
from toolkit.explore.controls import CountControl, LengthControl, with_values
from toolkit.explore.engine import Explorer
from toolkit.explore.lesson1_tree import year_of
from toolkit.explore.lesson4_contents import CONTENTS
from toolkit.explore.lesson4_edges import EDGES
from toolkit.explore.lesson4_lid import LID, drawn_out
from toolkit.explore.lesson4_season import SEASON
from toolkit.explore.rescue_card import RescueCard
from toolkit.explore.scene import Scene
from toolkit.explore.view import Listed, Said, Still, View
from toolkit.explore.worked import own, possible, worked_out
from toolkit.pictures import (
    corner_picture,
    lid_picture,
    section_across,
    section_along,
    year_picture,
)
from toolkit.plan import Plan
from toolkit.plan.panel_stages import panel_stages
from toolkit.results import Table
from toolkit.study import OwnBox

GUESS = "lesson4.deeper-groove"

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
    """The back corner with its grooves, its numbers and findings; the kept box thinly behind.

    Parameters
    ----------
    choices, kept : Choices
        The box as the sliders have it, and as it was last kept. [mm]

    Raises
    ------
    ImpossibleError
        No such box can be.
    """
    made = possible(choices)
    ghost = None
    if kept != choices and worked_out(kept).design.exists:
        ghost = worked_out(kept)
    drawn = corner_picture(made, which="back", ghost=ghost)
    return View(drawn, numbers(made), made.findings)


CORNER = Scene("corner", CONTROLS, lambda at: view(at.choices, at.kept))
SCENES: tuple[Scene, ...] = (CORNER, SEASON, LID, EDGES, CONTENTS)


def guess() -> widgets.Widget:
    """Guess first: how much wider a whole box grows by one deeper groove."""
    return guess_card(
        GUESS,
        "Both lid grooves are ploughed 1 mm deeper. How much wider must the lid be?",
        hint="with its unit: 3 mm, 1/8 in",
    )


def worked() -> Said:
    """One worked by hand, then the same from the toolkit."""
    made = own()
    return Said(made.design.lid.width.sentence(made.choices.rule))


def explore() -> Explorer:
    """The sliders of this lesson."""
    return Explorer(CORNER)


def seasons() -> Explorer:
    """The year between the two limits, and its sliders."""
    return Explorer(SEASON)


def lid() -> Explorer:
    """The lid on its way, and its sliders."""
    return Explorer(LID)


def bevels() -> Explorer:
    """The edges of the lid in their grooves, and their sliders."""
    return Explorer(EDGES)


def backwards() -> Explorer:
    """From contents to rough list, and its sliders."""
    return Explorer(CONTENTS)


def exits() -> Listed:
    """Where grooves of the student's own box would come out, and the cures."""
    return Listed(exit_table(own().choices))


def months() -> Listed:
    """The student's own lid month by month, or the bottom under a lid that lifts off."""
    made = own()
    name, place = made.design.upper_panel.name, year_between(made.design.choices.rooms)
    rows = panel_months(made.design, panel=name, place=place)
    return Listed(month_table(rows, rule=made.choices.rule, panel=name))


def limits() -> Said:
    """The two limits of the student's own lid, or of the bottom under a lid that lifts off."""
    made = own()
    at = window(made.design, panel=made.design.upper_panel.name)
    return Said(f"{at.sentence(made.choices.rule)} {at.cause()}")


def year_still() -> Still:
    """The student's own lid through the year, for paper."""
    made = own()
    return Still(year_picture(year_of(made), rule=made.choices.rule))


def lid_still() -> Still:
    """The student's own lid half in, for paper; one that lifts off as it lies."""
    made = own()
    if not isinstance(made.design.lid, Panel):
        return Still(section_along(made))
    return Still(lid_picture(made, out=drawn_out(made, 50.0)))


def ploughing(hand: Literal["right", "left"] = "right") -> Listed:
    """Every groove in the order of the plough, for one hand or the other."""
    return Listed(plough_table(own().design, hand=hand))


def stages(*, alike: bool = True) -> Listed:
    """Lid and bottom: what to saw now, and what to fit them to at the end."""
    return Listed(panel_stages(own(), alike=alike))


def edges() -> Listed:
    """How the edges of lid and bottom are worked, and the finger pull."""
    return Listed(edge_table(own().design))


def still() -> Still:
    """The student's own corner, for paper and for readers without a mouse."""
    return Still(corner_picture(possible(OwnBox().load().choices), which="back"))


def sections() -> Still:
    """The student's own box cut across, with the panels in their grooves."""
    return Still(section_across(own()))


def compare() -> Said:
    """The guess beside the answer: the panel sits in two grooves."""
    made = own()
    depth = made.design.choices.groove.depth or 0.0
    deeper = worked_out(with_values(made.choices, {"groove.depth": depth + 1.0}))
    grown = deeper.design.lid.width.value - made.design.lid.width.value
    return compare_guess(GUESS, made, answer=grown)


def your_turn(seed: int | str | None = None) -> YourTurn:
    """Questions on the student's own box; a seed makes other sizes the same for a class."""
    return YourTurn(4, own=own, seed=seed)


def carry() -> Said:
    """What to carry to the bench: two lines of settings."""
    made = own()
    rows = {row.tool: row for row in made.settings}
    plough, fence = rows["plough"], rows["plough fence, bottom grooves"]
    return Said(
        f"Plough: {plough.value}, fence {fence.value} from the edge; leave both set. "
        f"Lid {made.choices.rule.show(made.design.lid.width.value, direction='down')} wide, "
        f"bottom {made.choices.rule.show(made.design.bottom.width.value, direction='down')}."
    )


def rescue() -> RescueCard:
    """Ways out of what went wrong with grooves and panels, and of anything else."""
    return RescueCard(own, stages=("grooved", "fitted"))
