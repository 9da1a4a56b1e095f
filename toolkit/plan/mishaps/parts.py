"""Walls, panels and grooves that came out otherwise than meant."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from toolkit.plan.mishaps.mishap import PANELS, Stage
from toolkit.plan.mishaps.option import Case

# Minutes of a new part by the stage its replacement has to catch up with: custom, no source.
NEW_PART: dict[Stage, float] = {
    "rough": 15.0,
    "true": 35.0,
    "jointed": 75.0,
    "grooved": 85.0,
    "fitted": 90.0,
}
LEAST_LEFT = 1.0


def sizes(case: Case) -> None:
    """Ways out for a size of one part."""
    part, _, axis = case.mishap.what.rpartition("_")
    if case.as_meant():
        return
    if part in PANELS:
        _panel(case, part, axis)
        return
    {"length": _length, "width": _width, "thickness": _thickness}[axis](case, part)
    count = 2 if part == "side" and case.mishap.had("jointed") else 1
    case.new_part(part, NEW_PART[case.mishap.reached] * count, count=count)


def _length(case: Case, part: str) -> None:
    jointed, made = case.mishap.had("jointed"), case.mishap.measured
    pair = ("side",) if part == "side" else ("back", "front")
    both = {f"made.{name}_length": made for name in pair}
    other = {"side": "other side", "front": "back"}.get(part, "front")
    if jointed:
        # A joint that is cut already: new baselines for tails, deeper sockets for pins.
        tails = (part == "side") == (case.plan.design.choices.corner.tails_on == "sides")
        if case.off < 0:
            way = "shorten-both, baselines" if tails else "shorten-both, ends"
            case.offer(way, both, wall=other, as_the=part)
        else:
            way = "trim-joint, baselines" if tails else "trim-joint, ends"
            case.offer(way, wall=f"longer {part}", as_the=other)
        return
    if case.off < 0:
        case.offer("shorten-both", both, other=other)
    else:
        case.offer("trim", part=part)
        case.offer("grow", both, other=other)
    _keep_inside(case, both, "length" if part == "side" else "width")


def _keep_inside(case: Case, both: dict[str, Any], axis: str) -> None:
    """Keep the space inside by tails that reach less far, or by thinner walls."""
    size = f"inside_{axis}"
    d = case.plan.design
    goal = getattr(d.frame, size).value

    def solved(key: str, old: float) -> float | None:
        def of(value: float) -> float:
            after = case.after({**both, key: value, **also(key)}).design.frame
            found: float = getattr(after, size).value
            return found

        return _solved(of, old, goal)

    def also(key: str) -> dict[str, Any]:
        return {"corner.lap": None} if key == "corner.tail_length" else {}

    if d.choices.corner.joint == "half-blind" and d.choices.made.tail_length is None:
        old, key = d.frame.tail_back.value, "corner.tail_length"
        tail = solved(key, old)
        if tail is not None:
            case.offer("tails", {**both, key: tail, **also(key)}, axis=axis, tail=tail, old=old)
    for way, wall in (("thin-sides", "side"), ("thin-ends", "end")):
        old, key = getattr(d.choices.thickness, wall), f"thickness.{wall}"
        thick = solved(key, old)
        if thick is not None and thick < old:
            case.offer(way, {**both, key: thick}, axis=axis, thick=thick)


def _solved(of: Callable[[float], float], start: float, goal: float) -> float | None:
    """Where a size, which is a straight line of another, comes to its goal. [mm]"""
    one, two = of(start), of(start - LEAST_LEFT)
    if abs(one - two) < 1e-9:
        return None
    found = start + (goal - one) * LEAST_LEFT / (one - two)
    return round(found, 9) if found >= LEAST_LEFT else None


def _width(case: Case, part: str) -> None:
    if part == "front":
        _low_front(case)
    elif case.off > 0:
        case.offer("trim, top edge", part=part)
    else:
        keys = ("made.side_width", "made.back_width")
        way = "lower-all, jointed" if case.mishap.had("jointed") else "lower-all"
        case.offer(way, dict.fromkeys(keys, case.mishap.measured), without=keys)
        if case.plan.design.frame.lid_groove is None:
            case.offer("leave, low wall")


def _low_front(case: Case) -> None:
    """The front end, ripped low for the lid to slide over it."""
    low = case.off < 0
    if not low:
        case.offer("trim, front")
    fact = {"made.front_width": case.mishap.measured}
    case.offer("leave, front", fact, costs={"looks": 1 if low else 0})
    if low:
        case.offer("strip, front")


def _thickness(case: Case, part: str) -> None:
    made, jointed = case.mishap.measured, case.mishap.had("jointed")
    d = case.plan.design
    fact = {f"made.{part}_thickness": made}
    half_blind = d.choices.corner.joint == "half-blind"
    pin_board = (part == "side") == (d.choices.corner.tails_on == "ends")
    if case.off > 0:
        case.offer("plane-on, jointed" if jointed else "plane-on, wall")
    gauged = jointed or d.choices.made.tail_length is not None
    if half_blind and pin_board:
        tail = d.frame.tail_back.value
        if not gauged:
            lap = {"corner.lap": d.frame.lap_back.value, "corner.tail_length": None}
            case.offer("keep-lap", {**fact, **lap})
        way = "keep-tails, gauged" if gauged else "keep-tails"
        looks = {"looks": 1 if case.off < 0 else 0}
        case.offer(way, {**fact, "made.tail_length": tail}, costs=looks, tail=tail)
    else:
        case.offer("leave, wall", fact, part=part)
    if not gauged and case.off < 0:
        case.offer("all-alike", {**fact, "thickness.side": made, "thickness.end": made})


def _panel(case: Case, part: str, axis: str) -> None:
    if case.off > 0:
        case.offer("plane-on, panel", axis=axis)
    case.offer("leave, panel", {f"made.{part}_{axis}": case.mishap.measured}, part=part)
    if case.off < 0 and axis == "width":
        case.offer("strip, panel")
    case.new_part(part, 60)


def grooves(case: Case) -> None:
    """Ways out for a groove."""
    if case.as_meant():
        return
    what = case.mishap.what
    if what == "groove_width":
        _wide(case)
    elif what == "groove_depth":
        _deep(case)
    else:
        _wandered(case, what)
    if what != "groove_depth" or case.off > 0:
        case.new_part("wall", NEW_PART[case.mishap.reached])


def _wandered(case: Case, edge: str) -> None:
    made, grooved = case.mishap.measured, case.mishap.had("grooved")
    if not grooved:
        case.offer("follow, wandered", {f"made.{edge}": made})
    wide = (case.plan.design.choices.groove.width or 0.0) + abs(case.off)
    both = {"made.groove_width": wide, f"made.{edge}": min(made, case.meant or 0.0)}
    case.offer("widen", both, costs={"minutes": 30 if grooved else 20}, wide=wide)
    case.offer("strip, groove")


def _wide(case: Case) -> None:
    fact = {"made.groove_width": case.mishap.measured}
    if case.off < 0:
        case.offer("plough-on, narrow")
        case.offer("leave, narrow", fact)
    else:
        case.offer("thicker-tongue", fact)
        case.offer("shim, groove")


def _deep(case: Case) -> None:
    fact = {"made.groove_depth": case.mishap.measured}
    if case.off < 0:
        case.offer("plough-on")
        case.offer("leave, shallow", fact)
        return
    if not case.mishap.had("fitted"):
        case.offer("follow, deep", fact)
    panels = {
        f"made.{part.name}_{axis}": getattr(part, axis).value
        for part in case.plan.parts
        if part.name in PANELS
        for axis in ("length", "width")
    }
    case.offer("leave, deep", {**fact, **panels})
    case.offer("strip, groove")
