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
    share = length / whole
    answer = bow * share**2
    slips = {
        "linear": bow * share,
        "as-the-board": bow,
        "cubed": bow * share**3,
        "sawn-away": bow - answer,
    }
    return ask.question("lesson2.bow", answer, slips, whole=whole, bow=bow, length=length)


def twist_left(ask: Asking) -> Question | None:
    """How much twist is left when a board is crosscut and ripped."""
    walls, rule = _walls(ask), ask.rule
    if walls is None:
        return None
    whole, _ = ask.pick(_BOARDS[rule.units])
    twist = ask.pick(_TWISTS[rule.units])
    length, width, _ = walls
    wide = 2 * width
    if length >= 0.8 * whole:
        return None
    answer = twist * (length / whole) * (width / wide)
    slips = {
        "length-only": twist * length / whole,
        "width-only": twist * width / wide,
        "squared": twist * (length / whole) ** 2,
        "as-the-board": twist,
    }
    return ask.question(
        "lesson2.twist",
        answer,
        slips,
        whole=whole,
        wide=wide,
        twist=twist,
        length=length,
        width=width,
    )


def stick_reading(ask: Asking) -> Question | None:
    """What winding sticks show of a raised corner."""
    walls, rule = _walls(ask), ask.rule
    if walls is None:
        return None
    stick, high = ask.pick(_STICKS[rule.units]), ask.pick(_CORNERS[rule.units])
    width = walls[1]
    answer = truing.stick_reading(high, stick=stick, width=width)
    slips = {"at-the-edge": high, "other-way": high * width / stick, "halved": answer / 2}
    return ask.question("lesson2.sticks", answer, slips, walls=walls, high=high, stick=stick)


def true_thickness(ask: Asking) -> Question | None:
    """What a warped stick gives at least, by the sum on paper."""
    walls, rule = _walls(ask), ask.rule
    if walls is None:
        return None
    thick = walls[2]
    per = 1.0 if rule.units == "mm" else MM_PER_INCH / 32
    bow, cup, twist = (ask.pick((n * per, 1.5 * n * per)) for n in (1.0, 0.5, 1.0))
    marks = 0.5 * per
    answer = thick - bow - cup - twist / 2 - 2 * marks
    if answer <= 0:
        return None
    slips = {
        "whole-twist": answer - twist / 2,
        "no-twist": answer + twist / 2,
        "no-marks": answer + 2 * marks,
        "one-face": answer + marks,
        "no-cup": answer + cup,
    }
    return ask.question(
        "lesson2.true-thickness",
        answer,
        slips,
        walls=walls,
        bow=bow,
        cup=cup,
        twist=twist,
        marks=marks,
    )
