"""Lesson 5, finish off the plane: the surface before you cut it, and what flushing takes."""

from __future__ import annotations

import ipywidgets as widgets

from toolkit.document import Sentence
from toolkit.explore.cards import YourTurn, compare_guess, guess_card
from toolkit.explore.engine import Explorer
from toolkit.explore.own import of_own, own
from toolkit.lesson import lesson5 as blocks
from toolkit.lesson.lesson5 import LAMP, STEP
from toolkit.lesson.lesson5_box import FIT, SKIM
from toolkit.lesson.lesson5_finish import FINISH
from toolkit.lesson.lesson5_plane import CAP, EDGE, LIGHT
from toolkit.lesson.scene import Scene
from toolkit.smoothing import shadow_length

GUESS = "lesson5.shadow"
SCENES: tuple[Scene, ...] = (LIGHT, EDGE, CAP, SKIM, FIT, FINISH)

worked = blocks.worked
light_still = of_own(blocks.light_still)
edge_still = of_own(blocks.edge_still)
start = blocks.start
finish = of_own(blocks.finish)
carry = of_own(blocks.carry)


def guess() -> widgets.Widget:
    """Guess first: how long the shadow of a plane track is."""
    return guess_card(
        GUESS,
        f"The corner of an iron left a step {STEP:g} mm high. A lamp shines across it from "
        f"{LAMP:g}° above the bench. How long is the step's shadow?",
        hint="with its unit: 1 mm, 1/32 in",
    )


def light() -> Explorer:
    """A planed surface under a low lamp."""
    return Explorer(LIGHT)


def edge() -> Explorer:
    """The edge in the wood."""
    return Explorer(EDGE)


def cap_iron() -> Explorer:
    """The cap iron close or far, and the plane skewed."""
    return Explorer(CAP)


def skim() -> Explorer:
    """What flushing takes from the box."""
    return Explorer(SKIM)


def fit() -> Explorer:
    """How much the lid may lose before it rattles or drops out."""
    return Explorer(FIT)


def finishes() -> Explorer:
    """Oil, shellac or wax, and how much of it."""
    return Explorer(FINISH)


def compare() -> Sentence:
    """The guess beside the answer."""
    return compare_guess(GUESS, own(), answer=shadow_length(STEP, lamp_height=LAMP))


def your_turn(seed: int | str | None = None) -> YourTurn:
    """Questions on the student's own box; a seed makes other sizes the same for a class."""
    return YourTurn(5, own=own, seed=seed)
