"""What is left out of a box file follows a rule, and the rule is told.

Each rule gives a size that a maker would arrive at, laid on a mark of the student's own rule.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from toolkit.box.change import key_at
from toolkit.box.choices import Choices, CornerChoice
from toolkit.box.seasons import season
from toolkit.box.settled import (
    Settled,
    SettledCorner,
    SettledGroove,
    SettledPanels,
    SettledThickness,
    SettledTools,
    values_of,
)
from toolkit.box.walls import Frame, frame
from toolkit.measures import Rule, keys_of
from toolkit.results import Chosen, below

INCH = 25.4
Direction = Literal["nearest", "up", "down"]


@dataclass(slots=True)
class _Chooser:
    """Collects each chosen value with its reason, rounded to a mark of the rule."""

    rule: Rule
    notes: list[Chosen]

    def pick(
        self,
        key: str,
        value: float,
        why: str = "",
        *,
        direction: Direction | None = "down",
        fineness: Literal["joints", "sizes"] = "joints",
    ) -> float:
        if direction is not None:
            value = self.rule.round(value, fineness=fineness, direction=direction)
        self.notes.append(Chosen(key, self.rule.exact(value), why or key_at(key).rule))
        return value


def _thickness(c: Choices) -> SettledThickness:
    if c.thickness.lid is None and c.lid.closure.lids:
        raise ValueError("thickness.lid is left out: a box that is closed by a lid needs it")
    return SettledThickness(**values_of(c.thickness) | {"lid": c.thickness.lid or 0.0})


def _tools(c: Choices, choose: _Chooser) -> SettledTools:
    inches = c.rule.units == "in"
    chisel = c.tools.chisel or (INCH / 8 if inches else 3.0)
    irons = c.tools.plough_irons or ((INCH / 4,) if inches else (6.0,))
    if c.tools.chisel is None:
        choose.pick("tools.chisel", chisel, direction=None)
    return SettledTools(chisel=chisel, plough_irons=irons)


def _thinnest(c: Choices) -> float:
    walls = (
        c.made.side_thickness or c.thickness.side,
        c.made.back_thickness or c.thickness.end,
        c.made.front_thickness or c.thickness.end,
    )
    return min(walls)


def _pin_board(c: Choices) -> float:
    """Thickness that carries the laps, as planned: a lap is chosen before wood is planed. [mm]"""
    return c.thickness.side if c.corner.tails_on == "ends" else c.thickness.end


def _groove(c: Choices, irons: tuple[float, ...], choose: _Chooser) -> SettledGroove:
    thin = _thinnest(c)
    g, made = c.groove, c.made
    width = made.groove_width or g.width
    if width is None:
        fitting = [iron for iron in irons if not below(thin / 2, iron)]
        width = choose.pick(
            "groove.width",
            max(fitting, default=min(irons)),
            direction=None,
        )
    depth = made.groove_depth or g.depth
    if depth is None:
        share = c.customs.groove_share_wanted
        depth = choose.pick("groove.depth", thin * share)
    edge = choose.rule.round(c.thickness.side / 2 + 1, direction="down")
    edges = []
    for key in ("bottom_edge", "top_edge"):
        value = getattr(made, key) or getattr(g, key)
        if value is None:
            if key == "top_edge" and not c.lid.closure.grooved:
                value = edge
            else:
                value = choose.pick(f"groove.{key}", edge, direction=None)
        edges.append(value)
    bottom, top = edges
    return SettledGroove(width=width, depth=depth, bottom_edge=bottom, top_edge=top, ends=g.ends)


def _slope(corner: CornerChoice, choose: _Chooser) -> float:
    if corner.slope is not None:
        return corner.slope
    choose.notes.append(Chosen("corner.slope", "1 in 7", key_at("corner.slope").rule))
    return 7.0


def _lap(c: Choices, choose: _Chooser) -> float | None:
    """The lap, or None where the tail length or the through joint decides it. [mm]"""
    corner = c.corner
    if corner.joint == "through" or corner.lap is not None or corner.tail_length is not None:
        return corner.lap
    return choose.pick("corner.lap", _pin_board(c) * c.customs.lap_share_most)


def _corner(
    c: Choices, f: Frame, choose: _Chooser, *, chisel: float, slope: float, lap: float | None
) -> SettledCorner:
    """Pins that a chisel clears; half pins like them, or less where a groove needs its tail."""
    out = max(f.tail_back.value, f.tail_front.value, 0.0) / slope
    pin, half_pin = c.corner.pin, c.corner.half_pin
    if pin is None:
        pin = choose.pick(
            "corner.pin",
            chisel + c.customs.chisel_room + 2 * out,
            direction="up",
            fineness="sizes",
        )
    if half_pin is None:
        # Over its own half pin a groove needs some wood of the tail; yet a half pin that is
        # too thin splits, so that it never goes under its own least.
        nearest = [f.bottom_groove.low]
        if f.lid_groove is not None:
            nearest.append(f.wall_height.value - f.lid_groove.high)
        wanted = min(nearest) - c.customs.groove_margin_wanted
        thin = _thinnest(c) * c.customs.half_pin_share
        least = max(c.customs.half_pin_least, thin) + out
        if not below(wanted, pin):
            half_pin = choose.pick("corner.half_pin", pin, direction=None)
        elif not below(wanted, least):
            half_pin = choose.pick("corner.half_pin", wanted, "so that each groove has a tail")
        else:
            half_pin = choose.pick(
                "corner.half_pin", least, "the thinnest that will not split", direction="up"
            )
    values = values_of(c.corner) | {"slope": slope, "lap": lap, "pin": pin, "half_pin": half_pin}
    return SettledCorner(**values)


def _panels(c: Choices, f: Frame, depth: float, choose: _Chooser) -> SettledPanels:
    """Room for a panel to swell from the bench to its dampest room."""
    values = values_of(c.panels)
    span = f.inside_width.value + 2 * depth
    for panel in ("bottom", "lid"):
        key = f"{panel}_across"
        if values[key] is not None:
            continue
        if span <= 0 or (panel == "lid" and not c.lid.closure.grooved):
            values[key] = 0.0
            continue
        swelling = season(c, panel).swelling
        # A panel that is made narrower by its clearance also swells by less.
        need = (span * swelling + c.customs.swelling_room) / (1 + swelling)
        values[key] = choose.pick(f"panels.{key}", need, direction="up")
    return SettledPanels(**values)


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
    choose = _Chooser(choices.rule, [])
    tools = _tools(choices, choose)
    groove = _groove(choices, tools.plough_irons, choose)
    slope = _slope(choices.corner, choose)
    lap = _lap(choices, choose)
    # Neither pins nor clearances move a wall, so that the frame is reckoned once.
    f = frame(choices, groove=groove, lap=lap)
    corner = _corner(choices, f, choose, chisel=tools.chisel, slope=slope, lap=lap)
    panels = _panels(choices, f, groove.depth, choose)
    values = values_of(choices)
    values |= {"thickness": _thickness(choices), "tools": tools, "groove": groove}
    values |= {"corner": corner, "panels": panels}
    return Settled(**values), f, tuple(choose.notes)
