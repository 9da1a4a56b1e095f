"""Questions about the student's own box, drawn from one module a lesson.

A module ``lessonN_questions`` holds ``TEMPLATES``: functions that make a question, or None where
the box has no such thing. To add a lesson's questions is to add that module.
"""

from __future__ import annotations

import pkgutil
import re
from collections.abc import Callable
from importlib import import_module
from random import Random
from typing import cast

from toolkit.plan import Plan
from toolkit.study.asking import Asking, told_apart
from toolkit.study.marking import Question
from toolkit.study.varying import other_boxes

Template = Callable[[Asking], Question | None]

# With fewer slips left a question says no more than right or wrong.
FEWEST_SLIPS = 2
_MODULE = re.compile(r"lesson(\d+)_questions")


class NoQuestionsError(ValueError):
    """No question can be drawn; the message says why and what to do."""


def lessons_with_questions() -> tuple[int, ...]:
    """The numbers of the lessons that have questions."""
    package = import_module("toolkit.study")
    names = (_MODULE.fullmatch(module.name) for module in pkgutil.iter_modules(package.__path__))
    return tuple(sorted(int(name[1]) for name in names if name))


def draw(
    plan: Plan, *, lesson: int, seed: int | str | None = None, vary: bool = False
) -> tuple[Question, ...]:
    """The questions of a lesson on one box.

    Parameters
    ----------
    plan : Plan
        The student's own box, worked out. [mm]
    lesson : int
        Number of the lesson.
    seed : int or str, optional
        With ``vary``: the same seed and the same box give the same questions.
    vary : bool
        Whether to ask about another box, like this one but with other sizes, that works too.

    Returns
    -------
    tuple of Question
        In the lesson's order; what this kind of box does not have is not asked.

    Raises
    ------
    NoQuestionsError
        The lesson has none, or nothing can be reckoned on this box.
    """
    templates = _templates(lesson)
    if not plan.design.exists:
        worst = next((row.sentence for row in plan.findings), "it has no space inside")
        raise NoQuestionsError(f"nothing can be reckoned on this box yet. {worst}")
    if not vary:
        return _asked(templates, Asking(plan))
    chance = Random(None if seed is None else f"{seed} {lesson}")
    for other in other_boxes(plan, chance):
        questions = _asked(templates, Asking(other, chance))
        if all(len(question.slips) >= FEWEST_SLIPS for question in questions):
            return questions
    raise NoQuestionsError(
        "no box like this one was found that works; put right what won't work in your own first"
    )


def _templates(lesson: int) -> tuple[Template, ...]:
    known = lessons_with_questions()
    if lesson not in known:
        numbers = ", ".join(str(number) for number in known)
        raise NoQuestionsError(f"lesson {lesson} has no questions; ask for lesson {numbers}")
    module = import_module(f"toolkit.study.lesson{lesson}_questions")
    return cast("tuple[Template, ...]", module.TEMPLATES)


def _asked(templates: tuple[Template, ...], ask: Asking) -> tuple[Question, ...]:
    questions = (template(ask) for template in templates)
    return tuple(told_apart(question) for question in questions if question is not None)
