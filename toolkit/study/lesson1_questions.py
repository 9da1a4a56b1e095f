"""Lesson 1, stock selection: what to reckon before the first saw cut, and how it goes wrong."""

from __future__ import annotations

from math import ceil, floor

from toolkit.stock import sets_needed
from toolkit.study.asking import Asking
from toolkit.study.lesson1_boards import from_a_board
from toolkit.study.lesson1_moisture import heavy_blank, room_moisture
from toolkit.study.lesson1_panels import bottom_clearance, lid_movement
from toolkit.study.lesson1_rough import resawn, wall_stick
from toolkit.study.marking import Question

# How soon the grain leaves a board, 1 in so many, and how large a class is: made up.
_SLOPES = (10, 8, 9, 15, 11)
_CLASSES = (10, 9, 6, 7, 11, 13)


def grain_run_out(ask: Asking) -> Question | None:
    """How far a fibre goes along a side before it is through."""
    f, rule = ask.frame, ask.rule
    thick, high, say = f.side_thickness.value, f.wall_height.value, rule.exact
    slope = ask.pick(_SLOPES)
    rough = ask.plan.choices.allowances.of("side")[2] + thick
    answer = slope * thick
    return ask.question(
        "lesson1.run-out",
        f"The grain of a board runs out 1 in {slope}: along {slope} it comes 1 nearer to the "
        f"face. A side of it is {say(f.side_length.value)} long, {say(high)} high and, planed "
        f"from {say(rough)}, {say(thick)} thick. How far along the side is a fibre, from "
        "where it enters one face to where it leaves the other?",
        (answer, f"run-out = {slope} × {say(thick)} side thickness = {say(answer)}"),
        (
            slope * rough,
            "That is through the rough board. What is planed off is gone: take the finished "
            "thickness.",
        ),
        (
            slope * high,
            "That is up the side, from edge to edge. A fibre has only the thickness to cross.",
        ),
        (
            thick / slope,
            "The other way about: 1 in so many means that it comes nearer slowly. Multiply.",
        ),
        (slope * thick / 2, "That is to the middle of the side; it goes right through."),
        (thick, "That would be 1 in 1, a fibre straight across at half a right angle."),
        nudge="However thick the side is, the fibre goes so many times as far along it: multiply.",
    )


def sets(ask: Asking) -> Question | None:
    """How many sets of parts a class saws, spares included."""
    students = ask.pick(_CLASSES)
    answer, spare = float(sets_needed(students)), students / 4
    return ask.question(
        "lesson1.sets",
        f"{students} people make this box, {ask.plan.outside} outside. A quarter more sets of "
        "parts than people are sawn, for mishaps, rounded up to whole sets. How many sets "
        "are sawn in all?",
        (answer, f"sets = {students} + {spare:g} spare, rounded up = {answer:g}"),
        (floor(students + spare), "You rounded down: that is under a quarter."),
        (students, "That leaves none for mishaps; add a quarter."),
        (ceil(spare), "Those are the spares alone; everybody needs a set too."),
        (students + 25.0, "A quarter is 25 % of the people, not 25 sets."),
        (ceil(students * 1.5), "That is half as many again; a quarter will do."),
        kind="count",
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
