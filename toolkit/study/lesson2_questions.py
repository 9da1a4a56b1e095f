"""Lesson 2, dimensioning: warp that sawing saves, winding sticks, strokes and edges."""

from __future__ import annotations

from math import ceil, degrees

from toolkit import truing
from toolkit.measures import MM_PER_INCH
from toolkit.planes import Scallops
from toolkit.results import TOLERANCE
from toolkit.study.asking import Asking
from toolkit.study.lesson2_warp import crosscut_bow, stick_reading, true_thickness, twist_left
from toolkit.study.marking import Question

# What a plane takes off in one pass, net of its ridges; invented for the questions. [mm]
DROPS = {"mm": (0.2, 0.25, 0.3), "in": (MM_PER_INCH / 128, MM_PER_INCH / 64)}
TRACKS = (3, 4)
GAPS = {"mm": (0.2, 0.1, 0.3), "in": (MM_PER_INCH / 128, MM_PER_INCH / 64)}


def strokes(ask: Asking) -> Question | None:
    """How many strokes bring a rough side down to its thickness."""
    side, rule = ask.part("side"), ask.rule
    if side is None:
        return None
    off = side.rough_thickness.value - side.thickness.value
    if off <= 0:
        return None
    drop, tracks, say = ask.pick(DROPS[rule.units]), ask.pick(TRACKS), rule.exact
    passes = ceil(off / drop * (1 - TOLERANCE))
    return ask.question(
        "lesson2.strokes",
        f"A rough side is {say(side.rough_thickness.value)} thick and shall be "
        f"{say(side.thickness.value)}. A pass of {tracks} strokes side by side lowers it by "
        f"{say(drop)}. How many strokes does it take?",
        (
            passes * tracks,
            f"({say(side.rough_thickness.value)} − {say(side.thickness.value)}) ÷ {say(drop)}, "
            f"rounded up = {passes} passes; {passes} × {tracks} = {passes * tracks} strokes",
        ),
        (passes, "Those are passes. Each pass takes several strokes side by side."),
        (
            ceil(side.rough_thickness.value / drop * (1 - TOLERANCE)) * tracks,
            "That planes the whole board away; only what lies over the finished size goes.",
        ),
        (
            ceil(off / 2 / drop * (1 - TOLERANCE)) * tracks,
            "That is one face's half of it. What one face keeps, the other has to give.",
        ),
        kind="count",
        nudge="Passes first, then strokes in a pass.",
    )


def out_of_square(ask: Asking) -> Question | None:
    """How far an edge is out of square when the square shows a gap."""
    side, rule = ask.part("side"), ask.rule
    if side is None:
        return None
    gap, thick, say = ask.pick(GAPS[rule.units]), side.thickness.value, rule.exact
    answer = degrees(gap / thick)
    return ask.question(
        "lesson2.out-of-square",
        f"Under the blade of the square, the edge of a side {say(thick)} thick shows a gap of "
        f"{say(gap)} at its far arris. By what angle is it out of square?",
        (answer, f"{say(gap)} ÷ {say(thick)} × 57.3 = {answer:.1f} deg"),
        (90 - answer, "That is the edge's angle itself; the question is how far from 90°."),
        (2 * answer + 1.0, "Take the gap as it is: it is not halved or doubled."),
        (degrees(gap), "Divide by the thickness that the gap opens over."),
        kind="deg",
        senses=("too much", "too little"),
        nudge="Gap over thickness, and a radian is 57.3 degrees.",
        how='Answer in degrees, such as "1.5 deg".',
    )


def edge_step(ask: Asking) -> Question | None:
    """What an angle out of square makes of a wall's thickness."""
    side, rule = ask.part("side"), ask.rule
    if side is None:
        return None
    height, angle, say = side.width.value, ask.pick((0.5, 1.0, 2.0)), rule.exact
    step = truing.out_of_square(height, angle=angle)
    return ask.question(
        "lesson2.lean",
        f"A side {say(height)} high stands on an edge that is {angle:g}° out of square. How "
        "far does its top lean?",
        (step, f"{say(height)} × tan {angle:g}° = {say(round(step, 2))}"),
        (
            truing.out_of_square(side.thickness.value, angle=angle),
            "That is across the thickness; it leans over its whole height.",
        ),
        (truing.out_of_square(side.length.value, angle=angle), "That is along its length."),
        (height * angle / 100, "Degrees are no percent: take the tangent."),
        fineness="joints",
        senses=("too far", "too little"),
        nudge="Height times the tangent of the angle; 1° is about 1 in 57.",
    )


def ridges(ask: Asking) -> Question | None:
    """How high the ridges are between two tracks of a cambered iron."""
    rule = ask.rule
    radius = ask.pick(_RADII[rule.units])
    step = ask.pick(_STEPS[rule.units])
    say, answer = rule.exact, Scallops(radius, pitch=step).shallow_depth
    return ask.question(
        "lesson2.ridge",
        f"In the wood, a jack plane's iron cuts an arc of {say(radius)} radius, and its tracks "
        f"lie {say(step)} apart. How high are the ridges between them?",
        (answer, f"{say(step)}² ÷ (8 × {say(radius)}) = {say(round(answer, 2))}"),
        (step**2 / (2 * radius), "Half the step counts, and it is squared: divide by 8."),
        (step**2 / radius, "Divide by eight radii, not by one."),
        (step**2 / (4 * radius), "That is a diameter for a radius."),
        fineness="joints",
        senses=("too high", "too low"),
        nudge="Step squared over eight radii.",
    )


_RADII = {"mm": (360.0, 300.0, 250.0), "in": (14 * MM_PER_INCH, 12 * MM_PER_INCH)}
_STEPS = {"mm": (32.0, 28.0, 24.0), "in": (1.25 * MM_PER_INCH, 1.5 * MM_PER_INCH)}


def rough_thickness(ask: Asking) -> Question | None:
    """How thick a rough board must be for a side, warp and saw marks counted."""
    side, rule = ask.part("side"), ask.rule
    if side is None:
        return None
    bow, cup, twist, marks = (ask.pick(row) for row in _WARPS[rule.units])
    finished, say = side.thickness.value, rule.exact
    answer = finished + bow + cup + twist / 2 + 2 * marks
    return ask.question(
        "lesson2.rough",
        f"A side shall be {say(finished)} thick. Its rough piece has {say(bow)} of bow, "
        f"{say(cup)} of cup and {say(twist)} of twist, and saw marks of {say(marks)} on each "
        "face. How thick must it be, to be safe?",
        (
            answer,
            f"rough thickness = {say(finished, unit=False)} + {say(bow)} bow + {say(cup)} cup + "
            f"half of {say(twist)} twist + 2 × {say(marks)} saw marks = {say(answer)}",
        ),
        (answer + twist / 2, "Twist is taken evenly from both high corners: half of it."),
        (answer - marks, "Both faces have saw marks."),
        (answer - 2 * marks, "You left the saw marks in."),
        (answer - finished, "That is what is planed away; the side itself is left."),
        direction="up",
        senses=("too thick", "too thin"),
        nudge="The part, its bow, its cup, half its twist, and the marks of both faces.",
    )


def _of(rule_units: str, *values: float) -> tuple[tuple[float, ...], ...]:
    per = 1.0 if rule_units == "mm" else MM_PER_INCH
    return tuple((value * per, value * 1.5 * per, value * 2 * per) for value in values)


_WARPS = {"mm": _of("mm", 1.0, 0.5, 2.0, 0.5), "in": _of("in", 1 / 16, 1 / 32, 1 / 8, 1 / 32)}


TEMPLATES = (
    crosscut_bow,
    twist_left,
    stick_reading,
    true_thickness,
    rough_thickness,
    strokes,
    ridges,
    out_of_square,
    edge_step,
)
