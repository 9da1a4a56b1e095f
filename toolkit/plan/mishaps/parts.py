"""Walls and panels that came out otherwise than meant."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from toolkit.plan.mishaps.mishap import PANELS, Stage
from toolkit.plan.mishaps.option import Case
from toolkit.results import below
from toolkit.stock import resawn

# Minutes of a new part by the stage its replacement has to catch up with: custom, no source.
NEW_PART: dict[Stage, float] = {
    "rough": 15.0,
    "true": 35.0,
    "grooved": 45.0,
    "jointed": 85.0,
    "fitted": 90.0,
    "gluing": 90.0,
    "glued": 90.0,
}
PLANING = 10.0  # custom, no source: one side or end made thinner [min per mm]
LEAST_LEFT = 1.0
MOST_OVER = 2.0  # custom, no source: a side or end is left no thicker than by this [mm]


def sizes(case: Case) -> None:
    """Ways out for a size of one part."""
    part, _, axis = case.mishap.what.rpartition("_")
    if case.as_meant():
        return
    if part in PANELS:
        _panel(case, part, axis)
        return
    {"length": _length, "width": _width, "thickness": _thickness}[axis](case, part)
    count = 2 if part == "side" and not case.mishap.part else 1
    case.new_part(named(case, part), NEW_PART[case.mishap.reached] * count, count=count)


def named(case: Case, part: str) -> str:
    """A part as it is called: the one of a pair that was told, else the kind."""
    return case.mishap.part or part


def _length(case: Case, part: str) -> None:
    jointed, made = case.mishap.had("jointed"), case.mishap.measured
    pair = ("side",) if part == "side" else ("back", "front")
    both = {f"made.{name}_length": made for name in pair}
    # Panels that are planed already are cut down to a shorter box.
    panels = panel_sizes("length" if part == "side" else "width") if case.off < 0 else ()
    if part == "side" and not case.mishap.part:
        if case.off > 0:
            case.offer("trim, both")
        case.offer("leave-both", both, without=panels)
        return
    other = {"side": "other side", "front": "back"}.get(part, "front")
    if jointed:
        # A joint that is cut already: new baselines for tails, deeper sockets for pins.
        tails = (part == "side") == (case.plan.design.choices.corner.tails_on == "sides")
        if case.off < 0:
            way = "shorten-both, baselines" if tails else "shorten-both, ends"
            case.offer(way, both, without=panels, wall=other, as_the=named(case, part))
        else:
            way = "trim-joint, baselines" if tails else "trim-joint, ends"
            case.offer(way, wall=named(case, part), as_the=other)
        return
    if case.off < 0:
        case.offer("shorten-both", both, other=other)
    else:
        case.offer("trim", part=named(case, part))
        case.offer("grow", both, other=other)
    _keep_inside(case, both, "length" if part == "side" else "width")


def panel_sizes(axis: str) -> tuple[str, ...]:
    """What the file calls lid and bottom as made, along one axis."""
    return tuple(f"made.{name}_{axis}" for name in PANELS)


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
        case.offer("trim, top edge", part=named(case, part) + ("s" * _both(case, part)))
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


def _both(case: Case, part: str) -> bool:
    """Whether both sides are meant."""
    return part == "side" and not case.mishap.part


def _thickness(case: Case, part: str) -> None:
    made, jointed = case.mishap.measured, case.mishap.had("jointed")
    d = case.plan.design
    fact = {f"made.{part}_thickness": made}
    half_blind = d.choices.corner.joint == "half-blind"
    pin_board = (part == "side") == (d.choices.corner.tails_on == "ends")
    if case.off > 0:
        minutes = {"minutes": max(15, round(PLANING * case.off))}
        case.offer("plane-on, jointed" if jointed else "plane-on, wall", costs=minutes)
        _resaw(case, named(case, part))
        if case.off > MOST_OVER:
            return
    gauged = jointed or d.choices.made.tail_length is not None
    if half_blind and pin_board:
        tail = d.frame.tail_back.value
        kept = {**fact, "made.tail_length": tail}
        if case.mishap.part:
            _one_lap(case, kept, made - tail)
            return
        if not gauged:
            lap = {"corner.lap": d.frame.lap_back.value, "corner.tail_length": None}
            case.offer("keep-lap", {**fact, **lap})
        way = "keep-tails, gauged" if gauged else "keep-tails"
        case.offer(way, kept, costs={"looks": 1 if case.off < 0 else 0}, tail=tail)
    elif case.mishap.part:
        case.offer("leave, one wall", tried=fact, part=case.mishap.part)
        _match(case, fact)
    else:
        case.offer("leave, wall", fact, part=part + "s" * _both(case, part))
    if not gauged and case.off < 0:
        case.offer("all-alike", {**fact, "thickness.side": made, "thickness.end": made})


def _one_lap(case: Case, fact: dict[str, Any], lap: float) -> None:
    """One pin board of a pair is thinner, or thicker: its own lap takes that up."""
    values: dict[str, Any] = {"part": case.mishap.part, "lap": lap}
    if case.off > 0:
        case.offer("leave, one over", tried=fact, gained=case.off, **values)
    elif lap > 0:
        case.offer("leave, one", tried=fact, lost=-case.off, **values)
    _match(case, fact)


def _match(case: Case, fact: dict[str, Any]) -> None:
    if case.off < 0:
        case.offer("match, jointed" if case.mishap.had("jointed") else "match", fact)


def _resaw(case: Case, part: str) -> None:
    """A board so thick that it can be sawn along its middle: what the two leaves are good for."""
    rule = case.plan.choices.rule
    leaf, rest = resawn(case.mishap.measured, thick=case.meant or 0.0, rule=rule)
    # A panel is at least as thick as the groove that its tongue fills.
    if not below(rest, case.plan.design.choices.groove.width):
        second = not below(rest, case.meant or 0.0)
        yields = (
            "enough for a second one"
            if second
            else "a panel of that thickness, and no second side or end"
        )
        case.offer("resaw", part=part, leaf=leaf, rest=rest, yields=yields)


def _panel(case: Case, part: str, axis: str) -> None:
    if case.off > 0:
        case.offer("plane-on, panel", axis=axis)
    case.offer("leave, panel", {f"made.{part}_{axis}": case.mishap.measured}, part=part)
    if case.off < 0 and axis == "width":
        case.offer("strip, panel")
    case.new_part(part, 60)
