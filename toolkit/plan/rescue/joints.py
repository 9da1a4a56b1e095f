"""Joints: a lap broken through, cuts past the baseline, deep sockets, a tail on the wrong side."""

from __future__ import annotations

from typing import Any

from toolkit.plan.rescue.option import Case, Costs
from toolkit.results import below


def lap_through(case: Case) -> None:
    """The chisel came out through the lap."""
    d = case.plan.design
    if d.choices.corner.joint != "half-blind":
        raise ValueError("lap_through belongs to a half-blind joint, and this box has none")
    words = "Find the chip and glue it back at once, taped down, before going on."
    case.offer("chip", words, Costs(minutes=10, looks=1, wait=60))
    words = "The chip is lost: inlay a patch of the same wood, grain alike, and pare it flush."
    case.offer("patch", words, Costs(minutes=35, looks=2, wait=60))
    f, on_ends = d.frame, d.choices.corner.tails_on == "ends"
    tail = f.tail_back.value
    through = {"corner.joint": "through", "corner.lap": None, "corner.tail_length": None}
    pins = ("side",) if on_ends else ("back", "front")
    thin: dict[str, Any] = {f"made.{name}_thickness": tail for name in pins}
    # The plane takes the outside faces off, so that the box outside grows smaller by the laps.
    if on_ends:
        kept: dict[str, Any] = {}
    else:
        kept = {"made.side_length": None, "size.inside_length": f.inside_length.value}
        kept["size.outside_length"] = None
    pin_boards = "the sides" if on_ends else "back and front"
    words = (
        f"Plane all laps away: {pin_boards} come down to {case.show(tail)}, the joints go through."
    )
    case.offer("laps-off", words, Costs(minutes=60, looks=1), {**through, **thin, **kept})
    if on_ends:
        words = (
            "Turn to through joints at full thickness: two new ends, longer by both laps; chop "
            "the sockets on through."
        )
        new = {"made.back_length": None, "made.front_length": None, "made.tail_length": None}
        inside = {"size.inside_width": f.inside_width.value, "size.outside_width": None}
        gone = tuple(key for key in case.facts if key in new)
        # With no end made, nothing but the space inside tells how long the new ends are.
        case.offer(
            "through",
            words,
            Costs(2, 150, 1),
            {**through, **inside, **(new if _has_made(case, new) else {})},
            without=gone,
        )
    case.new_part("side" if on_ends else "front", 90)


def _has_made(case: Case, keys: dict[str, Any]) -> bool:
    made = case.plan.choices.made
    return any(getattr(made, key.removeprefix("made.")) is not None for key in keys)


def baseline_over(case: Case) -> None:
    """A saw cut ran past the gauged baseline of the tails."""
    over = case.mishap.measured
    words = "Leave it: a kerf past the line shows, and holds. Knife the next line deeper."
    case.offer("leave", words, Costs(looks=1))
    words = "Press a sliver of the same wood into the kerf with glue, and pare it flush when dry."
    case.offer("sliver", words, Costs(minutes=10, looks=1, wait=60))
    d = case.plan.design
    if d.choices.corner.joint == "half-blind":
        tail = d.frame.tail_back.value + over
        words = (
            f"If no socket is chopped yet, gauge all tails anew at {case.show(tail)}: the laps and "
            "the space between the shoulders grow less."
        )
        case.offer("move-baseline", words, Costs(minutes=25), {"made.tail_length": tail})


def socket_depth(case: Case) -> None:
    """A socket of another depth than its tail wants."""
    d = case.plan.design
    if d.choices.corner.joint != "half-blind":
        raise ValueError("socket_depth belongs to a half-blind joint, and this box has none")
    depth, off = case.mishap.measured, case.off
    if off <= 0:
        words = "Chop on" if off else "It is as meant: nothing to do"
        case.offer("chop-on", f"{words}.", Costs(minutes=5 if off else 0))
        return
    over = d.choices.customs.socket_over
    tail = depth - over
    pins = d.frame.side_thickness if d.choices.corner.tails_on == "ends" else d.frame.back_thickness
    lap, least = pins.value - depth, d.choices.customs.lap_least
    if below(0.0, lap):
        words = (
            f"Leave it: the tail does not touch the floor. The lap there is {case.show(lap)}"
            + (f", under the {case.show(least)} wanted: go gently." if below(lap, least) else ".")
        )
        case.offer("leave", words, Costs(looks=1 if below(lap, least) else 0))
    words = f"Glue a shaving or two, {case.show(off)} in all, to the floor of the socket."
    case.offer("shaving", words, Costs(minutes=8, wait=30))
    words = f"Chop every socket to it, and gauge all tails {case.show(tail)} long."
    case.offer("follow", words, Costs(minutes=60), {"made.tail_length": tail})
    case.new_part("side" if d.choices.corner.tails_on == "ends" else "front", 90)


def tail_wrong_side(case: Case) -> None:
    """A tail sawn on the wrong side of its line, and so too narrow."""
    d, mishap = case.plan.design, case.mishap
    corner = d.back if mishap.corner == "back" else d.front
    if not 1 <= mishap.tail <= len(corner.tails):
        raise ValueError(
            f"the {mishap.corner} corner has {len(corner.tails)} tails; type a number of one"
        )
    pieces = [(piece.low, piece.high) for piece in corner.tails]
    low, high = pieces[mishap.tail - 1]
    if mishap.measured < high - low:
        pieces[mishap.tail - 1] = (low, high - mishap.measured)
        changes = {f"corner.tails_{mishap.corner}": tuple(pieces)}
        words = (
            "If the pins are not marked yet, leave it: pins are copied from the tails as they are. "
            f"Tail {mishap.tail} of the {mishap.corner} is "
            f"{case.show(high - low - mishap.measured)} wide at its baseline instead of "
            f"{case.show(high - low)}."
        )
        case.offer("copy", words, Costs(minutes=2, looks=1), changes)
    words = "Glue a cheek of the same wood, grain alike, to the tail, and saw it again when dry."
    case.offer("cheek", words, Costs(minutes=25, looks=1, wait=60))
    on_ends = d.choices.corner.tails_on == "ends"
    words = "Cut the tails again on the practice end, if it was planed with the walls."
    case.offer("practice-end", words, Costs(minutes=45))
    case.new_part(mishap.corner if on_ends else "side", 75)
