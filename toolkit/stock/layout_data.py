"""A layout as data, in the published shape of ``workbook layout --json``; lengths in mm."""

from __future__ import annotations

from typing import Any

from toolkit.measures import Rule
from toolkit.stock.cuts import saw_cuts
from toolkit.stock.laid import BoxLaid, Laid, LaidPart


def layout_as_data(laid: BoxLaid, *, rule: Rule) -> dict[str, Any]:
    """A box on its boards in the published shape of ``workbook layout --json``. [mm]"""
    return {
        "boards": [_board(one, rule) for one in laid.boards],
        "looks": laid.looks,
        "proof": {"least": laid.least, "best": laid.least, "text": laid.proof(rule)},
        "missing": [blank.name for blank in laid.missing],
    }


def _board(laid: Laid, rule: Rule) -> dict[str, Any]:
    return {
        "name": laid.board.name,
        "used": laid.used,
        "pieces": [_piece(piece) for piece in laid.pieces],
        "cuts": [cut.sentence(rule) for cut in saw_cuts(laid)],
    }


def _piece(piece: LaidPart) -> dict[str, Any]:
    return {
        "part": piece.part,
        "x": piece.x,
        "y": piece.y,
        "length": piece.length,
        "width": piece.width,
    }
