"""Lesson 5, the box: what flushing takes from its walls and its lid."""

from __future__ import annotations

from typing import Self

from toolkit.box import Choices
from toolkit.lesson.controls import LengthControl
from toolkit.lesson.scene import Scene, Shown, Tried
from toolkit.lesson.view import ImpossibleError, View, numbers
from toolkit.lesson.worked import worked_out
from toolkit.pictures import Picture, corner_picture, section_across
from toolkit.plan.flushed import flushed
from toolkit.results import Finding, Table, sorted_findings
from toolkit.smoothing import check_lid_play

USUAL_RIM = 0.2  # off the top edges with the joints: common practice, no source [mm]

COLUMNS = ("what", "was", "is then", "where it comes from")
CONTROLS = (
    LengthControl(
        ("try.skim",), "off each outside face", 0.0, 2.0, start=lambda c: c.customs.flushing
    ),
    LengthControl(("try.rim",), "off the top edges", 0.0, 3.0, start=USUAL_RIM),
)


def _flushed(choices: Choices, tried: Tried) -> View:
    rule = choices.rule
    try:
        box = flushed(worked_out(choices), skim=tried["try.skim"], rim_planed=tried["try.rim"])
    except ValueError as error:
        raise ImpossibleError(str(error)) from error
    picture = corner_picture(box.after, which="back", ghost=box.before)
    rows = [
        (row.name, rule.exact(row.terms[0].value), rule.exact(row.value), row.reckoned(rule))
        for row in box.workings
    ]
    table = numbers(rows, title="After flushing", columns=COLUMNS, numeric=(1, 2))
    return View(picture, table, box.findings)


SKIM = Scene("skim", CONTROLS, _flushed)


FIT_CONTROLS = (
    LengthControl(("try.tongue",), "off the lid's tongue", 0.0, 1.5, start=0.0),
    LengthControl(("try.edge",), "off each long edge", 0.0, 3.0, start=0.0),
)


class FittedLid(Shown):
    """A box, and the same once so much was planed off its lid's tongue and long edges."""

    def set_up(self, tried: Tried) -> None:
        self.tongue, self.edge = tried["try.tongue"], tried["try.edge"]
        panels = self.plan.design.choices.panels
        changes = {
            "panels.lid_tongue": panels.lid_tongue + self.tongue,
            "panels.lid_across": (panels.lid_across or 0.0) + 2 * self.edge,
        }
        self.after = worked_out(self.choices.having(changes))

    def picture(self, before: Self | None) -> Picture:
        # Behind it lies the lid before planing.
        return section_across(self.after, ghost=self.plan if before else None)

    def values(self) -> Table:
        rule, was, title = self.rule, self.plan.design.sliding_lid, "Fitting the lid"
        if was is None:
            words = ("the lid", "", "", self.choices.lid.closure.no_tongue)
            return Table(title, COLUMNS, (words,))
        start = self.plan.design.choices.panels.lid_tongue
        rows = [
            (name, rule.exact(before), rule.exact(before + off), words)
            for name, before, off, words in (
                ("play up and down", start, self.tongue, "groove width less tongue"),
                (
                    "play from side to side",
                    was.across,
                    2 * self.edge,
                    "both sides together, in the air of the workshop",
                ),
            )
        ]
        return numbers(rows, title=title, columns=COLUMNS, numeric=(1, 2))

    def verdict(self) -> tuple[Finding, ...]:
        if self.plan.design.sliding_lid is None:
            return ()
        found = self.after.about("lid", "panel", "season", "square")
        found = tuple(row for row in found if row.place.part in ("lid", ""))
        play = self.plan.design.choices.panels.lid_tongue
        said = check_lid_play(play + self.tongue, rule=self.rule)
        return sorted_findings((*found, *said))


FIT = Scene("fit", FIT_CONTROLS, FittedLid, height=440)
