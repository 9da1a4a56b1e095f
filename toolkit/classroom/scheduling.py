"""The timetable of a class: who does what when, who waits for a tool, who runs over."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import ceil

from toolkit.classroom.hours import Hours
from toolkit.classroom.simulation import Bar, simulated
from toolkit.classroom.steps import Pace, Step, critical_path, weekend
from toolkit.results import Table, above


@dataclass(frozen=True, slots=True)
class Timetable:
    """A class, step by step. Times in minutes at the bench from the first morning."""

    bars: tuple[Bar, ...]
    steps: tuple[Step, ...]
    paces: tuple[Pace, ...]
    tools: Mapping[str, int]
    hours: Hours
    numbers: tuple[int, ...] = ()

    def number(self, student: int) -> int:
        """The number by which a student is known."""
        return self.numbers[student - 1] if self.numbers else student

    def finish(self, student: int) -> float:
        """When a student is done. [min]"""
        return max(bar.end for bar in self.bars if bar.student == student)

    def over(self, student: int) -> float:
        """How far past the end of the class a student is done; 0 for in time. [min]"""
        over = self.finish(student) - self.hours.end
        return over if above(self.finish(student), self.hours.end) else 0.0

    @property
    def students(self) -> range:
        """The students' numbers."""
        return range(1, len(self.paces) + 1)

    @property
    def queued(self) -> dict[str, float]:
        """Minutes that all students together waited, by tool. [min]"""
        tool = {step.number: step.tool for step in self.steps}
        waits: dict[str, float] = dict.fromkeys(self.tools, 0.0)
        for bar in self.bars:
            if tool[bar.step]:
                waits[tool[bar.step]] += bar.queued
        return waits

    @property
    def most_waited(self) -> str:
        """The tool that is waited for most; empty where nobody waits."""
        waits = self.queued
        tool = max(waits, key=lambda name: waits[name], default="")
        return tool if tool and waits[tool] else ""

    @property
    def sentence(self) -> str:
        """Who runs over and by how much, and which tool they wait for most."""
        late = [student for student in self.students if self.over(student)]
        many = len(self.paces)
        if late:
            worst = max(late, key=self.over)
            text = (
                f"{len(late)} of {many} run over, student {self.number(worst)} the most, by "
                f"{span(self.over(worst))}."
            )
        else:
            text = f"All {many} are done in time."
        if tool := self.most_waited:
            text += (
                f" Most waiting is for a {tool} ({self.tools[tool]} for {many}): "
                f"{self.queued[tool]:.0f} min in all."
            )
        return text

    def who(self) -> Table:
        """A row for each student."""
        rows = []
        for student in self.students:
            mine = [bar for bar in self.bars if bar.student == student]
            work = sum(bar.end - bar.start for bar in mine)
            waited = sum(bar.queued for bar in mine)
            over = self.over(student)
            rows.append(
                (
                    f"student {self.number(student)}",
                    self.paces[student - 1],
                    span(work),
                    f"{waited:.0f} min",
                    self.clock(self.finish(student)),
                    span(over) if over else "in time",
                )
            )
        return Table(
            "Who runs over",
            ("student", "pace", "work", "waits for tools", "done", "over"),
            tuple(rows),
            note=f"{self.sentence} Minutes: common practice, no source.",
            numeric=(2, 3, 4, 5),
        )

    def clock(self, minute: float) -> str:
        """A time as its day and the minutes worked on it. [min]"""
        day = min(ceil(minute / self.hours.minutes) or 1, self.hours.days)
        return f"day {day}, {span(minute - self.hours.begins(day))}"


def span(minutes: float) -> str:
    """Minutes as hours and minutes: ``2 h 05``. [min]"""
    hours, rest = divmod(round(minutes), 60)
    return f"{hours} h {rest:02d}" if hours else f"{rest} min"


def shared_tools(steps: Sequence[Step], *, students: int) -> dict[str, int]:
    """How many of each shared tool a class of so many has, one to each so many students."""
    found: dict[str, int] = {}
    for step in steps:
        if step.tool:
            found[step.tool] = max(found.get(step.tool, 0), ceil(students / step.share))
    return found


def timetable(
    paces: Sequence[Pace],
    *,
    steps: Sequence[Step] | None = None,
    tools: Mapping[str, int] | None = None,
    hours: Hours | None = None,
    numbers: Sequence[int] = (),
) -> Timetable:
    """Let a class work through its steps, queueing for the tools that it shares."""
    plan = weekend() if steps is None else tuple(steps)
    when = hours or Hours()
    if not paces:
        raise ValueError("a class has at least one student; give a pace for each")
    if numbers and len(numbers) != len(paces):
        raise ValueError(f"{len(paces)} paces and {len(numbers)} numbers; give a number for each")
    critical_path(plan, pace="practised")
    kit = shared_tools(plan, students=len(paces)) if tools is None else dict(tools)
    for name, count in kit.items():
        if count < 1:
            raise ValueError(f"there is no {name}, and a step needs one; type 1 or more")
    bars = simulated(paces, plan, kit, when)
    ordered = sorted(bars, key=lambda bar: (bar.student, bar.start, bar.step))
    return Timetable(tuple(ordered), plan, tuple(paces), kit, when, tuple(numbers))
