"""Lesson 1, stock selection: the tree, the room, the board, and where each part comes from."""

from __future__ import annotations

import ipywidgets as widgets

from toolkit.document import Sentence
from toolkit.explore.board_form import BoardForm
from toolkit.explore.cards import YourTurn, compare_guess, guess_card
from toolkit.explore.engine import Explorer, refresh
from toolkit.explore.own import of_own, own
from toolkit.explore.ready_card import ReadyCard
from toolkit.lesson import lesson1 as blocks
from toolkit.lesson.lesson1 import swelling
from toolkit.lesson.lesson1_board import BOARD
from toolkit.lesson.lesson1_tree import LOG, SEASON
from toolkit.lesson.scene import Scene

GUESS = "lesson1.damp-lid"
SCENES: tuple[Scene, ...] = (SEASON, LOG, BOARD)

worked = of_own(blocks.worked)
year_still = of_own(blocks.year_still)
log_still = of_own(blocks.log_still)
board_still = of_own(blocks.board_still)
buying = of_own(blocks.buying)
carry = of_own(blocks.carry)


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


def compare() -> Sentence:
    """The guess beside the answer."""
    made = own()
    return compare_guess(GUESS, made, answer=swelling(made))


def your_turn(seed: int | str | None = None) -> YourTurn:
    """Questions on the student's own box; a seed makes other sizes the same for a class."""
    return YourTurn(1, own=own, seed=seed)
