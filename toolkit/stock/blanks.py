"""Rough parts to be sawn from a board, and several of them kept together as one."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import isfinite
from typing import Literal

from toolkit.measures import Rule
from toolkit.results import AXES, Part, SizedText, TaggedSize, below
from toolkit.stock.boards import Board
from toolkit.wood import species

Corners = Literal["free", "one run", "two runs"]
CORNERS: tuple[Corners, ...] = ("free", "one run", "two runs")


@dataclass(frozen=True, slots=True)
class Blank:
    """A rough part: length with the grain, width across it. [mm]

    ``thickness`` is the least that its board may have, ``finished`` what it is planed to; 0 for
    any. ``wood`` may be left empty for any wood. ``run`` holds parts sawn end to end from one
    strip; it is empty for a part by itself.
    """

    name: str
    length: float
    width: float
    thickness: float = 0.0
    wood: str = ""
    finished: float = 0.0
    run: tuple[Blank, ...] = ()

    def __post_init__(self) -> None:
        """A part without a size would fit anywhere, or nowhere without a reason."""
        for axis in ("length", "width"):
            size = getattr(self, axis)
            if not (isfinite(size) and size > 0):
                raise ValueError(
                    f"{self.name}: its rough {axis} was given as {size:g} mm; give a length above 0"
                )

    def by(self, rule: Rule) -> SizedText:
        """Length × width × thickness on somebody's rule."""
        return sawn_by((self.length, self.width, self.thickness), rule=rule, of=self.name)

    @property
    def parts(self) -> tuple[Blank, ...]:
        """The parts that it gives: itself, or those kept together in it."""
        return self.run or (self,)

    @property
    def alike(self) -> tuple[object, ...]:
        """Equal for parts that can change places."""
        own = (self.length, self.width, self.thickness, self.finished, self.wood.casefold())
        return (own, *(part.alike for part in self.run))


def sawn_by(sizes: Sequence[float], *, rule: Rule, of: str) -> SizedText:
    """Rough sizes as every page writes them, up to a mark of the rule: ``190 × 75 × 16 mm``."""
    pieces: list[str] = []
    for axis, size in zip(AXES, sizes, strict=False):
        shown = rule.show(size, direction="up", unit=False)
        pieces += [" × ", TaggedSize(shown, of, f"rough {axis}", size)]
    return SizedText.of(*pieces[1:], f" {rule.units}")


def blanks_of(parts: Iterable[Part], *, boxes: int = 1) -> tuple[Blank, ...]:
    """The rough parts of so many boxes, one by one, in the order of the cut list. [mm]"""
    listed = tuple(parts)
    return tuple(
        Blank(
            name=(f"box {box}: " if boxes > 1 else "")
            + (f"{part.name} {number}" if part.count > 1 else part.name),
            length=part.rough_length.value,
            width=part.rough_width.value,
            thickness=part.rough_thickness.value,
            wood=part.wood,
            finished=part.thickness.value,
        )
        for box in range(1, boxes + 1)
        for part in listed
        for number in range(1, part.count + 1)
    )


def run(blanks: Sequence[Blank], *, gap: float) -> Blank:
    """Parts sawn end to end from one strip, the grain running on from each to the next. [mm]"""
    return Blank(
        name=" – ".join(blank.name for blank in blanks),
        length=float(sum(blank.length for blank in blanks) + gap * (len(blanks) - 1)),
        width=max(blank.width for blank in blanks),
        thickness=max(blank.thickness for blank in blanks),
        wood=blanks[0].wood,
        finished=max(blank.finished for blank in blanks),
        run=tuple(blanks),
    )


def round_the_corners(
    blanks: Sequence[Blank], *, corners: Corners, gap: float
) -> tuple[Blank, ...]:
    """The parts of a box with its walls kept together in runs: side, end, side, end. [mm]

    ``"one run"``: all four walls from one strip, the grain matching at three corners;
    ``"two runs"``: a side with its end, twice, matching at two; ``"free"``: as they come.
    """
    if corners not in CORNERS:
        raise ValueError(f"corners was given as {corners!r}; give one of {', '.join(CORNERS)}")
    if corners == "free":
        return tuple(blanks)
    sides = [blank for blank in blanks if blank.name.startswith("side")]
    ends = [blank for name in ("front", "back") for blank in blanks if blank.name == name]
    if len(sides) != 2 or len(ends) != 2:
        raise ValueError(
            "grain runs round the corners of a box with two sides, a back and a front; these are "
            + (", ".join(blank.name for blank in blanks) or "no parts")
        )
    walls = [sides[0], ends[0], sides[1], ends[1]]
    if len({blank.wood.casefold() for blank in walls}) > 1:
        raise ValueError("sides and ends are of different woods: no grain runs round the corners")
    rest = tuple(blank for blank in blanks if blank not in walls)
    if corners == "one run":
        return (run(walls, gap=gap), *rest)
    return (run(walls[:2], gap=gap), run(walls[2:], gap=gap), *rest)


def right_wood(blank: Blank, board: Board) -> bool:
    """Whether a board is of the part's wood; woods the table does not know go by their name."""
    if not blank.wood or blank.wood.casefold() == board.species.casefold():
        return True
    try:
        return species(blank.wood) == species(board.species)
    except ValueError:
        return False


def thick_enough(blank: Blank, board: Board) -> bool:
    """Whether a board has the thickness to plane a part from it."""
    return not below(board.thickness, blank.thickness)


def can_give(board: Board, blank: Blank) -> bool:
    """Whether a board has the wood and the thickness for a part, wherever it may lie."""
    return right_wood(blank, board) and thick_enough(blank, board)
