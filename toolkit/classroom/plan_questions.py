"""What the class plan asks the teacher: one guess before the sliders, and sums of one's own."""

from __future__ import annotations

from math import floor

from toolkit.classroom.scheduling import shared_tools
from toolkit.classroom.steps import weekend
from toolkit.measures import Rule
from toolkit.stock import sets_needed
from toolkit.study import Question, Slip

GUESS = "class-plan.in-time"
STUDENTS, ON_HAND, SPARE = 10, 2, 0.25
TOOL = "plough plane"


def borrowing(rule: Rule) -> Question:
    """How many of a shared tool to borrow."""
    steps = weekend()
    share = next(step.share for step in steps if step.tool == TOOL)
    needed = shared_tools(steps, students=STUDENTS)[TOOL]
    return Question(
        id="class-plan.borrowing",
        asks=(
            f"{STUDENTS} students come, every {share} of them share a {TOOL}, and the workshop "
            f"has {ON_HAND}. How many do you borrow?"
        ),
        answer=float(needed - ON_HAND),
        working=f"{STUDENTS} ÷ {share} rounded up is {needed}; less {ON_HAND} on hand",
        rule=rule,
        kind="count",
        slips=(
            Slip(
                float(floor(STUDENTS / share) - ON_HAND),
                "Rounded down, the last student has nobody to share with: round up.",
            ),
            Slip(float(needed), f"That is what the class needs; {ON_HAND} are there already."),
        ),
        senses=("too many", "too few"),
    )


def spare_sets(rule: Rule) -> Question:
    """How many sets of parts to saw, spares in them."""
    sets = sets_needed(STUDENTS, spare=SPARE)
    each = round(1 / SPARE)
    return Question(
        id="class-plan.spare-sets",
        asks=(
            f"{STUDENTS} students come, and you want a spare set of parts for every {each} of "
            "them. How many sets do you saw in all?"
        ),
        answer=float(sets),
        working=f"{STUDENTS} × (1 + {SPARE:g}) = {STUDENTS * (1 + SPARE):g}, rounded up",
        rule=rule,
        kind="count",
        slips=(
            Slip(float(floor(STUDENTS * (1 + SPARE))), "Half a set makes no box: round up."),
            Slip(float(sets - STUDENTS), "Those are the spares; the students need theirs too."),
            Slip(float(STUDENTS), "That leaves nothing for the socket that is chopped through."),
        ),
        senses=("too many", "too few"),
    )
