"""Other boxes like the student's own, to ask fresh questions about."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from contextlib import suppress
from dataclasses import replace
from importlib import import_module
from inspect import isfunction
from random import Random

from toolkit.box import Choices, CornerChoice, GrooveChoice, Made, Size, Thickness
from toolkit.measures import MM_PER_INCH
from toolkit.plan import Plan, plan as planned
from toolkit.study.asking import Asking, NotAskedError, told_apart
from toolkit.study.marking import Question

# About one box in two works, so that this many tries fail only where the own box is hopeless.
_TRIES = 200
# Inside sizes are varied by up to a quarter either way. [share]
_SPREAD = 0.25
_WALLS = (0.8, 1.25)


def other_boxes(plan: Plan, chance: Random) -> Iterator[Plan]:
    """Boxes with other inside sizes, thicknesses and grooves; each of them works."""
    for _ in range(_TRIES):
        other = planned(_changed(plan, chance))
        if other.works and other.design.exists and _differs(other, plan):
            yield other


def _changed(plan: Plan, chance: Random) -> Choices:
    c, f = plan.design.choices, plan.design.frame
    # What people would vary such sizes by: a millimetre, or a sixteenth of an inch. [mm]
    step = 1.0 if c.rule.units == "mm" else MM_PER_INCH / 16

    def near(value: float, low: float = 1 - _SPREAD, high: float = 1 + _SPREAD) -> float:
        return max(1, round(value * chance.uniform(low, high) / step)) * step

    side = near(f.side_thickness.value, *_WALLS)
    end = side if chance.random() < 0.5 else near(side, *_WALLS)
    width = c.groove.width

    def panel(profile: str, play: float, *more: int) -> float:
        """A flat panel runs in the groove as it is; others are thicker and cut down at the edge."""
        return width - play if profile == "flat" else width + step * chance.randint(*more)

    return replace(
        plan.choices,
        size=Size(
            inside_length=near(f.inside_length.value),
            inside_width=near(f.inside_width.value),
            inside_height=near(f.inside_height.value),
        ),
        thickness=Thickness(
            side=side,
            end=end,
            bottom=panel(c.panels.bottom_profile, c.panels.bottom_tongue, 1, 3),
            lid=panel(c.panels.lid_profile, c.panels.lid_tongue, 2, 4)
            if plan.design.lids
            else None,
        ),
        groove=GrooveChoice(
            width=width,
            # A groove between a quarter and a half of the thinnest wall, on the rule.
            depth=c.rule.round(min(side, end) * chance.uniform(0.25, 0.5), fineness="sizes"),
            ends=c.groove.ends,
        ),
        corner=CornerChoice(joint=c.corner.joint, tails_on=c.corner.tails_on),
        panels=replace(plan.choices.panels, bottom_across=None, lid_across=None),
        made=Made(),
    )


def _differs(other: Plan, own: Plan) -> bool:
    """Whether no answer can be carried over from the student's own box."""
    a, b = other.design.frame, own.design.frame
    return all(
        getattr(a, name).value != getattr(b, name).value
        for name in ("inside_length", "inside_width", "inside_height")
    )


Template = Callable[[Asking], Question]

# With fewer slips left a question says no more than right or wrong.
FEWEST_SLIPS = 2
_MODULES = {
    1: "lesson1_water lesson1_boards",
    2: "lesson2_questions",
    3: "lesson3_questions",
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
