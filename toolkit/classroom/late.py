"""What each saving, or one more tool, buys back for a class that runs over."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from toolkit.classroom.scheduling import Timetable
from toolkit.classroom.steps import savings, spared
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
