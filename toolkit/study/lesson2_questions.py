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


def out_of_square(ask: Asking) -> Question | None:
    """How far an edge is out of square when the square shows a gap."""
    side, rule = ask.part("side"), ask.rule
    if side is None:
        return None
    gap, thick = ask.pick(GAPS[rule.units]), side.thickness.value
    answer = degrees(gap / thick)
    slips = {"whole-angle": 90 - answer, "doubled": 2 * answer + 1.0, "no-thickness": degrees(gap)}
    return ask.question("lesson2.out-of-square", answer, slips, side=side, gap=gap)


def edge_step(ask: Asking) -> Question | None:
    """What an angle out of square makes of a wall's thickness."""
    side = ask.part("side")
    if side is None:
        return None
    height, angle = side.width.value, ask.pick((0.5, 1.0, 2.0))
    step = truing.out_of_square(height, angle=angle)
    slips = {
        "thickness": truing.out_of_square(side.thickness.value, angle=angle),
        "length": truing.out_of_square(side.length.value, angle=angle),
        "percent": height * angle / 100,
    }
    return ask.question("lesson2.lean", step, slips, side=side, angle=angle)


def ridges(ask: Asking) -> Question | None:
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


_RADII = {"mm": (360.0, 300.0, 250.0), "in": (14 * MM_PER_INCH, 12 * MM_PER_INCH)}
_STEPS = {"mm": (32.0, 28.0, 24.0), "in": (1.25 * MM_PER_INCH, 1.5 * MM_PER_INCH)}


def rough_thickness(ask: Asking) -> Question | None:
    """How thick a rough board must be for a side, warp and saw marks counted."""
    side, rule = ask.part("side"), ask.rule
    if side is None:
        return None
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
