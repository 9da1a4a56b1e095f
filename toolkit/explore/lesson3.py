"""Lesson 3, dovetail proportions: set out, marked, sawn, and put together."""

from __future__ import annotations

import ipywidgets as widgets

from toolkit.box.joinery import (
    glue_up_steps,
    line_table,
    slope_table,
    step_table,
    transfer_steps,
)
from toolkit.explore.cards import YourTurn, compare_guess, guess_card
from toolkit.explore.engine import Explorer
from toolkit.explore.feeler_card import feeler_card
from toolkit.explore.lesson3_corner import CORNER, ROUND
from toolkit.explore.lesson3_joint import ARRANGEMENT, LINES
from toolkit.explore.lesson3_saw import SAW, gaps_of
from toolkit.explore.lesson3_tables import bench_sentence, divider_table, step_sentence
from toolkit.explore.rescue_card import RescueCard
from toolkit.explore.scene import Scene
from toolkit.explore.view import Listed, Said, Still
from toolkit.explore.worked import own, possible
from toolkit.pictures import corner_picture, gap_picture, joint_apart, unfolded_end
from toolkit.plan import Plan
from toolkit.study import OwnBox
from toolkit.study.first_guesses import leaning_saw

GUESS = "lesson3.leaning-saw"
SCENES: tuple[Scene, ...] = (CORNER, ARRANGEMENT, ROUND, LINES, SAW)


def _drawable() -> Plan:
    return possible(OwnBox().load().choices)


def guess() -> widgets.Widget:
    """Guess first: how far a leaning saw comes out of its line."""
    asked = leaning_saw(own())
    return guess_card(GUESS, asked.prompt, hint="with its unit: 0.5 mm, 1/64 in")


def worked() -> Said:
    """One worked by hand, then the same from the toolkit."""
    return Said(step_sentence(_drawable()))


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


def corner_still() -> Still:
    """The student's own back corner, for paper."""
    return Still(corner_picture(_drawable(), which="back"))


def front_still() -> Still:
    """The student's own front corner, for paper."""
    return Still(corner_picture(_drawable(), which="front"))


def joint_still() -> Still:
    """The student's own front corner apart, for paper."""
    return Still(joint_apart(_drawable(), which="front"))


def lines_still() -> Still:
    """The lines of the student's own pin board, for paper."""
    return Still(unfolded_end(_drawable()))


def saw_still() -> Still:
    """The fit to expect of the student's own back corners, for paper."""
    made = _drawable()
    return Still(gap_picture(gaps_of(made), rule=made.choices.rule))


def slopes() -> Listed:
    """What each authority says of the slope, and what it does to the student's own tails."""
    made = own()
    d = made.design
    return Listed(slope_table(d.back.slope, tail_length=d.back.tail_length, rule=made.choices.rule))


def dividers() -> Listed:
    """Where the dividers' marks fall."""
    return Listed(divider_table(_drawable()))


def gauge_lines() -> Listed:
    """Which line goes on which face, gauged from which side."""
    return Listed(line_table(_drawable().design))


def transfer() -> Listed:
    """From the finished tails to the pins."""
    return Listed(step_table(transfer_steps(_drawable().design), title="From tails to pins"))


def glue_up() -> Listed:
    """The order of gluing up."""
    return Listed(step_table(glue_up_steps(_drawable().design), title="Gluing up"))


def feelers() -> widgets.Widget:
    """A box for the student's own readings of a feeler gauge."""
    return feeler_card(_drawable)


def compare() -> Said:
    """The guess beside the answer."""
    made = own()
    return compare_guess(GUESS, made, answer=leaning_saw(made).answer)


def your_turn(seed: int | str | None = None) -> YourTurn:
    """Questions on the student's own box; a seed makes other sizes the same for a class."""
    return YourTurn(3, own=own, seed=seed)


def carry() -> Said:
    """What to carry to the bench."""
    return Said(bench_sentence(_drawable()))


def rescue() -> RescueCard:
    """Ways out of what went wrong at the joints, and of anything else."""
    return RescueCard(own, stages=("jointed",))
