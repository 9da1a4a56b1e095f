"""Lesson 4, what its cells show of a plan: grooves, tails and panels."""

from __future__ import annotations

from functools import lru_cache
from typing import Any

from toolkit.box import (
    Choices,
    Handed,
    Remedy,
    edge_table,
    exit_table,
    fitting_tables,
    month_table,
    months as panel_months,
    plough_table,
    remedies,
    sliding,
    window,
    written,
    year_between,
)
from toolkit.document import Figure, Sentence, TableBlock
from toolkit.lesson.controls import LengthControl
from toolkit.lesson.lesson1_tree import (
    AMERICAN,
    EUROPEAN,
    MOISTURE,
    PANEL_WOOD,
    RINGS,
    LidYear,
)
from toolkit.lesson.lesson3_corner import settled
from toolkit.lesson.lesson4_box import CONTENTS, CORNER
from toolkit.lesson.lesson4_lid import EDGES, LID, drawn_out
from toolkit.lesson.scene import MUCH, Scene, SliderState, numbers
from toolkit.pictures import (
    lid_picture,
    section_across,
    section_along,
)
from toolkit.plan import Plan, panel_stages
from toolkit.results import Table, capital
from toolkit.wood import species

SEASON_CONTROLS = (
    LengthControl(
        ("panels.across",),
        "clearance across",
        0.5,
        5.0,
        start=settled("panels.bottom_across"),
    ),
    PANEL_WOOD,
    RINGS,
    MOISTURE,
)


@lru_cache(maxsize=128)
def ways(choices: Choices, panel: str) -> tuple[Remedy, ...]:
    """Ranked remedies from the woods that a class is likely to be offered where this one grows."""
    wood = species(getattr(choices.wood, panel)).name
    return remedies(choices, panel=panel, woods=EUROPEAN if wood in EUROPEAN else AMERICAN)


def _remedy_rows(plan: Plan, panel: str) -> list[tuple[str, str, str]]:
    """Each remedy as a row: its rank, what to do, and how it then stands."""
    show = plan.choices.rule.exact
    rows = []
    for row in ways(plan.choices, panel):
        least, most = (show(round(limit, 2)) for limit in (row.after.least, row.after.most))
        mind = f" Take care: {row.minds[0]}" if row.minds else ""
        woods = [value for key, value in row.changes.items() if key.startswith("wood.")]
        if any(isinstance(wood, str) and species(wood).from_memory for wood in woods):
            mind += " How that wood moves is from memory."
        then = f"then {least} to {most} would do; dry it holds {show(round(row.after.grip, 2))}"
        rows.append((f"change {row.rank}", row.sentence, f"{then}.{mind}"))
    return rows


class FittedYear(LidYear):
    """A panel fitted at the moisture that is tried, between its two limits."""

    def values(self) -> Table:
        """Both limits, the cause, the changes that help, and how the lid slides."""
        name = self.plan.design.upper_panel.name
        title = f"The {name} between damp and dry"
        return numbers(_rows(self.plan, name), title=title, columns=MUCH, numeric=())


def _rows(plan: Plan, name: str) -> list[tuple[str, str, str]]:
    d, rule = plan.design, plan.choices.rule

    def show(value: float) -> str:
        return rule.exact(round(value, 2))

    at = window(d, panel=name)
    customs, season = d.choices.customs, d.upper_panel.season
    rows = [
        (
            "clearance needed",
            show(at.least),
            f"what it swells, and {show(season.room)} room over"
            + (season.told and f".{season.told}"),
        ),
        (
            "clearance allowed",
            show(at.most) if at.most > 0 else "none",
            f"groove {show(at.reach)} less what it shrinks and {show(customs.grip_least)} to hold",
        ),
        ("it has", at.now(rule), f"{at.sentence(rule)} {at.cause()}"),
        *_remedy_rows(plan, name),
    ]
    if name == "lid":
        slides = sliding(d)
        rows.append(("front in the damp", show(slides.gap_damp), slides.sentence(rule)))
    return rows


def _more(at: SliderState) -> dict[str, Any]:
    """The wood's moisture, when it was moved."""
    if at.tried["try.moisture"] == at.before["try.moisture"]:
        return {}
    return written({"rooms.make_moisture": at.tried["try.moisture"]}, rule=at.choices.rule)


SEASON = Scene("season", SEASON_CONTROLS, FittedYear, height=440, more=_more)


HINT = "with its unit: 3 mm, 1/8 in"
SCENES = {"explore": CORNER, "seasons": SEASON, "lid": LID, "bevels": EDGES, "backwards": CONTENTS}
STILLS = {"year_still": SEASON, "still": CORNER}


def worked(plan: Plan) -> Sentence:
    """One worked by hand, then the same from the toolkit."""
    return Sentence(plan.design.upper_panel.width.sentence(plan.choices.rule))


def exits(plan: Plan) -> TableBlock:
    """Where grooves of the student's own box would come out, and the cures."""
    return TableBlock(exit_table(plan.choices))


def months(plan: Plan) -> TableBlock:
    """The student's own lid month by month, or the bottom where no lid is in grooves."""
    panel, place = plan.design.upper_panel, year_between(plan.design.choices.rooms)
    rows = panel_months(plan.design, panel=panel.name, place=place)
    return TableBlock(month_table(rows, rule=plan.choices.rule, panel=panel))


def clearances(plan: Plan) -> TableBlock:
    """What clearance that panel gets at each reading of a meter."""
    return TableBlock(fitting_tables(plan.design)[0])


def limits(plan: Plan) -> Sentence:
    """The two limits of the student's own lid, or of the bottom under a lid that lifts off."""
    panel = plan.design.upper_panel
    at = window(plan.design, panel=panel.name)
    said = at.sentence(plan.choices.rule)
    return Sentence.of(said, f" {at.cause()}{panel.season.told}")


def lid_still(plan: Plan) -> Figure:
    """The student's own lid half in, for paper; one that lifts off as it lies."""
    if plan.design.sliding_lid is None:
        return Figure(section_along(plan))
    return Figure(lid_picture(plan, out=drawn_out(plan, 50.0)))


def ploughing(plan: Plan, hand: Handed | None = None) -> TableBlock:
    """Every groove in the order of the student's own plough, or of one for this hand."""
    return TableBlock(plough_table(plan.design, hand=hand))


def stages(plan: Plan) -> TableBlock:
    """Lid and bottom: what to saw now, and what to fit them to at the end."""
    return TableBlock(panel_stages(plan))


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
        (panel.name, plan.size(panel.name, "finished width"))
        for panel in reversed(plan.design.panels)
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
