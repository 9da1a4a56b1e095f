"""Lesson 4, what its cells show of a plan: grooves, tails and panels."""

from __future__ import annotations

from typing import Literal

from toolkit.box import LiftOffLid, Panel
from toolkit.box.edges import edge_table
from toolkit.box.exits import exit_table
from toolkit.box.months import month_table, months as panel_months
from toolkit.box.plough_table import plough_table
from toolkit.box.seasons import year_between
from toolkit.box.window import window
from toolkit.document import Figure, Sentence, TableBlock
from toolkit.lesson.lesson4_box import CONTENTS, CORNER
from toolkit.lesson.lesson4_lid import EDGES, LID, drawn_out
from toolkit.lesson.lesson4_season import SEASON
from toolkit.pictures import (
    lid_picture,
    section_across,
    section_along,
)
from toolkit.plan import Plan
from toolkit.plan.panel_stages import panel_stages
from toolkit.results import Size, capital

HINT = "with its unit: 3 mm, 1/8 in"
SCENES = {"explore": CORNER, "seasons": SEASON, "lid": LID, "bevels": EDGES, "backwards": CONTENTS}
STILLS = {"year_still": SEASON, "still": CORNER}


def worked(plan: Plan) -> Sentence:
    """One worked by hand, then the same from the toolkit."""
    return Sentence(plan.design.uppermost.width.sentence(plan.choices.rule))


def exits(plan: Plan) -> TableBlock:
    """Where grooves of the student's own box would come out, and the cures."""
    return TableBlock(exit_table(plan.choices))


def months(plan: Plan) -> TableBlock:
    """The student's own lid month by month, or the bottom where no lid is in grooves."""
    name, place = plan.design.upper_panel.name, year_between(plan.design.choices.rooms)
    rows = panel_months(plan.design, panel=name, place=place)
    return TableBlock(month_table(rows, rule=plan.choices.rule, panel=name))


def limits(plan: Plan) -> Sentence:
    """The two limits of the student's own lid, or of the bottom under a lid that lifts off."""
    at = window(plan.design, panel=plan.design.upper_panel.name)
    return Sentence(f"{at.sentence(plan.choices.rule)} {at.cause()}")


def lid_still(plan: Plan) -> Figure:
    """The student's own lid half in, for paper; one that lifts off as it lies."""
    if plan.design.sliding_lid is None:
        return Figure(section_along(plan))
    return Figure(lid_picture(plan, out=drawn_out(plan, 50.0)))


def ploughing(plan: Plan, hand: Literal["right", "left"] = "right") -> TableBlock:
    """Every groove in the order of the plough, for one hand or the other."""
    return TableBlock(plough_table(plan.design, hand=hand))


def stages(plan: Plan, *, alike: bool = True) -> TableBlock:
    """Lid and bottom: what to saw now, and what to fit them to at the end."""
    return TableBlock(panel_stages(plan, alike=alike))


def edges(plan: Plan) -> TableBlock:
    """How the edges of lid and bottom are worked, and the finger pull."""
    return TableBlock(edge_table(plan.design))


def sections(plan: Plan) -> Figure:
    """The student's own box cut across, with the panels in their grooves."""
    return Figure(section_across(plan))


def carry(plan: Plan) -> Sentence:
    """What to carry to the bench: two lines of settings."""
    rows = {row.tool: row for row in plan.settings}
    (uppermost, width), *others = (
        (panel.name, _width(panel, plan)) for panel in reversed(plan.design.panels)
    )
    return Sentence.of(
        f"Plough: {rows['plough'].value}, fence ",
        rows["plough fence, bottom grooves"].value,
        f" from the edge; leave both set. {capital(uppermost)} ",
        width,
        " wide",
        *(piece for name, size in others for piece in (f", {name} ", size)),
        ".",
    )


def _width(panel: Panel | LiftOffLid, plan: Plan) -> Size:
    wide = panel.width.value
    shown = plan.choices.rule.show(wide, direction="down")
    return Size(shown, panel.name, "finished width", wide)
