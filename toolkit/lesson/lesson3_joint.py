"""Lesson 3, the joint: which board carries the tails, how it comes apart, which line goes where."""

from __future__ import annotations

from functools import lru_cache
from typing import get_args

from toolkit.box import Choices
from toolkit.box.choices import Joint
from toolkit.box.joinery import joint_direction, line_table
from toolkit.lesson.controls import ChoiceControl, LengthControl, NumberControl
from toolkit.lesson.lesson3_corner import OF_JOINT
from toolkit.lesson.scene import Scene, Tried
from toolkit.lesson.view import View
from toolkit.lesson.worked import possible, worked_out
from toolkit.pictures import Picture, corner_picture, joint_apart, unfolded_end
from toolkit.plan import Plan
from toolkit.results import Table
from toolkit.shape import Which

WHICH = (("back corner", "back"), ("front corner", "front"))
HANDS = (("right-handed", False), ("left-handed", True))
BOARDS = ("pin board", "tail board")
HOME = 100  # driven home [%]

ARRANGEMENT_CONTROLS = (
    ChoiceControl(("corner.tails_on",), "tails on", (("the ends", "ends"), ("the sides", "sides"))),
    ChoiceControl(("corner.joint",), "joint", get_args(Joint)),
    ChoiceControl(("try.which",), "look at", WHICH, start="back"),
    NumberControl(("try.home",), "driven together", 0, HOME, 10, "%", start=0),
)


@lru_cache(maxsize=48)
def apart(choices: Choices, which: Which, home: int) -> Picture:
    """A corner so far driven together. [%]"""
    return joint_apart(possible(choices), which=which, open=1 - home / HOME)


def direction_numbers(plan: Plan) -> Table:
    """Which way the joint goes together, locks, and is pushed by a panel."""
    rule, way = plan.choices.rule, joint_direction(plan.design)
    rows = (
        ("goes together", way.together()),
        ("locks", way.locked()),
        ("swelling", way.swollen(rule)),
    )
    return Table("Which way", ("what", "how"), rows)


def _arrangement(choices: Choices, tried: Tried) -> View:
    plan = possible(choices)
    picture = apart(choices, tried["try.which"], int(tried["try.home"]))
    return View(picture, direction_numbers(plan), plan.about(*OF_JOINT))


ARRANGEMENT = Scene("arrangement", ARRANGEMENT_CONTROLS, _arrangement, height=560)


def _proud(choices: Choices) -> float:
    customs = worked_out(choices).design.choices.customs
    return customs.pins_proud - customs.pins_shy


LINE_CONTROLS = (
    LengthControl(("try.proud",), "pins proud, − for shy", -0.4, 0.8, "joints", start=_proud),
    ChoiceControl(("try.board",), "board", BOARDS, start="pin board"),
    ChoiceControl(("try.which",), "look at", WHICH, start="back"),
    ChoiceControl(("try.left",), "view", HANDS, start=False),
)


def _lines(choices: Choices, tried: Tried) -> View:
    plan = possible(choices)
    picture = unfolded_end(
        plan,
        board=tried["try.board"],
        which=tried["try.which"],
        proud=tried["try.proud"],
        left_handed=tried["try.left"],
    )
    beside = corner_picture(plan, which=tried["try.which"], left_handed=tried["try.left"])
    return View(picture, line_table(plan.design, proud=tried["try.proud"]), beside=(beside,))


LINES = Scene("lines", LINE_CONTROLS, _lines, height=600)
