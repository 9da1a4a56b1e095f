"""Lesson 1, stock selection: the tree, the room, the board, and where each part comes from."""

from __future__ import annotations

import ipywidgets as widgets

from toolkit.explore.board_form import BoardForm
from toolkit.explore.cards import YourTurn, compare_guess, guess_card
from toolkit.explore.engine import Explorer, refresh
from toolkit.explore.lesson1_board import BOARD, bought, chalked, layouts_of, rack
from toolkit.explore.lesson1_tree import LOG, SEASON, sawn_lid, year_of
from toolkit.explore.ready_card import ReadyCard
from toolkit.explore.scene import Scene
from toolkit.explore.view import Listed, Said, Still
from toolkit.explore.worked import own
from toolkit.pictures import board_picture, log_end, year_picture
from toolkit.plan import Plan
from toolkit.wood import movement, quick_rule, species

GUESS = "lesson1.damp-lid"
SCENES: tuple[Scene, ...] = (SEASON, LOG, BOARD)


def guess() -> widgets.Widget:
    """Guess first: how much wider the lid is in a damp summer."""
    made = own()
    wide = made.choices.rule.show(made.design.lid.width.value)
    return guess_card(
        GUESS,
        f"A flat-sawn lid {wide} wide is fitted in a heated room. How much wider is it in a damp "
        "August?",
        hint="with its unit: 5 mm, 1/8 in",
    )


def _swelling(made: Plan) -> float:
    """What the student's own lid gains from the bench to its dampest room, flat-sawn. [mm]"""
    season = made.design.lid.season
    return movement(
        made.design.lid.width.value,
        species=made.design.choices.wood.lid,
        rings=0.0,
        moisture_from=season.make,
        moisture_to=season.damp,
    )


def worked() -> Said:
    """One worked by hand, then the same from the toolkit."""
    made = own()
    lid, rule, wood = made.design.lid, made.choices.rule, made.design.choices.wood.lid
    dry, damp, wide = lid.season.make, lid.season.damp, lid.width.value
    grown = rule.exact(round(_swelling(made), 2))
    words = f"{wood}, flat-sawn, from {dry:.1f} % on the bench to {damp:.1f} % in the damp: "
    try:
        quick = quick_rule(wide, species=wood, rings=0, moisture_from=dry, moisture_to=damp)
    except ValueError:
        return Said(f"{words}a lid {rule.show(wide)} wide grows {grown}.")
    coefficient = species(wood).coefficient_tangential
    return Said(
        f"{words}{rule.show(wide, unit=False)} width × {coefficient} × ({damp:.1f} − {dry:.1f}) = "
        f"{rule.exact(round(quick.change, 2))} on paper; by the law for every moisture {grown}."
    )


def seasons() -> Explorer:
    """The year and its sliders."""
    return Explorer(SEASON)


def log() -> Explorer:
    """The log's end and its sliders."""
    return Explorer(LOG)


def board() -> Explorer:
    """A board of the rack and its sliders."""
    return Explorer(BOARD)


def own_board() -> BoardForm:
    """A form for the student's own boards; what is kept is on the rack above."""
    return BoardForm(changed=lambda: refresh(BOARD.name, forget=("try.board", "try.knot")))


def ready() -> ReadyCard:
    """A card for readings of a meter and a scale: is this board ready to cut?"""
    return ReadyCard(own)


def year_still() -> Still:
    """The student's own lid through the year, for paper."""
    made = own()
    return Still(year_picture(year_of(made), rule=made.choices.rule))


def log_still() -> Still:
    """Where the student's own lid might have been sawn, for paper."""
    made = own()
    return Still(log_end(sawn_lid(made), rule=made.choices.rule))


def board_still() -> Still:
    """The first board of the rack with the student's own parts, for paper."""
    made, first = own(), rack()[0]
    laid = layouts_of(made.choices, first, "free", 1.0).laid(0.0)
    return Still(board_picture(first, laid.boards[0], rule=made.choices.rule))


def compare() -> Said:
    """The guess beside the answer."""
    made = own()
    return compare_guess(GUESS, made, answer=_swelling(made))


def buying() -> Listed:
    """What to ask the yard for, for one box and for a class."""
    return Listed(bought(own()))


def your_turn(seed: int | str | None = None) -> YourTurn:
    """Questions on the student's own box; a seed makes other sizes the same for a class."""
    return YourTurn(1, own=own, seed=seed)


def carry() -> Said:
    """What to carry to the bench: how dry, how much longer, and where to begin."""
    made, first = own(), rack()[0]
    return Said(chalked(made, first))
