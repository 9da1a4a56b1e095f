"""Controls of a lesson: what a slider moves, and between which marks."""

from __future__ import annotations

from bisect import insort
from collections.abc import Hashable
from dataclasses import dataclass, field
from math import ceil, floor
from typing import Any, Literal

from toolkit.box import Change, Choices
from toolkit.measures import Rule

# A control by such a key sets nothing in the box: a season, a lamp, the place of a board in a log.
_TRY = "try."


@dataclass(frozen=True, slots=True)
class Control:
    """What sets some ``keys`` of the box file, or ``try.…``; its name in words is its ``label``."""

    keys: tuple[str, ...]
    label: str
    start: Any = field(default=None, kw_only=True)

    def first(self, choices: Choices) -> Any:
        """Where it stands before it is moved."""
        if callable(self.start):
            return self.start(choices)
        return choices.value(self.keys[0]) if self.start is None else self.start

    def options(self, rule: Rule, value: Any) -> list[tuple[str, Any]]:
        """What can be chosen, as (text, value), the present value among it."""
        raise NotImplementedError


@dataclass(frozen=True, slots=True)
class LengthControl(Control):
    """A length between two ends, one mark of the student's rule a step. [mm]"""

    low: float
    high: float
    fineness: Literal["joints", "sizes", "rough"] = "joints"

    def options(self, rule: Rule, value: float | None) -> list[tuple[str, Any]]:
        """Every mark between the ends, and the present value where it lies on none."""
        mark = rule.mark(self.fineness)
        first, last = ceil(self.low / mark - 1e-6), floor(self.high / mark + 1e-6)
        # What a file says, 4.1, and not the 4.1000000000000005 of a product.
        values = [round(count * mark, 9) for count in range(first, last + 1)]
        if value is not None:
            near = min(range(len(values)), key=lambda i: abs(values[i] - value))
            if abs(values[near] - value) < 1e-6:
                # The box's own number, to the last bit, so that moving a slider away and back
                # leaves nothing changed.
                values[near] = value
            else:
                insort(values, value)
        return [(rule.exact(each), each) for each in values]


@dataclass(frozen=True, slots=True)
class CountControl(Control):
    """A number of things, such as tails."""

    low: int
    high: int

    def options(self, rule: Rule, value: Any) -> list[tuple[str, Any]]:
        """Every number between the ends; tails of unequal width have a place of their own."""
        rows: list[tuple[str, Any]] = [(str(n), n) for n in range(self.low, self.high + 1)]
        if not isinstance(value, int) and value is not None:
            return [("as set out by hand", value), *rows]
        if isinstance(value, int) and not self.low <= value <= self.high:
            rows.append((str(value), value))
        return rows


@dataclass(frozen=True, slots=True)
class ChoiceControl(Control):
    """One of a few words, or ``(text, value)``; on a slider where they follow one another."""

    choices: tuple[str | tuple[str, Hashable], ...]
    slider: bool = False

    def options(self, rule: Rule, value: Any) -> list[tuple[str, Any]]:
        """The words, and what a box says where none of them is it."""
        rows = [(row, row) if isinstance(row, str) else row for row in self.choices]
        if value is not None and all(value != each for _, each in rows):
            rows.insert(0, (str(value), value))
        return rows


@dataclass(frozen=True, slots=True)
class NumberControl(Control):
    """A number with its unit; a length too small for a rule is told in the student's own."""

    low: float
    high: float
    step: float
    unit: str = ""

    def options(self, rule: Rule, value: float) -> list[tuple[str, Any]]:
        """Every step between the ends, and the present value where it lies on none."""
        count = round((self.high - self.low) / self.step)
        values = [round(self.low + i * self.step, 9) for i in range(count + 1)]
        if all(abs(each - value) > 1e-9 for each in values):
            insort(values, value)
        if self.unit == "mm":
            return [(rule.fine(each), each) for each in values]
        return [(f"{each:.6g} {self.unit}".strip(), each) for each in values]


def in_box(key: str) -> bool:
    """Whether a key is one of the box file."""
    return not key.startswith(_TRY)


def with_values(choices: Choices, values: Change) -> Choices:
    """A box with some keys changed: ``{"groove.depth": 5.0}``; others are passed over. [mm]"""
    return choices.having({key: value for key, value in values.items() if in_box(key)})
