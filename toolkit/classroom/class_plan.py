"""The teacher's notebook: what the cells of the class plan show."""

from __future__ import annotations

from toolkit.classroom.drawn import drawn
from toolkit.classroom.plan_scene import SCENES, TIME, WOOD, usual_class
from toolkit.classroom.steps import PACES, critical_path
from toolkit.classroom.steps import if_late as left_out
from toolkit.classroom.steps import weekend as steps
from toolkit.classroom.tally import hands_sheet
from toolkit.classroom.timetable import span
from toolkit.explore.engine import Explorer
from toolkit.explore.view import Listed, Said, Still
from toolkit.explore.worked import own
from toolkit.results import Table

__all__ = [
    "SCENES",
    "hands",
    "if_late",
    "minutes",
    "weekend",
    "weekend_still",
    "wood",
    "worked",
]


def worked() -> Said:
    """The longest chain of steps, for a student who never waits."""
    length, chain = critical_path(steps(), pace="novice")
    names = " → ".join(str(number) for number in chain)
    work = sum(step.minutes["novice"] for step in steps())
    return Said(
        f"A novice who never waits works {span(work)} in all. Even with a hand for every step, "
        f"steps {names} follow one another and take {span(length)}."
    )


def weekend() -> Explorer:
    """Who is done in time, and what would help."""
    return Explorer(TIME)


def wood() -> Explorer:
    """How much wood the class needs, spares and practice sticks in it."""
    return Explorer(WOOD)


def weekend_still() -> Still:
    """The usual class's weekend, for paper."""
    return Still(drawn(usual_class()))


def minutes() -> Listed:
    """Every step with its minutes at each pace."""
    rows = tuple(
        (
            str(step.number),
            step.name,
            *(f"{step.minutes[pace]:g} min" for pace in PACES),
            step.tool,
        )
        for step in steps()
    )
    columns = ("no.", "step", *PACES, "shared tool")
    note = "Common practice, no source: time your own class and put its minutes in."
    return Listed(Table("The steps", columns, rows, note=note, numeric=(0, 2, 3, 4)))


def if_late() -> Listed:
    """What to leave out when it is late."""
    return Listed(left_out(steps()))


def hands(lesson: int) -> Listed:
    """What to call out for a show of hands before a lesson, and what each answer stands for.

    Parameters
    ----------
    lesson : int
        Number of the lesson.
    """
    return Listed(hands_sheet(own(), lesson=lesson)[0])
