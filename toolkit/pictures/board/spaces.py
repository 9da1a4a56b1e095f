"""What the parts leave of the wood that is used: waste, and gaps for the saw; all rectangles."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from toolkit.pictures.kit.picture import Point
from toolkit.stock import Defect, Laid, LaidPart

# Left, right, low, high. [mm]
Box = tuple[float, float, float, float]

_NOISE = 1e-6


def piece_box(piece: LaidPart) -> Box:
    """Left, right, low, high of a part. [mm]"""
    return piece.x, piece.x + piece.length, piece.y, piece.y + piece.width


def box_of(defect: Defect) -> Box:
    """Left, right, low, high of what a defect spoils. [mm]"""
    return defect.from_along, defect.to_along, defect.from_across, defect.to_across


def edges_of(box: Box) -> list[Box]:
    """The four edges of a rectangle, as rectangles without a width."""
    left, right, low, high = box
    level = [(left, right, y, y) for y in (low, high)]
    return [*level, *((x, x, low, high) for x in (left, right))]


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
