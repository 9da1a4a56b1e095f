"""Lesson 1, the tree and the room: a panel through the year, and a board in its log."""

from __future__ import annotations

from typing import Any

from toolkit.box import Panel
from toolkit.box.seasons import year_between
from toolkit.lesson.controls import ChoiceControl, LengthControl, NumberControl
from toolkit.lesson.scene import Moment, Scene
from toolkit.lesson.view import ImpossibleError, View
from toolkit.lesson.worked import worked_out
from toolkit.pictures import Sawn, Year, log_end, year_picture
from toolkit.plan import Plan
from toolkit.results import Finding, Table
from toolkit.wood import (
    MONTHS,
    cup_formula,
    equilibrium_moisture,
    movement,
    place,
    places,
    quick_rule,
    strain,
)

# Woods that a beginner's class is likely to be offered (common practice, no source).
WOODS = (
    "black cherry",
    "black walnut",
    "red alder",
    "American basswood",
    "sugar maple",
    "white ash",
    "American beech",
    "red oak, commercial group",
)
OWN_ROOMS = "own rooms"
_JUNE = 5
SAWN_AT = 80.0  # where the first board of the log scene lies, from the pith [mm]
SAWN_WET = 14.0  # moisture of a board from an open shed: common practice, no source [%]
BOARD_THICK = 16.0  # of the board in the log scene, as the rough list asks for walls [mm]

PANEL_WOOD = ChoiceControl(
    ("wood.panels",),
    "lid and bottom of",
    tuple((name, name) for name in WOODS),
    slider=True,
)
RINGS = NumberControl(("wood.rings",), "rings to the width", 0, 90, 5, "°")

SEASON_CONTROLS = (
    PANEL_WOOD,
    RINGS,
    ChoiceControl(
        ("try.month",),
        "made in",
        tuple((name, index) for index, name in enumerate(MONTHS)),
        start=lambda _: _JUNE,
        slider=True,
    ),
    ChoiceControl(
        ("try.place",),
        "lives in",
        (("my own two rooms", OWN_ROOMS), *((row.name, row.name) for row in places())),
        start=lambda _: OWN_ROOMS,
        slider=True,
    ),
)


def year_of(made: Plan, *, month: int = _JUNE, lives_in: str = OWN_ROOMS) -> Year:
    """The lid's year, as dry when made as the box's bench says."""
    if not made.design.exists:
        raise ImpossibleError(made.findings[0].sentence)
    choices, lid = made.design.choices, made.design.lid
    where = year_between(choices.rooms) if lives_in == OWN_ROOMS else place(lives_in)
    asked: dict[str, Any] = {
        "place": where,
        "species": choices.wood.lid,
        "rings": choices.wood.rings,
        "made_in": month,
        "moisture_from": lid.season.make if lives_in == OWN_ROOMS else None,
    }
    if isinstance(lid, Panel):
        return Year.of_panel(lid, **asked)
    return Year.of(lid.width.value, name="lid", **asked)


def _season(at: Moment) -> View:
    made, before = worked_out(at.choices), worked_out(at.kept)
    year = year_of(made, month=at.tried["try.month"], lives_in=at.tried["try.place"])
    ghost = None
    if at.moved and before.design.exists:
        ghost = year_of(before, month=at.before["try.month"], lives_in=at.before["try.place"])
    picture = year_picture(year, rule=at.choices.rule, ghost=ghost)
    return View(picture, _numbers(year, made), made.about("season"))


def _numbers(year: Year, made: Plan) -> Table:
    """The same movement twice: by the law, and by the sum on paper."""
    rule = made.choices.rule
    dry = year.place.moisture[year.made_in]
    if year.place.seen == "measured":
        dry = made.design.lid.season.make
    wet = max(year.place.moisture)
    asked: dict[str, Any] = {
        "species": year.species,
        "rings": year.rings,
        "moisture_from": dry,
        "moisture_to": wet,
    }
    law = movement(year.made, **asked)
    rows = [
        ("moisture when made", f"{dry:.1f} %", "what the air of that time and place gives it"),
        ("moisture at its wettest", f"{wet:.1f} %", "the same, in the dampest month"),
        ("it grows", rule.exact(round(law, 2)), "by the law for every moisture (Eq. 13-3)"),
    ]
    try:
        quick = quick_rule(year.made, **asked)
        told = quick.doubt or "width × coefficient × percent (Eq. 13-2)"
        rows.append(("by the quick rule", rule.exact(round(quick.change, 2)), told))
    except ValueError as error:
        rows.append(("by the quick rule", "no answer", str(error)))
    return Table("Numbers", ("what", "value", "where it comes from"), tuple(rows), numeric=(1,))


SEASON = Scene("season", SEASON_CONTROLS, _season)

LOG_CONTROLS = (
    LengthControl(("try.radius",), "from the pith", 20.0, 300.0, "rough", start=lambda _: SAWN_AT),
    LengthControl(("try.wide",), "width of the board", 40.0, 230.0, "rough", start=lambda c: 115.0),
    NumberControl(("try.rings",), "rings to the width", 0, 90, 5, "°", lambda _: 0.0),
    NumberControl(("try.wet",), "moisture when sawn", 6, 30, 1, "%", lambda _: SAWN_WET),
)


def _sawn(at: Moment, values: dict[str, float]) -> Sawn:
    room = at.choices.rooms.make
    return Sawn.of(
        values["try.wide"],
        thickness=BOARD_THICK,
        ring_radius=values["try.radius"],
        rings=values["try.rings"],
        species=worked_out(at.choices).design.choices.wood.lid,
        moisture_from=values["try.wet"],
        moisture_to=equilibrium_moisture(temperature=room.temperature, humidity=room.humidity),
    )


def sawn_lid(made: Plan) -> Sawn:
    """The student's own lid as it might have come from a log. [mm]"""
    season = made.design.lid.season
    return Sawn.of(
        made.design.lid.width.value,
        thickness=BOARD_THICK,
        ring_radius=SAWN_AT,
        rings=made.design.choices.wood.rings,
        species=made.design.choices.wood.lid,
        moisture_from=SAWN_WET,
        moisture_to=season.make,
    )


_PITH = Finding(
    "wont_work",
    "pith-inside",
    "board",
    "the pith lies in it: it will split there as it dries, whatever is done.",
    "Saw it farther from the middle of the log, or cut the pith out.",
    "common practice, no source",
)


def _log(at: Moment) -> View:
    rule = at.choices.rule
    sawn = _sawn(at, dict(at.tried))
    ghost = _sawn(at, dict(at.before)) if at.moved else None
    picture = log_end(sawn, rule=rule, ghost=ghost)
    return View(picture, _log_numbers(at, sawn), (_PITH,) if sawn.cup is None else ())


def _log_numbers(at: Moment, sawn: Sawn) -> Table:
    show = at.choices.rule.exact
    rows = [("moisture", f"{sawn.moisture_from:g} to {sawn.moisture_to:.1f} %", "sawn to bench")]
    if sawn.cup is not None:
        dried = {"moisture_from": sawn.moisture_from, "moisture_to": sawn.moisture_to}
        along, out = (strain(species=sawn.species, rings=turn, **dried) for turn in (0.0, 90.0))
        by_hand = cup_formula(
            sawn.width, ring_radius=sawn.ring_radius, tangential=along, radial=out
        )
        rows += [
            ("width", show(round(sawn.cup.width_after, 2)), "point by point round the pith"),
            ("cup", show(round(max(sawn.cup.bark_hollow, sawn.cup.heart_hollow), 2)), "the same"),
            ("cup by the formula", show(round(by_hand, 2)), "for a flat-sawn board only"),
        ]
    return Table("Numbers", ("what", "value", "how it is found"), tuple(rows), numeric=(1,))


LOG = Scene("log", LOG_CONTROLS, _log)
