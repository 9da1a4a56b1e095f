"""What a layout is: sections between crosscuts, strips ripped from them, parts in the strips."""

from __future__ import annotations

from dataclasses import dataclass

from toolkit.measures import Rule
from toolkit.stock.blanks import Blank
from toolkit.stock.boards import Board


@dataclass(frozen=True, slots=True)
class LaidPart:
    """A part laid on a board: its lower left corner and its rough size. [mm]"""

    part: str
    x: float
    y: float
    length: float
    width: float


@dataclass(frozen=True, slots=True)
class Strip:
    """What is ripped from a section in one: as a rule one part, or a run of them. [mm]"""

    low: float
    high: float
    pieces: tuple[LaidPart, ...]


@dataclass(frozen=True, slots=True)
class LaidSection:
    """A stretch of board between two crosscuts, and its strips from the lower edge up. [mm]"""

    start: float
    end: float
    strips: tuple[Strip, ...]


@dataclass(frozen=True, slots=True)
class Point:
    """One point of the trade-off: board used [mm], its volume [mm³] and mean figure [0 to 1]."""

    used: float
    looks: float
    volume: float


@dataclass(frozen=True, slots=True)
class Laid:
    """Parts laid on one board. ``gap`` is what lies between them; ``looks`` is their mean. [mm]"""

    board: Board
    gap: float
    looks: float
    sections: tuple[LaidSection, ...] = ()

    @property
    def used(self) -> float:
        """Length of board used, from its left end. [mm]"""
        return max((section.end for section in self.sections), default=0.0)

    @property
    def left(self) -> float:
        """Length of board left over whole, at its right end. [mm]"""
        return self.board.length - self.used

    @property
    def volume(self) -> float:
        """Wood used up, offcuts and all. [mm³]"""
        return self.used * self.board.width * self.board.thickness

    @property
    def pieces(self) -> tuple[LaidPart, ...]:
        """Every part, along the board."""
        return tuple(
            piece for section in self.sections for strip in section.strips for piece in strip.pieces
        )

    def sentence(self, rule: Rule) -> str:
        """The layout in words, on somebody's rule."""
        if not self.sections:
            return f"{self.board.name}: not used."
        count, used = len(self.pieces), rule.show(self.used, fineness="sizes", direction="up")
        whole = rule.show(self.left, fineness="sizes", direction="down")
        return (
            f"{self.board.name}: {count} part{'' if count == 1 else 's'} from {used} of it; "
            f"offcut {whole}."
        )


@dataclass(frozen=True, slots=True)
class BoxLaid:
    """The parts of a box on the boards of a rack.

    ``boards`` holds a layout for each board of the rack, empty where it gives nothing; ``curve``
    the trade-off between figure and wood, the most economical first; ``missing`` the parts that no
    board has room for. ``least`` is the length of board that the most economical one uses. [mm]
    """

    boards: tuple[Laid, ...]
    missing: tuple[Blank, ...]
    curve: tuple[Point, ...]
    looks: float
    least: float
    cell: float

    @property
    def used(self) -> float:
        """Length of board used, all boards together. [mm]"""
        return sum(laid.used for laid in self.boards)

    @property
    def volume(self) -> float:
        """Wood used up, offcuts and all. [mm³]"""
        return sum(laid.volume for laid in self.boards)

    def proof(self, rule: Rule) -> str:
        """What is proved about this layout, in words, on somebody's rule."""
        if not any(laid.sections for laid in self.boards):
            return "Nothing could be laid out."
        few = "No choice of as many parts" if self.missing else "No layout"
        least = rule.show(self.least, fineness="sizes", direction="up")
        grid = rule.exact(self.cell)
        return (
            f"{few} sawn this way, in sections and then in strips, uses less wood on a grid of "
            f"{grid} than the most economical one, with {least} of board. Parts nested in a way "
            "that nobody saws might."
        )
