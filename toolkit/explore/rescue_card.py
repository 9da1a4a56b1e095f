"""What went wrong, and what can still be done: a card that keeps the way out that is chosen."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from html import escape
from typing import Any

import ipywidgets as widgets

from toolkit.box import written
from toolkit.explore.controls import NARROW_STYLE, Card, button, dropdown, text_box
from toolkit.explore.engine import followed, follows
from toolkit.lesson import spoken
from toolkit.measures import Rule, length
from toolkit.plan import (
    HAPPENED,
    STAGES,
    WITH_LENGTH,
    WITHOUT,
    Mishap,
    Option,
    Plan,
    Rescue,
    Stage,
    meant_of,
    parts_of,
    rescue,
    stages_of,
    usual_stage,
)
from toolkit.results import capital
from toolkit.study import Loaded, OwnBox

_TAIL = "tail_wrong_side"


class RescueCard(Card):
    """Choose what happened, type its size, see the ways out, keep one. Display it in a cell."""

    def __init__(self, own: Callable[[], Plan], *, stages: Sequence[Stage]) -> None:
        super().__init__()
        self._own, self._stages = own, tuple(stages)
        self._quiet, self._pressed = False, False
        names = [(label(what), what) for what in mishaps(stages)]
        self.which = dropdown("what happened", names)
        self.size = text_box("as measured", style=NARROW_STYLE, continuous_update=False)
        self.stage = dropdown("how far")
        self.part = dropdown("which part", [("any, or all", "")])
        self.corner = dropdown("corner", [("back", "back"), ("front", "front")])
        self.tail = dropdown("tail, from below")
        self.about = widgets.HTML()
        self.look = button("What can be done?", self._looked)
        self.undo = button("Undo", self._undone)
        self.ways = widgets.VBox()
        self.which.observe(self._chosen, names="value")
        self.corner.observe(self._cornered, names="value")
        self.size.observe(self._sized, names="value")
        for box in (self.stage, self.part, self.tail):
            box.observe(lambda _: self._forget(), names="value")
        rows = [self.which, self.part, self.about, self.size, self.corner, self.tail, self.stage]
        buttons = widgets.HBox([self.look, self.undo])
        self.lay(*rows, buttons, self.said, self.ways)
        self._chosen(None)
        follows(self)

    def follow(self) -> None:
        """The kept box is another one: what was shown belongs to the one before."""
        if not self._quiet:
            self._chosen(None)

    def _chosen(self, _: Any) -> None:
        """What is asked for depends on what happened."""
        self._forget()
        what = self.which.value
        # At the latest of when it is found and of where the lesson is.
        order = list(STAGES)
        here = max(order.index(usual_stage(what)), order.index(self._stages[0]))
        offered = [(f"{name}: {STAGES[name]}", name) for name in stages_of(what)]
        self.stage.options, self.stage.value = offered, order[here]
        _show(self.size, what in WITH_LENGTH)
        self._parted(what)
        _show(self.corner, what == _TAIL)
        _show(self.tail, what == _TAIL)
        self._cornered(None)
        self.size.value = ""
        self._ask(what)

    def _parted(self, what: str) -> None:
        """Which of a pair, where that makes a difference."""
        parts = parts_of(what)
        every = "both sides" if what.startswith("side_") else "any, or all"
        offered = [(every, ""), *((part, part) for part in parts)]
        _show(self.part, bool(parts))
        if parts and list(self.part.options) != offered:
            self.part.value = None
            self.part.options = offered
        self.part.value = ""

    def _ask(self, what: str) -> None:
        """The length that is asked for, with what was meant, on the student's own rule."""
        if what in WITHOUT:
            self.about.value = ""
            return
        words = WITH_LENGTH[what]
        try:
            plan = self._own()
            rule, meant = plan.choices.rule, meant_of(plan, what)
        except ValueError as error:
            self.about.value = spoken(f"{capital(words)}. {error}")
            return
        told = "" if meant is None else f"; {rule.exact(meant)} was meant"
        # Before the words: a page empties a box that it gives another hint.
        self.size.placeholder = f"with its unit: {rule.show(meant or 1.0)}"
        self.about.value = spoken(f"{capital(words)}{told}.")

    def _cornered(self, _: Any) -> None:
        """A corner has so many tails."""
        design = self._own().design
        corner = design.back if self.corner.value == "back" else design.front
        tails = [(str(n), n) for n in range(1, len(corner.tails) + 1)] or [("1", 1)]
        if list(self.tail.options) != tails:
            # A page shows nothing as chosen where the choices are others and the place is not.
            self.tail.value = None
            self.tail.options = tails
        self.tail.value = 1
        self._forget()

    def _forget(self, said: str = "") -> None:
        """What stands below belongs to what was chosen before."""
        self.ways.children, self.said.value, self._pressed = (), said, False

    def _sized(self, _: Any) -> None:
        """A quick hand's press can arrive before what it typed: then it is answered now."""
        if self._pressed:
            self._looked()
        else:
            self._forget()

    def mishap(self) -> Mishap:
        """What is chosen and typed now."""
        what, value = self.which.value, None
        if what in WITH_LENGTH:
            if not self.size.value.strip():
                raise ValueError(f"Type a length first: {WITH_LENGTH[what]}.")
            value = length(self.size.value, what=what.replace("_", " "), allow="zero")
        return Mishap(
            what,
            value,
            stage=self.stage.value,
            corner=self.corner.value,
            tail=self.tail.value,
            part=self.part.value,
        )

    def _looked(self) -> None:
        self._forget()
        self._pressed = True
        found = self.tried(lambda: rescue(self._own(), mishap=self.mishap()))
        if found is None:
            return
        rule = found.plan.choices.rule
        said = found.mishap.sentence(rule, meant=found.meant)
        self.said.value = spoken(said if found.saved else found.sentence(rule))
        rows = [self._way(found, number) for number in range(1, len(found.options) + 1)]
        self.ways.children = [*rows, widgets.HTML(spoken(found.weights.sentence))]

    def _way(self, found: Rescue, number: int) -> widgets.Widget:
        """One way out, and its button where there is something to keep."""
        option, rule = found.options[number - 1], found.plan.choices.rule
        words = widgets.HTML(way_html(option, rule, number))
        if not (option.works and option.changes):
            return words
        tip = "writes these sizes into your own box file; undo works"
        keep = button(f"Keep this, no. {number}", lambda: self._kept(found, option), tip=tip)
        return widgets.VBox([words, widgets.HBox([keep])])

    def _kept(self, found: Rescue, option: Option) -> None:
        rule, own = found.plan.choices.rule, OwnBox()

        def keep() -> Loaded:
            if own.load().choices != found.plan.choices:
                raise ValueError("The box is another one by now: ask again what can be done.")
            return own.keep(written(option.changes, rule=rule))

        if after := self.tried(keep):
            self._told(f"Kept: {option.words} {then(option, rule)}", after.choices)

    def _undone(self) -> None:
        if after := self.tried(lambda: OwnBox().undo()):
            self._told("Taken back.", after.choices)

    def _told(self, said: str, choices: Any) -> None:
        self._quiet = True
        try:
            followed(choices)
        finally:
            self._quiet = False
        self._ask(self.which.value)
        self._forget(spoken(said))


def _show(box: widgets.Widget, shown: bool) -> None:
    box.layout.display = None if shown else "none"


def label(what: str) -> str:
    """A mishap, told by its name, in the words of somebody at a bench."""
    part, _, axis = what.rpartition("_")
    return HAPPENED.get(what, f"{part}: wrong {axis}")


def mishaps(stages: Sequence[Stage]) -> tuple[str, ...]:
    """All that can go wrong, by name: first what is mostly found at some stages."""
    known = [*WITHOUT, *WITH_LENGTH]
    joints_first = sorted(known, key=lambda what: what not in HAPPENED)
    return tuple(sorted(joints_first, key=lambda what: usual_stage(what) not in stages))


def then(option: Option, rule: Rule) -> str:
    """The sizes that follow from a way out."""
    moved = "; ".join(option.moved(rule))
    return f"Then: {moved}." if moved else "The finished sizes stay as they were."


def way_html(option: Option, rule: Rule, number: int) -> str:
    """A way out as a short list: what follows, what is to be said of it, what it costs."""
    stays = () if option.moved(rule) else (then(option, rule),)
    lines = (*stays, *option.lines(rule))
    items = "".join(f"<li>{escape(line)}</li>" for line in lines)
    return (
        f'<div class="bench-view"><p><b>{number}. {escape(option.words)}</b></p>'
        f'<ul>{items}</ul><p class="source">{escape(option.source)}</p></div>'
    )
