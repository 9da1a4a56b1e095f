"""The order at the bench, which is not the lessons', and the rows that speak of a box."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import groupby

from toolkit.plan.box_plan import Plan
from toolkit.results import read_table


def kinds_of(plan: Plan) -> frozenset[str]:
    """What a table's column ``for`` may ask of a box: its joint, its lid, whether it has an ear."""
    c = plan.choices
    lid = "lid" if c.lid.closure.lids else "no-lid"
    ear = c.lid.closure.grooved and c.corner.tails_on == "sides"
    return frozenset((c.corner.joint, c.lid.kind, lid, *(["ear"] if ear else [])))


def rows_for(plan: Plan, place: str) -> tuple[dict[str, str], ...]:
    """The rows of such a table that speak of this box: it has all that their ``for`` asks."""
    kinds = kinds_of(plan)
    return tuple(row for row in read_table(place) if kinds.issuperset(row["for"].split()))


def bench_steps_of(plan: Plan) -> tuple[dict[str, str], ...]:
    """Every step of this box in the order of the bench: stage, lesson, step and test."""
    return rows_for(plan, "plan/bench.csv")


def _stages(rows: Iterable[dict[str, str]]) -> str:
    return ", ".join(dict.fromkeys(row["stage"] for row in rows))


def around(plan: Plan, lesson: int) -> tuple[str, str, str]:
    """What is done at the bench before a lesson, in it, and after it.

    Where steps of another lesson come between its own, they stand among them in brackets.
    """
    rows = bench_steps_of(plan)
    own = [at for at, row in enumerate(rows) if row["lesson"] == str(lesson)]
    first, last = own[0], own[-1] + 1
    within = []
    for number, some in groupby(rows[first:last], key=lambda row: row["lesson"]):
        words = _stages(some)
        within.append(words if number == str(lesson) else f"(lesson {number}: {words})")
    return _stages(rows[:first]), ", ".join(within), _stages(rows[last:])
