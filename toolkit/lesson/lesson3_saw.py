"""Lesson 3, the saw: what its errors do to a joint, and what feeler gauges say of a hand."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache

from toolkit.box import Choices
from toolkit.box.joinery import Gaps, Hand, SawnJoint, gaps
from toolkit.lesson.controls import CountControl, NumberControl, Start
from toolkit.lesson.lesson3_corner import settled
from toolkit.lesson.scene import Moment, Scene
from toolkit.lesson.view import View
from toolkit.lesson.worked import possible, worked_out
from toolkit.measures import Rule
from toolkit.pictures import gap_picture
from toolkit.plan import Plan
from toolkit.results import Table

FINE, FAIR = 0.10, 0.30  # how a fit is marked: common practice, no source [mm]
WAYS = (
    ("tails and pins set out apart", False, False),
    ("pins copied from the tails", True, False),
    ("copied, tails squared first", True, True),
)


def _of_hand(name: str) -> Start:
    """Where an error of the hand stands by the box's customs."""

    def start(choices: Choices) -> float:
        return float(getattr(Hand.of(worked_out(choices).design.choices.customs), name))

    return start


CONTROLS = (
    NumberControl(("try.lead",), "saw leans by about", 0, 2, 0.1, "°", _of_hand("lead")),
    NumberControl(("try.offset",), "misses its line by", 0, 0.4, 0.02, "mm", _of_hand("offset")),
    NumberControl(("try.off",), "kept off the line by", 0, 0.5, 0.05, "mm", lambda _: 0.0),
    CountControl(("corner.tails_back",), "tails at the back", 1, 6, settled("corner.tails_back")),
)


def sawn(made: Plan) -> SawnJoint:
    """The back corner of a box, as a saw sees it. [mm]"""
    d = made.design
    return SawnJoint.of(d.back, tail_board_thickness=d.tail_board_thickness[0])


def gaps_of(made: Plan) -> Gaps:
    """The fit to expect of the box's back corners, its pins copied from the tails."""
    hand = Hand.of(made.design.choices.customs)
    return gaps(sawn(made), hand=hand, copied=True)


def _tried(at: Moment) -> Gaps:
    made = possible(at.choices)
    usual = Hand.of(made.design.choices.customs)
    hand = replace(usual, lead=at.tried["try.lead"], offset=at.tried["try.offset"])
    return gaps(sawn(made), hand=hand, copied=True, keep_off=at.tried["try.off"])


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


def _saw(at: Moment) -> View:
    rule, spread = at.choices.rule, _tried(at)
    ghost = None
    if at.moved and worked_out(at.kept).design.exists:
        ghost = _tried(at.first)
    return View(gap_picture(spread, rule=rule, ghost=ghost), ways_table(spread, rule=rule))


SAW = Scene("saw", CONTROLS, _saw, height=560)
