"""Lesson 5, the box: what flushing takes from its walls, and what a finish comes to."""

from __future__ import annotations

from toolkit.explore.controls import LengthControl
from toolkit.explore.scene import Moment, Scene
from toolkit.explore.view import ImpossibleError, View
from toolkit.explore.worked import worked_out
from toolkit.pictures import corner_picture
from toolkit.plan import Plan
from toolkit.plan.areas import finishing_areas
from toolkit.plan.flushed import FlushedBox, flushed
from toolkit.results import Table
from toolkit.smoothing import (
    FinishPlan,
    area_words,
    check_finish,
    finish_needed,
    shellac_cut,
)

CLASS = 10  # students in the weekend class
USUAL_RIM = 0.2  # off the top edges with the joints: common practice, no source [mm]
OILED = FinishPlan(inside=("oil",))  # what a beginner asks for first
COATS = (("shellac", "outside", 2), ("shellac", "inside", 1), ("wax", "outside", 1))

CONTROLS = (
    LengthControl(
        ("try.skim",), "off each outside face", 0.0, 2.0, start=lambda c: c.customs.flushing
    ),
    LengthControl(("try.rim",), "off the top edges", 0.0, 3.0, start=lambda _: USUAL_RIM),
)


def _flushed(at: Moment) -> FlushedBox:
    made = worked_out(at.choices)
    try:
        return flushed(made, skim=at.tried["try.skim"], rim_planed=at.tried["try.rim"])
    except ValueError as error:
        raise ImpossibleError(str(error)) from error


def _view(at: Moment) -> View:
    rule = at.choices.rule
    box = _flushed(at)
    picture = corner_picture(box.after, which="back", ghost=box.before)
    rows = tuple(
        (
            row.name,
            rule.exact(row.terms[0].value),
            rule.exact(row.value),
            row.sentence(rule).partition(" = ")[2],
        )
        for row in box.workings
    )
    columns = ("what", "was", "is then", "where it comes from")
    table = Table("After flushing", columns, rows, numeric=(1, 2))
    return View(picture, table, box.findings)


SKIM = Scene("skim", CONTROLS, _view)


def finish_table(made: Plan) -> Table:
    """What shellac and wax come to, for one box and for a class.

    Parameters
    ----------
    made : Plan
        The box. [mm]
    """
    areas = finishing_areas(made)
    place = {"outside": areas.outside + areas.lid, "inside": areas.inside}
    rows = [
        (
            f"{finish}, {where}",
            area_words(place[where]),
            finish_needed(finish, area=place[where], coats=coats, boxes=CLASS).sentence(),
        )
        for finish, where, coats in COATS
    ]
    rows.append(("flakes for the shellac", "", shellac_cut(60, alcohol=500).sentence()))
    return Table(
        f"Finish for one box, and for a class of {CLASS}",
        ("what and where", "area of one box", "how much"),
        tuple(rows),
        note="No finish in the grooves or on joints. The bottom gets its first coat before it is "
        f"shut into its grooves. {_against_oil()}",
    )


def _against_oil() -> str:
    """Why oil does not go inside a box for paper, and what its rags do."""
    rows = [row for row in check_finish(OILED) if row.where in ("inside", "rags")]
    said = (f"{row.message} {row.remedy}".strip() for row in rows)
    return " ".join(text[0].upper() + text[1:] for text in said)
