"""Lesson 5, the box: what flushing takes from its walls and its lid."""

from __future__ import annotations

from toolkit.explore.controls import LengthControl
from toolkit.explore.scene import Moment, Scene
from toolkit.explore.view import ImpossibleError, View
from toolkit.explore.worked import worked_out
from toolkit.pictures import corner_picture
from toolkit.plan.flushed import FlushedBox, flushed
from toolkit.results import Table

USUAL_RIM = 0.2  # off the top edges with the joints: common practice, no source [mm]

CONTROLS = (
    LengthControl(
        ("try.skim",), "off each outside face", 0.0, 2.0, start=lambda c: c.customs.flushing
    ),
    LengthControl(("try.rim",), "off the top edges", 0.0, 3.0, start=lambda _: USUAL_RIM),
    LengthControl(("try.tongue",), "off the lid's tongue", 0.0, 1.5, start=lambda _: 0.0),
)


def _flushed(at: Moment) -> FlushedBox:
    made = worked_out(at.choices)
    try:
        return flushed(
            made,
            skim=at.tried["try.skim"],
            rim_planed=at.tried["try.rim"],
            tongue_planed=at.tried["try.tongue"],
        )
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
