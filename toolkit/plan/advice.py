"""What to do about a finding: each remedy is a change to the box, tried on it before it is said."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from toolkit.box import Change, Choices, design, refits, told
from toolkit.plan.checks import findings
from toolkit.plan.cut_parts import parts
from toolkit.results import Finding, Place


def _bad(rows: Iterable[Finding], *levels: str) -> set[tuple[str, Place]]:
    return {(row.code, row.place) for row in rows if row.level in levels}


class Adviser:
    """Tries remedies on one box, and remembers what it tried: findings often ask for the same.

    ``found`` is all that was found of the box: no remedy may make anything impossible that was
    possible.
    """

    def __init__(self, choices: Choices, found: Iterable[Finding]) -> None:
        found = tuple(found)
        self._choices = choices
        self._wrong, self._known = _bad(found, "wont_work"), _bad(found, "wont_work", "care")
        self._judged: dict[Choices, tuple[Finding, ...]] = {}
        self._said: dict[tuple[str, Place], Finding] = {}

    def on(self, row: Finding) -> Finding:
        """A finding with a remedy that cures it here, or with its words where none does."""
        if row.level == "good":
            return row
        key = (row.code, row.place)
        if key not in self._said:
            change = self._cure(row)
            remedy = row.remedy if change is None else told(change, rule=self._choices.rule)
            cures = () if change is None else (change,)
            self._said[key] = replace(row, cures=cures, remedy=remedy)
        return self._said[key]

    def _ways(self, row: Finding) -> Iterator[Change]:
        """What the check itself proposes, then what a search through the seasons finds."""
        yield from row.cures
        yield from refits(self._choices, row.place)

    def _judge(self, change: Change) -> tuple[Finding, ...]:
        choices = self._choices.having(change)
        if choices not in self._judged:
            d = design(choices)
            self._judged[choices] = findings(d, parts(d))
        return self._judged[choices]

    def _cure(self, row: Finding) -> Change | None:
        """The first change that cures it and sets off no other, else nothing that won't work."""
        second = None
        for change in self._ways(row):
            there = self._judge(change)
            bad = _bad(there, "wont_work", "care")
            if (row.code, row.place) in bad or _bad(there, "wont_work") - self._wrong:
                continue
            if not bad - self._known:
                return change
            second = second or change
        return second
