"""How much surface a box has to finish: outside, inside, lid."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from toolkit.measures import convert

Group = Literal["outside", "inside", "lid"]


@dataclass(frozen=True, slots=True)
class Area:
    """One surface to finish: its name, the group it belongs to, its size. [mm²]"""

    name: str
    group: Group
    size: float


@dataclass(frozen=True, slots=True)
class Areas:
    """The surfaces of a box, of which each group is the sum of its own."""

    rows: tuple[Area, ...]

    @classmethod
    def of(cls, rows: Iterable[tuple[str, Group, float]]) -> Areas:
        """Surfaces from ``(name, group, size [mm²])`` rows."""
        return cls(tuple(Area(*row) for row in rows))

    @property
    def outside(self) -> float:
        """Outside of the walls, their rims, and the bottom from below. [mm²]"""
        return self._all("outside")

    @property
    def inside(self) -> float:
        """Inside of the walls, and the bottom from above. [mm²]"""
        return self._all("inside")

    @property
    def lid(self) -> float:
        """Both faces of the lid and its edges that show. [mm²]"""
        return self._all("lid")

    def _all(self, group: Group) -> float:
        return sum(row.size for row in self.rows if row.group == group)


def area_words(size: float) -> str:
    """An area in square metres and square feet. [mm²]"""
    feet = convert(size, unit="mm**2", to="ft**2")
    return f"{size / 1e6:.3f} m² ({feet:.2f} sq ft)"
