"""What both sections share: cut parts laid down, a ghost of them, what is wrong in red."""

from __future__ import annotations

from collections.abc import Sequence

from toolkit.box import Panel
from toolkit.pictures.kit import PartView, Point, Slot, band, rectangle
from toolkit.pictures.kit.notes import not_right, note_of, say, wrong
from toolkit.pictures.kit.strokes import long_grain, rings
from toolkit.plan import Plan
from toolkit.shape import CutPart, cut_across, cut_along


def drawable(plan: Plan) -> bool:
    """Whether there is a box to be cut through."""
    f = plan.design.frame
    inside = min(f.inside_length.value, f.inside_width.value, f.inside_height.value)
    return min(inside, f.wall_height.value, f.front_height.value) > 0


def size_of(cuts: Sequence[CutPart]) -> Point:
    """How wide all parts together are, and how high above zero or their foot. [mm]"""
    xs, zs = zip(*(point for cut in cuts for point in cut.points), strict=True)
    return max(xs) - min(xs), max(zs) - min(0.0, *zs)


def lay(view: PartView, cuts: Sequence[CutPart], *, heart: dict[str, float]) -> None:
    """Parts where they are cut, with their grain; the heart of the tree by part, else up. [deg]"""
    for cut in cuts:
        fill = "end" if cut.end_grain else "face"
        view.area(cut.name, cut.points, fill=f"{fill} cut", edge="visible")
        if cut.end_grain:
            rings(view, cut.points, across=heart.get(cut.name, 90.0))
        else:
            long_grain(view, cut.points)


def lay_ghost(view: PartView, cuts: Sequence[CutPart]) -> None:
    """The same parts as they were before, thinly. [mm]"""
    for cut in cuts:
        view.area(f"ghost {cut.name}", cut.points, edge="ghost")


def no_such_box(plan: Plan) -> str:
    """Why there is nothing to cut."""
    return f"There is no such box.{not_right(plan.wrong('inside'))}"


def panel_words(plan: Plan, panel: Panel) -> str:
    """A panel in a sentence: width, thickness, clearance at each side, play."""
    show = plan.choices.rule.show
    width = plan.design.choices.groove.width
    return (
        f"{panel.name} {show(panel.width.value, unit=False)} × {show(panel.thickness.value)}, "
        f"{show(panel.across / 2)} clear at each side, "
        f"{show(max(width - panel.tongue, 0.0))} of play in its groove"
    )


def across_faults(view: PartView, plan: Plan) -> None:
    """What is wrong at the size of the whole section; the grooves have their detail."""
    d = plan.design
    f, sheet = d.frame, view.sheet
    wide, high, thick = f.outside_width.value, f.wall_height.value, f.side_thickness.value
    lid, bottom = d.sliding_lid, d.bottom
    parts = {cut.name: cut.points for cut in cut_across(d)}
    _underside(view, plan, parts["bottom"], x=wide * 0.7)
    found = plan.wrong("lid top")
    if found and lid is not None:
        wrong(view, band(parts["lid"], low=high, high=lid.high))
        x, y = view.at(wide / 2, lid.high)
        say(sheet, note_of(found), (x, y), [Slot(x, y + 6.0, "center")])
    found = plan.wrong("rim")
    if found and f.lid_groove is not None:
        for x in (0.0, wide - thick):
            wrong(view, rectangle((x, x + thick), (f.lid_groove.high, high)))
        say(sheet, note_of(found), view.at(thick / 2, high))
    for panel in d.grooved:
        found = plan.wrong("clearance", "grip", "tongue", part=panel.name)
        if found:
            half = panel.width.value / 2
            for a, b in (
                (thick - panel.reach, wide / 2 - half),
                (wide / 2 + half, wide - thick + panel.reach),
            ):
                wrong(view, rectangle((a, max(a, b)), (panel.low, panel.high)))
            x, y = view.at(wide / 2, bottom.high + f.inside_height.value / 2)
            gap = view.at(thick - panel.reach / 2, (panel.low + panel.high) / 2)
            offset = 12.0 if panel.name == "lid" else -16.0
            say(sheet, note_of(found), gap, [Slot(x, y + offset, "center")])


def _underside(view: PartView, plan: Plan, bottom: Sequence[Point], *, x: float) -> None:
    """A bottom that hangs below the walls, and the words beside it."""
    low, found = plan.design.bottom.low, plan.wrong("underside")
    if found:
        wrong(view, band(list(bottom), low=low, high=0.0))
        say(view.sheet, note_of(found), view.at(x, low))


def front_faults(view: PartView, plan: Plan) -> None:
    """A front edge in the lid's way, or far under it."""
    f, found = plan.design.frame, plan.wrong("front edge")
    if not found or f.lid_floor is None:
        return
    long, front, low = f.outside_length.value, f.front_thickness.value, f.front_height.value
    heights = min(low, f.lid_floor.value), max(low, f.lid_floor.value)
    wrong(view, rectangle((long - front, long), heights))
    say(view.sheet, note_of(found), view.at(long - front / 2, low))


def along_faults(view: PartView, plan: Plan) -> None:
    """What is wrong along the box: the low front, the reach of the lid, what stands proud."""
    d, f, sheet = plan.design, plan.design.frame, view.sheet
    long, high, back = f.outside_length.value, f.wall_height.value, f.back_thickness.value
    parts = {cut.name: cut.points for cut in cut_along(d)}
    front_faults(view, plan)
    if (lid := d.sliding_lid) is not None:
        found = plan.wrong("lid end")
        if found:
            start, groove = long - lid.length.value, back - d.choices.groove.depth
            wrong(view, rectangle((groove, start), (lid.low, lid.low + lid.tongue)))
            say(sheet, note_of(found), view.at(start, lid.low))
        found = plan.wrong("lid top")
        if found:
            wrong(view, band(parts["lid"], low=high, high=lid.high))
            say(sheet, note_of(found), view.at(long / 2, lid.high))
    _underside(view, plan, parts["bottom"], x=back + f.inside_length.value / 2)
