"""The parts chalked on a board, and the waste and the saw's gaps between them."""

from __future__ import annotations

from collections.abc import Sequence

from toolkit.pictures.board.rows import Row
from toolkit.pictures.board.sawing import Disc, past
from toolkit.pictures.board.spaces import Box, piece_box, spaces, without
from toolkit.pictures.kit.figure_of_wood import hatch
from toolkit.pictures.kit.picture import Point
from toolkit.pictures.kit.view import rectangle
from toolkit.stock import Laid, LaidPart


def draw_parts(rows: Sequence[Row], laid: Laid, *, discs: Sequence[Disc]) -> None:
    """The outline of every part, broken at the numbers of cuts. [mm]"""
    sheet = rows[0].view.sheet
    for piece in laid.pieces:
        left, right, low, high = piece_box(piece)
        shape = rectangle((left, right), (low, high))
        sheet.name(f"part {piece.part}", shape)
        for row in rows:
            seen = row.view.points(row.within(shape))
            for a, b in zip(seen, [*seen[1:], *seen[:1]], strict=True):
                # Where the board is broken off, the part has no edge of its own.
                if _own_edge(row, a, b, piece):
                    for line in past(a, b, discs):
                        sheet.line("part", line)


def _own_edge(row: Row, a: Point, b: Point, piece: LaidPart) -> bool:
    """Whether a line is an edge of the part and not of the row. [pt]"""
    ends = {round(row.view.across(x), 6) for x in (piece.x, piece.x + piece.length)}
    return a != b and (a[0] != b[0] or round(a[0], 6) in ends)


def draw_waste(rows: Sequence[Row], laid: Laid, *, clear: Sequence[Box]) -> None:
    """Waste hatched but for defects and their names, saw's gaps left white. [mm]"""
    sheet = rows[0].view.sheet
    count = 0
    for box, gap in spaces(laid):
        shape = rectangle(box[:2], box[2:])
        if gap:
            sheet.name("gap", shape)
            for row in rows:
                row.fill("void", shape)
            continue
        count += 1
        sheet.name(f"waste {count}", shape)
        for left, right, low, high in without(box, clear):
            for row in rows:
                seen = row.within(rectangle((left, right), (low, high)))
                if len(seen) > 2:
                    hatch(sheet, row.view.points(seen))
