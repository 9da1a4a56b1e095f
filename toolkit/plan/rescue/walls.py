"""Walls and panels that came out too short, too long, too thin or too thick."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from toolkit.plan.rescue.mishap import PANELS, Stage
from toolkit.plan.rescue.option import Case, Costs

# Minutes of a new part by the stage its replacement has to catch up with: custom, no source.
NEW_PART: dict[Stage, float] = {
    "rough": 15.0,
    "true": 35.0,
    "jointed": 75.0,
    "grooved": 85.0,
    "fitted": 90.0,
}
LEAST_LEFT = 1.0


def _pair(part: str) -> tuple[str, ...]:
    return ("side",) if part == "side" else ("back", "front")


def sizes(case: Case) -> None:
    """Ways out for a size of one part."""
    part, _, axis = case.mishap.what.rpartition("_")
    if case.as_meant():
        return
    if part in PANELS:
        _panel(case, part, axis)
    elif axis == "length":
        _length(case, part)
    elif axis == "width":
        _width(case, part)
    else:
        _thickness(case, part)


def _new(case: Case, part: str) -> None:
    count = 2 if part == "side" and case.mishap.had("jointed") else 1
    case.new_part(part, NEW_PART[case.mishap.reached] * count, count=count)


def _length(case: Case, part: str) -> None:
    jointed = case.mishap.had("jointed")
    made = case.mishap.measured
    both = {f"made.{name}_length": made for name in _pair(part)}
    if case.off > 0 and not jointed:
        words = f"Saw and shoot the {part} down to {case.show(case.meant or 0.0)}."
        case.offer("trim", words, Costs(minutes=8))
    other = "other side" if part == "side" else "back" if part == "front" else "front"
    if case.off < 0:
        words = f"Shorten the {other} to {case.show(made)} too."
        if jointed:
            words = _shorten(case, other, as_the=part)
        case.offer("shorten-both", words, Costs(minutes=40 if jointed else 8), both)
    elif not jointed:
        words = f"Let the box grow: leave the {other} at {case.show(made)} too."
        case.offer("grow", words, Costs(minutes=2), both)
    else:
        costs = Costs(minutes=40)
        case.offer("trim-joint", _shorten(case, f"longer {part}", as_the=other), costs)
    if not jointed:
        axis = "length" if part == "side" else "width"
        _keep_inside(case, both, axis)
    _new(case, part)


def _shorten(case: Case, part: str, *, as_the: str) -> str:
    """How a wall is made shorter whose joints are cut already."""
    sides = part.endswith("side")
    if sides == (case.plan.design.choices.corner.tails_on == "sides"):
        return (
            f"Gauge new baselines on the {part} so that between shoulders it is as the {as_the}; "
            "saw and chop to them, and trim its tails to length."
        )
    return (
        f"Shoot the ends of the {part} until it is as long as the {as_the}, and chop its sockets "
        "on to their depth."
    )


def _keep_inside(case: Case, both: dict[str, Any], axis: str) -> None:
    """Keep the space inside by tails that reach less far, or by thinner walls."""
    size = f"inside_{axis}"
    d = case.plan.design
    goal = getattr(d.frame, size).value

    def inside(changes: dict[str, Any]) -> float:
        found: float = getattr(case.after({**both, **changes}).design.frame, size).value
        return found

    if d.choices.corner.joint == "half-blind" and d.choices.made.tail_length is None:
        old = d.frame.tail_back.value
        tail = _solved(lambda x: inside(_tail(x)), old, goal)
        if tail is not None:
            words = (
                f"Keep the inside {axis}: gauge the tails {case.show(tail)} long instead of "
                f"{case.show(old)}, so that the lap takes up the difference."
            )
            case.offer("tails", words, Costs(minutes=8), {**both, **_tail(tail)})
    for wall in ("side", "end"):
        old = getattr(d.choices.thickness, wall)
        key = f"thickness.{wall}"
        thick = _solved(lambda x, key=key: inside({key: x}), old, goal)  # type: ignore[misc]
        if thick is not None and thick < old:
            plural = "sides" if wall == "side" else "ends"
            words = f"Keep the inside {axis}: plane both {plural} to {case.show(thick)}."
            case.offer(f"thin-{plural}", words, Costs(minutes=20), {**both, key: thick})


def _tail(length: float) -> dict[str, Any]:
    return {"corner.tail_length": length, "corner.lap": None}


def _solved(of: Callable[[float], float], start: float, goal: float) -> float | None:
    """Where a size, which is a straight line of another, comes to its goal. [mm]"""
    one, two = of(start), of(start - LEAST_LEFT)
    if abs(one - two) < 1e-9:
        return None
    found = start + (goal - one) * LEAST_LEFT / (one - two)
    return round(found, 9) if found >= LEAST_LEFT else None


def _width(case: Case, part: str) -> None:
    made = case.mishap.measured
    if part == "front":
        _low_front(case)
        return
    walls = ("side", "back")
    every = {f"made.{name}_width": made for name in walls}
    meant = case.show(case.meant or 0.0)
    if case.off > 0:
        case.offer("trim", f"Plane the {part}'s top edge to {meant}.", Costs(minutes=6))
    else:
        without = tuple(f"made.{name}_width" for name in walls)
        words = f"Plane the top edges of all walls to {case.show(made)}."
        if case.mishap.had("jointed"):
            words += " It comes off the uppermost half pins; see that they are still thick enough."
        case.offer("lower-all", words, Costs(minutes=15), every, without=without)
        if case.plan.design.frame.lid_groove is None:
            words = "Leave it low if its joint is drawn from the bottom edge; the lid hides it."
            case.offer("leave", words, Costs(looks=2))
    _new(case, part)


def _low_front(case: Case) -> None:
    """The front end, ripped low for the lid to slide over it."""
    if case.off > 0:
        words = f"Plane its top edge down to {case.show(case.meant or 0.0)}."
        case.offer("trim", words, Costs(minutes=6))
    words = f"Leave the front at {case.show(case.mishap.measured)}."
    looks = 1 if case.off < 0 else 0
    case.offer("leave", words, Costs(looks=looks), {"made.front_width": case.mishap.measured})
    if case.off < 0:
        words = "Glue a strip of the same wood, grain alike, to its top edge, and rip it again."
        case.offer("strip", words, Costs(minutes=25, looks=1, wait=60))
    _new(case, "front")


def _thickness(case: Case, part: str) -> None:
    made = case.mishap.measured
    d = case.plan.design
    fact = {f"made.{part}_thickness": made}
    half_blind = d.choices.corner.joint == "half-blind"
    pin_board = (part == "side") == (d.choices.corner.tails_on == "ends")
    if case.off > 0:
        words = f"Plane on to {case.show(case.meant or 0.0)}."
        if case.mishap.had("jointed"):
            words = "Leave the inside alone: plane the outside flush once the box is glued."
        case.offer("plane-on", words, Costs(minutes=15))
    gauged = case.mishap.had("jointed") or d.choices.made.tail_length is not None
    if half_blind and pin_board:
        tail = d.frame.tail_back.value
        if not gauged:
            words = "Keep the lap: the tails, not gauged yet, take the difference."
            lap = {"corner.lap": d.frame.lap_back.value, "corner.tail_length": None}
            case.offer("keep-lap", words, Costs(minutes=3), {**fact, **lap})
        words = f"Keep the tail length of {case.show(tail)}: the lap takes the difference."
        if gauged:
            words = f"The tails are gauged at {case.show(tail)}: the lap takes the difference."
        costs = Costs(minutes=3, looks=1 if case.off < 0 else 0)
        case.offer("keep-tails", words, costs, {**fact, "made.tail_length": tail})
    else:
        words = f"Leave the {part} as it is; set the gauge anew from it wherever it is used."
        case.offer("leave", words, Costs(minutes=3), fact)
    if not gauged and case.off < 0:
        thin = {"thickness.side": made, "thickness.end": made}
        words = f"Plane all four walls to {case.show(made)}, so that one gauge serves them all."
        case.offer("all-alike", words, Costs(minutes=40), {**fact, **thin})
    _new(case, part)


def _panel(case: Case, part: str, axis: str) -> None:
    made = case.mishap.measured
    key = f"made.{part}_{axis}"
    if case.off > 0:
        words = f"Plane its {axis} down to {case.show(case.meant or 0.0)}."
        case.offer("plane-on", words, Costs(minutes=8))
    words = f"Leave the {part} at {case.show(made)}, if what is said of that box will do."
    case.offer("leave", words, Costs(), {key: made})
    if case.off < 0 and axis == "width":
        words = "Glue a strip of the same wood, grain alike, to an edge that the groove hides."
        case.offer("strip", words, Costs(minutes=20, looks=1, wait=60))
    case.new_part(part, 60)
