"""Lesson 5, the finish: which one outside and inside, and how much of it for a class."""

from __future__ import annotations

from functools import lru_cache

from toolkit.box import Choices
from toolkit.explore.controls import ChoiceControl, NumberControl
from toolkit.explore.scene import Moment, Scene
from toolkit.explore.view import View
from toolkit.explore.worked import possible
from toolkit.pictures import Picture, box_apart
from toolkit.plan import Plan
from toolkit.plan.areas import finishing_areas
from toolkit.results import Table
from toolkit.smoothing import FinishPlan, area_words, check_finish, finish_needed, shellac_cut

CLASS = 10  # students in the weekend class
OILED = FinishPlan(inside=("oil",))  # what a beginner asks for first
FINISHES = {
    "shellac, then wax": ("shellac", "wax"),
    "oil, then wax": ("oil", "wax"),
    "thinned oil": ("thinned oil",),
    "wax": ("wax",),
    "shellac": ("shellac",),
    "oil": ("oil",),
    "bare wood": (),
}
OUTSIDE = ("shellac, then wax", "oil, then wax", "thinned oil", "wax")
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


def _rows(
    made: Plan, *, outside: str, inside: str, coats: int, boxes: int
) -> list[tuple[str, str, str]]:
    """Every finish with the surface that it covers and what it comes to."""
    areas = finishing_areas(made)
    sizes = {"outside and lid": areas.outside + areas.lid, "inside": areas.inside}
    # Wax is rubbed on once, and so is whatever goes inside.
    laid = [(name, "outside and lid", 1 if name == "wax" else coats) for name in FINISHES[outside]]
    laid += [(name, "inside", 1) for name in FINISHES[inside]]
    rows = [
        (
            f"{name}, {where}",
            area_words(sizes[where]),
            finish_needed(name, area=sizes[where], coats=count, boxes=boxes).sentence(),
        )
        for name, where, count in laid
    ]
    if any(name == "shellac" for name, _, _ in laid):
        rows.append(("flakes for the shellac", "", shellac_cut(60, alcohol=500).sentence()))
    return rows


COLUMNS = ("what and where", "area of one box", "how much")


def finish_table(made: Plan, *, boxes: int = CLASS) -> Table:
    """What shellac and wax come to, or oil instead, for one box and for a class.

    Parameters
    ----------
    made : Plan
        The box. [mm]
    boxes : int
        How many the class makes.
    """
    usual = _rows(made, outside=OUTSIDE[0], inside=INSIDE[0], coats=2, boxes=boxes)
    oiled = _rows(made, outside="oil", inside="bare wood", coats=3, boxes=boxes)
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
    return " ".join(text[0].upper() + text[1:] for text in said)


@lru_cache(maxsize=8)
def _apart(choices: Choices) -> Picture:
    return box_apart(possible(choices))


def _view(at: Moment) -> View:
    made, tried = possible(at.choices), at.tried
    outside, inside, boxes = tried["try.outside"], tried["try.inside"], int(tried["try.boxes"])
    rows = _rows(made, outside=outside, inside=inside, coats=int(tried["try.coats"]), boxes=boxes)
    title = f"Finish for one box, and for {boxes} boxes" if boxes > 1 else "Finish for one box"
    meant = FinishPlan(outside=FINISHES[outside], inside=FINISHES[inside])
    return View(
        _apart(at.choices), Table(title, COLUMNS, tuple(rows), note=NOTE), check_finish(meant)
    )


FINISH = Scene("finish", CONTROLS, _view, height=560)
