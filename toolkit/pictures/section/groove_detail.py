"""One groove with the panel's edge in it, magnified: its play and its clearance are hairs else."""

from __future__ import annotations

from dataclasses import dataclass

from toolkit.box import Panel, Span
from toolkit.pictures.kit import PartView, Point, Sheet, Slot, band, rectangle, upright_band
from toolkit.pictures.kit.dimensions import Dimension, level, upright
from toolkit.pictures.kit.notes import figures, wrong
from toolkit.pictures.kit.strokes import break_line, rings
from toolkit.plan import Plan
from toolkit.shape import cut_across

# Where the middle of the magnified piece lies, and the room there is for it. [pt]
MIDDLE_X, MIDDLE_Y = 409.0, 178.0
DETAIL_ROOM = (126.0, 132.0)


@dataclass(frozen=True, slots=True)
class Zone:
    """What is magnified, at the right-hand side of the section. [mm]"""

    panel: Panel
    groove: Span
    left: float
    right: float
    low: float
    high: float


def detail_zone(plan: Plan) -> Zone:
    """The lid's groove, or the bottom's where only that is wrong or there is no other. [mm]"""
    d = plan.design
    f = d.frame
    panel, groove = d.bottom, f.bottom_groove
    wrong_parts = {row.place.part for row in plan.found if row.level != "good"}
    only_bottom = "bottom" in wrong_parts and "lid" not in wrong_parts
    if f.lid_groove is not None and not only_bottom:
        panel, groove = d.upper_panel, f.lid_groove
    inside = f.outside_width.value - f.side_thickness.value
    into = max(panel.rebate_width, panel.reach) + 3.0
    spare = 0.6 * (groove.high - groove.low) + 1.0
    return Zone(
        panel,
        groove,
        inside - into,
        f.outside_width.value,
        max(min(0.0, panel.low), min(groove.low, panel.low) - spare),
        min(max(f.wall_height.value, panel.high), max(groove.high, panel.high) + spare),
    )


def magnification(zone: Zone, *, scale: float, kept: int | None = None) -> int:
    """How many times the section [pt/mm] the detail is: a whole number that its room allows.

    What an earlier state had is ``kept`` for as long as it fits.
    """
    wide, high = zone.right - zone.left, zone.high - zone.low
    most = min(DETAIL_ROOM[0] / wide, DETAIL_ROOM[1] / high) / scale
    if kept is not None and kept <= most:
        return kept
    return next((times for times in (12, 10, 8, 6, 5, 4, 3) if times <= most), 2)


def draw_detail(sheet: Sheet, plan: Plan, zone: Zone, *, scale: float, times: int) -> None:
    """Draw the magnified groove, with its clearance, depth, tongue and play. [mm]"""
    big = scale * times
    x = MIDDLE_X - (zone.left + zone.right) / 2 * big
    y = MIDDLE_Y - (zone.low + zone.high) / 2 * big
    view = PartView(sheet, x, y, big)
    angle = 90.0 - plan.design.choices.wood.rings
    heart = {"right side": 8.0, "bottom": -angle, "lid": angle}
    for cut in cut_across(plan.design):
        if cut.name not in ("right side", zone.panel.name):
            continue
        shape = upright_band(cut.points, left=zone.left, right=zone.right)
        shape = band(shape, low=zone.low, high=zone.high)
        if len(shape) < 3:
            continue
        view.area(f"detail {cut.name}", shape, fill="end cut")
        rings(view, shape, across=heart[cut.name])
        _edges(view, shape, zone, plan.design.frame.wall_height.value)
    _dimensions(view, plan, zone)
    middle = (view.across(zone.left) + view.across(zone.right)) / 2
    words = f"A: {zone.panel.name} groove × {times}"
    places = [Slot(middle + shift, 38.0, "center") for shift in (0.0, -10.0, 10.0)]
    sheet.write(words, places, rank=-1, size=sheet.text + 0.7)


def _edges(view: PartView, shape: list[Point], zone: Zone, top: float) -> None:
    """Heavy where there is an edge of wood; broken off where the zone ends inside it."""
    for (x0, z0), (x1, z1) in zip(shape, [*shape[1:], *shape[:1]], strict=True):
        cut_low = z0 == z1 == zone.low and zone.low > 0
        cut_high = z0 == z1 == zone.high and zone.high < top
        if x0 == x1 == zone.left:
            low, high = sorted((z0, z1))
            line = break_line(view.across(x0), low=view.up(low), high=view.up(high), sway=0.5)
            view.sheet.line("thin", line)
        elif cut_low or cut_high:
            a, b = sorted((x0, x1))
            line = break_line(view.up(z0), low=view.across(a), high=view.across(b), sway=0.5)
            view.sheet.line("thin", [(x, y) for y, x in line])
        else:
            view.line("visible", (x0, z0), (x1, z1))


def _dimensions(view: PartView, plan: Plan, zone: Zone) -> None:
    show, d, panel = figures(plan), plan.design, zone.panel
    f, depth = d.frame, d.choices.groove.depth
    outside = f.outside_width.value
    inside = outside - f.side_thickness.value
    floor = min(inside + depth, outside)
    edge = (outside + panel.width.value) / 2
    tight = bool(plan.wrong("clearance", "grip", part=panel.name))
    deep = bool(plan.wrong("groove floor", part="side"))
    if inside < edge < floor:
        grip = Dimension(f"grip {show(edge - inside)}", 3)
        clear = Dimension(f"clear {show(floor - edge)}", 0, tight)
        level(view, (inside, edge, floor), grip, clear, start=view.up(zone.high), off=14.0)
    wall = Dimension(f"wall {show(outside - floor)}", 1)
    steps = [Dimension(f"depth {show(floor - inside)}", 1, deep), wall]
    level(view, (inside, floor, outside), *steps, start=view.up(zone.low), off=-18.0, side=-1)
    low, high = zone.groove.low, zone.groove.high
    resting = panel.name == "lid"
    meet = low + panel.tongue if resting else max(panel.high - panel.tongue, low)
    stops = [low, min(max(meet, low), high), high]
    play = Dimension(f"play {show(high - low - panel.tongue)}", 0)
    tongue = Dimension(f"tongue\n{show(panel.tongue)}", 1)
    steps = [tongue, play] if resting else [play, tongue]
    if not low < meet < high:
        stops, steps = [low, high], [Dimension(f"groove\n{show(high - low)}", 1)]
    upright(view, stops, *steps, start=view.across(outside), off=8.0)
    if plan.wrong("tongue", part=panel.name):
        wrong(view, rectangle((inside, max(edge, inside + 0.1)), (low, low + panel.tongue)))
