"""Joints cut wrong, a lid that binds or rattles, a box out of square."""

from __future__ import annotations

from math import radians, tan
from typing import Any

from toolkit.plan.diagonals import skew_angle
from toolkit.plan.mishaps.option import Case
from toolkit.results import below


def _half_blind(case: Case) -> None:
    if case.plan.design.choices.corner.joint != "half-blind":
        what = case.mishap.what
        raise ValueError(f"{what} belongs to a lapped joint, and this box has none")


def lap_through(case: Case) -> None:
    """The chisel came out through the lap."""
    _half_blind(case)
    case.offer("chip")
    case.offer("patch")
    d = case.plan.design
    f, on_ends = d.frame, d.choices.corner.tails_on == "ends"
    tail = f.tail_back.value
    through = {"corner.joint": "through", "corner.lap": None, "corner.tail_length": None}
    pins = ("side",) if on_ends else ("back", "front")
    thin: dict[str, Any] = {f"made.{name}_thickness": tail for name in pins}
    # The plane takes the outside faces off, so that the box outside grows smaller by the laps.
    kept: dict[str, Any] = {}
    if not on_ends:
        kept = {"made.side_length": None, "size.inside_length": f.inside_length.value}
        kept["size.outside_length"] = None
    pin_boards = "the sides" if on_ends else "back and front"
    case.offer("laps-off", {**through, **thin, **kept}, pin_boards=pin_boards, tail=tail)
    if on_ends:
        new = ("back_length", "front_length", "tail_length")
        inside = {"size.inside_width": f.inside_width.value, "size.outside_width": None}
        keys = [f"made.{key}" for key in new]
        # With no end made, nothing but the space inside tells how long the new ends are.
        made = any(getattr(case.plan.choices.made, key) is not None for key in new)
        without = tuple(key for key in case.facts if key in keys)
        anew: dict[str, Any] = dict.fromkeys(keys) if made else {}
        case.offer("through", {**through, **inside, **anew}, without=without)
    case.new_part("side" if on_ends else "front", 90)


def baseline_over(case: Case) -> None:
    """A saw cut ran past the gauged baseline of the tails."""
    case.offer("leave, kerf")
    case.offer("sliver")
    d = case.plan.design
    if d.choices.corner.joint == "half-blind":
        tail = d.frame.tail_back.value + case.mishap.measured
        case.offer("move-baseline", {"made.tail_length": tail}, tail=tail)


def socket_depth(case: Case) -> None:
    """A socket of another depth than its tail wants."""
    _half_blind(case)
    if case.off <= 0:
        case.offer("chop-on" if case.off else "chop-on, as meant")
        return
    d = case.plan.design
    on_ends = d.choices.corner.tails_on == "ends"
    pins = d.frame.side_thickness if on_ends else d.frame.back_thickness
    lap, least = pins.value - case.mishap.measured, d.choices.customs.lap_least
    tail = case.mishap.measured - d.choices.customs.socket_over
    if below(0.0, lap):
        way = "leave, thin lap" if below(lap, least) else "leave, socket"
        case.offer(way, lap=lap, least=least)
    case.offer("shaving")
    case.offer("follow, socket", {"made.tail_length": tail}, tail=tail)
    case.new_part("side" if on_ends else "front", 90)


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
        case.offer(
            "copy",
            {f"corner.tails_{mishap.corner}": tuple(pieces)},
            number=str(mishap.tail),
            corner=mishap.corner,
            left=high - low - mishap.measured,
            wide=high - low,
        )
    case.offer("cheek")
    case.offer("practice-end")
    case.new_part(mishap.corner if d.choices.corner.tails_on == "ends" else "side", 75)


def lid_tight(case: Case) -> None:
    """The lid binds."""
    case.offer("shiny", width=case.plan.part("lid").width.value)
    case.offer("wax")
    case.offer("glue")


def lid_play(case: Case) -> None:
    """The lid's side play is another than meant."""
    if case.off < 0:
        lid_tight(case)
    elif not case.as_meant():
        width = case.plan.part("lid").width.value - case.off
        case.offer("leave, loose lid", {"made.lid_width": width})
        case.offer("strip, panel")
        case.new_part("lid", 60)


def lid_rattle(case: Case) -> None:
    """The lid's tongue is thinner, or the groove wider, than meant."""
    if case.off < 0:
        lid_tight(case)
    elif not case.as_meant():
        case.offer("leave, rattle", {"panels.lid_tongue": case.mishap.measured})
        case.offer("shim, lid")
        case.new_part("lid", 60)


def diagonals(case: Case) -> None:
    """The two diagonals differ."""
    f = case.plan.design.frame
    sizes = f.outside_length.value, f.outside_width.value
    angle = skew_angle(case.mishap.measured, length=sizes[0], width=sizes[1])
    if not case.mishap.measured:
        case.offer("as-meant, square")
        return
    case.offer("cramps", angle=angle)
    case.offer("follow, askew", angle=angle, over=f.inside_width.value * tan(radians(angle)))
    case.offer("reglue")


_ALL = (
    lap_through,
    baseline_over,
    socket_depth,
    tail_wrong_side,
    lid_tight,
    lid_play,
    lid_rattle,
    diagonals,
)
WAYS = {way.__name__: way for way in _ALL}
