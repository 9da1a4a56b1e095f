"""Tools and their edges: what there is of each, who queues for it, who hones when."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from math import ceil

from toolkit.classroom.scheduling import Timetable, shared_tools
from toolkit.classroom.steps import TimeOfDay
from toolkit.files import Student
from toolkit.plan import Plan
from toolkit.results import Table, capital, listed, read_table

HONING = 8  # minutes of one refresh at most, common practice, no source [min]
GRINDING = (15, 20)  # minutes of one iron, common practice, no source [min]


def shared_table(timed: Timetable, *, on_hand: Mapping[str, int]) -> Table:
    """What the class shares: how many there are, are needed and are waited for."""
    usual = shared_tools(timed.steps, students=len(timed.paces))
    rows = []
    for tool, many in usual.items():
        steps = {step.number for step in timed.steps if step.tool == tool}
        waited = {
            timed.number(bar.student) for bar in timed.bars if bar.queued and bar.step in steps
        }
        at_once = str(most_at_once(timed, steps=steps))
        queues = (at_once, f"{timed.queued[tool]:.0f} min", spans(waited) or "nobody")
        on = str(on_hand.get(tool, "not told"))
        rows.append((tool, on, str(many), spans(steps), *queues))
    others = [(tool, str(count)) for tool, count in on_hand.items() if tool not in usual]
    rows += [(*other, "", "", "", "", "") for other in others]
    return Table(
        "Shared tools",
        ("tool", "on hand", "usual", "steps", "most at once", "waited for", "by students"),
        tuple(rows),
        note="Of a tool that is not told, the usual number is reckoned with. Minutes and numbers: "
        "common practice, no source.",
        numeric=(1, 2, 4, 5),
    )


def most_at_once(timed: Timetable, *, steps: set[int]) -> int:
    """How many students are at some steps at the same time, at most."""
    bars = [bar for bar in timed.bars if bar.step in steps and bar.end > bar.start]
    return max(
        (sum(other.start <= bar.start < other.end for other in bars) for bar in bars), default=0
    )


def bench_table(*, benches: int, students: int) -> Table:
    """What lies on the benches, and how many that makes."""
    rows = []
    for row in read_table("classroom/bench_tools.csv"):
        each, many = int(row["count"]), students if row["for"] == "student" else benches
        rows.append((row["tool"], f"{each} for each {row['for']}", str(each * many)))
    return Table(
        f"On {benches} bench{'' if benches == 1 else 'es'}, for {students} students",
        ("tool", "how many", "in all"),
        tuple(rows),
        note="Common practice, no source.",
        numeric=(2,),
    )


def irons_table(timed: Timetable, *, benches: int, students: int) -> Table:
    """Every edge in the room, and what it takes to have all of them ground beforehand."""
    own, shared = (read_table(f"classroom/{name}.csv") for name in ("bench_tools", "shared_irons"))
    many = {"student": students, "bench": benches}
    edges = [(row["tool"], int(row["irons"]) * many[row["for"]]) for row in own]
    edges += [(row["tool"], int(row["irons"]) * timed.tools.get(row["tool"], 0)) for row in shared]
    planes = ("jack plane", "smoother", *(row["tool"] for row in shared))
    total = sum(many for tool, many in edges if tool in planes or tool.startswith("chisels"))
    low, high = (ceil(total * minutes / 60) for minutes in GRINDING)
    edges = [*(edge for edge in edges if edge[1]), ("all", sum(many for _, many in edges))]
    rows = [(tool, str(many)) for tool, many in edges]
    return Table(
        "Edges",
        ("on", "how many"),
        tuple(rows),
        note=f"Of these, {total} irons and chisels are ground by the shop before the class, at "
        f"{GRINDING[0]} to {GRINDING[1]} min each: {low} to {high} hours. Common practice, no "
        "source; grinding is for whoever the shop lets at its wheel.",
        numeric=(1,),
    )


def honing_table(timed: Timetable, *, clock: TimeOfDay, students: Sequence[Student]) -> Table:
    """Who goes to the stones when."""
    moments = read_table("classroom/honing.csv")
    begins = {(bar.step, bar.student): bar.start for bar in timed.bars}
    times = [[begins[int(row["before_step"]), n] for n in timed.students] for row in moments]
    rows = tuple(
        (student.called, *map(clock.shown, own))
        for student, own in zip(students, zip(*times, strict=True), strict=True)
    )
    stones = timed.tools.get("stone station", 0)
    crowd = max(sum(t <= other < t + HONING for other in row) for row in times for t in row)
    low, high = (sum(int(row[key]) for row in moments) for key in ("low", "high"))
    return Table(
        "Who hones when",
        ("student", *(row["what"] for row in moments)),
        rows,
        note=f"About these times, to 5 min. Each refresh takes 5 to {HONING} min, {low} to {high} "
        "min for each student beside step 4; they are not in the timetable: send people in waits "
        f"and breaks. There {'is' if stones == 1 else 'are'} {stones} sharpening "
        f"station{'' if stones == 1 else 's'}; at most {crowd} come within "
        f"{HONING} min of one another. Common practice, no source.",
    )


def handed(students: Sequence[Student]) -> str:
    """What the left-handed need, in sentences; empty if there are none."""
    said = []
    if left := [student.number for student in students if student.hand == "left"]:
        verb = "works" if len(left) == 1 else "work"
        said.append(
            f"{capital(called(left))} {verb} left-handed: set a shooting board aside that shoots "
            "the other way, and seat them where their sawing elbow has room."
        )
    if left := [student.number for student in students if student.plough_hand == "left"]:
        verb = "ploughs" if len(left) == 1 else "plough"
        said.append(f"{capital(called(left))} {verb} with a left-hand plough, another tool.")
    return " ".join(said)


MOST_COLUMNS = 4  # more do not fit across a page in letters that can be read from a bench


@dataclass(frozen=True, slots=True)
class Group:
    """Students whose tools are set alike, under one letter."""

    letter: str
    students: tuple[int, ...]
    plan: Plan


def called(students: Collection[int]) -> str:
    """Students in words: ``students 1 to 3 and 8``."""
    return f"student{'' if len(students) == 1 else 's'} {spans(students)}"


def spans(numbers: Collection[int]) -> str:
    """Numbers in words, runs of three or more as spans.

    >>> spans([1, 2, 3, 5, 6, 8])
    '1 to 3, 5, 6 and 8'
    """
    runs: list[list[int]] = []
    for number in sorted(numbers):
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    words: list[str] = []
    for run in runs:
        words += [f"{run[0]} to {run[-1]}"] if len(run) > 2 else map(str, run)
    return listed(words) if words else ""


def groups(plans: Mapping[int, Plan]) -> tuple[Group, ...]:
    """The students by their settings, the largest group first."""
    alike: dict[tuple[tuple[str, str, str], ...], list[int]] = {}
    for number, plan in plans.items():
        key = tuple((row.tool, row.value, row.use) for row in plan.settings)
        alike.setdefault(key, []).append(number)
    ordered = sorted(alike.values(), key=lambda numbers: (-len(numbers), numbers))
    return tuple(
        Group(_letter(at), tuple(numbers), plans[numbers[0]]) for at, numbers in enumerate(ordered)
    )


def _letter(at: int) -> str:
    """A to Z, then AA, AB and so on."""
    before, last = divmod(at, 26)
    return (_letter(before - 1) if before else "") + chr(ord("A") + last)


def setting_tables(found: Sequence[Group]) -> tuple[Table, ...]:
    """Every tool's setting for every group, a few groups to a table."""
    tables = []
    for start in range(0, len(found), MOST_COLUMNS):
        some = found[start : start + MOST_COLUMNS]
        values = [{row.tool: row.value for row in group.plan.settings} for group in some]
        tools = dict.fromkeys(row.tool for group in some for row in group.plan.settings)
        letters = [group.letter for group in some]
        tables.append(
            Table(
                f"Settings, {', '.join(letters)}",
                ("tool", *(f"{group.letter}: {called(group.students)}" for group in some)),
                tuple((tool, *(of.get(tool, "not used") for of in values)) for tool in tools),
                note="Set once, try on waste, leave set. Which line goes where is on the handout.",
            )
        )
    return tuple(tables)
