"""Questions of lesson 2 about warp: what sawing first saves, and what winding sticks show."""

from __future__ import annotations

from toolkit import truing
from toolkit.measures import MM_PER_INCH
from toolkit.results import WALLS
from toolkit.study.asking import Asking
from toolkit.study.marking import Question

# Boards of the questions; invented. Length, bow; twist, width before and after. [mm]
_BOARDS = {
    "mm": ((2000.0, 12.0), (1800.0, 9.0), (2400.0, 16.0)),
    "in": ((72 * MM_PER_INCH, MM_PER_INCH / 2), (96 * MM_PER_INCH, MM_PER_INCH * 3 / 4)),
}
_TWISTS = {"mm": (8.0, 6.0, 10.0), "in": (MM_PER_INCH / 4, MM_PER_INCH * 3 / 8)}
_STICKS = {"mm": (400.0, 300.0, 350.0), "in": (16 * MM_PER_INCH, 12 * MM_PER_INCH)}
_CORNERS = {"mm": (0.5, 0.4, 0.8), "in": (MM_PER_INCH / 64, MM_PER_INCH / 32)}


def _walls(ask: Asking) -> tuple[float, float, float] | None:
    """Rough length of all walls together, their rough width and thickness. [mm]"""
    parts = [part for part in ask.plan.parts if part.name in WALLS]
    if not parts:
        return None
    length = sum(part.rough_length.value * part.count for part in parts)
    mark = ask.rule.mark("rough")
    length = round(length / mark) * mark
    return length, parts[0].rough_width.value, parts[0].rough_thickness.value


def crosscut_bow(ask: Asking) -> Question | None:
    """How much bow the walls' stick keeps of a long board's."""
    walls, rule = _walls(ask), ask.rule
    if walls is None:
        return None
    whole, bow = ask.pick(_BOARDS[rule.units])
    length = walls[0]
    if length >= 0.8 * whole:
        return None
    return bow_left(ask, whole=whole, bow=bow, length=length)


def bow_left(ask: Asking, *, whole: float, bow: float, length: float) -> Question:
    """How much bow a piece keeps of a board's. [mm]"""
    share, say = length / whole, ask.rule.exact
    answer = bow * share**2
    return ask.question(
        "lesson2.bow",
        f"A board {say(whole)} long has {say(bow)} of bow. The stick for your walls, "
        f"{say(length)} long, is crosscut from it before any planing. How much bow has it?",
        (answer, f"{say(bow)} × ({say(length)} ÷ {say(whole)})² = {say(round(answer, 2))}"),
        (bow * share, "That goes down with the length. Bow goes down with its square."),
        (bow, "A shorter piece of an arc is flatter: saw first, plane later."),
        (bow * share**3, "With the square of the length, not the cube."),
        (bow - answer, "That is what the saw takes away; the question is what is left."),
        fineness="joints",
        senses=("too much", "too little"),
        nudge="Square the share of the length.",
    )


def twist_left(ask: Asking) -> Question | None:
    """How much twist is left when a board is crosscut and ripped."""
    walls, rule = _walls(ask), ask.rule
    if walls is None:
        return None
    whole, _ = ask.pick(_BOARDS[rule.units])
    twist, say = ask.pick(_TWISTS[rule.units]), rule.exact
    length, width, _ = walls
    wide = 2 * width
    if length >= 0.8 * whole:
        return None
    answer = twist * (length / whole) * (width / wide)
    return ask.question(
        "lesson2.twist",
        f"A board {say(whole)} × {say(wide)} has {say(twist)} of twist. A piece "
        f"{say(length)} × {say(width)} is sawn from it. How much twist has the piece?",
        (
            answer,
            f"{say(twist)} × ({say(length)} ÷ {say(whole)}) × ({say(width)} ÷ {say(wide)}) = "
            f"{say(round(answer, 2))}",
        ),
        (twist * length / whole, "It is narrower too: twist goes with length × width."),
        (twist * width / wide, "It is shorter too: twist goes with length × width."),
        (
            twist * (length / whole) ** 2,
            "That is how bow goes. Twist goes with the length once, and with the width.",
        ),
        (twist, "A smaller piece of a twisted board is less twisted."),
        fineness="joints",
        senses=("too much", "too little"),
        nudge="Share of the length times share of the width.",
    )


def stick_reading(ask: Asking) -> Question | None:
    """What winding sticks show of a raised corner."""
    walls, rule = _walls(ask), ask.rule
    if walls is None:
        return None
    stick, high = ask.pick(_STICKS[rule.units]), ask.pick(_CORNERS[rule.units])
    width, say = walls[1], rule.exact
    answer = truing.stick_reading(high, stick=stick, width=width)
    return ask.question(
        "lesson2.sticks",
        f"One corner of a stick {say(width)} wide stands {say(high)} out of the plane of the "
        f"others. Winding sticks {say(stick)} long lie across its ends, one pair of their tips "
        "lined up by eye. How far apart do the other tips look?",
        (answer, f"{say(high)} × {say(stick)} ÷ {say(width)} = {say(round(answer, 2))}"),
        (high, "That is at the board's edge; the sticks reach far beyond and show more."),
        (high * width / stick, "The other way round: the sticks make it larger."),
        (answer / 2, "Half of it shows at each end only when the middles are lined up."),
        fineness="joints",
        senses=("too far", "too little"),
        nudge="As many times more as the sticks are longer than the board is wide.",
    )


def true_thickness(ask: Asking) -> Question | None:
    """What a warped stick gives at least, by the sum on paper."""
    walls, rule = _walls(ask), ask.rule
    if walls is None:
        return None
    thick, say = walls[2], rule.exact
    per = 1.0 if rule.units == "mm" else MM_PER_INCH / 32
    bow, cup, twist = (ask.pick((n * per, 1.5 * n * per)) for n in (1.0, 0.5, 1.0))
    marks = 0.5 * per
    answer = thick - bow - cup - twist / 2 - 2 * marks
    if answer <= 0:
        return None
    return ask.question(
        "lesson2.true-thickness",
        f"The walls' stick is {say(thick)} thick, with {say(bow)} of bow, {say(cup)} of cup, "
        f"{say(twist)} of twist and saw marks of {say(marks)} on each face. How thick a true "
        "board does it give for certain?",
        (
            answer,
            f"{say(thick, unit=False)} − {say(bow, unit=False)} bow − {say(cup, unit=False)} cup "
            f"− half of {say(twist, unit=False)} twist − 2 × {say(marks, unit=False)} saw marks = "
            f"{say(round(answer, 3))}",
        ),
        (answer - twist / 2, "Twist costs half when it is taken from both high corners."),
        (answer + twist / 2, "You left the twist in."),
        (answer + 2 * marks, "The saw's marks have to go too, on both faces."),
        (answer + marks, "There are saw marks on both faces."),
        (answer + cup, "You left the cup in."),
        fineness="joints",
        senses=("too thick", "too thin"),
        nudge="Take off bow, cup, half the twist, and the marks of both faces.",
    )
