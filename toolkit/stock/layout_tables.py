"""A layout in words and as data; lengths in mm."""

from __future__ import annotations

from typing import Any

from toolkit.measures import Rule
from toolkit.results import Table, TaggedSize
from toolkit.stock.blanks import sawn_by
from toolkit.stock.cuts import saw_cuts
from toolkit.stock.laid import BoxLaid, Laid, LaidPart, Point


def piece_table(laid: Laid, *, rule: Rule) -> Table:
    """Where every part lies on its board."""

    def show(value: float) -> str:
        return rule.show(value, fineness="sizes", unit=False)

    def sized(piece: LaidPart) -> tuple[TaggedSize, ...]:
        return sawn_by((piece.length, piece.width), rule=rule, of=piece.part).sizes

    rows = tuple((piece.part, show(piece.x), show(piece.y), *sized(piece)) for piece in laid.pieces)
    unit = rule.units
    return Table(
        f"Parts on {laid.board.name}",
        (
            "part",
            f"from the left end, {unit}",
            f"from the lower edge, {unit}",
            f"length, {unit}",
            f"width, {unit}",
        ),
        rows,
        note=laid.sentence(rule),
        numeric=(1, 2, 3, 4),
    )


def cut_table(laid: Laid, *, rule: Rule) -> Table:
    """The saw cuts of one board in order."""
    return Table(
        f"Saw cuts, {laid.board.name}",
        ("cut", "what to do"),
        tuple((str(cut.number), cut.sentence(rule)) for cut in saw_cuts(laid)),
        note=(
            "Mark every line before the first cut: the end that a size is measured from goes with "
            "it. Lines lie in the middle of the gap between two parts."
        ),
        numeric=(0,),
    )


def curve_sentence(laid: BoxLaid, *, rule: Rule) -> str:
    """The two ends of the trade-off, most economical and best figure."""

    def told(point: Point) -> str:
        used = rule.show(point.used, fineness="sizes", direction="up")
        return f"{used} of board with a figure of {point.looks:.2f} of 1"

    if len(laid.curve) < 2:
        return f"The most economical layout has the best figure too: {told(laid.curve[0])}."
    return (
        f"From the most economical, {told(laid.curve[0])}, to the best figure, "
        f"{told(laid.curve[-1])}."
    )


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
