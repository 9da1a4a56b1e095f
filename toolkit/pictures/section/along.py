"""The box cut along at mid-width: the lid from its back groove over the low front."""

from __future__ import annotations

from toolkit.pictures.kit import PartView, Picture, Point, Sheet, Slot, still_scale
from toolkit.pictures.kit.dimensions import Dimension, level, upright
from toolkit.pictures.kit.notes import figures, not_right, nothing, title, unit_words
from toolkit.pictures.kit.strokes import ARROW, HALF_ARROW, long_grain
from toolkit.pictures.section.cut import (
    along_faults,
    drawable,
    lay,
    lay_ghost,
    no_such_box,
    size_of,
)
from toolkit.plan import Plan
from toolkit.results import Spot
from toolkit.shape import cut_along

HEIGHT = 286.0
BOTTOM = 94.0
MIDDLE = 258.0
# Room for the box's length and for its height with a lid on it. [pt]
ROOMS = (396.0, 158.0)

# What is said of it, in this order.
_SPOTS: tuple[Spot, ...] = (
    "front edge", "lid end", "lid top", "rim", "underside", "grain", "front in the damp",
    "lid rebate",
)  # fmt: skip


def _scale(plan: Plan, kept: float | None = None) -> float:
    return still_scale(*zip(size_of(cut_along(plan.design)), ROOMS, strict=True), kept=kept)


def section_along(plan: Plan, *, ghost: Plan | None = None) -> Picture:
    """Draw the box cut along at mid-width, its back to the left.

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
        Back end, low front, bottom and lid in true proportion.

    Source
    ------
    The plan. Lines and dimensions after ISO 128 and ISO 129-1.
    """
    words, f = _sentence(plan), plan.design.frame
    if not drawable(plan):
        return nothing(words, height=HEIGHT)
    kept = _scale(ghost) if ghost is not None and drawable(ghost) else None
    scale = _scale(plan, kept)
    sheet = Sheet(scale=scale, height=HEIGHT)
    view = PartView(sheet, MIDDLE - f.outside_length.value / 2 * scale, BOTTOM, scale)
    if ghost is not None and kept is not None:
        long = ghost.design.frame.outside_length.value
        lay_ghost(
            PartView(sheet, MIDDLE - long / 2 * scale, BOTTOM, scale), cut_along(ghost.design)
        )
    far_side(view, plan)
    lay(view, cut_along(plan.design), heart={"back end": 172.0, "front end": 8.0})
    _dimensions(view, plan)
    _parts(view, plan)
    along_faults(view, plan)
    title(sheet, "section along, back to the left", x=MIDDLE, y=BOTTOM - 58.0)
    unit_words(sheet, rule=plan.choices.rule, ghost=kept is not None)
    return sheet.picture(words)


def far_side(view: PartView, plan: Plan) -> None:
    """The inside face of the side beyond the cut, and its rim above the low front."""
    f = plan.design.frame
    back, long, high = f.back_thickness.value, f.outside_length.value, f.wall_height.value
    face, low = long - f.front_thickness.value, f.front_height.value
    shape: list[Point] = [(back, 0.0), (face, 0.0), (face, high), (back, high)]
    top = [(back, high), (face, high)]
    if f.lid_groove is not None:
        shape = [(back, 0.0), (face, 0.0), (face, low), (long, low), (long, high), (back, high)]
        top = [(back, high), (long, high), (long, low)]
    view.area("side, beyond", shape, fill="far")
    view.line("visible", *top)
    view.line("visible", (back, 0.0), (face, 0.0))
    long_grain(view, shape, pen="far grain")


def _dimensions(view: PartView, plan: Plan) -> None:
    show, d = figures(plan), plan.design
    f = d.frame
    back, front, long = f.back_thickness.value, f.front_thickness.value, f.outside_length.value
    bottom, high = view.up(min(0.0, d.bottom.low)), f.wall_height.value
    stops = (0.0, back, long - front, long)
    inside = Dimension(f"inside {show(f.inside_length.value)}", 1)
    ends = Dimension(show(back), 1), inside, Dimension(show(front), 1)
    level(view, stops, *ends, start=bottom, off=-18.0, side=-1)
    level(view, (0.0, long), Dimension(show(long), 2), start=bottom, off=-36.0)
    left, right = view.across(0.0), view.across(long)
    upright(view, (0.0, high), Dimension(show(high), 1), start=left, off=-14.0, side=-1)
    low, wrong = f.front_height.value, bool(plan.wrong("front edge"))
    under = f.lid_floor is not None and f.lid_floor.value > low
    heights, steps = [0.0, low], [Dimension(show(low), 1, wrong and not under)]
    if f.lid_floor is not None and under:
        heights.append(f.lid_floor.value)
        steps.append(Dimension(f"gap {show(f.lid_floor.value - low)}", 1, wrong))
    upright(view, heights, *steps, start=right, off=14.0)
    if (lid := d.sliding_lid) is not None:
        top, length = view.up(max(high, lid.high)), lid.length.value
        step = Dimension(f"lid {show(length)}", 1, bool(plan.wrong("lid end")))
        level(view, (long - length, long), step, start=top, off=15.0)


def _parts(view: PartView, plan: Plan) -> None:
    show, d = figures(plan), plan.design
    f, sheet = d.frame, view.sheet
    x = view.across(f.outside_length.value / 2)
    size = f"bottom {show(d.bottom.length.value)} × {show(d.bottom.thickness.value)}"
    at = x, view.up((d.bottom.low + d.bottom.high) / 2)
    sheet.write(size, [Slot(x, view.up(d.bottom.high) + 6.0, "center")], rank=2, at=at, kind="size")
    middle = view.up(d.bottom.high + f.inside_height.value / 2) - 3.4
    at = view.across(f.outside_length.value * 0.75), middle
    sheet.write("side, beyond", [Slot(x, middle + 6.0, "center")], rank=4, at=at)
    top = view.up(f.wall_height.value)
    left, right = view.across(0.0), view.across(f.outside_length.value)
    level = view.up(f.wall_height.value * 0.3)
    spots = [Slot(left - 6.0, top + 4.0, "right"), Slot(left - 20.0, level, "right")]
    spots = [Slot(p.x, p.y + sheet.text, p.anchor) for p in spots]
    sheet.write("back\nend", spots, rank=3, at=(left + 3.0, level))
    if (lifted := d.lift_off_lid) is not None:
        words = f"lid {show(lifted.length.value)} × {show(lifted.thickness.value)}"
        high = max(z for cut in cut_along(d) if cut.name == "lid" for _, z in cut.points)
        at = x, view.up(high) - 3.0
        sheet.write(words, [Slot(x, at[1] + 9.0, "center")], rank=2, at=at, kind="size")
    if (lid := d.sliding_lid) is not None:
        _way_out(view, (right, view.up((lid.low + lid.high) / 2)))
    places = [Slot(right + 22.0, view.up(f.front_height.value * share)) for share in (0.2, 0.1)]
    sheet.write("front end", places, rank=3, at=(right - 3.0, places[0].y))


def _way_out(view: PartView, at: Point) -> None:
    """On the lid, an arrow in the direction in which it slides."""
    sheet, (x, y), size = view.sheet, at, view.sheet.text
    number = sheet.write(
        "slides out", [Slot(x - 42.0, y - 0.33 * size, "right")], rank=4, kind="remark"
    )
    tip, back = x - 12.0, x - 12.0 - 1.6 * ARROW
    sheet.line("dimension", [(x - 38.0, y), (back, y)], owners=(number,))
    wings = [(tip, y), (back, y - 1.8 * HALF_ARROW), (back, y + 1.8 * HALF_ARROW)]
    sheet.line("arrow", wings, closed=True, owners=(number,))


def _sentence(plan: Plan) -> str:
    show, d = plan.choices.rule.show, plan.design
    f = d.frame
    if not drawable(plan):
        return no_such_box(plan)
    text = (
        f"Section along: {show(f.inside_length.value)} inside, walls "
        f"{show(f.wall_height.value)} high. "
    )
    if (lid := d.sliding_lid) is not None and f.lid_floor is not None:
        gap = f.lid_floor.value - f.front_height.value
        side = "below" if gap >= 0 else "above"
        text += (
            f"The front is {show(f.front_height.value)} high, {show(abs(gap))} {side} the floor of "
            f"the lid groove; the lid, {show(lid.length.value)} long and "
            f"{show(lid.thickness.value)} thick, slides out over it. "
        )
    if (lifted := d.lift_off_lid) is not None:
        text += f"A lift-off lid, {show(lifted.length.value)} long, lies on the rim. "
    text += (
        f"The bottom is {show(d.bottom.length.value)} long, "
        f"{show(max(d.bottom.along, 0.0))} less than its grooves allow."
    )
    return text + not_right(plan.wrong(*_SPOTS))
