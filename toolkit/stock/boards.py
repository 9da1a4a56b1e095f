"""A board on the rack, with what is wrong with it, as measured from its lower left corner.

``along`` runs with the grain from the left end, ``across`` from the lower edge. [mm]
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Literal

from toolkit.results import as_typed

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
    """The rectangle that a defect spoils; one of its sides may be 0, as for a fine check. [mm]

    >>> Defect("knot", 300, 40, 335, 70).sentence
    'knot, 300 to 335 mm along and 40 to 70 mm across'
    """

    kind: DefectKind
    along_from: float
    across_from: float
    along_to: float
    across_to: float

    @property
    def sentence(self) -> str:
        """The defect in words."""
        return (
            f"{self.kind}, {self.along_from:g} to {self.along_to:g} mm along "
            f"and {self.across_from:g} to {self.across_to:g} mm across"
        )


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
        """How high the heartwood reaches at a place, level beyond the ends of the heart line.

        Parameters
        ----------
        along : float
            Place from the left end. [mm]

        Returns
        -------
        float or None
            Upper edge of the heartwood, None on a board without a heart line. [mm]

        Source
        ------
        Straight between the measured points: the workbook's own.

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

    @property
    def sentence(self) -> str:
        """The board in words."""
        flaws = f"{len(self.defects)} defect{'' if len(self.defects) == 1 else 's'}"
        return (
            f"{self.name}: {self.species}, {self.length:g} × {self.width:g} × "
            f"{self.thickness:g} mm, {flaws}"
        )


def named_as_typed(boards: Iterable[Board]) -> tuple[Board, ...]:
    """Boards whose names keep their spelling in whatever is said of them. [mm]"""
    return tuple(replace(board, name=as_typed(board.name)) for board in boards)
