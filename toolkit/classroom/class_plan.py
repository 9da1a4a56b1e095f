"""The teacher's notebook: what the cells of the class plan show."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

from toolkit.classroom.plan_questions import GUESS, borrowing, spare_sets
from toolkit.classroom.plan_scene import SCENES, TIME, USUAL, WOOD, usual_class
from toolkit.classroom.scheduling import span
from toolkit.classroom.show_of_hands import asked, calls, hands_sheet, tally
from toolkit.classroom.steps import PACES, critical_path, if_late as left_out, weekend as steps
from toolkit.classroom.timetable_drawing import drawn
from toolkit.document import Figure, Sentence, TableBlock
from toolkit.explore.cards import compare_count, guess_card, question_cards
from toolkit.explore.engine import Explorer
from toolkit.explore.hands_form import Asked, HandsForm
from toolkit.explore.own import own
from toolkit.results import Table
from toolkit.study import Question, lessons_with_questions

__all__ = [
    "SCENES",
    "compare",
    "counted",
    "guess",
    "hands",
    "if_late",
    "minutes",
    "weekend",
    "weekend_still",
    "wood",
    "worked",
    "your_turn",
]


def worked() -> Sentence:
    """The longest chain of steps, for a student who never waits."""
    length, chain = critical_path(steps(), pace="novice")
    names = " → ".join(str(number) for number in chain)
    work = sum(step.minutes["novice"] for step in steps())
    return Sentence(
        f"A novice who never waits works {span(work)} in all. Even with a hand for every step, "
        f"steps {names} follow one another and take {span(length)}."
    )


def guess() -> Any:
    """Guess first: how many of the usual class are done in time."""
    students, slow, helpers, hours = USUAL
    hands = "one helper" if helpers == 1 else f"{helpers} helpers"
    return guess_card(
        GUESS,
        f"{students} students, {slow} of them slow, {hands}, {usual_class().hours.days} days of "
        f"{hours:g} hours at the bench. How many are done in time?",
        hint="a number",
        count=True,
    )


def compare() -> Sentence:
    """The guess beside what the timetable says of the usual class."""
    plan = usual_class()
    in_time = sum(not plan.over(student) for student in plan.students)
    return compare_count(GUESS, answer=in_time, noun="students in time")


def weekend() -> Explorer:
    """Who is done in time, and what would help."""
    return Explorer(TIME)


def wood() -> Explorer:
    """How much wood the class needs, spares and practice sticks in it."""
    return Explorer(WOOD)


def weekend_still() -> Figure:
    """The usual class's weekend, for paper."""
    return Figure(drawn(usual_class()))


def minutes() -> TableBlock:
    """Every step with its minutes at each pace."""
    rows = tuple(
        (str(step.number), step.name, *(f"{step.minutes[pace]:g} min" for pace in PACES), step.tool)
        for step in steps()
    )
    columns = ("no.", "step", *PACES, "shared tool")
    note = "Common practice, no source: time your own class and put its minutes in."
    return TableBlock(Table("The steps", columns, rows, note=note, numeric=(0, 2, 3, 4)))


def if_late() -> TableBlock:
    """What to leave out when it is late."""
    return TableBlock(left_out(steps()))


def hands(lesson: int) -> TableBlock:
    """What to call out for a show of hands before a lesson, and what each answer stands for."""
    return TableBlock(hands_sheet(own(), lesson=lesson)[0])


def counted(lesson: int = 4) -> HandsForm:
    """A form for the hands that went up, which says what the room believes."""
    form = HandsForm(
        lessons_with_questions(),
        asked=lambda number: [_called(one) for one in asked(own(), lesson=number)],
    )
    form.lesson.value = lesson
    return form


def _called(question: Question) -> Asked:
    words = tuple(f"{call.letter}  {call.said}" for call in calls(question))

    def told(hands: Sequence[int]) -> Table:
        # The question stands over the hands already.
        return replace(tally(question, counts=hands).table(), title="What the room believes")

    return Asked(question.asks, words, told)


def your_turn() -> Any:
    """Sums that come before every class."""
    rule = own().choices.rule
    return question_cards([borrowing(rule), spare_sets(rule)])
