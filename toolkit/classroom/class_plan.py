"""The teacher's notebook: what the cells of the class plan show."""

from __future__ import annotations

from math import floor
from typing import Any

from toolkit.classroom.plan_scene import SCENES as SCENES, TIME, USUAL, WOOD, usual_class
from toolkit.classroom.scheduling import shared_tools, span
from toolkit.classroom.sheets import asked, calls, hands_sheet, tally
from toolkit.classroom.steps import PACES, critical_path, if_late as left_out, weekend as steps
from toolkit.classroom.timetable_shown import drawn
from toolkit.document import Figure, Sentence, TableBlock
from toolkit.explore import (
    Asked,
    Explorer,
    HandsForm,
    compare_count,
    guess_card,
    own,
    question_cards,
)
from toolkit.measures import Rule
from toolkit.results import Table
from toolkit.stock import sets_needed
from toolkit.study import Question, Slip, lessons_with_questions

GUESS = "class-plan.in-time"
STUDENTS, ON_HAND, SPARE = 10, 2, 0.25
TOOL = "plough plane"


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
    in_time = len(plan.students) - len(plan.late)
    return compare_count(GUESS, answer=in_time, noun="students in time")


def weekend() -> Explorer:
    """Who is done in time, and what would help."""
    return Explorer(TIME)


def wood() -> Explorer:
    """How much wood the class needs, spares and practice blanks in it."""
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
    # The question stands over the hands already.
    title = "What the room believes"
    return Asked(
        question.asks, words, lambda hands: tally(question, counts=hands).table(title=title)
    )


def your_turn() -> Any:
    """Sums that come before every class."""
    rule = own().choices.rule
    return question_cards([borrowing(rule), spare_sets(rule)])


def _sum(
    rule: Rule, name: str, asks: str, answer: int, working: str, slips: tuple[tuple[int, str], ...]
) -> Question:
    return Question(
        id=f"class-plan.{name}",
        asks=asks,
        answer=float(answer),
        working=working,
        rule=rule,
        kind="count",
        slips=tuple(Slip(float(wrong), hint) for wrong, hint in slips),
        senses=("too many", "too few"),
    )


def borrowing(rule: Rule) -> Question:
    """How many of a shared tool to borrow."""
    share = next(step.share for step in steps() if step.tool == TOOL)
    needed = shared_tools(steps(), students=STUDENTS)[TOOL]
    down = "Rounded down, the last student has nobody to share with: round up."
    return _sum(
        rule,
        "borrowing",
        f"{STUDENTS} students come, every {share} of them share a {TOOL}, and the workshop "
        f"has {ON_HAND}. How many do you borrow?",
        needed - ON_HAND,
        f"{STUDENTS} ÷ {share} rounded up is {needed}; less {ON_HAND} on hand",
        (
            (STUDENTS // share - ON_HAND, down),
            (needed, f"That is what the class needs; {ON_HAND} are there already."),
        ),
    )


def spare_sets(rule: Rule) -> Question:
    """How many sets of parts to saw, spares in them."""
    sets = sets_needed(STUDENTS, spare=SPARE)
    exact = STUDENTS * (1 + SPARE)
    return _sum(
        rule,
        "spare-sets",
        f"{STUDENTS} students come, and you want a spare set of parts for every "
        f"{round(1 / SPARE)} of them. How many sets do you saw in all?",
        sets,
        f"{STUDENTS} × (1 + {SPARE:g}) = {exact:g}, rounded up",
        (
            (floor(exact), "Half a set makes no box: round up."),
            (sets - STUDENTS, "Those are the spares; the students need theirs too."),
            (STUDENTS, "That leaves nothing for the socket that is chopped through."),
        ),
    )
