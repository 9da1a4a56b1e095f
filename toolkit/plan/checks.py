"""Everything that an experienced maker would say of one box, worst first."""

from __future__ import annotations

from toolkit.box import (
    Design,
    groove_checks,
    joint_checks,
    panel_checks,
)
from toolkit.plan.squareness import check_square, said
from toolkit.plan.thick_wood import check_thick
from toolkit.results import WALLS, Finding, Part, above, below, sorted_findings


def check_rough(d: Design, parts: tuple[Part, ...]) -> list[Finding]:
    """Boards too thin for the part that is to come out of them."""
    found = said(d)
    made, marks = d.choices.made, d.choices.customs.saw_marks
    for part in parts:
        wall = part.name in WALLS
        board_key = f"{'wall' if wall else 'panel'}_board_thickness"
        measured = getattr(made, board_key)
        board = part.rough_thickness.value if measured is None else measured
        need = part.thickness.value + 2 * marks
        as_planed = getattr(made, f"{part.name}_thickness", None) is not None
        if below(board, need) and not as_planed:
            none = not above(board, part.thickness.value)
            thicker = {f"made.{board_key}": need}
            if measured is None:
                thicker = {"allowances.thickness": 2 * marks}
            found.say(
                "rough-too-thin" if none else "rough-too-thin, a little",
                part=part.name,
                board=board,
                thickness=part.thickness.value,
                marks=marks,
                need=need,
                plan=board - 2 * marks,
                cures=(thicker,),
            )
    return found


def findings(d: Design, parts: tuple[Part, ...]) -> tuple[Finding, ...]:
    """All findings of a box, what won't work first."""
    rows = panel_checks.check_space(d)
    for check in (*joint_checks.CHECKS, *groove_checks.CHECKS):
        rows += check(d)
    # With no space inside, what could be said of lid and bottom would only confuse.
    if not any(row.place.spot == "inside" for row in rows):
        for check in panel_checks.CHECKS:
            rows += check(d)
        rows += check_rough(d, parts)
        rows += check_thick(d, parts)
        rows += check_square(d)
    return sorted_findings(rows)
