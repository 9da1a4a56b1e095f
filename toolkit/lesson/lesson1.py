"""Lesson 1, what its cells show of a plan: the tree, the room, the board."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from toolkit.document import Figure, Sentence, TableBlock
from toolkit.lesson.lesson1_board import board_scene, bought, chalked, layouts_of
from toolkit.lesson.lesson1_tree import LOG, SEASON, sawn_panel
from toolkit.pictures import board_picture, log_end
from toolkit.plan import Plan
from toolkit.results import Size
from toolkit.stock import Board
from toolkit.wood import movement, quick_rule, species

HINT = "with its unit: 5 mm, 1/8 in"
SCENES = {"seasons": SEASON, "log": LOG, "board": board_scene}
STILLS = {"year_still": SEASON}


def worked(plan: Plan) -> Sentence:
    """One worked by hand, then the same from the toolkit."""
    panel, rule = plan.design.uppermost, plan.choices.rule
    wood = plan.design.wood_of(panel)
    dry, damp, wide = panel.season.make, panel.season.damp, panel.width.value
    moves: dict[str, Any] = {
        "species": wood,
        "rings": 0.0,
        "moisture_from": dry,
        "moisture_to": damp,
    }
    grown = rule.exact(round(movement(wide, **moves), 2))
    words = f"{wood}, flat-sawn, from {dry:.1f} % on the bench to {damp:.1f} % in the damp: "
    size = Size(rule.show(wide), panel.name, "finished width", wide)
    try:
        quick = quick_rule(wide, **moves)
    except ValueError:
        return Sentence.of(f"{words}a {panel.name} ", size, f" wide grows {grown}.")
    coefficient = species(wood).coefficient_tangential
    return Sentence(
        f"{words}{rule.show(wide, unit=False)} width × {coefficient} × ({damp:.1f} − {dry:.1f}) = "
        f"{rule.exact(round(quick.change, 2))} on paper; by the law for every moisture {grown}."
    )


def log_still(plan: Plan) -> Figure:
    """Where the student's own lid might have been sawn, for paper."""
    return Figure(log_end(sawn_panel(plan), rule=plan.choices.rule))


def board_still(plan: Plan, boards: Sequence[Board]) -> Figure:
    """The first board of the rack with the student's own parts, for paper."""
    laid = layouts_of(plan.choices, boards[0], "free", 1.0).laid(0.0)
    return Figure(board_picture(boards[0], laid.boards[0], rule=plan.choices.rule))


def buying(plan: Plan) -> TableBlock:
    """What to ask the yard for, for one box and for a class."""
    return TableBlock(bought(plan))


def carry(plan: Plan, boards: Sequence[Board]) -> Sentence:
    """What to carry to the bench: how dry, how much longer, and where to begin."""
    return chalked(plan, boards[0])
