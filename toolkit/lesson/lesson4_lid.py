"""Lesson 4, the lid on its way: home, half in, out, and the low front that it passes over."""

from __future__ import annotations

from typing import Self

from toolkit.box import Choices
from toolkit.box.sliding import droop, held, sliding
from toolkit.lesson.controls import ChoiceControl, LengthControl, NumberControl
from toolkit.lesson.lesson4_edges import PROFILES
from toolkit.lesson.scene import Scene, Shown, Tried
from toolkit.lesson.view import MUCH, ImpossibleError, numbers, size_row
from toolkit.lesson.worked import worked_out
from toolkit.pictures import Picture, lid_picture
from toolkit.plan import Plan
from toolkit.results import Table, capital

FRONTS = (
    ("as the box has it", "own"),
    ("floor of the lid groove", "floor"),
    ("middle of it", "middle"),
    ("roof of it", "roof"),
)
CONTROLS = (
    NumberControl(("try.out",), "lid drawn out", 0, 100, 5, "%", start=50.0),
    ChoiceControl(("try.front",), "front ripped to the", FRONTS, start="own", slider=True),
    LengthControl(("thickness.lid",), "lid thickness", 4.0, 16.0, "sizes"),
    ChoiceControl(("panels.lid_profile",), "lid's edges", PROFILES),
)


def with_front(choices: Choices, front: str) -> Choices:
    """The same box with its front ripped to a line of the lid groove."""
    groove = worked_out(choices).design.frame.lid_groove
    if front == "own" or groove is None:
        return choices
    lines = {"floor": groove.low, "middle": (groove.low + groove.high) / 2, "roof": groove.high}
    return choices.having({"made.front_width": lines[front]})


def drawn_out(plan: Plan, share: float) -> float:
    """How far the lid is out, from its share in percent. [mm]"""
    return plan.design.lid.length.value * share / 100


class LidOnItsWay(Shown):
    """A box with its lid so far out."""

    topics = ("lid", "panel")

    def set_up(self, tried: Tried) -> None:
        if self.plan.design.sliding_lid is None:
            says = capital(self.choices.lid.closure.says)
            raise ImpossibleError(
                f'{says}: choose lid.kind = "sliding" to see one slide.',
                there_is="No such lid.",
            )
        self.out = drawn_out(self.plan, tried["try.out"])

    def box(self) -> Choices:
        return with_front(self.choices, self.tried["try.front"])

    def picture(self, before: Self | None) -> Picture:
        ghost, was = (before.plan, before.out) if before else (None, 0.0)
        return lid_picture(self.plan, out=self.out, ghost=ghost, ghost_out=was)

    def values(self) -> Table:
        """What holds the lid where it is, and its play."""
        d, rule = self.plan.design, self.rule
        inside, hang = held(d, out=self.out), droop(d, out=self.out)
        rows: list[tuple[str, ...]] = [
            ("lid length", *size_row(d.lid.length, rule)[1:]),
            ("still in its grooves", rule.show(inside), "lid length less what is out"),
            (
                "its front end hangs",
                "free" if hang is None else rule.exact(round(hang, 2)),
                "play in thickness × what is out ÷ what is held",
            ),
        ]
        rows += sliding(d).table(rule).rows
        return numbers(rows, title="The lid on its way", columns=MUCH)


LID = Scene("lid", CONTROLS, LidOnItsWay, height=360)
