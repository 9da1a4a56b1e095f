"""Lesson 2, what its cells show of a plan: from a warped board to true parts."""

from __future__ import annotations

from toolkit.document import Figure, Sentence, TableBlock
from toolkit.lesson.lesson2_board import (
    CROSSCUT,
    WARP,
    long_board,
    rough_table,
    stick_of,
    walls,
    yield_of,
)
from toolkit.lesson.lesson2_planes import COARSE, FINE, MEDIUM, PLANES, TIME
from toolkit.pictures import shavings_picture
from toolkit.plan import Plan
from toolkit.planes import JACK, SMOOTHER, TRY
from toolkit.results import Size, Table
from toolkit.truing import (
    ORDERS,
    THICKNESS_FIRST,
    Warp,
    cut_to,
    least_strokes,
    order_of_work,
)

HINT = "with its unit: 4 mm, 1/8 in"
SCENES = {"warp": WARP, "crosscut": CROSSCUT, "planes": PLANES, "time": TIME}
STILLS = {"face_still": WARP, "crosscut_still": CROSSCUT, "time_still": TIME}


def worked(plan: Plan) -> Sentence:
    """One worked by hand, then the same from the toolkit."""
    rule, whole = plan.choices.rule, long_board()
    part, left = 700.0 / whole.length, cut_to(whole, length=700.0).bow
    return Sentence(
        f"{rule.exact(whole.bow)} bow × ({rule.exact(700.0, unit=False)} ÷ "
        f"{rule.exact(whole.length, unit=False)})² = {rule.exact(whole.bow)} × {part**2:.4g} = "
        f"{rule.exact(round(left, 2))}."
    )


def _own_warp(plan: Plan) -> Warp:
    """A warp for the walls' stick, as a class's sticks had it. [mm]"""
    length, width, _ = stick_of(plan)
    return Warp(length, width, bow=1.5, cup=0.5, twist=1.3)


def planes_still(plan: Plan) -> Figure:
    """What three planes leave, for paper."""
    rule, width = plan.choices.rule, walls(plan).rough_width.value
    rows = [
        least_strokes(plane, width=width, remove=remove)
        for plane, remove in ((JACK, COARSE), (TRY, MEDIUM), (SMOOTHER, FINE))
    ]
    said = " ".join(row.sentence(rule) for row in rows)
    return Figure(shavings_picture(rows, rule=rule, sentence=said))


def order(plan: Plan, *steps: str) -> TableBlock:
    """The order of work for a side and its tests; a teacher's own ``steps``, or an order's name."""
    rule, side = plan.choices.rule, walls(plan)
    named = ORDERS.get(steps[0]) if len(steps) == 1 else steps
    found = order_of_work(side, order=named or THICKNESS_FIRST)
    rows = tuple(
        (str(number), task.step.name, task.sentence(rule))
        for number, task in enumerate(found.tasks, start=1)
    )
    said = " ".join(row.sentence for row in found.findings if row.level != "good")
    others = f"Another order: {', '.join(repr(name) for name in ORDERS)}, or the steps by name."
    columns = ("step", "name", "what to do")
    title = "Order of work for a side, with its tests"
    return TableBlock(Table(title, columns, rows, note=said or others))


def rough(plan: Plan) -> TableBlock:
    """Rough sizes that follow from the stick's own warp."""
    return TableBlock(rough_table(plan, _own_warp(plan)))


def carry(plan: Plan) -> Sentence:
    """What to carry to the bench: what the stick must give, and the first plane's setting."""
    rule = plan.choices.rule
    length, width, thick = stick_of(plan)
    gives = yield_of(_own_warp(plan), thick)
    strokes = least_strokes(JACK, width=width, remove=COARSE)
    wall = walls(plan).thickness.value
    return Sentence.of(
        f"Walls' stick {rule.show(length, fineness='rough')} × ",
        Size(rule.show(width), "side", "rough width", width),
        " × ",
        Size(rule.show(thick), "side", "rough thickness", thick),
        f"; warped like the one above it gives {rule.exact(round(gives.program, 2))} for walls of ",
        Size(rule.show(wall), "side", "finished thickness", wall),
        f". Jack plane: {strokes.tracks} tracks side by side, each {strokes.overlap:.0%} over the "
        "last. Crosscut first, then plane.",
    )
