"""A board on the rack, with what is wrong with it, as measured from its lower left corner.

``along`` runs with the grain from the left end, ``across`` from the lower edge. [mm]
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any, ClassVar, Literal

from toolkit.measures import Key, declared, key

DefectKind = Literal[
    "knot",
    "loose knot",
    "end check",
    "split",
    "shake",
    "wane",
    "pith",
    "bark pocket",
    "gum pocket",
    "decay",
    "worm holes",
    "stain",
    "cross grain",
    "tear-out",
    "other",
]


LONGEST_BOARD = 12_000.0
MOST_TABLES = 200


def _place() -> Any:
    return field(metadata=declared(least=0, most=LONGEST_BOARD))


@dataclass(frozen=True, slots=True)
class Defect:
    """The rectangle that a defect spoils, by two opposite corners.

    One of its sides may be 0, as for a fine check; given backwards it is turned round. [mm]
    """

    kind: DefectKind = field(metadata=declared())
    from_: ClassVar[Key] = Key(kind="point", name="from", of=("from_along", "from_across"))
    to: ClassVar[Key] = Key(kind="point", of=("to_along", "to_across"))
    from_along: float = _place()
    from_across: float = _place()
    to_along: float = _place()
    to_across: float = _place()

    def __post_init__(self) -> None:
        """Put the lower left corner first."""
        for low, high in (("from_along", "to_along"), ("from_across", "to_across")):
            if getattr(self, low) > getattr(self, high):
                one, other = getattr(self, low), getattr(self, high)
                object.__setattr__(self, low, other)
                object.__setattr__(self, high, one)


@dataclass(frozen=True, slots=True)
class Board:
    """One board, as it lies: length with the grain, width across it."""

    name: str = field(metadata=declared())
    species: str = field(metadata=declared(kind="species"))
    length: float = field(metadata=declared(most=LONGEST_BOARD))
    width: float = field(metadata=declared())
    thickness: float = field(metadata=declared())
    defects: tuple[Defect, ...] = key(name="defect", most=MOST_TABLES, default=())
    heart_line: tuple[tuple[float, float], ...] = key(
        "Heartwood below it, sapwood above.", kind="heart line", default=()
    )

    def heart_at(self, along: float) -> float | None:
        """How high the heartwood reaches at a place along; None without a heart line. [mm]

        >>> board = Board("b", "black cherry", 900, 140, 13, heart_line=((0, 100), (900, 130)))
        >>> board.heart_at(450)
        115.0
        """
        if not self.heart_line:
            return None
        before = self.heart_line[0]
        for point in self.heart_line:
            if along <= point[0]:
                share = (along - before[0]) / (point[0] - before[0]) if point != before else 1.0
                return before[1] + max(share, 0.0) * (point[1] - before[1])
            before = point
        return before[1]
