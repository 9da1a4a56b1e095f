"""Lesson 4, the lid on its way: home, half in, out, and the low front that it passes over."""

from __future__ import annotations

from toolkit.box import Choices, Panel
from toolkit.box.sliding import droop, held, sliding
from toolkit.lesson.controls import ChoiceControl, LengthControl, NumberControl
from toolkit.lesson.scene import Moment, Scene
from toolkit.lesson.view import ImpossibleError, View
from toolkit.lesson.worked import possible, worked_out
from toolkit.pictures import lid_picture
from toolkit.plan import Plan
from toolkit.results import Table

FRONTS = (
    ("as the box has it", "own"),
    ("floor of the lid groove", "floor"),
    ("middle of it", "middle"),
    ("roof of it", "roof"),
)
CONTROLS = (
    NumberControl(("try.out",), "lid drawn out", 0, 100, 5, "%", lambda _: 50.0),
    ChoiceControl(
        ("try.front",), "front ripped to the", FRONTS, start=lambda _: "own", slider=True
    ),
    LengthControl(("thickness.lid",), "lid thickness", 4.0, 16.0, "sizes"),
    ChoiceControl(
        ("panels.lid_profile",),
        "lid's edges",
        (("flat", "flat"), ("rebated", "rebated"), ("bevelled", "bevelled")),
    ),
)


def with_front(choices: Choices, front: str) -> Choices:
    """The same box with its front ripped to a line of the lid groove."""
    groove = worked_out(choices).design.frame.lid_groove
    if front == "own" or groove is None:
        return choices
    lines = {"floor": groove.low, "middle": (groove.low + groove.high) / 2, "roof": groove.high}
    return choices.having({"made.front_width": lines[front]})


def drawn_out(made: Plan, share: float) -> float:
    """How far the lid is out, from its share in percent. [mm]"""
    return made.design.lid.length.value * share / 100


def numbers(made: Plan, out: float) -> Table:
    """What holds the lid where it is, and its play."""
    d, rule = made.design, made.choices.rule

    def show(value: float) -> str:
        return rule.exact(round(value, 2))

    inside, hang = held(d, out=out), droop(d, out=out)
    rows = [
        (
            "lid length",
            rule.show(d.lid.length.value),
            d.lid.length.sentence(rule).partition(" = ")[2],
        ),
        ("still in its grooves", rule.show(inside), "lid length less what is out"),
        (
            "its front end hangs",
            "free" if hang is None else show(hang),
            "play in thickness × what is out ÷ what is held",
        ),
    ]
    return Table(
        "The lid on its way",
        ("what", "how much", "where it comes from"),
        (*rows, *sliding(d).table(rule).rows),
        numeric=(1,),
    )


def _view(at: Moment) -> View:
    made = possible(with_front(at.choices, at.tried["try.front"]))
    if not isinstance(made.design.lid, Panel):
        raise ImpossibleError(
            'The lid of this box lifts off: choose lid.kind = "sliding" to see one slide.',
            there_is="No such lid.",
        )
    out, ghost, was = drawn_out(made, at.tried["try.out"]), None, 0.0
    if at.moved:
        kept = worked_out(with_front(at.kept, at.before["try.front"]))
        if kept.design.exists and isinstance(kept.design.lid, Panel):
            ghost, was = kept, drawn_out(kept, at.before["try.out"])
    picture = lid_picture(made, out=out, ghost=ghost, ghost_out=was)
    return View(picture, numbers(made, out), made.about("lid", "panel"))


LID = Scene("lid", CONTROLS, _view, height=360)
