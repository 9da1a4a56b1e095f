"""Lesson 5, the finish: which one outside and inside, and how much of it for a class."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from toolkit.lesson.controls import ChoiceControl, NumberControl
from toolkit.lesson.scene import Moment, Scene
from toolkit.lesson.view import View
from toolkit.lesson.worked import possible
from toolkit.pictures import Jar, jars_picture
from toolkit.plan import Plan
from toolkit.results import Table, capital
from toolkit.shape import finishing_areas
from toolkit.smoothing import (
    FinishPlan,
    Needed,
    area_words,
    check_finish,
    finish_needed,
    shellac_cut,
)

CLASS = 10  # students in the weekend class
OILED = FinishPlan(inside=("oil",))  # what a beginner asks for first
FINISHES = {
    "shellac, then wax": ("shellac", "wax"),
    "oil, then wax": ("oil", "wax"),
    "thinned oil": ("thinned oil",),
    "wax alone": ("wax",),
    "wax": ("wax",),
    "shellac": ("shellac",),
    "oil": ("oil",),
    "bare wood": (),
}
OUTSIDE = ("shellac, then wax", "oil, then wax", "thinned oil", "wax alone")
INSIDE = ("shellac", "bare wood", "wax", "oil")
NOTE = (
    "No finish in the grooves or on joints. The bottom gets its first coat before it is shut into "
    "its grooves."
)

CONTROLS = (
    ChoiceControl(
        ("try.outside",),
        "outside and lid",
        tuple((name, name) for name in OUTSIDE),
        start=lambda _: OUTSIDE[0],
    ),
    ChoiceControl(
        ("try.inside",),
        "inside",
        tuple((name, name) for name in INSIDE),
        start=lambda _: INSIDE[0],
    ),
    NumberControl(("try.coats",), "coats outside", 1, 5, 1, "", lambda _: 2),
    NumberControl(("try.boxes",), "boxes", 1, 40, 1, "", lambda _: CLASS),
)


def _needed(
    made: Plan, *, outside: str, inside: str, coats: int, boxes: int
) -> list[tuple[str, Needed]]:
    """Every finish with where it goes and what it comes to. Wax and the inside get one coat."""
    areas = finishing_areas(made.design)
    sizes = {"outside and lid": areas.outside + areas.lid, "inside": areas.inside}
    laid = [(name, "outside and lid", 1 if name == "wax" else coats) for name in FINISHES[outside]]
    laid += [(name, "inside", 1) for name in FINISHES[inside]]
    return [
        (where, finish_needed(name, area=sizes[where], coats=count, boxes=boxes))
        for name, where, count in laid
    ]


def _rows(needed: list[tuple[str, Needed]]) -> list[tuple[str, str, str]]:
    rows = [
        (f"{one.spread.finish}, {where}", area_words(one.area), one.sentence())
        for where, one in needed
    ]
    if any(one.spread.finish == "shellac" for _, one in needed):
        rows.append(("flakes for the shellac", "", shellac_cut(60, alcohol=500).sentence()))
    return rows


COLUMNS = ("what and where", "area of one box", "how much")


def finish_table(made: Plan, *, boxes: int = CLASS) -> Table:
    """What shellac and wax come to, or oil instead, for one box and for a class."""
    usual = _rows(_needed(made, outside=OUTSIDE[0], inside=INSIDE[0], coats=2, boxes=boxes))
    oiled = _rows(_needed(made, outside="oil", inside="bare wood", coats=3, boxes=boxes))
    instead = [(f"or instead of shellac: {what}", area, much) for what, area, much in oiled]
    return Table(
        f"Finish for one box, and for a class of {boxes}",
        COLUMNS,
        (*usual, *instead),
        note=f"{NOTE} {_against_oil()}",
    )


def _against_oil() -> str:
    """Why oil does not go inside a box for paper, and what its rags do."""
    rows = [row for row in check_finish(OILED) if row.where in ("inside", "rags")]
    said = (f"{row.message} {row.remedy}".strip() for row in rows)
    return " ".join(map(capital, said))


def _asked(made: Plan, tried: Mapping[str, Any]) -> list[tuple[str, Needed]]:
    return _needed(
        made,
        outside=tried["try.outside"],
        inside=tried["try.inside"],
        coats=int(tried["try.coats"]),
        boxes=int(tried["try.boxes"]),
    )


def _view(at: Moment) -> View:
    made, boxes = possible(at.choices), int(at.tried["try.boxes"])
    needed = _asked(made, at.tried)
    kept = _asked(possible(at.kept), at.before) if at.moved else []
    was = {(one.spread.finish, where): one.to_buy for where, one in kept}
    jars = [
        Jar(
            f"{one.spread.finish}, {where}",
            one.to_buy,
            one.spread.measure,
            was.get((one.spread.finish, where)),
        )
        for where, one in needed
    ]
    many = f"{boxes} boxes" if boxes > 1 else "one box"
    said = ", ".join(f"{jar.words} {jar.amount:.3g} {jar.unit}" for jar in jars)
    spare = f"{needed[0][1].spare:g} % to spare in it"
    picture = jars_picture(jars, sentence=f"For {many}, {spare}: {said}.")
    meant = FinishPlan(
        outside=FINISHES[at.tried["try.outside"]], inside=FINISHES[at.tried["try.inside"]]
    )
    title = f"Finish for one box, and for {many}" if boxes > 1 else "Finish for one box"
    table = Table(title, COLUMNS, tuple(_rows(needed)), note=NOTE)
    return View(picture, table, check_finish(meant))


FINISH = Scene("finish", CONTROLS, _view, height=390)
