"""A class at work, event by event: students who queue for the tools that they share."""

from __future__ import annotations

from collections.abc import Generator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from toolkit.classroom.hours import Hours
from toolkit.classroom.steps import Pace, Step


@dataclass(frozen=True, slots=True)
class Bar:
    """One step of one student: begun, ended and how long a tool was waited for. [min]"""

    student: int
    step: int
    start: float
    end: float
    queued: float = 0.0


def simulated(
    paces: Sequence[Pace], steps: tuple[Step, ...], tools: Mapping[str, int], hours: Hours
) -> list[Bar]:
    """Every step of every student, as they come about. [min]"""
    # Imported here: whoever only marks boxes need not load it.
    import simpy

    room = simpy.Environment()
    racks = {name: simpy.Resource(room, capacity=count) for name, count in tools.items()}
    bars: list[Bar] = []
    for number, pace in enumerate(paces, 1):
        room.process(_works(room, racks, number, pace, steps, hours, bars))
    room.run()
    return bars


def _works(
    room: Any,
    racks: Mapping[str, Any],
    student: int,
    pace: Pace,
    steps: tuple[Step, ...],
    hours: Hours,
    bars: list[Bar],
) -> Generator[Any, Any, None]:
    """One student's weekend."""
    ready_at: dict[int, float] = {}
    left = list(steps)
    while left:
        able = [step for step in left if all(number in ready_at for number in step.needs)]
        opens = {step.number: _opens(step, pace, room.now, ready_at, hours) for step in able}
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
        if step.chops and not hours.may_chop(start, step.minutes[pace]):
            # The queue lasted into the hour without chopping: the tool goes back.
            if request is not None:
                racks[step.tool].release(request)
            continue
        yield room.timeout(step.minutes[pace])
        if request is not None:
            racks[step.tool].release(request)
        bars.append(Bar(student, step.number, start, room.now, start - asked))
        ready_at[step.number] = hours.after_wait(room.now, step.wait)
        left.remove(step)


def _busy(rack: Any) -> bool:
    return rack is not None and rack.count >= rack.capacity


def _opens(
    step: Step, pace: Pace, now: float, ready_at: Mapping[int, float], hours: Hours
) -> float:
    """The first time from now at which a step may be begun. [min]"""
    begin = max(now, hours.begins(step.day), *(ready_at[number] for number in step.needs), 0.0)
    length = step.minutes[pace]
    if step.chops and length:
        for day in range(1, hours.days):
            if not hours.may_chop(begin, length) and begin < day * hours.minutes:
                begin = hours.begins(day + 1)
    return begin
