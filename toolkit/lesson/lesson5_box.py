"""Lesson 5, the box: what flushing takes, how its lid is fitted, its finish and how much of it."""

from __future__ import annotations

from typing import Self

from toolkit.box import Choices
from toolkit.lesson.controls import ChoiceControl, LengthControl, NumberControl
from toolkit.lesson.scene import ImpossibleError, Scene, Shown, Tried, View, numbers, worked_out
from toolkit.measures import Rule
from toolkit.pictures import Jar, Picture, corner_picture, jars_picture, section_across
from toolkit.plan import Plan, flushed
from toolkit.results import Finding, Table, capital, sorted_findings
from toolkit.shape import finishing_areas
from toolkit.smoothing import (
    FinishPlan,
    Needed,
    check_finish,
    check_lid_play,
    finish_needed,
    shellac_cut,
)

USUAL_RIM = 0.2  # off the top edges with the joints: common practice, no source [mm]

COLUMNS = ("what", "was", "is then", "where it comes from")
SKIM_CONTROLS = (
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
    return View(picture, table, lambda: box.findings)


SKIM = Scene("skim", SKIM_CONTROLS, _flushed)


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

FINISH_CONTROLS = (
    ChoiceControl(("try.outside",), "outside", OUTSIDE, start=OUTSIDE[0]),
    ChoiceControl(("try.inside",), "inside", INSIDE, start=INSIDE[0]),
    NumberControl(("try.coats",), "coats outside", 1, 5, 1, start=2),
    NumberControl(("try.boxes",), "boxes", 1, 40, 1, start=CLASS),
)


def _needed(
    plan: Plan, *, outside: str, inside: str, coats: int, boxes: int
) -> list[tuple[str, Needed]]:
    """Every finish with where it goes and what it comes to. Wax and the inside get one coat."""
    areas = finishing_areas(plan.design)
    outer = "outside and lid" if areas.total("lid") else "outside"
    sizes = {outer: areas.total("outside", "lid"), "inside": areas.total("inside")}
    laid = [(name, outer, 1 if name == "wax" else coats) for name in FINISHES[outside]]
    laid += [(name, "inside", 1) for name in FINISHES[inside]]
    return [
        (where, finish_needed(name, area=sizes[where], coats=count, boxes=boxes))
        for name, where, count in laid
    ]


def _finish_rows(needed: list[tuple[str, Needed]], rule: Rule) -> list[tuple[str, str, str]]:
    rows = [
        (
            f"{one.spread.finish}, {where}",
            rule.area(one.area, large=True),
            one.sentence(rule),
        )
        for where, one in needed
    ]
    if any(one.spread.finish == "shellac" for _, one in needed):
        rows.append(("flakes for the shellac", "", shellac_cut(60, alcohol=500).sentence()))
    return rows


FINISH_COLUMNS = ("what and where", "area of one box", "how much")


def finish_table(plan: Plan) -> Table:
    """What shellac and wax come to, or oil instead, for one box and for a class."""
    rule = plan.choices.rule
    first = _needed(plan, outside=OUTSIDE[0], inside=INSIDE[0], coats=2, boxes=CLASS)
    usual = _finish_rows(first, rule)
    second = _needed(plan, outside="oil", inside="bare wood", coats=3, boxes=CLASS)
    oiled = _finish_rows(second, rule)
    instead = [(f"or instead of shellac: {what}", area, much) for what, area, much in oiled]
    return Table(
        f"Finish for one box, and for a class of {CLASS}",
        FINISH_COLUMNS,
        (*usual, *instead),
        note=f"{NOTE} {_against_oil()}",
    )


def _against_oil() -> str:
    """Why oil does not go inside a box for paper, and what its rags do."""
    rows = [row for row in check_finish(OILED) if row.where in ("inside", "rags")]
    said = (f"{row.message} {row.remedy}".strip() for row in rows)
    return " ".join(map(capital, said))


class Finished(Shown):
    """A finish for so many boxes, with what it takes of each kind and where it goes."""

    def set_up(self, tried: Tried) -> None:
        asked = {key.removeprefix("try."): value for key, value in tried.items()}
        self.needed = _needed(self.plan, **asked)

    @property
    def many(self) -> str:
        """How many boxes, in words."""
        boxes = self.tried["try.boxes"]
        return f"{boxes} boxes" if boxes > 1 else "one box"

    def picture(self, before: Self | None) -> Picture:
        kept = before.needed if before else []
        was = {(one.spread.finish, where): one.to_buy for where, one in kept}
        jars = [
            Jar(
                f"{one.spread.finish}, {where}",
                one.to_buy,
                one.spread.measure,
                was.get((one.spread.finish, where)),
            )
            for where, one in self.needed
        ]
        said = ", ".join(f"{jar.words} {jar.amount:.3g} {jar.unit}" for jar in jars)
        spare = f"{self.needed[0][1].spare:g} % to spare in it"
        return jars_picture(jars, sentence=f"For {self.many}, {spare}: {said}.")

    def values(self) -> Table:
        more = f", and for {self.many}" if self.many != "one box" else ""
        rows = tuple(_finish_rows(self.needed, self.rule))
        return Table(f"Finish for one box{more}", FINISH_COLUMNS, rows, note=NOTE)

    def verdict(self) -> tuple[Finding, ...]:
        outside, inside = (FINISHES[self.tried[f"try.{side}"]] for side in ("outside", "inside"))
        return check_finish(FinishPlan(outside=outside, inside=inside))


FINISH = Scene("finish", FINISH_CONTROLS, Finished, height=390)
