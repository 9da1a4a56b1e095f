"""A table of words as columns for a terminal, or as HTML."""

from __future__ import annotations

import shutil
import textwrap
from collections.abc import Callable, Iterable
from dataclasses import replace
from html import escape
from typing import Literal

from toolkit.results import Table

_GAP = 2
# A word longer than this is no word but a fingerprint or an address, and may be broken.
_LONGEST_WORD = 24


def as_text(table: Table, *, width: int | None = None, spell: Callable[[str], str] = str) -> str:
    """A table in plain columns; what is too long for its column goes on below, nothing is cut.

    Where even the longest words do not fit beside one another, each row becomes a few lines.

    Parameters
    ----------
    table : Table
        The table; its ``numeric`` columns are set to the right.
    width : int, optional
        Longest line, that of the terminal if left out. [characters]
    spell : callable
        Puts our words into the reader's English.

    Returns
    -------
    str
        Lines without spaces at their ends: the title, the table, its note.
    """
    width = width_or_usual(width)
    table = replace(
        table,
        title=spell(table.title),
        columns=tuple(map(spell, table.columns)),
        rows=tuple(tuple(map(spell, row)) for row in table.rows),
        note=spell(table.note),
    )
    widths = _widths(table, width)
    body = _columns(table, widths) if widths else _stacked(table, width)
    lines = [*wrapped(table.title, width=width), *body, *wrapped(table.note, width=width)]
    return "\n".join(line.rstrip() for line in lines)


def as_html(
    table: Table,
    *,
    heard: bool = False,
    spell: Callable[[str], str] = str,
) -> str:
    """A table as HTML that a screen reader can walk through; every text in it is escaped.

    Parameters
    ----------
    table : Table
        The table; its first column heads the rows.
    heard : bool
        Whether the caption is for those alone who hear the page.
    spell : callable
        Puts the workbook's words into the page's English.

    Returns
    -------
    str
        One ``table`` element, without styles of its own.

    Source
    ------
    HTML Living Standard, tabular data.

    >>> as_html(Table("Parts", ("part", "length"), (("lid", "168 mm"),)))
    ... # doctest: +ELLIPSIS
    '<table class="table">\\n<caption><h3>Parts</h3></caption>\\n<thead>...'
    """

    def said(text: str) -> str:
        return escape(spell(text))

    caption = f"<caption><h3>{said(table.title)}</h3></caption>"
    if heard:
        caption = f'<caption class="heard">{said(table.title)}</caption>'
    heads = "".join(
        f'<th scope="col"{_number_class(table, at)}>{said(column)}</th>'
        for at, column in enumerate(table.columns)
    )
    lines = [
        '<table class="table">',
        caption,
        f"<thead>\n<tr>{heads}</tr>\n</thead>",
        "<tbody>",
        *(f"<tr>{_row_html(table, map(said, row))}</tr>" for row in table.rows),
        "</tbody>",
    ]
    if table.note:
        span = len(table.columns)
        note = f'<td class="note" colspan="{span}">{said(table.note)}</td>'
        lines.append(f"<tfoot>\n<tr>{note}</tr>\n</tfoot>")
    return "\n".join([*lines, "</table>"])


def _number_class(table: Table, at: int) -> str:
    return ' class="number"' if at in table.numeric else ""


def _row_html(table: Table, row: Iterable[str]) -> str:
    cells = []
    for at, cell in enumerate(row):
        element, scope = ("td", "") if at else ("th", ' scope="row"')
        cells.append(f"<{element}{scope}{_number_class(table, at)}>{cell}</{element}>")
    return "".join(cells)


def _widths(table: Table, width: int) -> list[int]:
    """A width for each column that keeps its words whole; none where that is impossible."""
    from rich.cells import cell_len

    least, natural = [], []
    for at, cells in enumerate(zip(table.columns, *table.rows, strict=True)):
        whole = max((cell_len(line) for cell in cells for line in cell.split("\n")), default=0)
        word = max((cell_len(word) for cell in cells for word in cell.split()), default=0)
        natural.append(max(whole, 1))
        # "176 mm" is not to be parted from its unit.
        least.append(natural[-1] if at in table.numeric else max(min(word, _LONGEST_WORD), 1))
    room = width - _GAP * (len(least) - 1)
    if sum(natural) <= room:
        return natural
    if sum(least) > room:
        return []
    widths = list(least)
    for _ in range(room - sum(least)):
        # The narrow ones first: a name stays on its line, a long sentence is wrapped anyway.
        short = [at for at in range(len(widths)) if widths[at] < natural[at]]
        widths[min(short, key=lambda at: widths[at])] += 1
    return widths


def _columns(table: Table, widths: list[int]) -> list[str]:
    from io import StringIO

    from rich import box
    from rich.console import Console
    from rich.table import Table as Columns
    from rich.text import Text

    columns = Columns(
        box=box.SIMPLE_HEAD, show_edge=False, pad_edge=False, padding=(0, _GAP - 1, 0, 0)
    )
    for at, (name, column_width) in enumerate(zip(table.columns, widths, strict=True)):
        justify: Literal["right", "left"] = "right" if at in table.numeric else "left"
        columns.add_column(Text(name), justify=justify, width=column_width, overflow="fold")
    for row in table.rows:
        columns.add_row(*(Text(cell) for cell in row))
    page = StringIO()
    room = sum(widths) + _GAP * len(widths) + 1
    # In a notebook the console would show the table beside what it is asked to write into.
    console = Console(
        file=page, width=room, color_system=None, legacy_windows=False, force_jupyter=False
    )
    console.print(columns)
    return page.getvalue().rstrip("\n").split("\n")


def _stacked(table: Table, width: int) -> list[str]:
    """Each row as lines of its own, for a page too narrow for columns."""
    lines: list[str] = []
    for row in table.rows:
        for at, (name, cell) in enumerate(zip(table.columns, row, strict=True)):
            indent = "  " if at else ""
            text = f"{indent}{name}: {cell}"
            lines += wrapped(text, width=width, hanging=f"{indent}  ")
    return lines


NARROWEST = 20
USUAL_WIDTH = 80


def width_or_usual(width: int | None) -> int:
    """The width asked for, else the terminal's; never too narrow for a word. [characters]"""
    if width is None:
        width = shutil.get_terminal_size((USUAL_WIDTH, 24)).columns
    return max(width, NARROWEST)


def wrapped(text: str, *, width: int, hanging: str = "") -> list[str]:
    """Text in lines, those after the first set in; words stay whole where they fit."""
    return textwrap.wrap(text, width, subsequent_indent=hanging, break_on_hyphens=False)
