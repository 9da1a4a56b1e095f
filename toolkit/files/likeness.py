"""Whether boards and their defects are the same, though each may be written in its own unit."""

from __future__ import annotations

from collections.abc import Sequence

from toolkit.stock import Board, Defect

# Two lengths nearer than this are one. [mm]
SAME = 1e-5
LENGTHS = ("length", "width", "thickness")


def near(one: float, other: float) -> bool:
    return abs(one - other) <= SAME


def all_near(some: Sequence[float], others: Sequence[float]) -> bool:
    return len(some) == len(others) and all(map(near, some, others))


def sides(defect: Defect) -> tuple[float, ...]:
    return (defect.along_from, defect.across_from, defect.along_to, defect.across_to)


def heart_line(board: Board) -> list[float]:
    return [length for point in board.heart_line for length in point]


def defect_keys(*racks: Sequence[Defect]) -> tuple[list[int], ...]:
    """A number for each defect, the same for defects that are the same."""
    seen: list[Defect] = []

    def key(defect: Defect) -> int:
        for number, other in enumerate(seen):
            if other.kind == defect.kind and all_near(sides(other), sides(defect)):
                return number
        seen.append(defect)
        return len(seen) - 1

    return tuple([key(defect) for defect in rack] for rack in racks)


def alike(one: Board, other: Board) -> bool:
    """Whether two boards are the same, whatever unit each was written in."""
    before, after = defect_keys(one.defects, other.defects)
    return (
        (one.name, one.species) == (other.name, other.species)
        and all(near(getattr(one, key), getattr(other, key)) for key in LENGTHS)
        and all_near(heart_line(one), heart_line(other))
        and before == after
    )
