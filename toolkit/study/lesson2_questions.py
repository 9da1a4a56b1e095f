"""Lesson 2, dimensioning: warp that sawing saves, winding sticks, strokes and edges."""

from __future__ import annotations

from math import ceil, degrees

from toolkit import truing
from toolkit.measures import MM_PER_INCH
from toolkit.planes import Scallops
from toolkit.results import TOLERANCE, WALLS
from toolkit.stock import blanks_of, to_buy
from toolkit.study.asking import Asking
from toolkit.study.marking import Question


def _of(rule_units: str, *values: float) -> tuple[tuple[float, ...], ...]:
    per = 1.0 if rule_units == "mm" else MM_PER_INCH
    return tuple((value * per, value * 1.5 * per, value * 2 * per) for value in values)


# Boards of the questions; invented. Length, bow; twist, width before and after. [mm]
_BOARDS = {
    "mm": ((2000.0, 12.0), (1800.0, 9.0), (2400.0, 16.0)),
    "in": ((72 * MM_PER_INCH, MM_PER_INCH / 2), (96 * MM_PER_INCH, MM_PER_INCH * 3 / 4)),
}
_TWISTS = {"mm": (8.0, 6.0, 10.0), "in": (MM_PER_INCH / 4, MM_PER_INCH * 3 / 8)}
_STICKS = {"mm": (400.0, 300.0, 350.0), "in": (16 * MM_PER_INCH, 12 * MM_PER_INCH)}
_CORNERS = {"mm": (0.5, 0.4, 0.8), "in": (MM_PER_INCH / 64, MM_PER_INCH / 32)}
# What a plane takes off in one pass, net of its ridges; invented for the questions. [mm]
DROPS = {"mm": (0.2, 0.25, 0.3), "in": (0.008 * MM_PER_INCH, MM_PER_INCH / 64)}
TRACKS = (3, 4)
GAPS = {"mm": (0.2, 0.1, 0.3), "in": (0.008 * MM_PER_INCH, MM_PER_INCH / 64)}
_RADII = {"mm": (360.0, 300.0, 250.0), "in": (14 * MM_PER_INCH, 12 * MM_PER_INCH)}
_STEPS = {"mm": (32.0, 28.0, 24.0), "in": (1.25 * MM_PER_INCH, 1.5 * MM_PER_INCH)}
_WARPS = {"mm": _of("mm", 1.0, 0.5, 2.0, 0.5), "in": _of("in", 1 / 16, 1 / 32, 1 / 8, 1 / 32)}


def _walls(ask: Asking) -> tuple[float, float, float]:
    """Length, width and thickness of the stick that the walls are sawn from. [mm]"""
    parts = [part for part in ask.plan.parts if part.name in WALLS]
    ask.only_if(parts)
    stick = to_buy(blanks_of(parts), rule=ask.rule)[0]
    return stick.length, stick.width, stick.thickness


def crosscut_bow(ask: Asking, board: tuple[float, float, float] | None = None) -> Question:
    """How much bow the walls' blank keeps of a long board's; or a piece of this board's. [mm]"""
    length, whole, bow = board or (_walls(ask)[0], *ask.pick(_BOARDS[ask.rule.units]))
    ask.only_if(length < 0.8 * whole)
    share = length / whole
    answer = bow * share**2
    slips = {
        "linear": bow * share,
        "as-the-board": bow,
        "cubed": bow * share**3,
        "sawn-away": bow - answer,
    }
    return ask.question("lesson2.bow", answer, slips, whole=whole, bow=bow, length=length)


def twist_left(ask: Asking) -> Question:
    """How much twist is left when a board is crosscut and ripped."""
    walls, rule = _walls(ask), ask.rule
    whole, _ = ask.pick(_BOARDS[rule.units])
    twist = ask.pick(_TWISTS[rule.units])
    length, width, _ = walls
    wide = 2 * width
    ask.only_if(length < 0.8 * whole)
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


def stick_reading(ask: Asking) -> Question:
    """What winding sticks show of a raised corner."""
    walls, rule = _walls(ask), ask.rule
    stick, high = ask.pick(_STICKS[rule.units]), ask.pick(_CORNERS[rule.units])
    width = walls[1]
    answer = truing.stick_reading(high, stick=stick, width=width)
    slips = {"at-the-edge": high, "other-way": high * width / stick, "halved": answer / 2}
    return ask.question("lesson2.sticks", answer, slips, walls=walls, high=high, stick=stick)


def true_thickness(ask: Asking) -> Question:
    """What a warped blank gives at least, by the sum on paper."""
    walls, rule = _walls(ask), ask.rule
    thick = walls[2]
    per = 1.0 if rule.units == "mm" else MM_PER_INCH / 32
    bow, cup, twist = (ask.pick((n * per, 1.5 * n * per)) for n in (1.0, 0.5, 1.0))
    marks = 0.5 * per
    answer = thick - bow - cup - twist / 2 - 2 * marks
    ask.only_if(answer > 0)
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


def rough_thickness(ask: Asking) -> Question:
    """How thick a rough board must be for a side, warp and saw marks counted."""
    side, rule = ask.part("side"), ask.rule
    bow, cup, twist, marks = (ask.pick(row) for row in _WARPS[rule.units])
    finished = side.thickness.value
    answer = finished + bow + cup + twist / 2 + 2 * marks
    slips = {
        "whole-twist": answer + twist / 2,
        "one-face": answer - marks,
        "no-marks": answer - 2 * marks,
        "planed-off": answer - finished,
    }
    return ask.question(
        "lesson2.rough", answer, slips, side=side, bow=bow, cup=cup, twist=twist, marks=marks
    )


def strokes(ask: Asking) -> Question:
    """How many strokes bring a rough side down to its thickness."""
    side, rule = ask.part("side"), ask.rule
    off = side.rough_thickness.value - side.thickness.value
    ask.only_if(off > 0)
    drop, tracks = ask.pick(DROPS[rule.units]), ask.pick(TRACKS)
    passes = ceil(off / drop * (1 - TOLERANCE))
    slips = {
        "passes": passes,
        "whole-board": ceil(side.rough_thickness.value / drop * (1 - TOLERANCE)) * tracks,
        "half": ceil(off / 2 / drop * (1 - TOLERANCE)) * tracks,
    }
    return ask.question(
        "lesson2.strokes",
        passes * tracks,
        slips,
        side=side,
        tracks=tracks,
        drop=drop,
        passes=passes,
    )


def ridges(ask: Asking) -> Question:
    """How high the ridges are between two tracks of a cambered iron."""
    rule = ask.rule
    radius = ask.pick(_RADII[rule.units])
    step = ask.pick(_STEPS[rule.units])
    answer = Scallops(radius, pitch=step).shallow_depth
    slips = {
        "divided-by-two": step**2 / (2 * radius),
        "divided-by-one": step**2 / radius,
        "diameter": step**2 / (4 * radius),
    }
    return ask.question("lesson2.ridge", answer, slips, radius=radius, step=step)


def out_of_square(ask: Asking) -> Question:
    """How far an edge is out of square when the square shows a gap."""
    side, rule = ask.part("side"), ask.rule
    gap, thick = ask.pick(GAPS[rule.units]), side.thickness.value
    answer = degrees(gap / thick)
    # What the gap is in the student's own units, when nothing is divided.
    bare = gap if rule.units == "mm" else gap / MM_PER_INCH
    slips = {"whole-angle": 90 - answer, "doubled": 2 * answer, "no-thickness": degrees(bare)}
    return ask.question("lesson2.out-of-square", answer, slips, side=side, gap=gap)


def edge_step(ask: Asking) -> Question:
    """What an angle out of square makes of a wall's thickness."""
    side = ask.part("side")
    height, angle = side.width.value, ask.pick((0.5, 1.0, 2.0))
    step = truing.out_of_square(height, angle=angle)
    slips = {
        "thickness": truing.out_of_square(side.thickness.value, angle=angle),
        "length": truing.out_of_square(side.length.value, angle=angle),
        "percent": height * angle / 100,
    }
    return ask.question("lesson2.lean", step, slips, side=side, angle=angle)
