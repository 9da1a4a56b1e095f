"""What every lesson's questions are held to: right answers are right, and slips are told apart."""

from collections.abc import Sequence

import pytest

from toolkit.study import Question, mark
from toolkit.study.questions import FEWEST_SLIPS

_UNITS = {"%": "%", "deg": "deg", "length": "mm"}


def typed(question: Question, value: float) -> str:
    """An answer as somebody types it."""
    if question.kind == "count":
        return f"{value:g}"
    # Not rounded to a mark: a slip's value need not lie on one.
    return f"{value:.6f} {_UNITS[question.kind]}"


def told_apart(questions: Sequence[Question]) -> None:
    """Every answer is marked right with its working, every slip by its own hint."""
    assert len({question.id for question in questions}) == len(questions)
    for question in questions:
        assert len(question.slips) >= FEWEST_SLIPS, question
        right = mark(question, typed(question, question.answer))
        assert right.right and question.working in right.hint, (question, right)
        for slip in question.slips:
            marked = mark(question, typed(question, slip.value))
            assert (marked.verdict, marked.hint) == ("slip", slip.hint), (question, slip)


def as_worked_by_hand(questions: dict[str, Question], worked: dict, *, near: float = 0.005) -> None:
    """A lesson's questions are these, each with its answer and slips as worked on paper."""
    assert set(questions) == set(worked)
    for name, (answer, slips) in worked.items():
        assert questions[name].answer == pytest.approx(answer, abs=near), name
        for text, hint in slips.items():
            marked = mark(questions[name], text)
            assert marked.verdict == "slip" and hint in marked.hint, (name, text, marked)
