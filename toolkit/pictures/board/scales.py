"""How the wood of a trade-off is counted, and how its values are laid along the page."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, floor, isclose
from typing import NamedTuple

from toolkit.measures import MM_PER_INCH, Rule
from toolkit.stock import Point, board_feet_by_volume

_MARKS = 7  # on the board, at most
_MM = (50.0, 100.0, 200.0, 250.0, 500.0, 1000.0, 2000.0)
_INCHES = tuple(inches * MM_PER_INCH for inches in (2, 4, 6, 12, 24, 48, 96))
_AMOUNTS = (0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0)
_LOOKS = (0.01, 0.02, 0.05, 0.1, 0.2, 0.5)
_CUBIC_METRE, _LITRE = 1e9, 1e6  # [mm³]


@dataclass(frozen=True, slots=True)
class Wood:
    """How wood is counted: by the length of board [mm], or by its volume in the rule's unit."""

    rule: Rule
    by_length: bool

    @property
    def what(self) -> str:
        """What is counted."""
        return "length of board used" if self.by_length else "wood used"

    def of(self, point: Point) -> float:
        """How much wood a layout takes."""
        if self.by_length:
            return point.used
        if self.rule.units == "mm":
            return point.volume / _LITRE
        return board_feet_by_volume(point.volume / _CUBIC_METRE)

    def show(self, value: float, *, unit: bool = True) -> str:
        """An amount as it is read."""
        if self.by_length:
            return self.rule.show(value, fineness="sizes", direction="up", unit=unit)
        text = f"{value:.2f}".rstrip("0").rstrip(".")
        return f"{text} {'litres' if self.rule.units == 'mm' else 'board feet'}" if unit else text

    @property
    def unit(self) -> str:
        """In what the figures along it are, where that is not the rule's own unit."""
        if self.by_length:
            return ""
        return f"wood in {'litres' if self.rule.units == 'mm' else 'board feet'}"

    @property
    def steps(self) -> tuple[float, ...]:
        """Steps between the figures that are written along it."""
        return _AMOUNTS if not self.by_length else _MM if self.rule.units == "mm" else _INCHES


def one_section(curve: Sequence[Point]) -> bool:
    """Whether length and volume of board go together, as on boards of one section."""
    first = curve[0]
    return all(isclose(p.volume * first.used, first.volume * p.used, rel_tol=1e-6) for p in curve)


class Axis(NamedTuple):
    """Values from ``low`` to ``high`` on the page from ``start`` to ``end`` [pt]."""

    low: float
    high: float
    start: float
    end: float
    step: float

    def at(self, value: float) -> float:
        """Where a value lies. [pt]"""
        return self.start + (value - self.low) / (self.high - self.low) * (self.end - self.start)

    def marks(self) -> list[float]:
        """Round values on it."""
        first, last = ceil(self.low / self.step - 1e-9), floor(self.high / self.step + 1e-9)
        return [i * self.step for i in range(first, last + 1)]


def along_of(curve: Sequence[Point], wood: Wood, *, start: float, end: float) -> Axis:
    """From the left end of the board to a round mark past the most handsome layout. [pt]"""
    most = 1.06 * max(wood.of(point) for point in curve)
    step = next((step for step in wood.steps if most / step <= _MARKS), wood.steps[-1])
    return Axis(0.0, ceil(most / step) * step, start, end, step)


def up_of(curve: Sequence[Point], *, start: float, end: float) -> Axis:
    """From a round mark under the least looks to 1. [pt]"""
    low = max(0.0, floor(10 * min(point.looks for point in curve) - 0.5) / 10)
    step = next(step for step in _LOOKS if (1 - low) / step <= 5 + 1e-9)
    return Axis(low, 1.0, start, end, step)
