"""Lesson 4, the season: a panel between its two limits, and what to change when it fails."""

from __future__ import annotations

from functools import lru_cache
from typing import Any

from toolkit.box import Choices, written
from toolkit.box.choices import Room
from toolkit.box.remedies import Remedy, remedies
from toolkit.box.sliding import sliding
from toolkit.box.window import window
from toolkit.lesson.controls import LengthControl, NumberControl
from toolkit.lesson.lesson1_tree import PANEL_WOOD, RINGS, WOODS, LidYear
from toolkit.lesson.lesson3_corner import settled
from toolkit.lesson.scene import MUCH, Scene, SliderState, numbers
from toolkit.plan import Plan
from toolkit.results import Table

CONTROLS = (
    LengthControl(
        ("panels.across",),
        "clearance across",
        0.5,
        5.0,
        start=settled("panels.bottom_across"),
    ),
    PANEL_WOOD,
    RINGS,
    NumberControl(
        ("try.humidity",), "air at the bench", 30, 80, 5, "%", start=lambda c: c.rooms.make.humidity
    ),
)


def fitted_in(choices: Choices, humidity: float) -> Choices:
    """The same box with its panels fitted in other air. [%]"""
    return choices.having({"rooms.make": Room(choices.rooms.make.temperature, humidity)})


@lru_cache(maxsize=128)
def ways(choices: Choices, panel: str) -> tuple[Remedy, ...]:
    """Ranked remedies from the woods that a class is likely to be offered."""
    return remedies(choices, panel=panel, woods=WOODS)


def remedy_rows(plan: Plan, panel: str) -> list[tuple[str, str, str]]:
    """Each remedy as a row: its rank, what to do, and how it then stands."""
    show = plan.choices.rule.exact
    rows = []
    for row in ways(plan.choices, panel):
        least, most = (show(round(limit, 2)) for limit in (row.after.least, row.after.most))
        mind = f" Take care: {row.minds[0]}" if row.minds else ""
        then = f"then {least} to {most} would do; dry it holds {show(round(row.after.grip, 2))}"
        rows.append((f"change {row.rank}", row.sentence, f"{then}.{mind}"))
    return rows


class FittedYear(LidYear):
    """A panel fitted in the air that is tried, between its two limits."""

    def box(self) -> Choices:
        return fitted_in(self.choices, self.tried["try.humidity"])

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
    customs = d.choices.customs
    rows = [
        (
            "clearance needed",
            show(at.least),
            f"what it swells, and {show(customs.swelling_room)} room over",
        ),
        (
            "clearance allowed",
            show(at.most) if at.most > 0 else "none",
            f"groove {show(at.reach)} less what it shrinks and {show(customs.grip_least)} to hold",
        ),
        ("it has", show(at.has), f"{at.sentence(rule)} {at.cause()}"),
        *remedy_rows(plan, name),
    ]
    if name == "lid":
        slides = sliding(d)
        rows.append(("front in the damp", show(slides.gap_damp), slides.sentence(rule)))
    return rows


def _more(at: SliderState) -> dict[str, Any]:
    """The air at the bench, when it was moved."""
    if at.tried["try.humidity"] == at.before["try.humidity"]:
        return {}
    return written({"rooms.make.humidity": at.tried["try.humidity"]}, rule=at.choices.rule)


SEASON = Scene("season", CONTROLS, FittedYear, height=440, more=_more)
