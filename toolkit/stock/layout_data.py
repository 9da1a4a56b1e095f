"""A layout as data, in the published shape of ``workbook layout --json``; lengths in mm."""

from __future__ import annotations

from typing import Any

from toolkit.measures import Rule
from toolkit.stock.cuts import saw_cuts
from toolkit.stock.laid import BoxLaid, Laid, LaidPart


def layout_as_data(laid: BoxLaid, *, rule: Rule) -> dict[str, Any]:
    """A box on its boards as dictionaries and lists of numbers and text.

    Parameters
    ----------
    laid : BoxLaid
        The layout. [mm]
    rule : Rule
        Whose rule the cuts are told on.

    Returns
    -------
    dict
        ``boards``: every board of the rack, with what it gives; ``looks``: their mean, 0 to 1;
        ``proof``: the least length of board that any layout can do with, and the best found;
        ``missing``: names of the parts that no board has room for. [mm]

    Source
    ------
    The published shape of ``workbook layout --json``.
    """
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
