"""Lesson 5, the finish: which one outside and inside, and how much of it for a class."""

from __future__ import annotations

from typing import Self

from toolkit.lesson.controls import ChoiceControl, NumberControl
from toolkit.lesson.scene import Scene, Shown, Tried
from toolkit.pictures import Jar, Picture, jars_picture
from toolkit.plan import Plan
from toolkit.results import Finding, Table, capital
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
    outer = "outside and lid" if areas.lid else "outside"
    sizes = {outer: areas.outside + areas.lid, "inside": areas.inside}
    laid = [(name, outer, 1 if name == "wax" else coats) for name in FINISHES[outside]]
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


def finish_table(plan: Plan, *, boxes: int = CLASS) -> Table:
    """What shellac and wax come to, or oil instead, for one box and for a class."""
    usual = _rows(_needed(plan, outside=OUTSIDE[0], inside=INSIDE[0], coats=2, boxes=boxes))
    oiled = _rows(_needed(plan, outside="oil", inside="bare wood", coats=3, boxes=boxes))
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
        rows = tuple(_rows(self.needed))
        return Table(f"Finish for one box{more}", COLUMNS, rows, note=NOTE)

    def verdict(self) -> tuple[Finding, ...]:
        outside, inside = (FINISHES[self.tried[f"try.{side}"]] for side in ("outside", "inside"))
        return check_finish(FinishPlan(outside=outside, inside=inside))


FINISH = Scene("finish", CONTROLS, Finished, height=390)
