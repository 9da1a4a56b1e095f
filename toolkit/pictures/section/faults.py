"""What is wrong with a box cut through, drawn where it is wrong: a red outline and a few words."""

from __future__ import annotations

from toolkit.box import Panel
from toolkit.pictures.kit.lettering import Place
from toolkit.pictures.kit.view import View, band, rectangle
from toolkit.pictures.section.marks import codes, say, wrong
from toolkit.pictures.section.parts import cut_across, cut_along
from toolkit.plan import Plan


def across_faults(view: View, plan: Plan) -> None:
    """What is wrong at the size of the whole section; the grooves have their detail."""
    d = plan.design
    f, found, sheet = d.frame, codes(plan), view.sheet
    show, wide, high = plan.choices.rule.show, f.outside_width.value, f.wall_height.value
    lid, bottom = d.lid, d.bottom
    parts = {cut.name: cut.points for cut in cut_across(d)}
    if "bottom-below-walls" in found:
        wrong(view, band(parts["bottom"], low=bottom.low, high=0.0))
        words = f"{show(-bottom.low)} below the walls"
        say(sheet, words, view.at(wide * 0.7, bottom.low))
    if "lid-proud" in found and isinstance(lid, Panel):
        wrong(view, band(parts["lid"], low=high, high=lid.high))
        at = view.at(wide / 2, lid.high)
        above = Place(at[0], at[1] + 6.0, "center")
        say(sheet, f"{show(lid.high - high)} above the rim", at, [above])
    if "rim-thin" in found and f.lid_groove is not None:
        thick = f.side_thickness.value
        for x in (0.0, wide - thick):
            wrong(view, rectangle((x, x + thick), (f.lid_groove.high, high)))
    for panel in (bottom, lid):
        if not isinstance(panel, Panel):
            continue
        own = codes(plan, panel.name)
        words = ""
        if "swells-tight" in own:
            words = f"{panel.name} swells {show(panel.swelling)}: too tight"
        elif "drops-out" in own:
            words = f"{panel.name}, dry: {show(max(panel.worst_grip, 0.0))} left in its groove"
        elif "panel-too-thick" in own:
            words = f"{panel.name} does not enter its groove"
        if words:
            half, thick = panel.width.value / 2, f.side_thickness.value
            for a, b in (
                (thick - panel.reach, wide / 2 - half),
                (wide / 2 + half, wide - thick + panel.reach),
            ):
                wrong(view, rectangle((a, max(a, b)), (panel.low, panel.high)))
            x, y = view.at(wide / 2, bottom.high + f.inside_height.value / 2)
            gap = view.at(thick - panel.reach / 2, (panel.low + panel.high) / 2)
            offset = 12.0 if panel.name == "lid" else -16.0
            say(sheet, words, gap, [Place(x, y + offset, "center")])


def along_faults(view: View, plan: Plan) -> None:
    """What is wrong along the box: the low front, the reach of the lid, what stands proud."""
    d, show = plan.design, plan.choices.rule.show
    f, sheet, found = d.frame, view.sheet, codes(plan)
    long, front, high = f.outside_length.value, f.front_thickness.value, f.wall_height.value
    depth = d.choices.groove.depth
    parts = {cut.name: cut.points for cut in cut_along(d)}
    if f.lid_floor is not None and isinstance(d.lid, Panel):
        floor, low = f.lid_floor.value, f.front_height.value
        if "front-too-high" in found:
            wrong(view, rectangle((long - front, long), (floor, low)))
            say(
                sheet,
                f"{show(low - floor)} too high:\nthe lid cannot pass",
                view.at(long - front / 2, low),
            )
        if "front-too-low" in found:
            wrong(view, rectangle((long - front, long), (low, floor)))
            say(sheet, f"a gap of {show(floor - low)}", view.at(long - front / 2, low))
        if "lid-short" in found:
            start, groove = long - d.lid.length.value, f.back_thickness.value - depth
            wrong(view, rectangle((groove, start), (d.lid.low, d.lid.low + d.lid.tongue)))
            reach = show(max(f.back_thickness.value - start, 0.0))
            say(sheet, f"only {reach}\nin the back groove", view.at(start, d.lid.low))
        if "lid-proud" in found:
            wrong(view, band(parts["lid"], low=high, high=d.lid.high))
            say(sheet, f"{show(d.lid.high - high)} above the rim", view.at(long / 2, d.lid.high))
    if "bottom-below-walls" in found:
        middle = f.back_thickness.value + f.inside_length.value / 2
        wrong(view, band(parts["bottom"], low=d.bottom.low, high=0.0))
        say(sheet, f"{show(-d.bottom.low)} below the walls", view.at(middle, d.bottom.low))
