"""A long board in one row of the page or, broken, in several at one scale."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from toolkit.pictures.kit.figure_of_wood import break_line
from toolkit.pictures.kit.picture import Point
from toolkit.pictures.kit.sheet import Sheet
from toolkit.pictures.kit.view import View, band
from toolkit.stock import Board, Laid

# Where a board's left end lies on the page, and the room for its length and its width. [pt]
LEFT, ROOM, WIDE = 18.0, 508.0, 190.0
# Smaller than this, the words no longer fit on a part of a box. [pt/mm]
_LEAST, _MOST = 0.36, 0.6
_MOST_ROWS = 3
BREAK = 5.0  # that the line of a break sways to either side, and a little [pt]
# A break may move so far, in shares of a row, to go round a part.
_SHIFT = 0.1
_SLIVER = 10.0  # of the next part, so that the saw cut does not fall on the break [mm]


@dataclass(frozen=True, slots=True)
class Row:
    """A stretch of the board on the page, from ``start`` to ``end``. [mm]"""

    view: View
    start: float
    end: float
    width: float
    first: bool
    last: bool
    clip: int

    def has(self, left: float, right: float) -> bool:
        """Whether something from here to there shows in this row. [mm]"""
        return left < self.end and right > self.start

    def fill(self, pen: str, shape: Sequence[Point]) -> None:
        """An area, kept to this row. [mm]"""
        if self.has(min(x for x, _ in shape), max(x for x, _ in shape)):
            self.view.sheet.line(pen, self.view.points(shape), closed=True, clip=self.clip)

    def line(self, pen: str, points: Sequence[Point], *, closed: bool = False) -> None:
        """A line, kept to this row. [mm]"""
        if self.has(min(x for x, _ in points), max(x for x, _ in points)):
            self.view.sheet.line(pen, self.view.points(points), closed=closed, clip=self.clip)

    def within(self, shape: Sequence[Point]) -> list[Point]:
        """What of a convex shape lies in this row. [mm]"""
        turned = band([(y, x) for x, y in shape], low=self.start, high=self.end)
        return [(x, y) for y, x in turned]


def scale_of(board: Board) -> tuple[float, int]:
    """Scale [pt/mm] and number of rows in which a board is drawn, whatever lies on it."""
    for rows in range(1, _MOST_ROWS + 1):
        # A row may be longer than its share, where its break goes round a part.
        share = 1.0 if rows == 1 else (1 + _SHIFT) / rows
        scale = min(ROOM / (board.length * share), WIDE / board.width, _MOST)
        if scale >= _LEAST:
            break
    return scale, rows


def breaks(board: Board, laid: Laid | None, *, rows: int) -> list[float]:
    """Where each row begins and ends: just past a section of the layout where one is near. [mm]"""
    each = board.length / rows
    ends = [section.end + laid.gap for section in laid.sections] if laid is not None else []
    inner = []
    for i in range(1, rows):
        wanted = i * each
        inside = laid is not None and wanted < laid.used
        near = min((end + _SLIVER for end in ends), key=lambda x: abs(x - wanted), default=wanted)
        inner.append(near if inside and abs(near - wanted) <= _SHIFT / 2 * each else wanted)
    return [0.0, *inner, board.length]


def rows_of(
    sheet: Sheet,
    board: Board,
    laid: Laid | None,
    *,
    top: float,
    apart: float,
    scale: float,
    rows: int,
) -> list[Row]:
    """The rows of a board, the first with its upper edge at ``top``. [pt]"""
    made = []
    stops = breaks(board, laid, rows=rows)
    for i, (start, end) in enumerate(pairwise(stops)):
        low = top - board.width * scale - i * (board.width * scale + apart)
        view = View(sheet, LEFT - start * scale, low, scale)
        edge = _outline(view, board, start, end)
        made.append(Row(view, start, end, board.width, i == 0, i == rows - 1, sheet.within(edge)))
    return made


def _outline(view: View, board: Board, start: float, end: float) -> list[Point]:
    low, high = view.up(0.0), view.up(board.width)
    left, right = [(view.across(start), y) for y in (low, high)], None
    if start > 0:
        left = break_line(view.across(start), low=low, high=high)
    right = [(view.across(end), y) for y in (low, high)]
    if end < board.length:
        right = break_line(view.across(end), low=low, high=high)
    return [*right, *reversed(left)]


def edges(row: Row) -> None:
    """The board's own edges heavy, breaks thin."""
    view, sheet = row.view, row.view.sheet
    low, high = view.up(0.0), view.up(row.width)
    left, right = view.across(row.start), view.across(row.end)
    for y in (low, high):
        sheet.line("visible", [(left, y), (right, y)])
    for x, whole in ((left, row.first), (right, row.last)):
        if whole:
            sheet.line("visible", [(x, low), (x, high)])
        else:
            sheet.line("thin", break_line(x, low=low, high=high))
