"""What the parts leave of the wood that is used: waste, and gaps for the saw; all rectangles."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from toolkit.stock import Laid, LaidPart, LaidSection

# Left, right, low, high. [mm]
Box = tuple[float, float, float, float]

_NOISE = 1e-6


def piece_box(piece: LaidPart) -> Box:
    """Left, right, low, high of a part. [mm]"""
    return piece.x, piece.x + piece.length, piece.y, piece.y + piece.width


def edges_of(box: Box) -> list[Box]:
    """The four edges of a rectangle, as rectangles without a width."""
    left, right, low, high = box
    return [
        (left, right, low, low),
        (left, right, high, high),
        (left, left, low, high),
        (right, right, low, high),
    ]


def spaces(laid: Laid) -> Iterator[tuple[Box, bool]]:
    """Every rectangle of the used board that is no part, and whether it is but a saw's gap. [mm]"""
    high = laid.board.width
    stops = [0.0]
    for section in laid.sections:
        stops += [section.start, section.end]
    for left, right in zip(stops[::2], stops[1::2], strict=False):
        yield from _space((left, right, 0.0, high), right - left, laid.gap)
    for section in laid.sections:
        yield from _in_section(section, high, laid.gap)


def _in_section(section: LaidSection, high: float, gap: float) -> Iterator[tuple[Box, bool]]:
    levels = [0.0]
    for strip in section.strips:
        levels += [strip.low, strip.high]
    levels.append(high)
    for low, top in zip(levels[::2], levels[1::2], strict=True):
        yield from _space((section.start, section.end, low, top), top - low, gap)
    for strip in section.strips:
        # A part narrower than its strip leaves wood above itself.
        for piece in strip.pieces:
            top = piece.y + piece.width
            here = (piece.x, piece.x + piece.length, top, strip.high)
            yield from _space(here, strip.high - top, gap)
        ends = [section.start]
        for piece in strip.pieces:
            ends += [piece.x, piece.x + piece.length]
        ends.append(section.end)
        for left, right in zip(ends[::2], ends[1::2], strict=True):
            yield from _space((left, right, strip.low, strip.high), right - left, gap)


def _space(box: Box, across: float, gap: float) -> Iterator[tuple[Box, bool]]:
    if across > _NOISE:
        yield box, across <= gap + _NOISE


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
