"""Lesson 3, what its cells show of a plan: dovetails set out, marked, sawn."""

from __future__ import annotations

from toolkit.box import (
    gauge_settings,
    glue_up_steps,
    joint_direction,
    line_table,
    marks_error,
    slope_table,
    step_table,
    transfer_steps,
    walk,
)
from toolkit.document import Figure, Sentence, TableBlock
from toolkit.lesson.lesson3_corner import CORNER, ROUND
from toolkit.lesson.lesson3_joint import ARRANGEMENT, LINES, SAW
from toolkit.lesson.scene import drawable
from toolkit.pictures import corner_picture, joint_apart
from toolkit.plan import Plan
from toolkit.results import Table, TaggedSize

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
    """The two sums of this lesson on the box's own back corner. [mm]"""
    rule, d = plan.choices.rule, drawable(plan).design
    tail, walked = d.frame.tail_back.sentence(rule), walk(d.back)
    if d.choices.corner.joint == "half-blind":
        tail = f"Less the lap left in front of the tails: {tail}"
    if walked is None:
        words = "The tails at the back are of unequal width: no divider walks them."
        return Sentence(f"{tail}. {words}")

    def bare(value: float) -> str:
        return rule.exact(value, unit=False)

    left = rule.written(walked.step) - rule.written(walked.pin)
    return Sentence(
        f"{tail}. divider step = ({bare(walked.height)} height − 2 × {bare(walked.half_pin)} half "
        f"pin + {bare(walked.pin)} pin) ÷ {walked.steps} tails = {rule.exact(walked.step)}; "
        f"tail = {bare(walked.step)} step − {bare(walked.pin)} pin = "
        f"{rule.exact(left)}"
    )


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
    """Where the dividers are set, and where every mark falls on both walks."""
    rule, d = plan.choices.rule, drawable(plan).design
    rows, notes = [], []
    remedies: dict[str, list[str]] = {}
    for corner in (d.back, d.front):
        walked = walk(corner)
        if walked is None:
            notes.append(f"{corner.name.capitalize()} corners: unequal tails, marked one by one.")
            continue
        up, down = (
            ", ".join(rule.show(mark, unit=False) for mark in marks)
            for marks in (walked.forward, walked.back)
        )
        rows.append(
            (
                corner.name,
                TaggedSize(
                    rule.show(walked.step),
                    f"dividers, {corner.name} corners",
                    "setting",
                    walked.step,
                ),
                str(walked.steps),
                f"{up} {rule.units}",
                f"{down} {rule.units}",
                f"{rule.show(walked.pin)} past",
            )
        )
        nearest = marks_error(corner, rule=rule)
        if nearest is not None and abs(nearest.error) > 1e-6:
            notes.append(
                f"Set to the nearest mark, {corner.name} dividers are "
                f"{rule.exact(round(abs(nearest.error), 3))} out and the last mark "
                f"{rule.exact(round(abs(nearest.accumulated), 3))}: open or close them till it "
                "falls right."
            )
        remedy = walked.remedy(rule)
        if remedy:
            remedies.setdefault(remedy, []).append(corner.name)
    for remedy, names in remedies.items():
        notes.append(f"{' and '.join(names).capitalize()}: {remedy[:1].lower()}{remedy[1:]}")
    table = Table(
        "Dividers",
        (
            "corners",
            "set to",
            "steps",
            "marks up from the lower half pin",
            "marks down from the upper",
            "last mark, from the far half-pin mark",
        ),
        tuple(rows),
        note=" ".join(notes),
        numeric=(1, 2),
    )
    return TableBlock(table)


def gauge_lines(plan: Plan) -> TableBlock:
    """Which line goes on which face, gauged from which side."""
    return TableBlock(line_table(drawable(plan).design))


def transfer(plan: Plan) -> TableBlock:
    """From the finished tails to the pins."""
    return TableBlock(step_table(transfer_steps(drawable(plan).design), title="Tails, then pins"))


def glue_up(plan: Plan) -> TableBlock:
    """The order of gluing up."""
    return TableBlock(step_table(glue_up_steps(drawable(plan).design), title="Gluing up"))


def carry(plan: Plan) -> Sentence:
    """What to carry to the bench: gauges, bevel, dividers, and what goes on last."""
    rule, d = plan.choices.rule, drawable(plan).design
    show, s, way = rule.show, gauge_settings(d), joint_direction(d)

    def gauge(name: str, back: float, front: float) -> tuple[str, ...]:
        if back == front:
            return (TaggedSize(show(back), name, "setting", back),)
        ends = (("back", back), ("front", front))
        sizes = [TaggedSize(show(size), f"{name}, {end}", "setting", size) for end, size in ends]
        return sizes[0], " back, ", sizes[1], " front"

    lap = ""
    if d.choices.corner.joint == "half-blind":
        lap = " Wood planed off the outside from now on comes off the lap; lap left: ______."
    ear = ""
    if s.ear is not None and s.ear[0].value > 0:
        ear = f" Ears: {show(s.ear[0].value)} and {show(s.ear[1].value)} from the front end."
    walked: list[str] = []
    for corner in (d.back, d.front):
        if corner.step is not None:
            step = TaggedSize(
                show(corner.step), f"dividers, {corner.name} corners", "setting", corner.step
            )
            before = ", " if walked else " Dividers: "
            walked += [f"{before}{corner.name} ", step, f" × {len(corner.tails)}"]
    return Sentence.of(
        "Gauge 1: ",
        *gauge("gauge 1, tail length", s.tail_back.value, s.tail_front.value),
        "; gauge 2: ",
        *gauge("gauge 2, tail-board thickness", s.board_back.value, s.board_front.value),
        f"; leave both set.{ear} Bevel: 1 in {d.back.slope:g}, {d.back.angle:.1f}°.",
        *walked,
        f"{'.' if walked else ''} Tails on the {way.tail_boards}, which go on last.{lap}",
    )
