"""A timetable as the drawing wants it: rows of bars, and words for the hours."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from itertools import pairwise

from toolkit.classroom.scheduling import Timetable, span
from toolkit.pictures import Bit, Kind, Picture, Row, Weekend, timetable_picture


def drawn(
    plan: Timetable,
    *,
    clock: Callable[[float], str] | None = None,
    paces: Sequence[str] = (),
    room: int = 0,
) -> Picture:
    """The timetable as a picture."""
    words = paces or plan.paces
    rows = []
    for student in plan.students:
        over = plan.over(student)
        label = f"{plan.number(student)} {words[student - 1]}"
        rows.append(Row(label, tuple(_bits(plan, student)), f"+ {span(over)}" if over else ""))
    hours = plan.hours
    ticks = []
    for minute in range(0, int(hours.minutes) + 1, 60):
        # At its very end a day is over, and a clock would say when the next one begins.
        at = min(float(minute), hours.minutes - 0.01)
        said = clock(at) if clock else f"{minute // 60} h"
        ticks.append((float(minute), said))
    weekend = Weekend(hours.days, hours.minutes, hours.lunch_at, hours.no_chopping, tuple(ticks))
    return timetable_picture(rows, weekend=weekend, sentence=plan.sentence, room=room)


def _bits(plan: Timetable, student: int) -> Iterator[Bit]:
    """The bars of one student, and the waits for glue between them."""
    steps = {step.number: step for step in plan.steps}
    mine = [bar for bar in plan.bars if bar.student == student]
    for bar in mine:
        step = steps[bar.step]
        kind: Kind = "shared tool" if step.tool in plan.tools else "bench"
        yield Bit(bar.step, bar.start, bar.end, bar.queued, "chopping" if step.chops else kind)
    for bar, then in pairwise(mine):
        begins = then.start - then.queued
        if steps[bar.step].wait and begins > bar.end:
            yield Bit(bar.step, bar.end, begins, kind="glue")
