"""What each saving, or one more tool, buys back for a class that runs over."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from toolkit.classroom.scheduling import Timetable, span
from toolkit.classroom.steps import savings, spared
from toolkit.pictures import Bit, Kind, Picture, Row, Weekend, timetable_picture
from toolkit.results import Table, below


@dataclass(frozen=True, slots=True)
class Bought:
    """A saving or a borrowed tool, by key and in words, with the class before and after. [min]"""

    key: str
    words: str
    before: Timetable
    after: Timetable

    def back(self, student: int) -> float:
        """How much earlier a student is done; tools queued for otherwise can make it less. [min]"""
        return self.before.finish(student) - self.after.finish(student)

    @property
    def in_time(self) -> int:
        """How many more students are done in time."""
        return len(self.before.late) - len(self.after.late)

    @property
    def sentence(self) -> str:
        """How much less is waited for tools, and whether anybody is done earlier."""
        was, now = (sum(plan.queued.values()) for plan in (self.before, self.after))
        # Queues move when a tool is added, and can come out longer elsewhere.
        change = self.in_time
        more = f"{abs(change)} {'more' if change > 0 else 'fewer'} in time"
        earlier = sum(
            below(self.after.finish(student), self.before.finish(student))
            for student in self.before.students
        )
        many = "nobody is" if not earlier else f"{earlier} {'is' if earlier == 1 else 'are'}"
        return (
            f"waits in all {was:.0f} min → {now:.0f} min; {many} done earlier, "
            f"{more if change else 'no more in time'}"
        )


def bought_back(plan: Timetable) -> tuple[Bought, ...]:
    """Work through the class once for each saving."""
    return tuple(
        Bought(one.key, one.words, plan, replace(plan, steps=spared(plan.steps, by=[one])))
        for one in savings()
    )


def borrowed(plan: Timetable) -> Bought | None:
    """Work through the class with one more of the tool that it waits for most."""
    tool = plan.most_waited
    if not tool:
        return None
    more = replace(plan, tools={**plan.tools, tool: plan.tools[tool] + 1})
    return Bought(tool, f"borrow one {tool}", plan, more)


def offers(bought: Sequence[Bought]) -> Table:
    """The savings side by side."""
    rows = []
    for row in bought:
        back = [row.back(student) for student in row.before.students]
        earlier = f"{min(back):.0f} to {max(back):.0f} min".replace("-", "−")
        worst = f"{row.after.worst:.0f} min" if row.after.late else "in time"
        rows.append((row.words, earlier, str(row.in_time), worst))
    return Table(
        "What a saving buys back",
        ("saving", "done earlier by", "more in time", "the slowest over by"),
        tuple(rows),
        note="Each alone, for the whole class. Minutes: common practice, no source.",
        numeric=(1, 2, 3),
    )


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
