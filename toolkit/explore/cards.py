"""Cards of a lesson: a guess that is kept, its reveal, and questions that mark themselves."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from html import escape
from typing import Any

import ipywidgets as widgets

from toolkit.document import SHEET, Sentence, as_html
from toolkit.explore.controls import NARROW_STYLE, Card, Displayed, button, dropdown, text_box
from toolkit.explore.engine import follows
from toolkit.lesson import spoken
from toolkit.plan import Plan
from toolkit.results import Table
from toolkit.study import (
    Question,
    draw,
    guess,
    guess_count,
    keep_answer,
    mark,
    reveal,
    reveal_count,
    undo_guess,
)


def _prompt(text: str) -> widgets.HTML:
    return widgets.HTML(f'<div class="bench-view"><p><b>{escape(text)}</b></p></div>')


def guess_card(question_id: str, prompt: str, *, hint: str, count: bool = False) -> widgets.Widget:
    """A question with a box for a guess, which is kept before anything is shown."""
    read = guess_count if count else guess
    card, box = Card(), text_box("my guess", hint)

    def kept() -> None:
        if result := card.tried(lambda: read(question_id, box.value, what="guess")):
            card.say(_noticed(result))

    def undone() -> None:
        if back := card.tried(lambda: undo_guess(question_id)):
            card.say(back.sentence)

    box.on_submit(lambda _: kept())
    row = widgets.HBox([box, button("Keep my guess", kept), button("Undo", undone)])
    card.lay(_prompt(prompt), row, card.said)
    return card.widget


def _noticed(told: Any) -> str:
    """What is told of a guess, and what happened to the file that keeps it."""
    return " ".join(filter(None, [told.sentence, told.notice]))


def compare_guess(question_id: str, plan: Plan, *, answer: float) -> Sentence:
    """How far off the kept guess was, in millimetres and in a thing on the bench. [mm]"""
    return Sentence(_noticed(reveal(question_id, answer=answer, rule=plan.choices.rule)))


def compare_count(question_id: str, *, answer: int, noun: str) -> Sentence:
    """How far off the kept guess of a count was; the noun is in the plural."""
    return Sentence(_noticed(reveal_count(question_id, answer=answer, noun=noun)))


class YourTurn(Displayed):
    """Questions on the student's own box, each with an answer box that marks itself."""

    def __init__(
        self, lesson: int, *, own: Callable[[], Plan], seed: int | str | None = None
    ) -> None:
        self._lesson, self._own, self._seed, self._round = lesson, own, seed, 0
        self._cards = widgets.VBox()
        mine = button("My own box", lambda: self._fill(vary=False))
        other = button("Other sizes", lambda: self._fill(vary=True))
        self.widget = widgets.VBox([widgets.HTML(SHEET), widgets.HBox([mine, other]), self._cards])
        self._fill(vary=False)

    def _fill(self, *, vary: bool) -> None:
        seed = self._seed
        if vary:
            self._round += 1
            seed = f"{seed or ''}/{self._round}" if seed is not None else None
        try:
            questions: Sequence[Question] = draw(
                self._own(), lesson=self._lesson, seed=seed, vary=vary
            )
        except ValueError as error:
            self._cards.children = [widgets.HTML(spoken(str(error), "bench-hint"))]
            return
        # How far one is in a lesson is told of one's own box alone.
        of = 0 if vary else len(questions)
        self._cards.children = [_question(question, of=of) for question in questions]


def question_cards(questions: Sequence[Question]) -> widgets.Widget:
    """Questions that are not drawn from a lesson, each with an answer box that marks itself."""
    return widgets.VBox([widgets.HTML(SHEET), *(_question(one) for one in questions)])


def _question(question: Question, *, of: int = 0) -> widgets.Widget:
    """One question; its answers are kept where it is one of so many on the student's own box."""
    hint = "a number" if question.kind == "count" else "with its unit"
    card, box = Card(), text_box("my answer", hint, continuous_update=False)

    def checked() -> None:
        if box.value.strip():
            marked = mark(question, box.value)
            told = keep_answer(question.id, box.value, right=marked.right, of=of) if of else ""
            said = f"{marked.sentence} {told}".rstrip()
            card.say(said, "bench-right" if marked.right else "bench-hint")

    box.observe(lambda _: checked(), names="value")
    row = widgets.HBox([box, button("Check", checked)])
    return widgets.VBox([_prompt(question.prompt), row, card.said])


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
