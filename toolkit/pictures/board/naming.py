"""Words on a board: names of parts, of defects and of the sapwood, and how far up a rip lies."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from math import pi

from toolkit.measures import Rule
from toolkit.pictures.board.rows import Box, Stretch, box_of, overlap, piece_box
from toolkit.pictures.board.sawing import Disc
from toolkit.pictures.kit import Point, Sheet, Slot, extent
from toolkit.pictures.kit.strokes import ARROW, HALF_ARROW, arrow_head
from toolkit.stock import Board, Laid, LaidPart, SawCut

SPARE = 2.2  # round words that stand in hatched wood [pt]
_AWAY = (3.5, 8.0, 14.0)  # from a defect to its name [pt]
_ARROW = 34.0  # length of an arrow along the grain [pt]
_LOW = 40.0  # parts lower than this have name and arrow side by side [pt]


def name_parts(rows: Sequence[Stretch], laid: Laid, *, numbers: Sequence[Box]) -> None:
    """A part's name in the middle of what shows of it, with an arrow along its grain."""
    for piece in laid.pieces:
        left, right, low, high = piece_box(piece)
        row = max(rows, key=lambda row: min(row.end, right) - max(row.start, left))
        _name_part(row, piece, (max(left, row.start), min(right, row.end), low, high), numbers)


def _name_part(row: Stretch, piece: LaidPart, box: Box, numbers: Sequence[Box]) -> None:
    sheet = row.view.sheet
    wide, under, over = extent(piece.part, size=sheet.text)
    free = _free(row, box, numbers)
    has_room = (free[1] - free[0]) * row.view.scale > wide + 4.0
    box = free if has_room else box
    (x0, y0), (x1, y1) = row.view.at(box[0], box[2]), row.view.at(box[1], box[3])
    x, y = (x0 + x1) / 2, (y0 + y1) / 2
    if y1 - y0 >= _LOW:
        long = min(_ARROW, x1 - x0 - 8.0)
        base, at, level = y + 2.0 - under, x, y - 6.0
    else:
        long = min(0.7 * _ARROW, x1 - x0 - wide - 14.0)
        # A little high: the size of a rip stands on the lower edge.
        base, level = y - (over + under) / 2 + 1.2, y + 1.2
        shift = (long + 6.0) / 2 if long > 2 * ARROW else 0.0
        x, at = x - shift, x + wide / 2 + 3.0
    fits = wide <= x1 - x0 - 4.0 and over - under <= y1 - y0 - 4.0
    sheet.write(piece.part, [Slot(x, base, "center")] if fits else [], rank=0, at=(x, y))
    if fits and has_room and long > 2 * ARROW:
        _arrow(sheet, at, level, long / 2)


def _free(row: Stretch, box: Box, numbers: Sequence[Box]) -> Box:
    """What the numbers of cuts leave of a part's length at half its width. [mm]"""
    left, right, low, high = box
    level, half = (low + high) / 2, 0.45 * row.view.sheet.text / row.view.scale
    band = (left, right, level - half, level + half)
    for number in numbers:
        if overlap(number, band):
            if number[0] + number[1] < left + right:
                left = max(left, number[1])
            else:
                right = min(right, number[0])
    return left, right, low, high


def _arrow(sheet: Sheet, x: float, y: float, half: float) -> None:
    sheet.line("chalk", [(x - half, y), (x + half, y)])
    for tip, turn in ((x - half, pi), (x + half, 0.0)):
        head, one, other = arrow_head((tip, y), turn=turn, half=2 * HALF_ARROW)
        sheet.line("chalk", [one, head, other])
    sheet.keep_off(1, (x - half, y - 2.0, x + half, y + 2.0))


def name_rips(board: Board, discs: Sequence[Disc], *, rule: Rule) -> None:
    """How far from the lower edge each rip lies, beside its number."""
    for disc in discs:
        cut = disc.cut
        if cut.kind == "rip":
            text = cut.on(rule)
            slots = _slots(disc.row, board, text, _along(disc, cut, _size(disc.row, text)))
            at = disc.row.view.at(min(cut.end[0], disc.row.end), cut.start[1])
            disc.row.view.sheet.write(text, slots, rank=2, at=at, kind="size")


def _along(disc: Disc, cut: SawCut, size: Point) -> Iterator[Point]:
    """Lower left corners over a rip and under it, from its number to its end."""
    (wide, high), scale = size, disc.row.view.scale
    start = (disc.at[0] + disc.radius + 3.0 - disc.row.view.x) / scale
    for i in range(12):
        left = start + 6.0 * i / scale
        if left + wide > cut.end[0]:
            return
        for gap in (2.6, 3.6, 4.6):
            yield left, cut.start[1] + gap / scale
            yield left, cut.start[1] - gap / scale - high


def name_flaws(rows: Sequence[Stretch], board: Board) -> None:
    """Name every defect where there is room beside it; of a kind at least the first."""
    seen: set[str] = set()
    for defect in board.defects:
        box, kind = box_of(defect), defect.kind
        middle = (box[0] + box[1]) / 2
        row = next(row for row in rows if middle <= row.end)
        slots = _slots(row, board, kind, _beside(box, _size(row, kind), row.view.scale))
        if kind in seen:
            row.view.sheet.write(kind, slots, kind="remark")
        else:
            row.view.sheet.write(kind, slots, at=row.view.at(middle, (box[2] + box[3]) / 2))
        seen.add(kind)


def name_sapwood(rows: Sequence[Stretch], board: Board, *, used: float) -> None:
    """Name the sapwood on wood that stays whole, in it or on a leader to it. [mm]"""
    slots: list[Slot] = []
    for row in (row for row in rows if row.end > used):
        start, (wide, high) = max(row.start, used), _size(row, "sapwood")
        corners = []
        for i in range(1, 12):
            x = start + (row.end - start) * i / 12
            heart = max(board.heart_at(at) or 0.0 for at in (x, x + wide))
            corners.append((x, (heart + board.width - high) / 2))
        slots += _slots(row, board, "sapwood", corners)
    row = max(rows, key=lambda row: row.end - max(row.start, used))
    x = 0.7 * max(row.start, used) + 0.3 * row.end
    heart = board.heart_at(x) or 0.0
    if row.end > used and 0.0 < heart < board.width:
        at = row.view.at(x, (heart + board.width) / 2)
        row.view.sheet.write("sapwood", slots, rank=4, at=at)


def _size(row: Stretch, text: str) -> Point:
    """Width and height of a word on the board. [mm]"""
    wide, under, over = extent(text, size=row.view.sheet.text)
    return wide / row.view.scale, (over - under) / row.view.scale


def _slots(row: Stretch, board: Board, text: str, corners: Iterable[Point]) -> list[Slot]:
    """Slots whose lower left corners keep a word on the board, off its heart line."""
    spare, (wide, high), found = SPARE / row.view.scale, _size(row, text), []
    under = extent(text, size=row.view.sheet.text)[1]
    for left, low in corners:
        room = (left - spare, left + wide + spare, low - spare, low + high + spare)
        on_board = row.start < left and left + wide < row.end and 0 < low < row.width - high
        hearts = (board.heart_at(x) for x in (room[0], (room[0] + room[1]) / 2, room[1]))
        struck = any(heart is not None and low < heart < low + high for heart in hearts)
        if on_board and not struck:
            x, y = row.view.at(left, low)
            found.append(Slot(x, y - under))
    return found


def _beside(box: Box, size: Point, scale: float) -> Iterator[Point]:
    """Lower left corners for words beside, over and under a box, the nearest first. [mm]"""
    wide, high = size
    x, y = (box[0] + box[1]) / 2, (box[2] + box[3]) / 2
    for away in _AWAY:
        gap = away / scale
        for up in (0.0, high, -high):
            yield box[1] + gap, y - high / 2 + up
            yield box[0] - gap - wide, y - high / 2 + up
        for low in (box[3] + gap, box[2] - gap - high):
            for left in (x - wide / 2, box[0], box[1] - wide):
                yield left, low
