"""Lesson 1, stock selection: what to reckon before the first saw cut, and how it goes wrong."""

from __future__ import annotations

from math import ceil, floor

from toolkit.stock import sets_needed
from toolkit.study.asking import Asking
from toolkit.study.lesson1_boards import from_a_board
from toolkit.study.lesson1_panels import (
    bottom_clearance,
    heavy_blank,
    panel_movement,
    room_moisture,
)
from toolkit.study.lesson1_rough import resawn, wall_stick
from toolkit.study.marking import Question

# How soon the grain leaves a board, 1 in so many, and how large a class is: made up.
_SLOPES = (10, 8, 9, 15, 11)
_CLASSES = (10, 9, 6, 7, 11, 13)


def grain_run_out(ask: Asking) -> Question | None:
    """How far a fibre goes along a side before it is through."""
    f = ask.frame
    thick, high = f.side_thickness.value, f.wall_height.value
    slope = ask.pick(_SLOPES)
    rough = ask.plan.choices.allowances.of("side")[2] + thick
    answer = slope * thick
    slips = {
        "rough": slope * rough,
        "height": slope * high,
        "divided": thick / slope,
        "halved": slope * thick / 2,
        "one-in-one": thick,
    }
    return ask.question("lesson1.run-out", answer, slips, slope=slope, rough=rough)


def sets(ask: Asking) -> Question | None:
    """How many sets of parts a class saws, spares included."""
    students = ask.pick(_CLASSES)
    answer, spare = float(sets_needed(students)), students / 4
    slips = {
        "rounded-down": floor(students + spare),
        "no-spares": students,
        "spares-only": ceil(spare),
        "twenty-five": students + 25.0,
        "half-as-many": ceil(students * 1.5),
    }
    return ask.question("lesson1.sets", answer, slips, students=students, spare=spare)


TEMPLATES = (
    room_moisture,
    panel_movement,
    bottom_clearance,
    heavy_blank,
    grain_run_out,
    wall_stick,
    from_a_board,
    resawn,
    sets,
)
