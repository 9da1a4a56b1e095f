"""Lesson 1, what its cells show of a plan: the tree, the room, the board."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from toolkit.document import Figure, Sentence, TableBlock
from toolkit.lesson.lesson1_board import board_scene, layouts_of
from toolkit.lesson.lesson1_tree import LOG, SEASON, sawn_panel
from toolkit.pictures import board_picture, log_end
from toolkit.plan import Plan
from toolkit.results import Size, Table
from toolkit.stock import (
    Board,
    blanks_of,
    board_feet_by_volume,
    sets_needed,
    to_buy,
)
from toolkit.wood import CAUTION, movement, quick_rule, sensitiser, species

CLASS = 10  # students in the weekend class
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
    """What to ask the yard for: one box, and a class with its spares."""
    rule, sets = plan.choices.rule, sets_needed(CLASS)
    rows = []
    for buy in to_buy(blanks_of(plan.parts)):
        sizes = (
            rule.show(buy.length, fineness="rough", direction="up", unit=False),
            rule.show(buy.width, fineness="rough", direction="up", unit=False),
            rule.show(buy.thickness, fineness="sizes", direction="up", unit=False),
        )
        names = ", ".join(part.name for part in buy.parts)
        many = buy.volume * sets
        rows.append(
            (
                names,
                " × ".join(sizes),
                f"{sets * buy.length / 1000:.1f} m",
                f"{many:.3f} m³, {board_feet_by_volume(many):.1f} board feet",
                f"{buy.board_feet * sets:.1f} board feet",
            )
        )
    table = Table(
        f"To buy, clear and with allowances, for one box and for a class of {CLASS}",
        (
            "for",
            f"one box asks for ({rule.units})",
            f"{sets} sets, with spares",
            "by volume",
            "as a hardwood yard counts it",
        ),
        tuple(rows),
        note=f"A yard counts wood thinner than an inch as an inch: ask which way it will be billed."
        f"{_dust(plan)}",
        numeric=(1, 2, 3, 4),
    )
    return TableBlock(table)


def _dust(plan: Plan) -> str:
    """The reports on the dust of the box's woods; empty if none of them is listed."""
    found = (sensitiser(wood) for wood in dict.fromkeys(part.wood for part in plan.parts))
    told = [row.sentence for row in dict.fromkeys(found) if row is not None]
    return " ".join(["", *told, CAUTION]) if told else ""


def carry(plan: Plan, boards: Sequence[Board]) -> Sentence:
    """Two lines to carry to the rack."""
    rule = plan.choices.rule
    longest = max(plan.parts, key=lambda part: part.rough_length.value)
    long = longest.rough_length.value
    laid = layouts_of(plan.choices, boards[0], "free", 2.0).laid(0.0)
    return Sentence.of(
        "Clean both faces, mark knots and checks a little large, chalk the parts on. Longest rough "
        f"part: {longest.name}, ",
        Size(rule.show(long, fineness="rough"), longest.name, "rough length", long),
        f". {laid.boards[0].sentence(rule)}",
    )
