"""What is left out of a box file follows a rule, and the rule is told.

Each rule gives a size that a maker would arrive at, laid on a mark of the student's own rule.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import partial
from math import ceil

from toolkit.box.change import key_at
from toolkit.box.choices import Choices
from toolkit.box.choosing import Chooser
from toolkit.box.panel_defaults import (
    clearance_under_lid,
    settled_lid,
    settled_panels,
    turned_rings,
)
from toolkit.box.settled import (
    Settled,
    SettledCorner,
    SettledGroove,
    SettledThickness,
    SettledTools,
    SettledWood,
    values_of,
)
from toolkit.box.wall_ends import tails_and_laps
from toolkit.box.walls import Frame, frame
from toolkit.measures import keys_of
from toolkit.results import TOLERANCE, Chosen, below

INCH = 25.4
_SLOPE = 7.0  # 1 across in this many along


def _thickness(c: Choices) -> SettledThickness:
    if c.thickness.lid is None and c.lid.closure.lids:
        raise ValueError("thickness.lid is left out: a box that is closed by a lid needs it")
    return SettledThickness(**values_of(c.thickness) | {"lid": c.thickness.lid or 0.0})


def _tools(c: Choices, choose: Chooser) -> SettledTools:
    inches = c.rule.units == "in"
    chisel = c.tools.chisel or (INCH / 8 if inches else 3.0)
    irons = c.tools.plough_irons or ((INCH / 4,) if inches else (6.0,))
    if c.tools.chisel is None:
        choose.pick("tools.chisel", chisel, direction=None)
    return SettledTools(**values_of(c.tools) | {"chisel": chisel, "plough_irons": irons})


def _proud(c: Choices, choose: Chooser) -> float:
    """How far pins, and the tails of a through joint, are left standing. [mm]"""
    if c.corner.proud is not None:
        return c.corner.proud
    usual = INCH / 64 if c.rule.units == "in" else 0.2
    return choose.pick("corner.proud", usual, direction=None)


def _walls(c: Choices) -> tuple[float, float, float]:
    """Thickness of a side, the back and the front, as made or else as planned. [mm]"""
    return (
        c.made.side_thickness or c.thickness.side,
        c.made.back_thickness or c.thickness.end,
        c.made.front_thickness or c.thickness.end,
    )


def _pin_board(c: Choices) -> float:
    """Thickness that carries the laps, as planned: a lap is chosen before wood is planed. [mm]"""
    return c.thickness.side if c.corner.tails_on == "ends" else c.thickness.end


def _plough(c: Choices, irons: tuple[float, ...], choose: Chooser) -> tuple[float, float]:
    """Width and depth of every groove. [mm]"""
    thin = min(_walls(c))
    width = c.made.groove_width or c.groove.width
    if width is None:
        fitting = [iron for iron in irons if not below(thin / 2, iron)]
        width = choose.pick("groove.width", max(fitting, default=min(irons)), direction=None)
    depth = c.made.groove_depth or c.groove.depth
    if depth is None:
        depth = choose.pick("groove.depth", thin * c.customs.groove_share_wanted)
    return width, depth


def _lap(c: Choices, choose: Chooser) -> float | None:
    """The lap, or None where the tail length or the through joint decides it. [mm]"""
    corner = c.corner
    if corner.joint == "through" or corner.lap is not None or corner.tail_length is not None:
        return corner.lap
    return choose.pick("corner.lap", _pin_board(c) * c.customs.lap_share_most)


def _usual_slope(c: Choices, tail: float) -> float:
    """1 in 7, or less flare where the corners of so long a tail would be short grain."""
    needed = ceil(tail / c.customs.overhang_most - TOLERANCE)
    return min(max(_SLOPE, float(needed)), c.customs.slope_most)


def _slope(c: Choices, tail: float, choose: Chooser) -> float:
    if c.corner.slope is not None:
        return c.corner.slope
    slope = _usual_slope(c, tail)
    why = "less flare, for tails so long have corners of short grain" if slope > _SLOPE else ""
    choose.notes.append(
        Chosen("corner.slope", f"1 in {slope:g}", why or key_at("corner.slope").rule)
    )
    return slope


@dataclass(frozen=True, slots=True)
class _Pins:
    """Widths at the baseline: of a pin, of the thinnest half pin that will not split off, and of
    a pin by the rules alone, which the grooves keep away from. [mm]"""

    pin: float
    half_least: float
    usual: float


def _pins(c: Choices, *, chisel: float, tail: float, slope: float, choose: Chooser) -> _Pins:
    """A pin that a chisel clears, and wide enough for a half pin like it to hold."""
    side, back, front = _walls(c)
    thick = side if c.corner.tails_on == "ends" else max(back, front)
    half = max(c.customs.half_pin_least, thick * c.customs.half_pin_share)

    def need(out: float) -> float:
        return max(chisel + c.customs.chisel_room + 2 * out, half + out)

    pin = c.corner.pin
    if pin is None:
        pin = choose.pick("corner.pin", need(tail / slope), direction="up", fineness="sizes")
    # So that another slope or pin moves no groove, and with it no wall.
    usual = c.rule.round(need(tail / _usual_slope(c, tail)), fineness="sizes", direction="up")
    return _Pins(pin, half + tail / slope, usual)


def _beside(c: Choices) -> float:
    """Wood of a tail beside a groove that lies next to a half pin. [mm]"""
    return max(c.customs.groove_margin_wanted, c.customs.groove_margin_least)


def _groove(
    c: Choices, *, width: float, depth: float, pins: _Pins, choose: Chooser
) -> SettledGroove:
    """Edges alike, so that one fence setting does both: as far off as the greatest need of all."""
    g, customs, grooved = c.groove, c.customs, c.lid.closure.grooved
    needs = [
        # A half pin like the pins at the edge, and wood of the tail between it and the groove.
        pins.usual + _beside(c),
        # The bottom must not hang below the walls, nor the lid stand above them.
        c.thickness.bottom - (width - c.panels.bottom_tongue),
    ]
    if grooved:
        needs += [width, customs.rim_least, (c.thickness.lid or 0.0) - width]
    up = choose.rule.round(max(needs), direction="up")
    edge = max(up, choose.rule.round(c.thickness.side / 2 + 1, direction="down"))
    edges = []
    for key in ("bottom_edge", "top_edge"):
        value = getattr(c.made, key) or getattr(g, key)
        if value is None and (key == "bottom_edge" or grooved):
            value = choose.pick(f"groove.{key}", edge, direction=None)
        edges.append(edge if value is None else value)
    ends = g.ends
    if ends is None:
        ends = "stopped" if c.corner.joint == "through" else "through"
        if ends == "stopped":
            choose.notes.append(Chosen("groove.ends", ends, key_at("groove.ends").rule))
    bottom, top = edges
    return SettledGroove(width=width, depth=depth, bottom_edge=bottom, top_edge=top, ends=ends)


def _half_pin(c: Choices, f: Frame, pins: _Pins, choose: Chooser) -> float:
    """Like the pins, so that the dividers' last step falls on the edge; less beside a groove."""
    if c.corner.half_pin is not None:
        return c.corner.half_pin
    # Over its own half pin a groove needs some wood of the tail; yet a half pin that is too thin
    # splits, so that it never goes under its own least.
    nearest = [f.bottom_groove.low]
    if f.lid_groove is not None:
        nearest.append(f.wall_height.value - f.lid_groove.high)
    wanted = min(nearest) - _beside(c)
    if not below(wanted, pins.pin) and not below(pins.pin, pins.half_least):
        return choose.pick("corner.half_pin", pins.pin, direction=None)
    if below(wanted, pins.half_least) or not below(wanted, pins.pin):
        why = "the thinnest that will not split"
        return choose.pick("corner.half_pin", pins.half_least, why, direction="up")
    return choose.pick("corner.half_pin", wanted, "so that each groove has a tail")


def stray_keys(choices: Choices) -> tuple[str, ...]:
    """Keys that a file gives, by their paths, though its way to close the box ignores them."""
    if isinstance(choices, Settled):  # made of a file's, whose strays are told already
        return ()
    found = []
    for path in choices.lid.closure.idle:
        section, _, name = path.partition(".")
        keys = keys_of(keys_of(Choices)[section].type)
        wholes = [whole for whole, key in keys.items() if name in key.of]
        of_both = any(choices.value(f"{section}.{whole}") is not None for whole in wholes)
        if choices.value(path) != keys[name].default and not of_both:
            found.append(path)
    return tuple(found)


def settle(choices: Choices) -> tuple[Settled, Frame, tuple[Chosen, ...]]:
    """The same choices with nothing missing but the tails, the walls, and a line for each rule."""
    choose = Chooser(choices.rule, [])
    tools = _tools(choices, choose)
    width, depth = _plough(choices, tools.plough_irons, choose)
    lap, proud = _lap(choices, choose), _proud(choices, choose)
    walls = partial(frame, choices, lap=lap, proud=proud)
    tails = tails_and_laps(choices, lap=lap, proud=proud)
    tail = max(0.0, *(tail.value for tail, _ in tails))
    slope = _slope(choices, tail, choose)
    pins = _pins(choices, chisel=tools.chisel, tail=tail, slope=slope, choose=choose)
    groove = _groove(choices, width=width, depth=depth, pins=pins, choose=choose)
    # Neither half pins nor clearances move a wall but the front.
    f = walls(groove=groove)
    half_pin = _half_pin(choices, f, pins, choose)
    under_lid = clearance_under_lid(choices, f, width, choose)
    f = walls(groove=groove, under_lid=under_lid)
    span = f.inside_width.value + 2 * depth
    c = turned_rings(choices, span, depth, choose)
    corner = {"slope": slope, "lap": lap, "pin": pins.pin, "half_pin": half_pin, "proud": proud}
    values = values_of(c) | {"thickness": _thickness(c), "tools": tools, "groove": groove}
    values["corner"] = SettledCorner(**values_of(c.corner) | corner)
    values["panels"] = settled_panels(c, span, under_lid, choose)
    values["lid"] = settled_lid(c, f, choose)
    values["wood"] = SettledWood(**values_of(c.wood))
    return Settled(**values), f, tuple(choose.notes)
