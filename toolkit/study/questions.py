"""Questions about the student's own box: the public functions of a lesson's modules, in order."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from contextlib import suppress
from importlib import import_module
from inspect import isfunction
from random import Random

from toolkit.plan import Plan
from toolkit.study.asking import Asking, NotAskedError, told_apart
from toolkit.study.marking import Question
from toolkit.study.varying import other_boxes

Template = Callable[[Asking], Question]

# With fewer slips left a question says no more than right or wrong.
FEWEST_SLIPS = 2
_MODULES = {
    1: "lesson1_water lesson1_boards",
    2: "lesson2_questions",
    3: "lesson3_tails lesson3_marking",
    4: "lesson4_sizes lesson4_edges",
    5: "lesson5_questions",
}


class NoQuestionsError(ValueError):
    """No question can be drawn; the message says why and what to do."""


def lessons_with_questions() -> tuple[int, ...]:
    """The numbers of the lessons that have questions."""
    return tuple(_MODULES)


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
    templates = list(_templates(lesson))
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


def _templates(lesson: int) -> Iterator[Template]:
    if lesson not in _MODULES:
        numbers = ", ".join(map(str, _MODULES))
        raise NoQuestionsError(f"lesson {lesson} has no questions; ask for lesson {numbers}")
    for name in _MODULES[lesson].split():
        module = import_module(f"toolkit.study.{name}")
        for function in vars(module).values():
            own = getattr(function, "__module__", "") == module.__name__
            if own and isfunction(function) and not function.__name__.startswith("_"):
                yield function


def _asked(templates: Iterable[Template], ask: Asking) -> tuple[Question, ...]:
    found = []
    for template in templates:
        with suppress(NotAskedError):
            found.append(told_apart(template(ask)))
    return tuple(found)
