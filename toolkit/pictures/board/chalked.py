"""The parts chalked on a board, and the waste and the saw's gaps between them."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from toolkit.pictures.board.rows import Stretch
from toolkit.pictures.board.sawing import Disc, past
from toolkit.pictures.board.spaces import Box, piece_box, spaces_of, without
from toolkit.pictures.kit.figure_of_wood import hatch
from toolkit.pictures.kit.view import rectangle
from toolkit.stock import Laid

_SAME = 1e-6  # [mm]


def draw_parts(rows: Sequence[Stretch], laid: Laid, *, discs: Sequence[Disc]) -> None:
    """The outline of every part, broken at the numbers of cuts. [mm]"""
    for piece in laid.pieces:
        left, right, low, high = piece_box(piece)
        shape = rectangle((left, right), (low, high))
        rows[0].view.sheet.name(f"part {piece.part}", shape)
        for row in rows:
            seen = row.within(shape)
            for a, b in pairwise([*seen, *seen[:1]]):
                # Where the board is broken off, the part has no edge of its own.
                own = a[0] != b[0] or min(abs(a[0] - left), abs(a[0] - right)) < _SAME
                if a != b and own:
                    for line in past(row.view.at(*a), row.view.at(*b), discs):
                        row.view.sheet.line("part", line)


def draw_waste(rows: Sequence[Stretch], laid: Laid, *, clear: Sequence[Box]) -> None:
    """Waste hatched but for defects and their names, saw's gaps left white. [mm]"""
    sheet, count = rows[0].view.sheet, 0
    for box, gap in spaces_of(laid):
        count += not gap
        shape = rectangle(box[:2], box[2:])
        sheet.name("gap" if gap else f"waste {count}", shape)
        for row in rows:
            if gap:
                row.line("void", shape, closed=True)
                continue
            for free in without(box, clear):
                seen = row.within(rectangle(free[:2], free[2:]))
                if len(seen) > 2:
                    hatch(sheet, row.view.points(seen))
