"""The steps of a weekend, minutes at three paces, the savings on offer, and what helpers do."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache
from math import ceil
from typing import Literal

from toolkit.files import Day
from toolkit.results import Table, read_table

Pace = Literal["practised", "novice", "slow"]
PACES: tuple[Pace, ...] = ("practised", "novice", "slow")
SITS_WITH = 2  # slow students, one helper at their bench: common practice, no source


@dataclass(frozen=True, slots=True)
class Step:
    """One step of the class."""

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
    minutes: dict[int, Mapping[Pace, float]]
    source: str
    days: dict[int, int]


@cache
def weekend() -> tuple[Step, ...]:
    """The steps of the two days, in the order in which they are taken up, minutes each."""
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
    """What can be spared, each with its minutes by step."""
    found: dict[str, Saving] = {}
    for row in read_table("classroom/savings.csv"):
        key, step = row["key"], int(row["step"])
        one = found.setdefault(key, Saving(key, row["saving"], {}, row["source"], {}))
        one.minutes[step] = {pace: float(row[pace]) for pace in PACES}
        if row["day"]:
            one.days[step] = int(row["day"])
    return tuple(found.values())


def spared(steps: Sequence[Step], *, by: Iterable[Saving]) -> tuple[Step, ...]:
    """The steps with some savings taken."""
    for saving in by:
        steps = [_less(step, saving) for step in steps]
    return tuple(steps)


def _less(step: Step, saving: Saving) -> Step:
    spare = saving.minutes.get(step.number, {})
    minutes = {pace: max(0.0, step.minutes[pace] - spare.get(pace, 0.0)) for pace in PACES}
    return replace(step, minutes=minutes, day=min(step.day, saving.days.get(step.number, step.day)))


def critical_path(steps: Sequence[Step], *, pace: Pace) -> tuple[float, tuple[int, ...]]:
    """The longest chain of steps that need one another, had every student hands enough."""
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
    """What to leave out or hand over when time runs short."""
    rows = tuple(
        (str(s.number), s.name, f"{s.minutes['practised']:g} min", s.if_late) for s in steps
    )
    return Table("If late", ("no.", "step", "practised", "if late"), rows, numeric=(0, 2))


def helped(paces: Sequence[Pace], *, helpers: int) -> tuple[Pace, ...]:
    """The paces of a class with its helpers."""
    if helpers < 0:
        raise ValueError(f"{helpers} helpers; type 0 or more")
    slow = [place for place, pace in enumerate(paces) if pace == "slow"]
    sat_with = slow[: helpers * SITS_WITH]
    return tuple("novice" if place in sat_with else pace for place, pace in enumerate(paces))


_TO = 5  # nobody keeps a plan to the minute


@dataclass(frozen=True, slots=True)
class Hours:
    """When the class works. Time is counted in minutes at the bench, days end to end."""

    days: int = 2
    minutes: float = 360.0
    lunch_at: float = 180.0
    lunch: float = 45.0
    no_chopping: float = 60.0

    def __post_init__(self) -> None:
        """Hours that no class can have are refused."""
        if self.days < 1 or self.minutes <= 0 or self.lunch < 0:
            raise ValueError("a class has at least one day, some minutes, and no lunch under 0 min")
        if not 0 <= self.no_chopping <= self.minutes or not 0 <= self.lunch_at <= self.minutes:
            raise ValueError("lunch and the hour without chopping lie within the day's minutes")

    @property
    def end(self) -> float:
        """The end of the last day. [min]"""
        return self.days * self.minutes

    def begins(self, day: int) -> float:
        """When a day begins. [min]"""
        return (day - 1) * self.minutes

    def chopping_from(self, start: float, length: float) -> float:
        """The first time from then at which chopping keeps out of the ends of days. [min]"""
        for day in range(1, self.days):
            end = day * self.minutes
            if length and start < end and start + length > end - self.no_chopping + 1e-9:
                start = end
        return start

    def after_wait(self, start: float, wait: float) -> float:
        """When a wait is over that lunch and night shorten. [min]"""
        if wait <= 0:
            return start
        day = int(start // self.minutes)
        end = (day + 1) * self.minutes
        lunch_at = day * self.minutes + self.lunch_at
        over = start + wait
        if start <= lunch_at < over:
            over = max(lunch_at, over - self.lunch)
        # After the last day there is no night: the class goes on until it is done.
        return min(over, end) if day + 1 < self.days else over


@dataclass(frozen=True, slots=True)
class TimeOfDay:
    """The clock of a class. ``day`` has its hours. [min]"""

    day: Day

    @property
    def _stretch(self) -> float:
        """Minutes by the clock for each at the bench, lunch aside."""
        return (self.day.minutes + self.day.breaks) / self.day.minutes

    @property
    def hours(self) -> Hours:
        """The same hours as a timetable counts them, at the bench. [min]"""
        return Hours(
            days=len(self.day.dates),
            minutes=float(self.day.minutes),
            lunch_at=(self.day.lunch - self.day.start) / self._stretch,
            lunch=float(self.day.lunch_minutes),
            no_chopping=float(self.day.no_chopping),
        )

    def shown(self, minute: float) -> str:
        """A time in words: ``day 1, 10:35``. What is after the last day goes on by the clock."""
        hours = self.hours
        number = min(int(minute // hours.minutes), hours.days - 1)
        within = minute - hours.begins(number + 1)
        over = max(within - hours.minutes, 0.0)
        clock = self.day.start + (within - over) * self._stretch + over
        if within > hours.lunch_at or (within == hours.lunch_at and within):
            clock += self.day.lunch_minutes
        nights, rounded = divmod(_TO * (ceil if over else round)(clock / _TO), 24 * 60)
        return f"day {number + 1 + nights}, {rounded // 60:02d}:{rounded % 60:02d}"
