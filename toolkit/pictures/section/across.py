"""The box cut across at mid-length, seen from the front, with one groove magnified."""

from __future__ import annotations

from math import cos, pi, sin

from toolkit.box import Panel
from toolkit.pictures.kit import PartView, Picture, Sheet, Slot, rectangle, still_scale
from toolkit.pictures.kit.dimensions import Dimension, level, upright
from toolkit.pictures.kit.notes import figures, not_right, nothing, title, unit_words
from toolkit.pictures.kit.strokes import circle, long_grain
from toolkit.pictures.section.cut import (
    across_faults,
    drawable,
    lay,
    lay_ghost,
    no_such_box,
    panel_words,
    size_of,
)
from toolkit.pictures.section.groove_detail import (
    DETAIL_ROOM,
    Zone,
    detail_zone,
    draw_detail,
    magnification,
)
from toolkit.plan import Plan
from toolkit.results import Spot, capital
from toolkit.shape import cut_across

HEIGHT = 318.0
BOTTOM = 96.0
MIDDLE = 198.0
# Room for the box's width and for its height with a lid on it. [pt]
ROOMS = (300.0, 182.0)

# What is said of it, in this order.
_SPOTS: tuple[Spot, ...] = (
    "groove floor", "rim", "underside", "lid top", "tongue", "play", "clearance", "grip",
    "grain", "bevel", "lid rebate",
)  # fmt: skip


def _scale(plan: Plan, kept: float | None = None) -> float:
    # The detail needs room for twice the size at least.
    zone = detail_zone(plan)
    detail = (2 * (zone.right - zone.left), 2 * (zone.high - zone.low))
    sizes = (
        *zip(size_of(cut_across(plan.design)), ROOMS, strict=True),
        *zip(detail, DETAIL_ROOM, strict=True),
    )
    return still_scale(*sizes, kept=kept)


def section_across(plan: Plan, *, ghost: Plan | None = None) -> Picture:
    """Draw the box cut across at mid-length: sides, bottom and lid in their grooves.

    The scale is a step of a coarse ladder, and the middle of the box and its bottom edge have
    fixed places. With a ghost the ghost's scale is kept for as long as the drawing fits.

    Parameters
    ----------
    plan : Plan
        The box. [mm]
    ghost : Plan, optional
        An earlier state, drawn thinly behind. [mm]

    Returns
    -------
    Picture
        The section in true proportion and one groove magnified, the factor said beside it.

    Source
    ------
    The plan. Lines and dimensions after ISO 128 and ISO 129-1.
    """
    f = plan.design.frame
    words = _sentence(plan)
    if not drawable(plan):
        return nothing(words, height=HEIGHT)
    kept = _scale(ghost) if ghost is not None and drawable(ghost) else None
    scale = _scale(plan, kept)
    sheet = Sheet(scale=scale, height=HEIGHT)
    view = PartView(sheet, MIDDLE - f.outside_width.value / 2 * scale, BOTTOM, scale)
    if ghost is not None and kept is not None:
        wide = ghost.design.frame.outside_width.value
        lay_ghost(
            PartView(sheet, MIDDLE - wide / 2 * scale, BOTTOM, scale), cut_across(ghost.design)
        )
    _draw(view, plan)
    _dimensions(view, plan)
    _parts(view, plan)
    across_faults(view, plan)
    zone, times = detail_zone(plan), None
    if ghost is not None and kept is not None:
        times = magnification(detail_zone(ghost), scale=scale)
    times = magnification(zone, scale=scale, kept=times)
    _circle(view, zone)
    draw_detail(sheet, plan, zone, scale=scale, times=times)
    title(sheet, "section across, seen from the front", x=MIDDLE, y=BOTTOM - 58.0)
    unit_words(sheet, rule=plan.choices.rule, ghost=kept is not None)
    return sheet.picture(words)


def _draw(view: PartView, plan: Plan) -> None:
    d = plan.design
    f, angle = d.frame, 90.0 - d.choices.wood.rings
    inside = rectangle(
        (f.side_thickness.value, f.outside_width.value - f.side_thickness.value),
        (0.0, f.wall_height.value),
    )
    view.area("back end, beyond", inside, fill="far")
    view.line("visible", inside[3], inside[2])
    view.line("visible", inside[0], inside[1])
    long_grain(view, inside, pen="far grain")
    # Sides cut across show their flat-sawn rings, the heart to the outside.
    heart = {"left side": 172.0, "right side": 8.0, "bottom": -angle, "lid": angle}
    lay(view, cut_across(d), heart=heart)


def _dimensions(view: PartView, plan: Plan) -> None:
    show, d = figures(plan), plan.design
    f = d.frame
    wide, thick, high = f.outside_width.value, f.side_thickness.value, f.wall_height.value
    bottom, left = view.up(min(0.0, d.bottom.low)), view.across(0.0)
    steps = [Dimension(show(thick), 1), Dimension(f"inside {show(f.inside_width.value)}", 1)]
    level(view, (0.0, thick, wide - thick), *steps, start=bottom, off=-18.0, side=-1)
    level(view, (0.0, wide), Dimension(show(wide), 2), start=bottom, off=-36.0)
    stops, steps = [f.bottom_groove.high, high], [Dimension(show(f.inside_height.value), 1)]
    if f.lid_groove is not None:
        stops = [f.bottom_groove.high, f.lid_groove.low, f.lid_groove.high, high]
        rim, thin = high - f.lid_groove.high, bool(plan.wrong("rim"))
        steps += [Dimension(None), Dimension(f"rim {show(rim)}", 1, thin)]
    upright(view, stops, *steps, start=left, off=-14.0, side=-1)


def _parts(view: PartView, plan: Plan) -> None:
    """Which part is which, written where there is room inside the box."""
    show, d = figures(plan), plan.design
    f, sheet = d.frame, view.sheet
    x = view.across(f.outside_width.value / 2)
    for panel, way in zip(d.panels, (1, -1), strict=False):
        text = f"{panel.name} {show(panel.width.value)} × {show(panel.thickness.value)}"
        if isinstance(panel, Panel):
            face = view.up(panel.high if way > 0 else panel.low)
        else:
            face = view.up(f.wall_height.value - panel.down)
        level = face + 6.0 if way > 0 else face - 5.0 - 0.76 * sheet.text
        aside = max(40.0, (x - view.across(0.0)) / 2)
        spots = [Slot(x + by, level, "center") for by in (0.0, -40.0, 40.0, -aside, aside)]
        sheet.write(text, spots, rank=2, at=(x, face - way * 3.0), kind="size")
    middle = view.up(d.bottom.high + f.inside_height.value / 2) - 3.4
    at = view.across(f.outside_width.value * 0.75), middle
    sheet.write("back end, beyond", [Slot(x, middle, "center")], rank=4, at=at)


def _circle(view: PartView, zone: Zone) -> None:
    """A thin circle round what the detail magnifies, with its letter."""
    (x0, y0), (x1, y1) = view.at(zone.left, zone.low), view.at(zone.right, zone.high)
    x, y, radius = (x0 + x1) / 2, (y0 + y1) / 2, 0.6 * max(x1 - x0, y1 - y0)
    view.sheet.line("thin", circle((x, y), radius, count=40), closed=True)
    spots = [
        Slot(x + radius * cos(turn) + 3.0, y + radius * sin(turn) + 1.0 if turn > 0 else y - 12.0)
        for turn in (pi / 4, pi / 8, -pi / 4)
    ]
    view.sheet.write("A", spots, rank=-1, size=view.sheet.text + 0.7)


def _sentence(plan: Plan) -> str:
    show, d = plan.choices.rule.show, plan.design
    f = d.frame
    if not drawable(plan):
        return no_such_box(plan)
    depth = d.choices.groove.depth
    behind = show(max(f.side_thickness.value - depth, 0.0))
    text = (
        f"Section across: {show(f.inside_width.value)} inside between sides of "
        f"{show(f.side_thickness.value)}, grooves {show(depth)} deep with {behind} of wall behind. "
    )
    said = "; ".join(panel_words(plan, panel) for panel in d.grooved)
    text += capital(said)
    if f.lid_groove is not None:
        text += f"; rim {show(f.wall_height.value - f.lid_groove.high)}"
    if d.lift_off_lid is not None:
        text += f"; a lift-off lid of {show(d.lift_off_lid.thickness.value)} on the rim"
    return f"{text}." + not_right(plan.wrong(*_SPOTS))
