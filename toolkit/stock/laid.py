"""What a layout is: sections between crosscuts, strips ripped from them, parts in the strips."""

from __future__ import annotations

from dataclasses import dataclass

from toolkit.stock.boards import Board


@dataclass(frozen=True, slots=True)
class Piece:
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
    pieces: tuple[Piece, ...]


@dataclass(frozen=True, slots=True)
class Section:
    """A stretch of board between two crosscuts, and its strips from the lower edge up. [mm]"""

    start: float
    end: float
    strips: tuple[Strip, ...]


@dataclass(frozen=True, slots=True)
class Point:
    """One point of the trade-off: length of board used [mm] and mean looks [0 to 1]."""

    used: float
    looks: float


@dataclass(frozen=True, slots=True)
class Laid:
    """Parts laid on one board. ``gap`` is what lies between them; ``looks`` is their mean. [mm]"""

    board: Board
    gap: float
    looks: float
    sections: tuple[Section, ...] = ()

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
    def pieces(self) -> tuple[Piece, ...]:
        """Every part, along the board."""
        return tuple(
            piece for section in self.sections for strip in section.strips for piece in strip.pieces
        )

    @property
    def sentence(self) -> str:
        """The layout in words."""
        if not self.sections:
            return f"{self.board.name}: not used."
        count = len(self.pieces)
        return (
            f"{self.board.name}: {count} part{'' if count == 1 else 's'} from "
            f"{self.used:g} mm of it; {self.left:g} mm stay whole."
        )
