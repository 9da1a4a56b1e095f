"""Lesson 3, the joint: how it goes together, which line goes where, what the saw's errors do."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import lru_cache, partial
from typing import Self

from toolkit.box import Choices, Gaps, Hand, SawnJoint, gaps, joint_direction, line_table
from toolkit.lesson.controls import ChoiceControl, LengthControl, NumberControl
from toolkit.lesson.lesson3_corner import OF_JOINT, TAILS_BACK
from toolkit.lesson.scene import Scene, Shown, Tried, View, possible, worked_out
from toolkit.measures import Rule
from toolkit.pictures import Picture, corner_picture, gap_picture, joint_apart, unfolded_end
from toolkit.plan import FAIR, FINE, Plan
from toolkit.results import Table
from toolkit.shape import Which

WHICH = (("back corner", "back"), ("front corner", "front"))
HANDS = (("right-handed", False), ("left-handed", True))
BOARDS = ("pin board", "tail board")
HOME = 100  # driven home [%]

ARRANGEMENT_CONTROLS = (
    ChoiceControl(("corner.tails_on",), "tails on", (("the ends", "ends"), ("the sides", "sides"))),
    ChoiceControl(("corner.joint",), "joint", (("lapped", "half-blind"), ("through", "through"))),
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
    return View(picture, direction_numbers(plan), partial(plan.about, *OF_JOINT))


ARRANGEMENT = Scene("arrangement", ARRANGEMENT_CONTROLS, _arrangement, height=560)


def _proud(choices: Choices) -> float:
    return float(worked_out(choices).design.choices.corner.proud)


LINE_CONTROLS = (
    LengthControl(("corner.proud",), "pins proud, − for shy", -0.4, 0.8, "joints", start=_proud),
    ChoiceControl(("try.board",), "board", BOARDS, start="pin board"),
    ChoiceControl(("try.which",), "look at", WHICH, start="back"),
    ChoiceControl(("try.left",), "view", HANDS, start=lambda c: c.tools.hand == "left"),
)


def _lines(choices: Choices, tried: Tried) -> View:
    plan = possible(choices)
    picture = unfolded_end(
        plan,
        board=tried["try.board"],
        which=tried["try.which"],
        left_handed=tried["try.left"],
    )
    beside = corner_picture(plan, which=tried["try.which"], left_handed=tried["try.left"])
    return View(picture, line_table(plan.design), beside=(beside,))


LINES = Scene("lines", LINE_CONTROLS, _lines, height=600)


WAYS = (
    ("tails and pins set out apart", False, False),
    ("pins copied from the tails", True, False),
    ("copied, tails squared first", True, True),
)


def _of_hand(name: str) -> Callable[[Choices], float]:
    """Where an error of the hand stands by the box's customs."""

    def start(choices: Choices) -> float:
        return float(getattr(Hand.of(worked_out(choices).design.choices.customs), name))

    return start


SAW_CONTROLS = (
    NumberControl(("try.lead",), "saw leans by about", 0, 2, 0.1, "°", start=_of_hand("lead")),
    NumberControl(
        ("try.offset",), "misses its line by", 0, 0.4, 0.02, "mm", start=_of_hand("offset")
    ),
    NumberControl(("try.off",), "kept off the line by", 0, 0.5, 0.05, "mm", start=0.0),
    TAILS_BACK,
)


def sawn(plan: Plan) -> SawnJoint:
    """The back corner of a box, as a saw sees it. [mm]"""
    d = plan.design
    return SawnJoint.of(d.back, tail_board_thickness=d.tail_board_thickness[0])


def gaps_of(plan: Plan) -> Gaps:
    """The fit to expect of the box's back corners, its pins copied from the tails."""
    hand = Hand.of(plan.design.choices.customs)
    return gaps(sawn(plan), hand=hand, copied=True)


@lru_cache(maxsize=96)
def _row(spread: Gaps, way: str, rule: Rule) -> tuple[str, ...]:
    def of_100(gap: float) -> str:
        return f"{spread.at_most(gap) * 100:.0f}"

    outside = replace(spread, face="knifed")
    return (
        way,
        rule.exact(spread.median),
        rule.exact(spread.late),
        of_100(FINE),
        of_100(FAIR),
        rule.exact(outside.median),
    )


def ways_table(spread: Gaps, *, rule: Rule) -> Table:
    """The same hand, working in three ways."""
    rows = tuple(
        _row(replace(spread, copied=copied, squared=squared), way, rule)
        for way, copied, squared in WAYS
    )
    return Table(
        "Of 100 such corners",
        (
            "way of working",
            "middle gap, inside",
            "95 have no wider",
            f"within {rule.exact(FINE)}",
            f"within {rule.exact(FAIR)}",
            "middle gap, outside",
        ),
        rows,
        note=spread.which_matters()
        + " Wood kept on is pared away afterwards; a joint that fits is not pared.",
        numeric=(1, 2, 3, 4, 5),
    )


class SawnCorner(Shown):
    """The fit of the back corners as a hand saws them."""

    def set_up(self, tried: Tried) -> None:
        usual = Hand.of(self.plan.design.choices.customs)
        hand = replace(usual, lead=tried["try.lead"], offset=tried["try.offset"])
        self.gaps = gaps(sawn(self.plan), hand=hand, copied=True, keep_off=tried["try.off"])

    def picture(self, before: Self | None) -> Picture:
        return gap_picture(self.gaps, rule=self.rule, ghost=before.gaps if before else None)

    def values(self) -> Table:
        return ways_table(self.gaps, rule=self.rule)


SAW = Scene("saw", SAW_CONTROLS, SawnCorner, height=560)
