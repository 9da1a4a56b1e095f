"""Lesson 1, the tree and the room: a panel through the year, and a board in its log."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, Self

from toolkit.box import Choices, Panel, making, year_between
from toolkit.lesson.controls import ChoiceControl, LengthControl, NumberControl
from toolkit.lesson.scene import Scene, Shown, Tried, drawable, numbers
from toolkit.pictures import Picture, Sawn, Year, log_end, year_picture
from toolkit.plan import Plan
from toolkit.results import Finding, Table
from toolkit.wood import (
    cup_formula,
    movement,
    place,
    places,
    quick_rule,
    species,
    strain,
)

# Woods that a beginner's class is likely to be offered in North America, and in Europe (common
# practice, no source).
AMERICAN = (
    "black cherry",
    "black walnut",
    "red alder",
    "American basswood",
    "sugar maple",
    "white ash",
    "American beech",
    "red oak, commercial group",
)
EUROPEAN = (
    "Scots pine",
    "European cherry",
    "European walnut",
    "common alder",
    "European lime",
    "sycamore maple",
    "European ash",
    "European beech",
    "European oak",
)
OWN_ROOMS = "own rooms"
SAWN_AT = 80.0  # where the first board of the log scene lies, from the pith [mm]
SAWN_WET = 14.0  # moisture of a board from an open shed: common practice, no source [%]
BOARD_THICK = 16.0  # of the board in the log scene, as the rough list asks for walls [mm]

PANEL_WOOD = ChoiceControl(
    ("wood.panels",),
    "panels of",
    AMERICAN + EUROPEAN,
    slider=True,
)
RINGS = NumberControl(("wood.rings",), "rings to the width", 0, 90, 5, "°")


def reckoned_moisture(choices: Choices) -> float:
    """Moisture that a box's panels are made at, to a tenth, as a slider has it. [%]"""
    return round(making(choices.rooms), 1)


def made_at(choices: Choices, tried: Tried) -> Choices:
    """A box whose wood is as wet when it is fitted as a slider says; its own where it stands so."""
    moisture = tried.get("try.moisture", reckoned_moisture(choices))
    if moisture == reckoned_moisture(choices):
        return choices
    return choices.having({"rooms.make_moisture": moisture})


MOISTURE = NumberControl(
    ("try.moisture",), "wood's moisture", 4, 18, 0.5, "%", start=reckoned_moisture
)

SEASON_CONTROLS = (
    PANEL_WOOD,
    RINGS,
    MOISTURE,
    ChoiceControl(
        ("try.place",),
        "lives in",
        (("my own two rooms", OWN_ROOMS), *(row.name for row in places())),
        start=OWN_ROOMS,
        slider=True,
    ),
)


def year_of(plan: Plan, *, lives_in: str = OWN_ROOMS) -> Year:
    """The lid's year, its wood as wet when made as the box says."""
    design = drawable(plan).design
    choices, panel = design.choices, design.uppermost
    where = year_between(choices.rooms) if lives_in == OWN_ROOMS else place(lives_in)
    asked: dict[str, Any] = {
        "place": where,
        "species": design.wood_of(panel),
        "rings": choices.wood.rings,
        "moisture_from": panel.season.make,
    }
    if isinstance(panel, Panel):
        return Year.of_panel(panel, **asked)
    return Year.of(panel.width.value, name=panel.name, **asked)


class LidYear(Shown):
    """The lid of a box through the year."""

    topics = ("season",)

    def set_up(self, tried: Tried) -> None:
        self.year = year_of(self.plan, lives_in=tried.get("try.place", OWN_ROOMS))

    def box(self) -> Choices:
        return made_at(self.choices, self.tried)

    def picture(self, before: Self | None) -> Picture:
        return year_picture(self.year, rule=self.rule, ghost=before.year if before else None)

    def values(self) -> Table:
        """The same movement twice: by the law, and by the sum on paper."""
        return numbers(_movement(self.plan, self.year))


def _movement(plan: Plan, year: Year) -> Iterator[tuple[str, str, str]]:
    rule = plan.choices.rule
    dry, wet = year.moisture_from, max(year.place.moisture)
    asked: dict[str, Any] = {
        "species": year.species,
        "rings": year.rings,
        "moisture_from": dry,
        "moisture_to": wet,
    }
    law = movement(year.made, **asked)
    yield (
        "moisture when made",
        f"{dry:.1f} %",
        "by a meter or a balance, else what its air brings it to",
    )
    yield "moisture at its wettest", f"{wet:.1f} %", "the same, in the dampest month"
    yield "it grows", rule.exact(round(law, 2)), "by the law for every moisture (Eq. 13-3)"
    if caution := species(year.species).caution:
        yield "its numbers", "from memory", caution
    try:
        quick = quick_rule(year.made, **asked)
    except ValueError as error:
        yield "by the quick rule", "no answer", str(error)
    else:
        told = quick.doubt or "width × coefficient × percent (Eq. 13-2)"
        yield "by the quick rule", rule.exact(round(quick.change, 2)), told


SEASON = Scene("season", SEASON_CONTROLS, LidYear)

LOG_CONTROLS = (
    LengthControl(("try.radius",), "from the pith", 20.0, 300.0, "rough", start=SAWN_AT),
    LengthControl(("try.wide",), "width of the board", 40.0, 230.0, "rough", start=115.0),
    NumberControl(("try.rings",), "rings to the width", 0, 90, 5, "°", start=0.0),
    NumberControl(("try.wet",), "moisture when sawn", 6, 30, 1, "%", start=SAWN_WET),
)


def sawn_panel(plan: Plan) -> Sawn:
    """The student's own uppermost panel as it might have come from a log. [mm]"""
    panel = plan.design.uppermost
    return Sawn.of(
        panel.width.value,
        thickness=BOARD_THICK,
        ring_radius=SAWN_AT,
        rings=plan.design.choices.wood.rings,
        species=plan.design.wood_of(panel),
        moisture_from=SAWN_WET,
        moisture_to=panel.season.make,
    )


_PITH = Finding(
    "wont_work",
    "pith-inside",
    "board",
    "the pith lies in it: it will split there as it dries, whatever is done.",
    "Saw it farther from the middle of the log, or cut the pith out.",
    "common practice, no source",
)


class LogEnd(Shown):
    """A board in its log, and as it dries."""

    needs_a_box = False

    def set_up(self, tried: Tried) -> None:
        design = self.plan.design
        self.sawn = Sawn.of(
            tried["try.wide"],
            thickness=BOARD_THICK,
            ring_radius=tried["try.radius"],
            rings=tried["try.rings"],
            species=design.wood_of(design.uppermost),
            moisture_from=tried["try.wet"],
            moisture_to=making(self.choices.rooms),
        )

    def picture(self, before: Self | None) -> Picture:
        return log_end(self.sawn, rule=self.rule, ghost=before.sawn if before else None)

    def values(self) -> Table:
        show, sawn = self.rule.exact, self.sawn
        wet, dry = sawn.moisture_from, sawn.moisture_to
        rows = [("moisture", f"{wet:g} to {dry:.1f} %", "sawn to bench")]
        if sawn.cup is not None:
            dried = {"moisture_from": wet, "moisture_to": dry}
            along, out = (strain(species=sawn.species, rings=turn, **dried) for turn in (0.0, 90.0))
            by_hand = cup_formula(
                sawn.width, ring_radius=sawn.ring_radius, tangential=along, radial=out
            )
            cup = max(sawn.cup.bark_hollow, sawn.cup.heart_hollow)
            rows += [
                ("width", show(round(sawn.cup.width_after, 2)), "point by point round the pith"),
                ("cup", show(round(cup, 2)), "the same"),
                ("cup by the formula", show(round(by_hand, 2)), "for a flat-sawn board only"),
            ]
        if caution := species(sawn.species).caution:
            rows.append(("its numbers", "from memory", caution))
        return numbers(rows, columns=("what", "value", "how it is found"))

    def verdict(self) -> tuple[Finding, ...]:
        return (_PITH,) if self.sawn.cup is None else ()


LOG = Scene("log", LOG_CONTROLS, LogEnd)
