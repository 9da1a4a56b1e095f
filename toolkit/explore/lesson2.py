"""Lesson 2, dimensioning: from a warped rough board to true parts by hand."""

from __future__ import annotations

import ipywidgets as widgets

from toolkit.document import Sentence
from toolkit.explore.cards import YourTurn, compare_guess, guess_card
from toolkit.explore.engine import Explorer
from toolkit.explore.made_form import MadeForm
from toolkit.explore.own import of_own, own
from toolkit.explore.readings_form import ReadingsForm
from toolkit.explore.rescue_card import RescueCard
from toolkit.lesson import lesson2 as blocks
from toolkit.lesson.lesson2 import bow_left
from toolkit.lesson.lesson2_board import (
    CROSSCUT,
    WARP,
    long_board,
)
from toolkit.lesson.lesson2_planes import PLANES_SCENE
from toolkit.lesson.lesson2_time import TIME
from toolkit.lesson.scene import Scene

GUESS = "lesson2.crosscut-bow"
SCENES: tuple[Scene, ...] = (WARP, CROSSCUT, PLANES_SCENE, TIME)

worked = of_own(blocks.worked)
face_still = of_own(blocks.face_still)
crosscut_still = of_own(blocks.crosscut_still)
planes_still = of_own(blocks.planes_still)
time_still = of_own(blocks.time_still)
order = of_own(blocks.order)
rough = of_own(blocks.rough)
carry = of_own(blocks.carry)


def guess() -> widgets.Widget:
    """Guess first: how much bow is left in a third of a board."""
    rule = own().choices.rule
    whole = long_board()
    return guess_card(
        GUESS,
        f"A board {rule.show(whole.length)} long has {rule.show(whole.bow)} of bow. How much bow "
        f"is left in a piece of {rule.show(700.0, fineness='rough')}?",
        hint="with its unit: 4 mm, 1/8 in",
    )


def warp() -> Explorer:
    """The warped face and its sliders."""
    return Explorer(WARP)


def crosscut() -> Explorer:
    """The long board and what crosscutting first saves."""
    return Explorer(CROSSCUT)


def planes() -> Explorer:
    """Camber, depth and overlap."""
    return Explorer(PLANES_SCENE)


def time() -> Explorer:
    """How long a face takes, by the class's own pace."""
    return Explorer(TIME)


def readings() -> ReadingsForm:
    """A small table for the student's own readings of a face."""
    return ReadingsForm(own)


def made() -> MadeForm:
    """What was measured at the bench, kept as fact."""
    return MadeForm()


def compare() -> Sentence:
    """The guess beside the answer: bow goes with the square of the length."""
    return compare_guess(GUESS, own(), answer=bow_left())


def your_turn(seed: int | str | None = None) -> YourTurn:
    """Questions on the student's own box; a seed makes other sizes the same for a class."""
    return YourTurn(2, own=own, seed=seed)


def rescue() -> RescueCard:
    """Ways out of what went wrong with a wall, and of anything else."""
    return RescueCard(own, stages=("rough", "true"))
