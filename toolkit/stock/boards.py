"""A board on the rack, with what is wrong with it, as measured from its lower left corner.

``along`` runs with the grain from the left end, ``across`` from the lower edge. [mm]
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

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


@dataclass(frozen=True, slots=True)
class Defect:
    """The rectangle that a defect spoils; one of its sides may be 0, as for a fine check. [mm]"""

    kind: DefectKind
    along_from: float
    across_from: float
    along_to: float
    across_to: float


@dataclass(frozen=True, slots=True)
class Board:
    """A rough board: length with the grain, width across it. [mm]

    ``heart_line`` is the border between heartwood, below it, and sapwood, above it.
    """

    name: str
    species: str
    length: float
    width: float
    thickness: float
    defects: tuple[Defect, ...] = ()
    heart_line: tuple[tuple[float, float], ...] = ()

    def heart_at(self, along: float) -> float | None:
        """How high the heartwood reaches at a place along; None without a heart line. [mm]

        >>> board = Board("b", "cherry", 900, 140, 13, heart_line=((0, 100), (900, 130)))
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
