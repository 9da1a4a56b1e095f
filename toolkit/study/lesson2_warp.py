"""Questions of lesson 2 about warp: what sawing first saves, and what winding sticks show."""

from __future__ import annotations

from random import Random

from toolkit import truing
from toolkit.measures import MM_PER_INCH, Rule
from toolkit.plan import Plan
from toolkit.results import WALLS
from toolkit.study.marking import Question, Slip
from toolkit.study.sums import answer_in, pick

# Boards of the questions; invented. Length, bow; twist, width before and after. [mm]
_BOARDS = {
    "mm": ((2000.0, 12.0), (1800.0, 9.0), (2400.0, 16.0)),
    "in": ((72 * MM_PER_INCH, MM_PER_INCH / 2), (96 * MM_PER_INCH, MM_PER_INCH * 3 / 4)),
}
_TWISTS = {"mm": (8.0, 6.0, 10.0), "in": (MM_PER_INCH / 4, MM_PER_INCH * 3 / 8)}
_STICKS = {"mm": (400.0, 300.0, 350.0), "in": (16 * MM_PER_INCH, 12 * MM_PER_INCH)}
_CORNERS = {"mm": (0.5, 0.4, 0.8), "in": (MM_PER_INCH / 64, MM_PER_INCH / 32)}


def _walls(plan: Plan) -> tuple[float, float, float] | None:
    """Rough length of all walls together, their rough width and thickness. [mm]"""
    parts = [part for part in plan.parts if part.name in WALLS]
    if not parts:
        return None
    length = sum(part.rough_length.value * part.count for part in parts)
    mark = plan.choices.rule.mark("rough")
    length = round(length / mark) * mark
    return length, parts[0].rough_width.value, parts[0].rough_thickness.value


def crosscut_bow(plan: Plan, chance: Random | None) -> Question | None:
    """How much bow the walls' stick keeps of a long board's."""
    walls, rule = _walls(plan), plan.choices.rule
    if walls is None:
        return None
    whole, bow = pick(chance, _BOARDS[rule.units])
    length = walls[0]
    if length >= 0.8 * whole:
        return None
    return bow_left(rule, whole=whole, bow=bow, length=length)


def bow_left(rule: Rule, *, whole: float, bow: float, length: float) -> Question:
    """How much bow a piece keeps of a board's. [mm]"""
    share, say = length / whole, rule.exact
    answer = bow * share**2
    return Question(
        id="lesson2.bow",
        prompt=(
            f"A board {say(whole)} long has {say(bow)} of bow. The stick for your walls, "
            f"{say(length)} long, is crosscut from it before any planing. How much bow has it? "
            f"{answer_in(rule, 'joints')}"
        ),
        answer=answer,
        working=f"{say(bow)} × ({say(length)} ÷ {say(whole)})² = {say(round(answer, 2))}",
        rule=rule,
        fineness="joints",
        slips=(
            Slip(bow * share, "That goes down with the length. Bow goes down with its square."),
            Slip(bow, "A shorter piece of an arc is flatter: saw first, plane later."),
            Slip(bow * share**3, "With the square of the length, not the cube."),
            Slip(bow - answer, "That is what the saw takes away; the question is what is left."),
        ),
        senses=("too much", "too little"),
        nudge="Square the share of the length.",
    )


def twist_left(plan: Plan, chance: Random | None) -> Question | None:
    """How much twist is left when a board is crosscut and ripped."""
    walls, rule = _walls(plan), plan.choices.rule
    if walls is None:
        return None
    whole, _ = pick(chance, _BOARDS[rule.units])
    twist, say = pick(chance, _TWISTS[rule.units]), rule.exact
    length, width, _ = walls
    wide = 2 * width
    if length >= 0.8 * whole:
        return None
    answer = twist * (length / whole) * (width / wide)
    return Question(
        id="lesson2.twist",
        prompt=(
            f"A board {say(whole)} × {say(wide)} has {say(twist)} of twist. A piece "
            f"{say(length)} × {say(width)} is sawn from it. How much twist has the piece? "
            f"{answer_in(rule, 'joints')}"
        ),
        answer=answer,
        working=(
            f"{say(twist)} × ({say(length)} ÷ {say(whole)}) × ({say(width)} ÷ {say(wide)}) = "
            f"{say(round(answer, 2))}"
        ),
        rule=rule,
        fineness="joints",
        slips=(
            Slip(twist * length / whole, "It is narrower too: twist goes with length × width."),
            Slip(twist * width / wide, "It is shorter too: twist goes with length × width."),
            Slip(
                twist * (length / whole) ** 2,
                "That is how bow goes. Twist goes with the length once, and with the width.",
            ),
            Slip(twist, "A smaller piece of a twisted board is less twisted."),
        ),
        senses=("too much", "too little"),
        nudge="Share of the length times share of the width.",
    )


def stick_reading(plan: Plan, chance: Random | None) -> Question | None:
    """What winding sticks show of a raised corner."""
    walls, rule = _walls(plan), plan.choices.rule
    if walls is None:
        return None
    stick, high = pick(chance, _STICKS[rule.units]), pick(chance, _CORNERS[rule.units])
    width, say = walls[1], rule.exact
    answer = truing.stick_reading(high, stick=stick, width=width)
    return Question(
        id="lesson2.sticks",
        prompt=(
            f"One corner of a stick {say(width)} wide stands {say(high)} out of the plane of the "
            f"others. Winding sticks {say(stick)} long lie across its ends, one pair of their tips "
            f"lined up by eye. How far apart do the other tips look? {answer_in(rule, 'joints')}"
        ),
        answer=answer,
        working=f"{say(high)} × {say(stick)} ÷ {say(width)} = {say(round(answer, 2))}",
        rule=rule,
        fineness="joints",
        slips=(
            Slip(high, "That is at the board's edge; the sticks reach far beyond and show more."),
            Slip(high * width / stick, "The other way round: the sticks make it larger."),
            Slip(answer / 2, "Half of it shows at each end only when the middles are lined up."),
        ),
        senses=("too far", "too little"),
        nudge="As many times more as the sticks are longer than the board is wide.",
    )


def true_thickness(plan: Plan, chance: Random | None) -> Question | None:
    """What a warped stick gives at least, by the sum on paper."""
    walls, rule = _walls(plan), plan.choices.rule
    if walls is None:
        return None
    thick, say = walls[2], rule.exact
    per = 1.0 if rule.units == "mm" else MM_PER_INCH / 32
    bow, cup, twist = (pick(chance, (n * per, 1.5 * n * per)) for n in (1.0, 0.5, 1.0))
    marks = 0.5 * per
    answer = thick - bow - cup - twist / 2 - 2 * marks
    if answer <= 0:
        return None
    return Question(
        id="lesson2.true-thickness",
        prompt=(
            f"The walls' stick is {say(thick)} thick, with {say(bow)} of bow, {say(cup)} of cup, "
            f"{say(twist)} of twist and saw marks of {say(marks)} on each face. How thick a true "
            f"board does it give for certain? {answer_in(rule, 'joints')}"
        ),
        answer=answer,
        working=(
            f"{say(thick, unit=False)} − {say(bow, unit=False)} bow − {say(cup, unit=False)} cup "
            f"− half of {say(twist, unit=False)} twist − 2 × {say(marks, unit=False)} saw marks = "
            f"{say(round(answer, 3))}"
        ),
        rule=rule,
        fineness="joints",
        slips=(
            Slip(answer - twist / 2, "Twist costs half when it is taken from both high corners."),
            Slip(answer + twist / 2, "You left the twist in."),
            Slip(answer + 2 * marks, "The saw's marks have to go too, on both faces."),
            Slip(answer + marks, "There are saw marks on both faces."),
            Slip(answer + cup, "You left the cup in."),
        ),
        senses=("too thick", "too thin"),
        nudge="Take off bow, cup, half the twist, and the marks of both faces.",
    )
