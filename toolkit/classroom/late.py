"""What each saving buys back for a class that runs over."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from toolkit.classroom.hours import Hours
from toolkit.classroom.scheduling import Timetable, shared_tools, timetable
from toolkit.classroom.steps import Pace, Saving, Step, savings, spared, weekend
from toolkit.results import Table, below


@dataclass(frozen=True, slots=True)
class Bought:
    """A saving, the class with it and the class without. [min]"""

    saving: Saving
    before: Timetable
    after: Timetable

    def back(self, student: int) -> float:
        """How much earlier a student is done; tools queued for otherwise can make it less. [min]"""
        return self.before.finish(student) - self.after.finish(student)

    @property
    def in_time(self) -> int:
        """How many more students are done in time."""
        was = sum(self.before.over(student) > 0 for student in self.before.students)
        return was - sum(self.after.over(student) > 0 for student in self.after.students)

    @property
    def worst(self) -> float:
        """How far the slowest student still runs over. [min]"""
        return max(self.after.over(student) for student in self.after.students)


def bought_back(
    paces: Sequence[Pace],
    *,
    steps: Sequence[Step] | None = None,
    tools: Mapping[str, int] | None = None,
    hours: Hours | None = None,
    on_offer: Sequence[Saving] | None = None,
) -> tuple[Bought, ...]:
    """Work through the class once for each saving."""
    plan = weekend() if steps is None else tuple(steps)
    kit = shared_tools(plan, students=len(paces)) if tools is None else tools
    before = timetable(paces, steps=plan, tools=kit, hours=hours)
    return tuple(
        Bought(
            saving,
            before,
            timetable(paces, steps=spared(plan, by=[saving]), tools=kit, hours=hours),
        )
        for saving in (savings() if on_offer is None else on_offer)
    )


@dataclass(frozen=True, slots=True)
class Borrowed:
    """A shared tool of which there is one more, the class without it and with it. [min]"""

    tool: str
    before: Timetable
    after: Timetable

    @property
    def sentence(self) -> str:
        """How much less is waited for it, and whether anybody is done earlier."""
        was, now = (sum(plan.queued.values()) for plan in (self.before, self.after))
        late = [
            sum(plan.over(student) > 0 for student in plan.students)
            for plan in (self.before, self.after)
        ]
        # Queues move when a tool is added, and can come out longer elsewhere.
        change = late[0] - late[1]
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


def borrowed(plan: Timetable) -> Borrowed | None:
    """Work through the class with one more of the tool that it waits for most."""
    tool = plan.most_waited
    if not tool:
        return None
    kit = {**plan.tools, tool: plan.tools[tool] + 1}
    after = timetable(
        plan.paces, steps=plan.steps, tools=kit, hours=plan.hours, numbers=plan.numbers
    )
    return Borrowed(tool, plan, after)


def offers(bought: Sequence[Bought]) -> Table:
    """The savings side by side."""
    rows = []
    for row in bought:
        back = [row.back(student) for student in row.before.students]
        rows.append(
            (
                row.saving.words,
                f"{min(back):.0f} to {max(back):.0f} min".replace("-", "−"),
                str(row.in_time),
                f"{row.worst:.0f} min" if row.worst else "in time",
            )
        )
    return Table(
        "What a saving buys back",
        ("saving", "done earlier by", "more in time", "the slowest over by"),
        tuple(rows),
        note="Each alone, for the whole class. Minutes: common practice, no source.",
        numeric=(1, 2, 3),
    )
