"""Cards of a lesson: a guess that is kept, its reveal, and questions that mark themselves."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from html import escape
from typing import Any

import ipywidgets as widgets

from toolkit.document import SHEET, Sentence
from toolkit.explore.controls import Card, Displayed, button, text_box
from toolkit.lesson import spoken
from toolkit.plan import Plan
from toolkit.study import (
    Question,
    draw,
    guess,
    guess_count,
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
        self._cards.children = [_question(question) for question in questions]


def question_cards(questions: Sequence[Question]) -> widgets.Widget:
    """Questions that are not drawn from a lesson, each with an answer box that marks itself."""
    return widgets.VBox([widgets.HTML(SHEET), *(_question(one) for one in questions)])


def _question(question: Question) -> widgets.Widget:
    hint = "a number" if question.kind == "count" else "with its unit"
    card, box = Card(), text_box("my answer", hint, continuous_update=False)

    def checked() -> None:
        if box.value.strip():
            marked = mark(question, box.value)
            card.say(marked.sentence, "bench-right" if marked.right else "bench-hint")

    box.observe(lambda _: checked(), names="value")
    row = widgets.HBox([box, button("Check", checked)])
    return widgets.VBox([_prompt(question.prompt), row, card.said])
