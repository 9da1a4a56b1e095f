"""Full-size sheets as a PDF whose pages have the paper's own size, for a printer.

Source
------
ISO 32000-1: a page's units are points of 1/72 in, until somebody scales it.
"""

from __future__ import annotations

from collections.abc import Sequence
from io import BytesIO
from typing import Any

from toolkit.pictures.kit.marks import SETTINGS, to_figure
from toolkit.pictures.sheets.page import SheetPage


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
