"""Full-size sheets as a PDF whose pages have the paper's own size, for a printer.

Source
------
ISO 32000-1: a page's units are points of 1/72 in, until somebody scales it.
"""

from __future__ import annotations

from collections.abc import Sequence
from io import BytesIO
from typing import TYPE_CHECKING, Any

from toolkit.pictures.sheets.marks import PENS, PT
from toolkit.pictures.sheets.page import SheetPage

if TYPE_CHECKING:
    from matplotlib.figure import Figure

_INCH = 25.4
_FONT = ["DejaVu Sans"]
_SETTINGS = {"font.family": _FONT, "path.simplify": False, "lines.scale_dashes": False}


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
    with style.context(["default", _SETTINGS]), PdfPages(file, metadata=about) as book:
        _offer_no_scaling(book._ensure_file(), Name)
        for page in pages:
            book.savefig(_figure(page))
    return file.getvalue()


def _offer_no_scaling(file: Any, name: Any) -> None:
    """Have printing programs offer the page's own size first, where they heed the wish.

    The library writes its catalogue before anything can be added. Written once more, the later
    one counts: the file's table of places points to it.
    """
    preferences = {"PrintScaling": name("None")}
    catalogue = {"Type": name("Catalog"), "Pages": file.pagesObject}
    file.writeObject(file.rootObject, {**catalogue, "ViewerPreferences": preferences})


def _figure(page: SheetPage) -> Figure:
    from matplotlib.figure import Figure
    from matplotlib.patches import PathPatch
    from matplotlib.path import Path
    from matplotlib.text import Text
    from matplotlib.transforms import Affine2D

    size = (page.width / _INCH, page.height / _INCH)
    figure = Figure(figsize=size, facecolor="white", edgecolor="white")
    to_page = Affine2D().scale(1 / _INCH) + figure.dpi_scale_trans
    for name, pen in PENS.items():
        lines = [Path(mark.points) for mark in page.marks if mark.pen == name]
        if not lines:
            continue
        dash = (0.0, [length / PT for length in pen.dash]) if pen.dash else "-"
        patch = PathPatch(
            Path.make_compound_path(*lines),
            fill=False,
            edgecolor=pen.colour,
            linewidth=pen.width / PT,
            linestyle=dash,
            capstyle="butt",
            joinstyle="miter",
            transform=to_page,
        )
        figure.add_artist(patch)
    for word in page.words:
        text = Text(
            word.x,
            word.y,
            word.text,
            fontfamily=_FONT,
            fontsize=word.size / PT,
            color="black",
            ha=word.anchor,
            va="baseline",
            rotation=90 if word.upright else 0,
            rotation_mode="anchor",
            transform=to_page,
            parse_math=False,
        )
        figure.add_artist(text)
    return figure
