"""The steps of a weekend, minutes at three paces, and the savings on offer."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import cache
from typing import Literal

from toolkit.results import Table, read_table

Pace = Literal["practised", "novice", "slow"]
PACES: tuple[Pace, ...] = ("practised", "novice", "slow")


@dataclass(frozen=True, slots=True)
class Step:
    """One step of the class.

    Attributes
    ----------
    number, name : int, str
        Its number, and what is done.
    minutes : mapping
        How long it takes at each pace. [min]
    day : int
        The first day on which it may be begun.
    needs : tuple of int
        The steps that must be done before.
    tool, share : str, int
        A tool that is shared, and how many students share one; empty and 0 for none.
    chops : bool
        Whether it is chopping, which tired hands leave for another day.
    wait : float
        For glue, before what needs this step may begin. [min]
    if_late : str
        What to leave out or hand over when time runs short.
    source : str
        Whose numbers they are.
    """

    number: int
    name: str
    minutes: Mapping[Pace, float]
    day: int
    needs: tuple[int, ...]
    tool: str
    share: int
    chops: bool
    wait: float
    if_late: str
    source: str


@dataclass(frozen=True, slots=True)
class Saving:
    """Something that spares time: minutes by step number and pace, or an earlier day. [min]"""

    key: str
    words: str
    minutes: Mapping[int, Mapping[Pace, float]]
    source: str
    days: Mapping[int, int] = field(default_factory=dict)


@cache
def weekend() -> tuple[Step, ...]:
    """The steps of the two days, in the order in which they are taken up, minutes each.

    Returns
    -------
    tuple of Step
        Inside surfaces come before any joint is gauged, whatever their number. [min]

    Source
    ------
    Common practice, no source: time your own class and put its minutes in.
    """
    return tuple(
        Step(
            number=int(row["number"]),
            name=row["step"],
            minutes={pace: float(row[pace]) for pace in PACES},
            day=int(row["day"]),
            needs=tuple(int(number) for number in row["needs"].split()),
            tool=row["tool"],
            share=int(row["share"] or 0),
            chops=row["chops"] == "yes",
            wait=float(row["wait"]),
            if_late=row["if_late"],
            source=row["source"],
        )
        for row in read_table("classroom/steps.csv")
    )


@cache
def savings() -> tuple[Saving, ...]:
    """What can be spared, each with its minutes by step.

    Returns
    -------
    tuple of Saving
        In the order of the table. [min]

    Source
    ------
    Common practice, no source.
    """
    found: dict[str, Saving] = {}
    for row in read_table("classroom/savings.csv"):
        step = {int(row["step"]): {pace: float(row[pace]) for pace in PACES}}
        old = found.get(row["key"])
        more = {**old.minutes, **step} if old else step
        days = {**(old.days if old else {})}
        if row["day"]:
            days[int(row["step"])] = int(row["day"])
        found[row["key"]] = Saving(row["key"], row["saving"], more, row["source"], days)
    return tuple(found.values())


def spared(steps: Sequence[Step], *, by: Iterable[Saving]) -> tuple[Step, ...]:
    """The steps with some savings taken.

    Parameters
    ----------
    steps : sequence of Step
        As they are. [min]
    by : iterable of Saving
        What is taken. No step falls below nothing. [min]

    Returns
    -------
    tuple of Step
        The steps, some of them shorter or begun on an earlier day. [min]

    Source
    ------
    The savings' own.
    """
    chosen = tuple(by)
    return tuple(
        replace(
            step,
            day=min([step.day, *(row.days.get(step.number, step.day) for row in chosen)]),
            minutes={
                pace: max(
                    0.0,
                    step.minutes[pace]
                    - sum(row.minutes.get(step.number, {}).get(pace, 0.0) for row in chosen),
                )
                for pace in PACES
            },
        )
        for step in steps
    )


def critical_path(steps: Sequence[Step], *, pace: Pace) -> tuple[float, tuple[int, ...]]:
    """The longest chain of steps that need one another, had every student hands enough.

    Parameters
    ----------
    steps : sequence of Step
        The steps. [min]
    pace : str
        practised, novice or slow.

    Returns
    -------
    tuple
        Its length with the waits for glue between [min], and the numbers of its steps.

    Raises
    ------
    ValueError
        Steps need one another in a ring, or one needs a step that is not there.

    Source
    ------
    The longest path through a network of tasks: arithmetic.
    """
    named = {step.number: step for step in steps}
    longest: dict[int, tuple[float, tuple[int, ...]]] = {}
    waiting = list(steps)
    while waiting:
        ready = [step for step in waiting if all(number in longest for number in step.needs)]
        if not ready:
            names = ", ".join(str(step.number) for step in waiting)
            raise ValueError(f"steps {names} need one another, or a step that is not in the table")
        for step in ready:
            before = max(
                ((longest[n][0] + named[n].wait, longest[n][1]) for n in step.needs),
                default=(0.0, ()),
            )
            longest[step.number] = (before[0] + step.minutes[pace], (*before[1], step.number))
        waiting = [step for step in waiting if step.number not in longest]
    return max(longest.values(), default=(0.0, ()))


def if_late(steps: Sequence[Step]) -> Table:
    """What to leave out or hand over when time runs short.

    Parameters
    ----------
    steps : sequence of Step
        The steps. [min]

    Returns
    -------
    Table
        A row for each step.

    Source
    ------
    Common practice, no source.
    """
    rows = tuple(
        (str(s.number), s.name, f"{s.minutes['practised']:g} min", s.if_late) for s in steps
    )
    return Table("If late", ("no.", "step", "practised", "if late"), rows, numeric=(0, 2))
