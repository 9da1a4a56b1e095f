"""Lesson 1, stock selection: what to reckon before the first saw cut, and how it goes wrong."""

from __future__ import annotations

from math import ceil, floor
from random import Random

from toolkit.plan import Plan
from toolkit.stock import sets_needed
from toolkit.study.lesson1_boards import from_a_board
from toolkit.study.lesson1_moisture import heavy_blank, room_moisture
from toolkit.study.lesson1_panels import bottom_clearance, lid_movement
from toolkit.study.lesson1_rough import resawn, wall_stick
from toolkit.study.marking import Question, Slip
from toolkit.study.sums import answer_in, pick

# How soon the grain leaves a board, 1 in so many, and how large a class is: made up.
_SLOPES = (10, 8, 9, 15, 11)
_CLASSES = (10, 9, 6, 7, 11, 13)


def grain_run_out(plan: Plan, chance: Random | None) -> Question | None:
    """How far a fibre goes along a side before it is through."""
    f, rule = plan.design.frame, plan.choices.rule
    thick, high, say = f.side_thickness.value, f.wall_height.value, rule.exact
    slope = pick(chance, _SLOPES)
    rough = plan.choices.allowances.of("side")[2] + thick
    answer = slope * thick
    return Question(
        id="lesson1.run-out",
        prompt=(
            f"The grain of a board runs out 1 in {slope}: along {slope} it comes 1 nearer to the "
            f"face. A side of it is {say(f.side_length.value)} long, {say(high)} high and, planed "
            f"from {say(rough)}, {say(thick)} thick. How far along the side is a fibre, from "
            f"where it enters one face to where it leaves the other? {answer_in(rule)}"
        ),
        answer=answer,
        working=f"run-out = {slope} × {say(thick)} side thickness = {say(answer)}",
        rule=rule,
        slips=(
            Slip(
                slope * rough,
                "That is through the rough board. What is planed off is gone: take the finished "
                "thickness.",
            ),
            Slip(
                slope * high,
                "That is up the side, from edge to edge. A fibre has only the thickness to cross.",
            ),
            Slip(
                thick / slope,
                "The other way about: 1 in so many means that it comes nearer slowly. Multiply.",
            ),
            Slip(slope * thick / 2, "That is to the middle of the side; it goes right through."),
            Slip(thick, "That would be 1 in 1, a fibre straight across at half a right angle."),
        ),
        nudge="However thick the side is, the fibre goes so many times as far along it: multiply.",
    )


def sets(plan: Plan, chance: Random | None) -> Question | None:
    """How many sets of parts a class saws, spares included."""
    students = pick(chance, _CLASSES)
    answer, spare = float(sets_needed(students)), students / 4
    return Question(
        id="lesson1.sets",
        prompt=(
            f"{students} people make this box, {plan.outside} outside. A quarter more sets of "
            "parts than people are sawn, for mishaps, rounded up to whole sets. How many sets "
            "are sawn in all? Answer with a number."
        ),
        answer=answer,
        working=f"sets = {students} + {spare:g} spare, rounded up = {answer:g}",
        rule=plan.choices.rule,
        kind="count",
        slips=(
            Slip(float(floor(students + spare)), "You rounded down: that is under a quarter."),
            Slip(float(students), "That leaves none for mishaps; add a quarter."),
            Slip(float(ceil(spare)), "Those are the spares alone; everybody needs a set too."),
            Slip(students + 25.0, "A quarter is 25 % of the people, not 25 sets."),
            Slip(float(ceil(students * 1.5)), "That is half as many again; a quarter will do."),
        ),
        senses=("too many", "too few"),
        nudge="People, and a quarter of them; then round up.",
    )


TEMPLATES = (
    room_moisture,
    lid_movement,
    bottom_clearance,
    heavy_blank,
    grain_run_out,
    wall_stick,
    from_a_board,
    resawn,
    sets,
)
