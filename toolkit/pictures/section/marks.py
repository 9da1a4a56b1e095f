"""What both sections share: cut parts laid down, a ghost of them, what is wrong in red."""

from __future__ import annotations

from collections.abc import Sequence

from toolkit.box import Panel
from toolkit.pictures.kit.notes import not_right
from toolkit.pictures.kit.strokes import long_grain, rings
from toolkit.pictures.kit.view import View
from toolkit.plan import Plan
from toolkit.shape import CutPart


def drawable(plan: Plan) -> bool:
    """Whether there is a box to be cut through."""
    f = plan.design.frame
    inside = min(f.inside_length.value, f.inside_width.value, f.inside_height.value)
    return min(inside, f.wall_height.value, f.front_height.value) > 0


def lay(view: View, cuts: Sequence[CutPart], *, heart: dict[str, float]) -> None:
    """Parts where they are cut, with their grain; the heart of the tree by part, else up. [deg]"""
    for cut in cuts:
        fill = "end" if cut.end_grain else "face"
        view.area(cut.name, cut.points, fill=f"{fill} cut", edge="visible")
        if cut.end_grain:
            rings(view, cut.points, across=heart.get(cut.name, 90.0))
        else:
            long_grain(view, cut.points)


def lay_ghost(view: View, cuts: Sequence[CutPart]) -> None:
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
