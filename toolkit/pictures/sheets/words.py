"""What is written on full-size sheets: captions, the line at the top, what the lines mean."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from toolkit.box.joinery import gauge_settings
from toolkit.plan import Plan
from toolkit.results import above, capital

if TYPE_CHECKING:
    from toolkit.pictures.sheets.walls import OpenedWall

HOW_TO_PRINT = (
    "Print at 100 %, “actual size”, not “fit”. Measure the three bars before you trust the print. "
    "Left and right are seen from the front."
)
DONT_CUT = (
    "This box won't work as it is: don't cut from this sheet. “workbook check” says what is wrong."
)
COPY_PINS = "Knife the pins from your own tails; this only checks them."


def _grooves(opened: OpenedWall, plan: Plan) -> str:
    rule, depth = plan.choices.rule, plan.design.choices.groove.depth
    rows = [
        f"{name} {rule.show(span.low, unit=False)} to {rule.show(span.high, unit=False)}"
        for name, span in opened.wall.grooves
    ]
    word = "Groove" if len(rows) == 1 else "Grooves"
    said = f"{word} {rule.show(depth)} deep: {', '.join(rows)} {rule.units} up."
    plugs = any(end.plugged and end.end.stopped for _, end in (opened.left, opened.right))
    return f"{said} Crossed: plugs." if plugs else said


def _baselines(opened: OpenedWall, plan: Plan) -> str:
    show, proud = plan.choices.rule.show, gauge_settings(plan.design).proud
    (left_name, left), (_, right) = opened.left, opened.right
    said = f"Baselines {show(left.base)} from either end"
    back, front = (left, right) if left_name == "back end" else (right, left)
    if abs(back.base - front.base) > 1e-6:
        said = f"Baselines {show(back.base)} from the back end, {show(front.base)} from the front"
    if proud and not opened.tails:
        said += f" ({show(abs(proud))} {'proud' if proud > 0 else 'shy'})"
    return f"{said}."


def _ends(opened: OpenedWall, plan: Plan) -> str:
    """What else there is to know of a wall's two ends."""
    show = plan.choices.rule.show
    ends = [end for _, end in (opened.left, opened.right)]
    if not opened.tails:
        deep = [show(min(end.end.tip, end.thickness)) for end in ends]
        sockets = deep[0] if deep[0] == deep[1] else " and ".join(deep)
        # A through joint's sockets go right through, which the drawing shows.
        said = "" if any(end.flap for end in ends) else f", sockets {sockets} deep"
        return f"{said}. {COPY_PINS}"
    short = max(end.base - end.end.tip for end in ends)
    if above(short, 0.0):
        return f". Under the ear the tails end {show(short)} short of it."
    return ""


def wall_caption(opened: OpenedWall, plan: Plan) -> tuple[str, str]:
    """A wall's heading, and its numbers on the student's own rule."""
    rule = plan.choices.rule
    sizes = (opened.wall.length, opened.wall.height, opened.wall.thickness)
    figures = " × ".join(rule.show(size, unit=False) for size in sizes)
    kind = "tail board" if opened.tails else "pin board"
    heading = f"{opened.name}, {kind}: {figures} {rule.units}{_ends(opened, plan)}"
    return heading, f"{_baselines(opened, plan)} {_grooves(opened, plan)}"


def section_captions(plan: Plan) -> dict[str, tuple[str, str]]:
    """Heading and numbers of the three sections, by where they are cut."""
    d, rule = plan.design, plan.choices.rule
    show, f, g = rule.show, d.frame, d.choices.groove
    across = [f"Grooves {show(g.width)} wide, {show(g.depth)} deep."]
    if d.bottom.profile != "bevelled":
        across.append(f"Tongue of the bottom {show(d.bottom.tongue)}.")
    back = [
        f"{capital(one.name)} {show(one.length.value)} long, {show(one.thickness.value)} thick."
        for one in d.panels
    ]
    front = [f"Front {show(f.front_height.value)} high."]
    if (lid := d.sliding_lid) is not None and f.lid_floor is not None:
        if lid.profile != "bevelled":
            across.append(f"Tongue of the lid {show(lid.tongue)}.")
        gap = f.lid_floor.value - f.front_height.value
        where = "below" if gap >= 0 else "above"
        front.append(f"It ends {show(abs(gap))} {where} the floor of the lid groove.")
    return {
        "across": ("section at a side", " ".join(across)),
        "back": ("section at the back end", " ".join(back)),
        "front": ("section at the front end", " ".join(front)),
    }


def page_sentence(names: Sequence[str], plan: Plan, *, page: str) -> str:
    """What a page shows, for those who do not see it."""
    return (
        f"Full-size sheet {page} of a box {plan.outside} outside: {', '.join(names)}, with "
        "bars of 100 mm and 4 in to check the print by."
    )
