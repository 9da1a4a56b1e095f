"""A rough board true to scale: what is wrong with it, the parts on it, and the cuts to make."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from itertools import pairwise

from toolkit.measures import Rule
from toolkit.pictures.board.naming import SPARE, name_flaws, name_parts, name_rips, name_sapwood
from toolkit.pictures.board.rows import (
    Box,
    Stretch,
    box_of,
    edges,
    piece_box,
    rows_of,
    scale_of,
    spaces_of,
    without,
)
from toolkit.pictures.board.sawing import DISC, Disc, clear_of, discs_of, draw_cuts, past
from toolkit.pictures.board.wood import draw_flaw, grain, heart_and_sap, sapwood
from toolkit.pictures.kit import Picture, Sheet, rectangle
from toolkit.pictures.kit.lettering import edition
from toolkit.pictures.kit.notes import many, title, unit_words
from toolkit.pictures.kit.strokes import hatch
from toolkit.stock import Board, Laid, saw_cuts

_HEAD, _FOOT = 30.0, 30.0  # over and under the board [pt]
_SAME = 1e-6  # [mm]
# Every cut has its number and its size, every part and every defect its name.
_MOST_LABELS = 70
# Of wane or stain a board has some; these come one by one.
_COUNTED = ("knot", "loose knot", "end check", "split", "shake", "bark pocket", "gum pocket")
_NAMES = {"other": "something else"}


def board_picture(
    board: Board,
    laid: Laid | None = None,
    *,
    rule: Rule,
    ghost: Laid | None = None,
    looks: bool = True,
) -> Picture:
    """Draw a rough board with its defects and, where it is laid out, its parts and saw cuts.

    A long board goes over two or three rows, broken where no part lies if that is near.

    Parameters
    ----------
    board : Board
        The board. [mm]
    laid : Laid, optional
        The parts on it; without it the board is drawn as it came. [mm]
    rule : Rule
        Whose rule the sizes are read on.
    ghost : Laid, optional
        An earlier layout, drawn thinly behind. [mm]
    looks : bool
        Whether the sentence tells how well the parts look.

    Returns
    -------
    Picture
        The board in true proportion.

    Source
    ------
    The layout and its saw cuts. Running dimensions after ISO 129-1 (from memory).
    """
    on = laid or Laid(board, 0.0, 0.0)
    text = edition().text
    scale, count = scale_of(board)
    cuts = saw_cuts(on)
    over, under = (16.0 + 4 * DISC * text, 19.0 + 2 * text) if cuts else (10.0, 10.0)
    apart = over + under
    height = _HEAD + _FOOT + count * (board.width * scale + apart)
    sheet = Sheet(scale=scale, height=height, text=text)
    rows = rows_of(
        sheet, board, on, top=height - _HEAD - over, apart=apart, scale=scale, rows=count
    )
    _wood(rows, board)
    parts = [piece_box(piece) for piece in on.pieces]
    discs = discs_of(rows, cuts, board, parts=parts, gap=on.gap)
    numbers = clear_of(discs)
    flaws = [box_of(defect) for defect in board.defects]
    for row in rows:
        sheet.keep_off(1, *(row.on_page(box) for box in (*flaws, *numbers)))
        # Of what is wrong, and of sapwood, nothing is written on a part.
        sheet.keep_off(3, *(row.on_page(box) for box in parts))
    _parts(rows, on, discs=discs)
    draw_cuts(rows, cuts, discs, board, rule=rule)
    name_parts(rows, on, numbers=numbers)
    name_rips(board, discs, rule=rule)
    name_flaws(rows, board)
    if board.heart_line:
        name_sapwood(rows, board, used=on.used)
    for piece in ghost.pieces if ghost is not None else ():
        box = piece_box(piece)
        shape = rectangle(box[:2], box[2:])
        sheet.name(f"ghost {piece.part}", shape)
        for row in rows:
            row.line("ghost", shape, closed=True)
    title(sheet, board.name, x=sheet.width / 2, y=height - 19.0)
    more = ", from the left end and from the lower edge" if cuts else ""
    unit_words(sheet, rule=rule, ghost=ghost is not None, more=more)
    placed = sheet.settle(most=_MOST_LABELS)
    for row in rows:
        words = [
            row.on_board((x0 - SPARE, x1 + SPARE, y0 - SPARE, y1 + SPARE))
            for _, _, (x0, y0, x1, y1) in placed
        ]
        _waste(row, on, clear=[*words, *flaws, *numbers])
    return sheet.picture(_sentence(board, laid, rule, looks=looks))


def _wood(rows: Sequence[Stretch], board: Board) -> None:
    """The board as it came. [mm]"""
    sheet = rows[0].view.sheet
    sheet.name("board", rectangle((0.0, board.length), (0.0, board.width)))
    if board.heart_line:
        sheet.name("sapwood", sapwood(board))
    for i, defect in enumerate(board.defects, 1):
        box = box_of(defect)
        sheet.name(f"defect {i}: {defect.kind}", rectangle(box[:2], box[2:]))
    for row in rows:
        heart_and_sap(row, board)
        grain(row, board)
        for defect in board.defects:
            draw_flaw(row, defect, board)
        edges(row, board)


def _parts(rows: Sequence[Stretch], laid: Laid, *, discs: Sequence[Disc]) -> None:
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


def _waste(row: Stretch, laid: Laid, *, clear: Sequence[Box]) -> None:
    """Waste hatched but for defects and words, saw's gaps left white. [mm]"""
    sheet, count = row.view.sheet, 0
    for box, gap in spaces_of(laid):
        count += not gap
        shape = rectangle(box[:2], box[2:])
        if row.first:
            sheet.name("gap" if gap else f"waste {count}", shape)
        if gap:
            row.line("void", shape, closed=True)
            continue
        for free in without(box, clear):
            seen = row.within(rectangle(free[:2], free[2:]))
            if len(seen) > 2:
                hatch(sheet, row.view.points(seen))


def _sentence(board: Board, laid: Laid | None, rule: Rule, *, looks: bool) -> str:
    flaws = _flaws(board)
    if laid is None:
        sides = (board.length, board.width, board.thickness)
        size = " × ".join(rule.show(side, fineness="sizes", unit=False) for side in sides)
        return f"{board.name}: {board.species}, {size} {rule.units}, with {flaws}."
    text = laid.sentence(rule)
    if laid.sections:
        cuts = many(len(saw_cuts(laid)), word="saw cut")
        told = f"Figure {laid.looks:.2f} of 1, " if looks else ""
        text += f" {told}{cuts}; on the board {flaws}."
    return text


def _flaws(board: Board) -> str:
    """What is wrong with a board, counted by kind."""
    counts = Counter(defect.kind for defect in board.defects)
    said = [
        many(count, word=kind) if kind in _COUNTED else _NAMES.get(kind, kind)
        for kind, count in counts.items()
    ]
    return ", ".join(said) if said else "no defects"
