"""One full-size sheet: a page of paper in true millimetres, and the same as SVG."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from html import escape

from toolkit.pictures.kit import svg
from toolkit.pictures.kit.picture import FONTS
from toolkit.pictures.kit.wording import wording
from toolkit.pictures.sheets.marks import PENS, CutOut, Mark, Word

_ANCHOR = {"left": "", "center": ' text-anchor="middle"', "right": ' text-anchor="end"'}


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
    def svg(self) -> str:
        """The page as SVG whose width and height are in millimetres, and so are its units."""
        said = escape(wording(self.sentence))
        return (
            f'<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-label="{said}" '
            f'width="{self.width:g}mm" height="{self.height:g}mm" '
            f'viewBox="0 0 {self.width:g} {self.height:g}" font-family="{FONTS}">'
            f'<title>{said}</title><rect width="{self.width:g}" height="{self.height:g}" '
            f'fill="#fff"/>{"".join(self._paths())}{"".join(self._texts())}</svg>'
        )

    def _paths(self) -> Iterator[str]:
        for name, pen in PENS.items():
            # A thousandth of a millimetre is less than any printer draws.
            ways = [
                svg.way(mark.points, height=self.height, closed=False, digits=3)
                for mark in self.marks
                if mark.pen == name
            ]
            if ways:
                data = "".join(ways)
                yield svg.stroke(data, colour=pen.colour, width=pen.width, dash=pen.dash)

    def _texts(self) -> Iterator[str]:
        for word in self.words:
            x, y = word.x, self.height - word.y
            text = word.text if word.typed else wording(word.text)
            turn = f' transform="rotate(-90 {x:.3f} {y:.3f})"' if word.upright else ""
            yield (
                f'<text x="{x:.3f}" y="{y:.3f}" font-size="{word.size:.3f}"'
                f"{_ANCHOR[word.anchor]}{turn}>{escape(text)}</text>"
            )
