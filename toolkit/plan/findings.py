"""Everything that an experienced maker would say of one box, worst first."""

from __future__ import annotations

from toolkit.box import (
    Design,
    edge_checks,
    groove_checks,
    joint_checks,
    panel_checks,
    pin_checks,
    season_checks,
)
from toolkit.box.customs import cite
from toolkit.plan.square_checks import check_square
from toolkit.results import WALLS, About, Finding, Part, Place, below, sorted_findings

_rough = About("rough")


def check_rough(d: Design, parts: tuple[Part, ...]) -> list[Finding]:
    """Boards too thin for the part that is to come out of them."""
    c, found = d.choices, []
    show, made, marks = c.rule.exact, c.made, c.customs.saw_marks
    for part in parts:
        wall = part.name in WALLS
        board = made.wall_board_thickness if wall else made.panel_board_thickness
        board = part.rough_thickness.value if board is None else board
        need = part.thickness.value + 2 * marks
        as_planed = getattr(made, f"{part.name}_thickness", None) is not None
        if below(board, need) and not as_planed:
            found.append(
                _rough(
                    "wont_work",
                    "rough-too-thin",
                    Place(part=part.name),
                    f"a rough board of {show(board)} does not plane to "
                    f"{show(part.thickness.value)}: the saw marks alone take {show(marks)} off "
                    "each face.",
                    f"Use {show(need)} or thicker, or plan for {show(board - 2 * marks)}.",
                    cite("saw_marks"),
                )
            )
    return found


def findings(d: Design, parts: tuple[Part, ...]) -> tuple[Finding, ...]:
    """All findings of a box, what won't work first."""
    rows = panel_checks.check_space(d)
    for check in (*joint_checks.CHECKS, *pin_checks.CHECKS, *groove_checks.CHECKS):
        rows += check(d)
    # With no space inside, what could be said of lid and bottom would only confuse.
    if not any(row.place.spot == "inside" for row in rows):
        for check in (*panel_checks.CHECKS, *edge_checks.CHECKS, *season_checks.CHECKS):
            rows += check(d)
        rows += check_rough(d, parts)
        rows += check_square(d)
    return sorted_findings(rows)
