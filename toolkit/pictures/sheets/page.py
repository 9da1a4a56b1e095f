"""One full-size sheet: a page of paper in true millimetres, and the same as SVG."""

from __future__ import annotations

from dataclasses import dataclass, replace

from toolkit.pictures.kit.editions import wording
from toolkit.pictures.kit.marks import Ink, Marks
from toolkit.pictures.kit.svg import to_svg
from toolkit.pictures.sheets.marks import PENS, CutOut, Mark, Word


@dataclass(frozen=True, slots=True)
class Paper:
    """A sheet of paper, lying on its long side. [mm]"""

    name: str
    width: float
    height: float


# ISO 216; ANSI/ASME Y14.1 size A is 8 1/2 by 11 in (from memory).
PAPERS = {
    "a4": Paper("A4", 297.0, 210.0),
    "letter": Paper("Letter", 11 * 25.4, 8.5 * 25.4),
}


@dataclass(frozen=True, slots=True)
class SheetPage:
    """A page to print at its own size: lines and words from its lower left corner. [mm]

    ``dropped`` are words for which there was no room.
    """

    paper: Paper
    number: int
    of: int
    sentence: str
    pieces: tuple[CutOut, ...]
    marks: tuple[Mark, ...]
    words: tuple[Word, ...]
    dropped: tuple[str, ...]

    @property
    def width(self) -> float:
        """Of the paper. [mm]"""
        return self.paper.width

    @property
    def height(self) -> float:
        """Of the paper. [mm]"""
        return self.paper.height

    @property
    def laid(self) -> Marks:
        """Everything on the page, in the order of laying it down. [mm]"""
        lines = {
            name: [(mark.points, False) for mark in self.marks if mark.pen == name] for name in PENS
        }
        return Marks(
            width=self.width,
            low=0.0,
            high=self.height,
            # A thousandth of a millimetre is less than any printer draws.
            inks=[Ink(PENS[name], rows, digits=3) for name, rows in lines.items() if rows],
            words=[
                word if word.typed else replace(word, text=wording(word.text))
                for word in self.words
            ],
            sentence=wording(self.sentence),
            unit="mm",
            paper="#fff",
        )

    @property
    def svg(self) -> str:
        """The page as SVG whose width and height are in millimetres, and so are its units."""
        return to_svg(self.laid)
