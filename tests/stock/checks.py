"""What every layout must keep to, asked of the real board in millimetres and not of the grid."""

from collections.abc import Sequence
from itertools import combinations

from toolkit.stock import Blank, Board, Defect, Laid, LaidPart

NOISE = 1e-6


def apart(one: LaidPart, other: LaidPart, *, gap: float) -> bool:
    """Whether two parts lie at least a gap apart, along or across."""
    return (
        one.x + one.length + gap <= other.x + NOISE
        or other.x + other.length + gap <= one.x + NOISE
        or one.y + one.width + gap <= other.y + NOISE
        or other.y + other.width + gap <= one.y + NOISE
    )


def on_board(piece: LaidPart, board: Board) -> bool:
    return (
        piece.x >= -NOISE
        and piece.y >= -NOISE
        and piece.x + piece.length <= board.length + NOISE
        and piece.y + piece.width <= board.width + NOISE
    )


def touches(piece: LaidPart, board: Board, *, margin: float) -> list[Defect]:
    """Defects that a part comes nearer than the margin."""
    return [
        defect
        for defect in board.defects
        if piece.x < defect.to_along + margin - NOISE
        and piece.x + piece.length > defect.from_along - margin + NOISE
        and piece.y < defect.to_across + margin - NOISE
        and piece.y + piece.width > defect.from_across - margin + NOISE
    ]


def assert_legal(laid: Laid, *, margin: float = 3.0) -> None:
    """On the board, off the defects, a gap apart."""
    for piece in laid.pieces:
        assert on_board(piece, laid.board), piece
        assert not touches(piece, laid.board, margin=margin), piece
        assert piece.x + piece.length <= laid.used + NOISE, piece
    for one, other in combinations(laid.pieces, 2):
        assert apart(one, other, gap=laid.gap), (one, other)


def assert_complete(boards: Sequence[Laid], blanks: Sequence[Blank], missing: Sequence[Blank]):
    """Every part is laid once, in its own size, or is told to be missing."""
    wanted = {blank.name: (blank.length, blank.width) for blank in blanks}
    found = [piece for laid in boards for piece in laid.pieces]
    names = [piece.part for piece in found] + [blank.name for blank in missing]
    assert sorted(names) == sorted(wanted)
    for piece in found:
        assert (piece.length, piece.width) == wanted[piece.part]
