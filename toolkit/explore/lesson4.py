"""Lesson 4, groove layout: one plough setting, the tails round it, the panels in it."""

from __future__ import annotations

import ipywidgets as widgets

from toolkit.document import Sentence
from toolkit.explore.cards import YourTurn, compare_guess, guess_card
from toolkit.explore.engine import Explorer
from toolkit.explore.own import of_own, own
from toolkit.explore.rescue_card import RescueCard
from toolkit.lesson import lesson4 as blocks
from toolkit.lesson.controls import with_values
from toolkit.lesson.lesson1 import year_still as lid_year
from toolkit.lesson.lesson4_contents import CONTENTS
from toolkit.lesson.lesson4_corner import CORNER
from toolkit.lesson.lesson4_edges import EDGES
from toolkit.lesson.lesson4_lid import LID
from toolkit.lesson.lesson4_season import SEASON
from toolkit.lesson.scene import Scene
from toolkit.lesson.worked import worked_out

GUESS = "lesson4.deeper-groove"

SCENES: tuple[Scene, ...] = (CORNER, SEASON, LID, EDGES, CONTENTS)

worked = of_own(blocks.worked)
exits = of_own(blocks.exits)
months = of_own(blocks.months)
limits = of_own(blocks.limits)
year_still = of_own(lid_year)
lid_still = of_own(blocks.lid_still)
ploughing = of_own(blocks.ploughing)
stages = of_own(blocks.stages)
edges = of_own(blocks.edges)
still = of_own(blocks.still)
sections = of_own(blocks.sections)
carry = of_own(blocks.carry)


def guess() -> widgets.Widget:
    """Guess first: how much wider a whole box grows by one deeper groove."""
    return guess_card(
        GUESS,
        "Both lid grooves are ploughed 1 mm deeper. How much wider must the lid be?",
        hint="with its unit: 3 mm, 1/8 in",
    )


def explore() -> Explorer:
    """The sliders of this lesson."""
    return Explorer(CORNER)


def seasons() -> Explorer:
    """The year between the two limits, and its sliders."""
    return Explorer(SEASON)


def lid() -> Explorer:
    """The lid on its way, and its sliders."""
    return Explorer(LID)


def bevels() -> Explorer:
    """The edges of the lid in their grooves, and their sliders."""
    return Explorer(EDGES)


def backwards() -> Explorer:
    """From contents to rough list, and its sliders."""
    return Explorer(CONTENTS)


def compare() -> Sentence:
    """The guess beside the answer: the panel sits in two grooves."""
    made = own()
    depth = made.design.choices.groove.depth or 0.0
    deeper = worked_out(with_values(made.choices, {"groove.depth": depth + 1.0}))
    grown = deeper.design.lid.width.value - made.design.lid.width.value
    return compare_guess(GUESS, made, answer=grown)


def your_turn(seed: int | str | None = None) -> YourTurn:
    """Questions on the student's own box; a seed makes other sizes the same for a class."""
    return YourTurn(4, own=own, seed=seed)


def rescue() -> RescueCard:
    """Ways out of what went wrong with grooves and panels, and of anything else."""
    return RescueCard(own, stages=("grooved", "fitted"))
