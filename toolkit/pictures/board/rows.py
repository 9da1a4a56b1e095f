"""A long board in one row of the page or, broken, in several; and what its parts leave of it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from toolkit.pictures.kit import PartView, Point, Sheet, upright_band
from toolkit.pictures.kit.strokes import break_line
from toolkit.stock import Board, Defect, Laid, LaidPart

# Left, right, low, high. [mm]
Box = tuple[float, float, float, float]

_NOISE = 1e-6


def piece_box(piece: LaidPart) -> Box:
    """Left, right, low, high of a part. [mm]"""
    return piece.x, piece.x + piece.length, piece.y, piece.y + piece.width


def box_of(defect: Defect) -> Box:
    """Left, right, low, high of what a defect spoils. [mm]"""
    return defect.from_along, defect.to_along, defect.from_across, defect.to_across


def spaces_of(laid: Laid) -> Iterator[tuple[Box, bool]]:
    """Every rectangle of the used board that is no part, and whether it is but a saw's gap. [mm]"""
    for box, across in _spaces(laid):
        if across > _NOISE:
            yield box, across <= laid.gap + _NOISE


def _between(spans: Iterable[tuple[float, float]], start: float, end: float) -> Iterator[Point]:
    """What some stretches leave free of one, in their order."""
    for low, high in (*spans, (end, end)):
        yield start, low
        start = high


def _spaces(laid: Laid) -> Iterator[tuple[Box, float]]:
    """The same with how far each reaches across its gap, however little. [mm]"""
    width, sections = laid.board.width, [(row.start, row.end) for row in laid.sections]
    for left, right in _between(sections, 0.0, laid.used):
        yield (left, right, 0.0, width), right - left
    for section in laid.sections:
        strips = [(strip.low, strip.high) for strip in section.strips]
        for low, high in _between(strips, 0.0, width):
            yield (section.start, section.end, low, high), high - low
        for strip in section.strips:
            boxes = [piece_box(piece) for piece in strip.pieces]
            # A part narrower than its strip leaves wood above itself.
            for left, right, _, high in boxes:
                yield (left, right, high, strip.high), strip.high - high
            lengths = [(left, right) for left, right, _, _ in boxes]
            for left, right in _between(lengths, section.start, section.end):
                yield (left, right, strip.low, strip.high), right - left


def without(box: Box, holes: Sequence[Box]) -> list[Box]:
    """A rectangle less some others, as rectangles."""
    left = [box]
    for x0, x1, y0, y1 in holes:
        rest: list[Box] = []
        for a, b, c, d in left:
            if x1 <= a or x0 >= b or y1 <= c or y0 >= d:
                rest.append((a, b, c, d))
                continue
            low, high = max(c, y0), min(d, y1)
            pieces = [(a, b, c, low), (a, b, high, d), (a, x0, low, high), (x1, b, low, high)]
            rest += [row for row in pieces if row[1] > row[0] and row[3] > row[2]]
        left = rest
    return left


def overlap(one: Box, other: Box) -> bool:
    """Whether two rectangles overlap; a line may lie in one."""
    return one[0] < other[1] and other[0] < one[1] and one[2] < other[3] and other[2] < one[3]


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
class Stretch:
    """A stretch of the board on the page, from ``start`` to ``end``. [mm]"""

    view: PartView
    start: float
    end: float
    width: float
    first: bool
    last: bool
    clip: int

    def has(self, left: float, right: float) -> bool:
        """Whether something from here to there shows in this row. [mm]"""
        return left < self.end and right > self.start

    def line(self, pen: str, points: Sequence[Point], *, closed: bool = False) -> None:
        """A line, or an area for a pen that fills, kept to this row. [mm]"""
        if self.has(min(x for x, _ in points), max(x for x, _ in points)):
            self.view.sheet.line(pen, self.view.points(points), closed=closed, clip=self.clip)

    def on_board(self, page: Box) -> Box:
        """A box of the page on the board: left, right, low, high. [pt to mm]"""
        (left, right, low, high), view = page, self.view
        x0, x1 = ((x - view.x) / view.scale for x in (left, right))
        y0, y1 = ((y - view.y) / view.scale for y in (low, high))
        return x0, x1, y0, y1

    def on_page(self, board: Box) -> tuple[float, float, float, float]:
        """A box of the board on the page: x0, y0, x1, y1. [mm to pt]"""
        left, right, low, high = board
        return *self.view.at(left, low), *self.view.at(right, high)

    def within(self, shape: Sequence[Point]) -> list[Point]:
        """What of a convex shape lies in this row. [mm]"""
        return upright_band(shape, left=self.start, right=self.end)


def scale_of(board: Board) -> tuple[float, int]:
    """Scale [pt/mm] and number of rows in which a board is drawn, whatever lies on it."""
    for rows in range(1, _MOST_ROWS + 1):
        # A row may be longer than its share, where its break goes round a part.
        share = 1.0 if rows == 1 else (1 + _SHIFT) / rows
        scale = min(ROOM / (board.length * share), WIDE / board.width, _MOST)
        if scale >= _LEAST:
            break
    return scale, rows


def breaks(board: Board, laid: Laid, *, rows: int) -> list[float]:
    """Where each row begins and ends: just past a section of the layout where one is near. [mm]"""
    each = board.length / rows
    ends = [section.end + laid.gap + _SLIVER for section in laid.sections]
    inner = []
    for i in range(1, rows):
        wanted = i * each
        near = min(ends, key=lambda x: abs(x - wanted), default=wanted)
        goes_round = wanted < laid.used and abs(near - wanted) <= _SHIFT / 2 * each
        inner.append(near if goes_round else wanted)
    return [0.0, *inner, board.length]


def rows_of(
    sheet: Sheet,
    board: Board,
    laid: Laid,
    *,
    top: float,
    apart: float,
    scale: float,
    rows: int,
) -> list[Stretch]:
    """The rows of a board, the first with its upper edge at ``top``. [pt]"""
    made = []
    stops = breaks(board, laid, rows=rows)
    for i, (start, end) in enumerate(pairwise(stops)):
        low = top - board.width * scale - i * (board.width * scale + apart)
        view = PartView(sheet, LEFT - start * scale, low, scale)
        left, right = _ends(view, board, start, end)
        clip = sheet.within([*right, *reversed(left)])
        made.append(Stretch(view, start, end, board.width, i == 0, i == rows - 1, clip))
    return made


def _ends(
    view: PartView, board: Board, start: float, end: float
) -> tuple[list[Point], list[Point]]:
    """The two ends of a row, from its lower edge up: broken where the board goes on. [pt]"""
    low, high = view.up(0.0), view.up(board.width)
    left, right = (
        break_line(view.across(x), low=low, high=high)
        if broken
        else [(view.across(x), low), (view.across(x), high)]
        for x, broken in ((start, start > 0), (end, end < board.length))
    )
    return left, right


def edges(row: Stretch, board: Board) -> None:
    """The board's own edges heavy, breaks thin."""
    view, sheet = row.view, row.view.sheet
    for y in (0.0, row.width):
        view.line("visible", (row.start, y), (row.end, y))
    ends = _ends(view, board, row.start, row.end)
    for whole, line in zip((row.first, row.last), ends, strict=True):
        sheet.line("visible" if whole else "thin", line)
