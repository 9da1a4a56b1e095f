"""What is left out of a box file follows a rule, and the rule is told.

Each rule gives a size that a maker would arrive at, laid on a mark of the student's own rule.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from toolkit.box.choices import Choices
from toolkit.box.frame import Frame, frame
from toolkit.box.seasons import season
from toolkit.measures import Rule
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
        why: str,
        *,
        direction: Direction | None = "down",
        fineness: Literal["joints", "sizes"] = "joints",
    ) -> float:
        if direction is not None:
            value = self.rule.round(value, fineness=fineness, direction=direction)
        self.notes.append(Chosen(key, self.rule.exact(value), why))
        return value


def usual_tools(c: Choices) -> tuple[float, tuple[float, ...]]:
    """The narrowest chisel and the plough irons, where the file names none. [mm]"""
    inches = c.rule.units == "in"
    chisel = c.tools.chisel or (INCH / 8 if inches else 3.0)
    return chisel, c.tools.plough_irons or ((INCH / 4,) if inches else (6.0,))


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


def _grooves(c: Choices, choose: _Chooser) -> Choices:
    chisel, irons = usual_tools(c)
    thin = _thinnest(c)
    g, made = c.groove, c.made
    if c.tools.chisel is None:
        choose.pick("tools.chisel", chisel, "the usual narrowest chisel", direction=None)
    width = made.groove_width or g.width
    if width is None:
        fitting = [iron for iron in irons if not below(thin / 2, iron)]
        width = choose.pick(
            "groove.width",
            max(fitting, default=min(irons)),
            "the widest plough iron not over half the thinnest wall",
            direction=None,
        )
    depth = made.groove_depth or g.depth
    if depth is None:
        share = c.customs.groove_share_wanted
        depth = choose.pick("groove.depth", thin * share, "a third of the thinnest wall")
    edge = choose.rule.round(c.thickness.side / 2 + 1, direction="down")
    edges = []
    for key in ("bottom_edge", "top_edge"):
        value = getattr(made, key) or getattr(g, key)
        if value is None:
            if key == "top_edge" and c.lid.kind == "lift-off":
                value = edge
            else:
                why = "half the side's thickness and a little more"
                value = choose.pick(f"groove.{key}", edge, why, direction=None)
        edges.append(value)
    return c.having(
        tools__chisel=chisel,
        tools__plough_irons=irons,
        groove__width=width,
        groove__depth=depth,
        groove__bottom_edge=edges[0],
        groove__top_edge=edges[1],
    )


def _lap_and_slope(c: Choices, choose: _Chooser) -> Choices:
    corner = c.corner
    slope = corner.slope
    if slope is None:
        slope = 7.0
        choose.notes.append(
            Chosen("corner.slope", "1 in 7", "between the 1 in 6 and 1 in 8 of most makers")
        )
    lap = corner.lap
    if corner.joint == "half-blind" and lap is None and corner.tail_length is None:
        lap = choose.pick(
            "corner.lap", _pin_board(c) * c.customs.lap_share_most, "a third of the pin board"
        )
    return c.having(corner__slope=slope, corner__lap=lap)


def _pins(c: Choices, f: Frame, choose: _Chooser) -> Choices:
    """Pins that a chisel clears; half pins like them, or less where a groove needs its tail."""
    chisel, slope = c.tools.chisel, c.corner.slope
    assert chisel is not None and slope is not None
    out = max(f.tail_back.value, f.tail_front.value, 0.0) / slope
    pin, half_pin = c.corner.pin, c.corner.half_pin
    if pin is None:
        pin = choose.pick(
            "corner.pin",
            chisel + c.customs.chisel_room + 2 * out,
            "the narrowest chisel clears its narrow face",
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
            half_pin = choose.pick("corner.half_pin", pin, "like the pins", direction=None)
        elif not below(wanted, least):
            half_pin = choose.pick("corner.half_pin", wanted, "so that each groove has a tail")
        else:
            half_pin = choose.pick(
                "corner.half_pin", least, "the thinnest that will not split", direction="up"
            )
    return c.having(corner__pin=pin, corner__half_pin=half_pin)


def _clearances(c: Choices, f: Frame, choose: _Chooser) -> Choices:
    """Room for a panel to swell from the bench to its dampest room."""
    assert c.groove.depth is not None
    changes = {}
    for panel in ("bottom", "lid"):
        key = f"{panel}_across"
        if getattr(c.panels, key) is not None:
            continue
        if panel == "lid" and c.lid.kind == "lift-off":
            continue
        span = f.inside_width.value + 2 * c.groove.depth
        if span <= 0:
            changes[f"panels__{key}"] = 0.0
            continue
        swelling = season(c, panel).swelling
        # A panel that is made narrower by its clearance also swells by less.
        need = (span * swelling + c.customs.swelling_room) / (1 + swelling)
        changes[f"panels__{key}"] = choose.pick(
            f"panels.{key}", need, "swelling from bench to damp room, and room over", direction="up"
        )
    return c.having(**changes) if changes else c


def settle(choices: Choices) -> tuple[Choices, Frame, tuple[Chosen, ...]]:
    """Fill in what was left out.

    Parameters
    ----------
    choices : Choices
        As read from a box file. [mm]

    Returns
    -------
    tuple
        The same choices with nothing missing but the tails, the walls that they make, and a
        line for each value chosen.

    Source
    ------
    Common practice, no source; the clearance from the movement of wood.
    """
    choose = _Chooser(choices.rule, [])
    settled = _grooves(choices, choose)
    settled = _lap_and_slope(settled, choose)
    # Neither pins nor clearances move a wall, so that the frame is reckoned once.
    f = frame(settled)
    settled = _clearances(_pins(settled, f, choose), f, choose)
    return settled, f, tuple(choose.notes)
