"""Lesson 3, what its cells show of a plan: dovetails set out, marked, sawn."""

from __future__ import annotations

from toolkit.box.joinery import (
    glue_up_steps,
    line_table,
    slope_table,
    step_table,
    transfer_steps,
)
from toolkit.document import Figure, Sentence, TableBlock
from toolkit.lesson.lesson3_corner import CORNER, ROUND
from toolkit.lesson.lesson3_joint import ARRANGEMENT, LINES
from toolkit.lesson.lesson3_saw import SAW
from toolkit.lesson.lesson3_tables import bench_sentence, divider_table, step_sentence
from toolkit.lesson.worked import drawable
from toolkit.pictures import corner_picture, joint_apart
from toolkit.plan import Plan

HINT = "with its unit: 0.5 mm, 1/64 in"
SCENES = {
    "corner": CORNER,
    "arrangement": ARRANGEMENT,
    "round_grooves": ROUND,
    "lines": LINES,
    "saw": SAW,
}
STILLS = {"corner_still": CORNER, "lines_still": LINES, "saw_still": SAW}


def worked(plan: Plan) -> Sentence:
    """One worked by hand, then the same from the toolkit."""
    return Sentence(step_sentence(drawable(plan)))


def front_still(plan: Plan) -> Figure:
    """The student's own front corner, for paper."""
    return Figure(corner_picture(drawable(plan), which="front"))


def joint_still(plan: Plan) -> Figure:
    """The student's own front corner apart, for paper."""
    return Figure(joint_apart(drawable(plan), which="front"))


def slopes(plan: Plan) -> TableBlock:
    """What each authority says of the slope, and what it does to the student's own tails."""
    d = plan.design
    return TableBlock(
        slope_table(d.back.slope, tail_length=d.back.tail_length, rule=plan.choices.rule)
    )


def dividers(plan: Plan) -> TableBlock:
    """Where the dividers' marks fall."""
    return TableBlock(divider_table(drawable(plan)))


def gauge_lines(plan: Plan) -> TableBlock:
    """Which line goes on which face, gauged from which side."""
    return TableBlock(line_table(drawable(plan).design))


def transfer(plan: Plan) -> TableBlock:
    """From the finished tails to the pins."""
    return TableBlock(step_table(transfer_steps(drawable(plan).design), title="From tails to pins"))


def glue_up(plan: Plan) -> TableBlock:
    """The order of gluing up."""
    return TableBlock(step_table(glue_up_steps(drawable(plan).design), title="Gluing up"))


def carry(plan: Plan) -> Sentence:
    """What to carry to the bench."""
    return bench_sentence(drawable(plan))
