"""The sheet on the wall: everyone's settings, those who set their tools alike in one column."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass

from toolkit.plan import Plan
from toolkit.results import Table, listed

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
