"""A show of hands: a question is chosen, the hands are typed in, and what they mean is shown."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

import ipywidgets as widgets

from toolkit.document import as_html
from toolkit.explore.controls import NARROW_STYLE, Card, button, dropdown
from toolkit.explore.engine import follows
from toolkit.lesson import spoken
from toolkit.results import Table

_COUNT = {"width": "20em"}
MOST_HANDS = 99  # more stand in no workshop


@dataclass(frozen=True, slots=True)
class Asked:
    """A question to be called out, its answers, and what hands for each of them come to."""

    prompt: str
    calls: tuple[str, ...]
    told: Callable[[Sequence[int]], Table]


class HandsForm(Card):
    """Choose a lesson and a question, type the hands, read what they mean. Display it in a cell."""

    def __init__(self, lessons: Sequence[int], *, asked: Callable[[int], Sequence[Asked]]) -> None:
        super().__init__()
        self._asked, self._filling = asked, False
        self._questions: Sequence[Asked] = ()
        self.lesson = dropdown("lesson", list(lessons))
        self.question = dropdown("question")
        self.prompt, self.counts = widgets.HTML(), widgets.VBox()
        self.clear = button("Clear the hands", self._cleared)
        self.lesson.observe(lambda _: self.follow(), names="value")
        self.question.observe(lambda _: self._chosen(), names="value")
        rows = [self.lesson, self.question, self.prompt, self.counts]
        self.lay(*rows, widgets.HBox([self.clear]), self.said)
        self.follow()
        follows(self)

    def follow(self) -> None:
        """Another lesson, or another box: its questions have other answers."""
        try:
            self._questions, trouble = self._asked(self.lesson.value), ""
        except ValueError as error:
            self._questions, trouble = (), str(error)
        names = [(f"{n}. {one.prompt}", n - 1) for n, one in enumerate(self._questions, 1)]
        self._filling = True
        # A page shows nothing as chosen where the choices are others and the place is not.
        self.question.value = None
        self.question.options = names
        self.question.value = 0 if names else None
        self._filling = False
        self._chosen()
        if trouble:
            self.say(trouble, "bench-hint")

    def _chosen(self) -> None:
        """Boxes for the hands of another question, all empty."""
        if self._filling:
            return
        self.said.value = ""
        if self.question.value is None:
            self.prompt.value, self.counts.children = "", ()
            return
        one = self._questions[self.question.value]
        self.prompt.value = spoken(one.prompt)
        self.counts.children = [self._box(call) for call in one.calls]

    def _box(self, call: str) -> widgets.Widget:
        box = widgets.BoundedIntText(
            description=call, min=0, max=MOST_HANDS, layout=dict(_COUNT), style=NARROW_STYLE
        )
        box.observe(lambda _: self._counted(), names="value")
        return box

    def _cleared(self) -> None:
        """No hands yet, for the same question."""
        self._filling = True
        for box in self.counts.children:
            box.value = 0
        self._filling = False
        self.said.value = ""

    def _counted(self) -> None:
        if self._filling:
            return
        told = self._questions[self.question.value].told
        self.show(as_html(told([box.value for box in self.counts.children])))
