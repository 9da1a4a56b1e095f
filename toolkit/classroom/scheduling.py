"""The timetable of a class: who does what when, who waits for a tool, who runs over."""

from __future__ import annotations

from collections.abc import Generator, Mapping, Sequence
from dataclasses import dataclass, field
from math import ceil
from typing import Any

from toolkit.classroom.steps import Hours, Pace, Step, critical_path, weekend
from toolkit.results import Table, above


@dataclass(frozen=True, slots=True)
class Bar:
    """One step of one student: begun, ended and how long a tool was waited for. [min]"""

    student: int
    step: int
    start: float
    end: float
    queued: float = 0.0


@dataclass(frozen=True, slots=True)
class Timetable:
    """A class, step by step; its bars are worked out when it is made."""

    steps: tuple[Step, ...]
    paces: tuple[Pace, ...]
    tools: Mapping[str, int]
    hours: Hours
    numbers: tuple[int, ...] = ()
    bars: tuple[Bar, ...] = field(init=False)

    def __post_init__(self) -> None:
        """Work through the steps; a class that can't is refused."""
        if not self.paces:
            raise ValueError("a class has at least one student; give a pace for each")
        critical_path(self.steps, pace="practised")
        for name, count in self.tools.items():
            if count < 1:
                raise ValueError(f"there is no {name}, and a step needs one; type 1 or more")
        ordered = sorted(_simulated(self), key=lambda bar: (bar.student, bar.start, bar.step))
        object.__setattr__(self, "bars", tuple(ordered))

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
    def late(self) -> list[int]:
        """The students who run over."""
        return [student for student in self.students if self.over(student)]

    @property
    def worst(self) -> float:
        """How far the slowest student runs over. [min]"""
        return max(map(self.over, self.students))

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
        many, text = len(self.paces), f"All {len(self.paces)} are done in time."
        if late := self.late:
            slowest = self.number(max(late, key=self.over))
            text = (
                f"{len(late)} of {many} run over, student {slowest} the most, by "
                f"{span(self.worst)}."
            )
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
            done, over = self.finish(student), self.over(student)
            work_and_waits = (span(work), f"{waited:.0f} min", self.clock(done))
            who = (f"student {self.number(student)}", self.paces[student - 1])
            rows.append((*who, *work_and_waits, span(over) if over else "in time"))
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
    """Let a class work through its steps, those of the weekend with the usual tools if left out."""
    plan = weekend() if steps is None else tuple(steps)
    kit = shared_tools(plan, students=len(paces)) if tools is None else dict(tools)
    return Timetable(plan, tuple(paces), kit, hours or Hours(), tuple(numbers))


def _simulated(plan: Timetable) -> list[Bar]:
    """Every step of every student. [min]"""
    # Imported here: whoever only marks boxes need not load it.
    import simpy

    room = simpy.Environment()
    racks = {name: simpy.Resource(room, capacity=count) for name, count in plan.tools.items()}
    works = [
        room.process(_works(plan, room, racks, number, pace))
        for number, pace in enumerate(plan.paces, 1)
    ]
    room.run()
    return [bar for work in works for bar in work.value or ()]


def _works(
    plan: Timetable, room: Any, racks: Mapping[str, Any], student: int, pace: Pace
) -> Generator[Any, Any, list[Bar]]:
    """One student's weekend."""
    bars: list[Bar] = []
    ready_at: dict[int, float] = {}
    left = list(plan.steps)
    while left:
        able = [step for step in left if all(number in ready_at for number in step.needs)]
        opens = {step.number: _opens(plan, step, pace, room.now, ready_at) for step in able}
        now = [step for step in able if opens[step.number] <= room.now + 1e-9]
        if not now:
            yield room.timeout(min(opens.values()) - room.now)
            continue
        free = [step for step in now if not _busy(racks.get(step.tool))]
        step = (free or now)[0]
        asked = room.now
        request = racks[step.tool].request() if step.tool in racks else None
        if request is not None:
            yield request
        start = room.now
        # Where the queue has lasted into the hour without chopping the tool goes back.
        puts_off = _opens(plan, step, pace, start, ready_at) > start
        if not puts_off:
            yield room.timeout(step.minutes[pace])
            bars.append(Bar(student, step.number, start, room.now, start - asked))
            ready_at[step.number] = plan.hours.after_wait(room.now, step.wait)
            left.remove(step)
        if request is not None:
            racks[step.tool].release(request)
    return bars


def _busy(rack: Any) -> bool:
    return rack is not None and rack.count >= rack.capacity


def _opens(
    plan: Timetable, step: Step, pace: Pace, now: float, ready_at: Mapping[int, float]
) -> float:
    """The first time from now at which a step may be begun. [min]"""
    hours = plan.hours
    begin = max(now, hours.begins(step.day), *(ready_at[number] for number in step.needs), 0.0)
    return hours.chopping_from(begin, step.minutes[pace]) if step.chops else begin
