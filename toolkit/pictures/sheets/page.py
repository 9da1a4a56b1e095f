"""One full-size sheet: a page of paper in true millimetres, as SVG and as PDF for a printer.

Source
------
ISO 32000-1: a page's units are points of 1/72 in, until somebody scales it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from io import BytesIO
from typing import Any

from toolkit.pictures.kit.lettering import wording
from toolkit.pictures.kit.marks import SETTINGS, Ink, Marks, to_figure
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


def sheets_pdf(pages: Sequence[SheetPage]) -> bytes:
    """Sheets as one PDF, each page of its paper's size.

    Parameters
    ----------
    pages : sequence of SheetPage
        As `sheet_pages` gives them. [mm]

    Returns
    -------
    bytes
        The file: the same bytes for the same pages, whenever it is made.

    Source
    ------
    ISO 32000-1, document and page structure; viewer preferences (from memory).
    """
    # Loaded here, for a lesson that shows no sheet need not wait for it.
    from matplotlib import style
    from matplotlib.backends.backend_pdf import Name, PdfPages

    file = BytesIO()
    # A date of making would make two prints of one plan two different files.
    about: dict[str, Any] = {"CreationDate": None, "Producer": None, "Creator": None}
    about["Title"] = f"full-size sheets, {len(pages)} pages"
    # Somebody's own settings of the drawing library must not change what is printed.
    with style.context(["default", SETTINGS]), PdfPages(file, metadata=about) as book:
        _offer_no_scaling(book._ensure_file(), Name)
        for page in pages:
            book.savefig(to_figure(page.laid))
    return file.getvalue()


def _offer_no_scaling(file: Any, name: Any) -> None:
    """Have printing programs offer the page's own size first, where they heed the wish.

    The library writes its catalogue before anything can be added. Written once more, the later
    one counts: the file's table of places points to it.
    """
    preferences = {"PrintScaling": name("None")}
    catalogue = {"Type": name("Catalog"), "Pages": file.pagesObject}
    file.writeObject(file.rootObject, {**catalogue, "ViewerPreferences": preferences})
