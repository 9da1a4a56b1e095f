"""Lesson 5, the box: what flushing takes from its walls and its lid."""

from __future__ import annotations

from toolkit.box import Choices, Panel
from toolkit.lesson.controls import LengthControl
from toolkit.lesson.scene import Moment, Scene
from toolkit.lesson.view import ImpossibleError, View
from toolkit.lesson.worked import possible, worked_out
from toolkit.pictures import corner_picture, section_across
from toolkit.plan import Plan
from toolkit.plan.flushed import FlushedBox, flushed
from toolkit.results import Table, Working, sorted_findings
from toolkit.smoothing import check_lid_play

USUAL_RIM = 0.2  # off the top edges with the joints: common practice, no source [mm]

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


FIT_CONTROLS = (
    LengthControl(("try.tongue",), "off the lid's tongue", 0.0, 1.5, start=lambda _: 0.0),
    LengthControl(("try.edge",), "off each long edge", 0.0, 3.0, start=lambda _: 0.0),
)


def _fitted(choices: Choices, tongue: float, edge: float) -> Plan:
    """The box once so much was planed off its lid. [mm]"""
    settled = worked_out(choices).design.choices
    across = (settled.panels.lid_across or 0.0) + 2 * edge
    thinner = settled.panels.lid_tongue + tongue
    return worked_out(choices.having({"panels.lid_tongue": thinner, "panels.lid_across": across}))


def _fit(at: Moment) -> View:
    rule = at.choices.rule
    before = possible(at.choices)
    tongue, edge = at.tried["try.tongue"], at.tried["try.edge"]
    made = _fitted(at.choices, tongue, edge)
    picture = section_across(made, ghost=before if at.moved else None)
    columns = ("what", "was", "is then", "where it comes from")
    was, now = before.design.lid, made.design.lid
    if not (isinstance(was, Panel) and isinstance(now, Panel)):
        words = ("the lid", "", "", "lies on the rim: it has no tongue to fit")
        return View(picture, Table("Fitting the lid", columns, (words,)))
    start = before.design.choices.panels.lid_tongue
    up = Working.of("play", ("as planned", start), ("planed off the tongue", tongue))
    side = Working.of("play", ("as planned", was.across), ("planed off both edges", 2 * edge))
    rows = tuple(
        (name, rule.exact(sum_.terms[0].value), rule.exact(sum_.value), words)
        for name, sum_, words in (
            ("play up and down", up, "groove width less tongue"),
            ("play from side to side", side, "both sides together, in the air of the workshop"),
        )
    )
    found = made.about("lid", "panel", "season", "square")
    found = tuple(row for row in found if row.place.part in ("lid", ""))
    found += tuple(check_lid_play(up.value, rule=rule))
    table = Table("Fitting the lid", columns, rows, numeric=(1, 2))
    return View(picture, table, sorted_findings(found))


FIT = Scene("fit", FIT_CONTROLS, _fit, height=440)
