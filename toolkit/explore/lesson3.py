"""Lesson 3, dovetail proportions: set out, marked, sawn, and put together."""

from __future__ import annotations

import ipywidgets as widgets

from toolkit.document import Sentence
from toolkit.explore.cards import YourTurn, compare_guess, guess_card
from toolkit.explore.engine import Explorer
from toolkit.explore.feeler_card import feeler_card
from toolkit.explore.own import of_own, own
from toolkit.explore.rescue_card import RescueCard
from toolkit.lesson import lesson3 as blocks
from toolkit.lesson.lesson3_corner import CORNER, ROUND
from toolkit.lesson.lesson3_joint import ARRANGEMENT, LINES
from toolkit.lesson.lesson3_saw import SAW
from toolkit.lesson.scene import Scene
from toolkit.lesson.worked import drawable
from toolkit.study import leaning_saw

GUESS = "lesson3.leaning-saw"
SCENES: tuple[Scene, ...] = (CORNER, ARRANGEMENT, ROUND, LINES, SAW)

worked = of_own(blocks.worked)
corner_still = of_own(blocks.corner_still)
front_still = of_own(blocks.front_still)
joint_still = of_own(blocks.joint_still)
lines_still = of_own(blocks.lines_still)
saw_still = of_own(blocks.saw_still)
slopes = of_own(blocks.slopes)
dividers = of_own(blocks.dividers)
gauge_lines = of_own(blocks.gauge_lines)
transfer = of_own(blocks.transfer)
glue_up = of_own(blocks.glue_up)
carry = of_own(blocks.carry)


def guess() -> widgets.Widget:
    """Guess first: how far a leaning saw comes out of its line."""
    asked = leaning_saw(own())
    return guess_card(GUESS, asked.prompt, hint="with its unit: 0.5 mm, 1/64 in")


def corner() -> Explorer:
    """The corner and its sliders."""
    return Explorer(CORNER)


def arrangement() -> Explorer:
    """The joint apart: which board carries the tails."""
    return Explorer(ARRANGEMENT)


def round_grooves() -> Explorer:
    """Layouts round the grooves, to look at and to keep."""
    return Explorer(ROUND)


def lines() -> Explorer:
    """Which line goes on which face."""
    return Explorer(LINES)


def saw() -> Explorer:
    """The saw's errors and the fit that comes of them."""
    return Explorer(SAW)


def feelers() -> widgets.Widget:
    """A box for the student's own readings of a feeler gauge."""
    return feeler_card(lambda: drawable(own()))


def compare() -> Sentence:
    """The guess beside the answer."""
    made = own()
    return compare_guess(GUESS, made, answer=leaning_saw(made).answer)


def your_turn(seed: int | str | None = None) -> YourTurn:
    """Questions on the student's own box; a seed makes other sizes the same for a class."""
    return YourTurn(3, own=own, seed=seed)


def rescue() -> RescueCard:
    """Ways out of what went wrong at the joints, and of anything else."""
    return RescueCard(own, stages=("jointed",))
