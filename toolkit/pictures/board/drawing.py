"""A rough board true to scale: what is wrong with it, the parts on it, and the cuts to make."""

from __future__ import annotations

from toolkit.measures import Rule
from toolkit.pictures.board.chalked import draw_parts, draw_waste
from toolkit.pictures.board.figure import grain, heart_and_sap, sapwood
from toolkit.pictures.board.flaws import draw_flaw
from toolkit.pictures.board.naming import Words
from toolkit.pictures.board.rows import edges, rows_of, scale_of
from toolkit.pictures.board.sawing import DISC, clear_of, discs_of, draw_cuts
from toolkit.pictures.board.spaces import box_of, edges_of, piece_box
from toolkit.pictures.kit.edition import edition
from toolkit.pictures.kit.notes import many, title, unit_words
from toolkit.pictures.kit.picture import Picture
from toolkit.pictures.kit.sheet import PAPER_TEXT, Sheet
from toolkit.pictures.kit.view import rectangle
from toolkit.stock import Board, Laid, saw_cuts

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
    paper: bool = False,
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
    paper : bool
        Larger letters, for print.
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
    text = PAPER_TEXT if paper else edition().text
    scale, count = scale_of(board)
    cuts = saw_cuts(laid) if laid is not None else ()
    radius = DISC * text
    over = 10.0 + 4 * radius + 6.0 if cuts else 10.0
    under = 11.0 + 2 * text + 8.0 if cuts else 10.0
    apart = over + under
    head, foot = 30.0, 30.0
    height = head + foot + count * (board.width * scale + apart)
    sheet = Sheet(scale=scale, height=height, text=text)
    rows = rows_of(
        sheet, board, laid, top=height - head - over, apart=apart, scale=scale, rows=count
    )
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
    parts = [piece_box(piece) for piece in laid.pieces] if laid is not None else []
    discs = discs_of(rows, cuts, board, parts=parts, gap=laid.gap if laid is not None else 0.0)
    lines = [(cut.start[0], cut.end[0], cut.start[1], cut.end[1]) for cut in cuts]
    numbers = clear_of(discs)
    sides = [edge for box in parts for edge in edges_of(box)]
    words = Words(rows, board, lines=[*lines, *sides], numbers=numbers, parts=parts)
    if laid is not None:
        words.parts(laid)
        words.rips(discs, rule=rule)
    words.flaws()
    if board.heart_line:
        words.sapwood(used=laid.used if laid is not None else 0.0)
    if laid is not None:
        flaws = [box_of(defect) for defect in board.defects]
        draw_waste(rows, laid, clear=[*words.rooms, *flaws, *numbers])
        draw_parts(rows, laid, discs=discs)
        draw_cuts(rows, cuts, discs, board, rule=rule)
    if ghost is not None:
        for piece in ghost.pieces:
            box = piece_box(piece)
            shape = rectangle(box[:2], box[2:])
            sheet.name(f"ghost {piece.part}", shape)
            for row in rows:
                row.line("ghost", shape, closed=True)
    title(sheet, board.name, x=sheet.width / 2, y=height - 19.0)
    more = ", from the left end and from the lower edge" if cuts else ""
    unit_words(sheet, rule=rule, ghost=ghost is not None, more=more)
    return sheet.picture(_sentence(board, laid, rule, looks=looks), most=_MOST_LABELS)


def _sentence(board: Board, laid: Laid | None, rule: Rule, *, looks: bool) -> str:
    flaws = _flaws(board)
    if laid is None:

        def show(value: float) -> str:
            return rule.show(value, fineness="sizes", unit=False)

        size = " × ".join(show(side) for side in (board.length, board.width, board.thickness))
        return f"{board.name}: {board.species}, {size} {rule.units}, with {flaws}."
    text = laid.sentence(rule)
    if laid.sections:
        cuts = many(len(saw_cuts(laid)), word="saw cut")
        told = f"Looks {laid.looks:.2f} of 1, " if looks else ""
        text += f" {told}{cuts}; on the board {flaws}."
    return text


def _flaws(board: Board) -> str:
    """What is wrong with a board, counted by kind."""
    counts: dict[str, int] = {}
    for defect in board.defects:
        counts[defect.kind] = counts.get(defect.kind, 0) + 1
    said = [
        many(count, word=kind) if kind in _COUNTED else _NAMES.get(kind, kind)
        for kind, count in counts.items()
    ]
    return ", ".join(said) if said else "no defects"
