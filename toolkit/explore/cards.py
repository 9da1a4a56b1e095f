"""Cards of a lesson: a guess that is kept, its reveal, and questions that mark themselves."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from html import escape
from typing import Any

import ipywidgets as widgets

from toolkit.document import SHEET, Sentence
from toolkit.explore.controls import ANSWER, BUTTON
from toolkit.lesson.view import spoken
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
    box = widgets.Text(description="my guess", placeholder=hint, layout=ANSWER)
    keep = widgets.Button(description="Keep my guess", layout=BUTTON)
    back = widgets.Button(description="Undo", layout=BUTTON)
    said = widgets.HTML()

    def kept(_: Any) -> None:
        try:
            result = read(question_id, box.value, what="guess")
        except (ValueError, OSError) as error:
            said.value = spoken(str(error), "bench-hint")
            return
        said.value = spoken(" ".join(filter(None, [result.sentence, result.notice])))

    def undone(_: Any) -> None:
        try:
            said.value = spoken(undo_guess(question_id).sentence)
        except (ValueError, OSError) as error:
            said.value = spoken(str(error), "bench-hint")

    keep.on_click(kept)
    box.on_submit(kept)
    back.on_click(undone)
    row = widgets.HBox([box, keep, back])
    return widgets.VBox([widgets.HTML(SHEET), _prompt(prompt), row, said])


def compare_guess(question_id: str, made: Plan, *, answer: float) -> Sentence:
    """How far off the kept guess was, in millimetres and in a thing on the bench. [mm]"""
    shown = reveal(question_id, answer=answer, rule=made.choices.rule)
    return Sentence(" ".join(filter(None, [shown.sentence, shown.notice])))


def compare_count(question_id: str, *, answer: int, noun: str) -> Sentence:
    """How far off the kept guess of a count was; the noun is in the plural."""
    shown = reveal_count(question_id, answer=answer, noun=noun)
    return Sentence(" ".join(filter(None, [shown.sentence, shown.notice])))


class YourTurn:
    """Questions on the student's own box, each with an answer box that marks itself."""

    def __init__(
        self, lesson: int, *, own: Callable[[], Plan], seed: int | str | None = None
    ) -> None:
        self._lesson, self._own, self._seed, self._round = lesson, own, seed, 0
        self._cards = widgets.VBox()
        mine = widgets.Button(description="My own box", layout=BUTTON)
        other = widgets.Button(description="Other sizes", layout=BUTTON)
        mine.on_click(lambda _: self._fill(vary=False))
        other.on_click(lambda _: self._fill(vary=True))
        self.widget = widgets.VBox([widgets.HTML(SHEET), widgets.HBox([mine, other]), self._cards])
        self._fill(vary=False)

    def _repr_mimebundle_(self, **options: Any) -> Any:
        return self.widget._repr_mimebundle_(**options)

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
    box = widgets.Text(
        description="my answer",
        placeholder="a number" if question.kind == "count" else "with its unit",
        layout=ANSWER,
        continuous_update=False,
    )
    check = widgets.Button(description="Check", layout=BUTTON)
    said = widgets.HTML()

    def checked(_: Any) -> None:
        if not box.value.strip():
            return
        marked = mark(question, box.value)
        look = "bench-right" if marked.right else "bench-hint"
        said.value = spoken(marked.sentence, look)

    check.on_click(checked)
    box.observe(checked, names="value")
    return widgets.VBox([_prompt(question.prompt), widgets.HBox([box, check]), said])
