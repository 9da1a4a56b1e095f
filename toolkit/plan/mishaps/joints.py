"""Joints cut wrong, a lid that binds or rattles, a box out of square."""

from __future__ import annotations

from math import radians, tan

from toolkit.plan.diagonals import skew_angle
from toolkit.plan.mishaps.laps import half_blind, lap_through
from toolkit.plan.mishaps.option import Case
from toolkit.plan.mishaps.parts import NEW_PART, panel_sizes
from toolkit.results import above, below


def corner_swapped(case: Case) -> None:
    """A corner that was cut for its neighbour, or upside down."""
    case.usual()
    d, mishap = case.plan.design, case.mishap
    f, part = d.frame, mishap.part or "back end"
    on_side = part.endswith("side")
    tails = on_side == (d.choices.corner.tails_on == "sides")
    cut = f.tail_back.value if tails else (f.back_thickness if on_side else f.side_thickness).value
    pair = ("side",) if on_side else ("back", "front")
    axis = "length" if on_side else "width"
    new = {f"made.{name}_length": getattr(f, f"{name}_cut").value - cut for name in pair}
    mates = {"left side": "right side", "right side": "left side", "back end": "front end"}
    case.offer(
        "shorter",
        new,
        without=panel_sizes(axis),
        mate=mates.get(part, "back end"),
        cut=cut,
        smaller="shorter" if on_side else "narrower",
    )
    case.new_part(part, 90)


def tear_out(case: Case) -> None:
    """Fibres torn out below the surface of a part."""
    case.usual()
    name = case.mishap.part.partition(" ")
    part = "side" if name[2] == "side" else name[0]
    if part:
        thick = case.plan.part(part).thickness.value - case.mishap.measured
        names = ("side",) if part == "side" else ("back", "front")
        case.offer("tear-plane", {f"made.{name}_thickness": thick for name in names})
        if case.mishap.measured > 0.3:
            case.new_part(case.mishap.part, NEW_PART[case.mishap.reached])


def lid_cupped(case: Case) -> None:
    """A lid that has gone hollow across its grain."""
    d, cup = case.plan.design, case.mishap.measured
    if not d.lids:
        raise ValueError("lid_cupped belongs to a lid, and this box has none")
    case.usual()
    if d.frame.lid_groove is not None:
        play = d.choices.panels.lid_tongue
        if not above(cup, play):
            case.offer("cup-leave", play=play)
        case.offer("cup-tongue")
    thick = case.plan.part("lid").thickness.value - cup
    if thick > 0:
        case.offer("cup-flat", {"made.lid_thickness": thick})
    case.new_part("lid", 60)


def half_pin_split(case: Case) -> None:
    """A half pin that split off, or cracked."""
    case.usual()
    on_ends = case.plan.design.choices.corner.tails_on == "ends"
    case.new_part("side" if on_ends else "back", 90)


def told_by_the_table(case: Case) -> None:
    """What needs no box to be answered."""
    case.usual()


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
    half_blind(case)
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
    case.offer("pairs")
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
    corner_swapped,
    tear_out,
    lid_cupped,
    half_pin_split,
)
WAYS = dict.fromkeys(("gap_beside_tail", "glue_stuck"), told_by_the_table)
WAYS |= {way.__name__: way for way in _ALL}
