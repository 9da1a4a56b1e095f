"""Saw cuts on a board: a line through each, its number in a circle, and the sizes to mark it by."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import dist, hypot, sqrt

from toolkit.measures import Rule
from toolkit.pictures.board.rows import BREAK, Box, Stretch
from toolkit.pictures.kit import Point, Slot
from toolkit.pictures.kit.strokes import arrow_head, circle, fill, spread
from toolkit.stock import Board, SawCut

# A line passes the edge by so much; figures stand so far below the board. [pt]
_PAST, _BELOW = 6.0, 11.0
DISC = 0.8  # radius of the circle round a cut's number, of the size of letters
_HALO = 1.2  # between a circle and the lines that stop at it [pt]


@dataclass(frozen=True, slots=True)
class Disc:
    """The number of a cut, in which row, and where its circle stands on the page. [pt]"""

    cut: SawCut
    row: Stretch
    at: Point
    radius: float


def discs_of(
    rows: Sequence[Stretch],
    cuts: Sequence[SawCut],
    board: Board,
    *,
    parts: Sequence[Box],
    gap: float,
) -> list[Disc]:
    """Where the numbers of the cuts stand: over the board, or on their lines inside it. [pt]"""
    radius = rows[0].view.sheet.text * DISC
    found: list[Disc] = []
    # Rips have the most freedom to give way, so they come last.
    for cut in sorted(cuts, key=lambda cut: cut.kind == "rip"):
        row = _row(rows, cut)
        spots = list(_spots(row, cut, board, radius, between=_between(cut, parts, gap)))
        free = (at for at in spots if all(dist(at, disc.at) > 2 * radius + 1.0 for disc in found))
        found.append(Disc(cut, row, next(free, spots[0]), radius))
    return sorted(found, key=lambda disc: disc.cut.number)


def _spots(
    row: Stretch, cut: SawCut, board: Board, radius: float, *, between: bool
) -> Iterator[Point]:
    """Where the number of a cut may stand, the best first. [pt]"""
    (x, y), (right, top) = row.view.at(*cut.start), row.view.at(*cut.end)
    if _whole(cut, board):
        yield from ((x, top + _PAST + radius + level * (2 * radius + 1.5)) for level in (0, 1))
        return
    # Next to an edge or a break a number gives way inwards, so that no line runs through it.
    left, right = max(x, row.view.across(row.start)), min(right, row.view.across(row.end))
    far = 0.75 * radius
    low, high = row.view.up(0.0) + far, row.view.up(row.width) - far
    if cut.kind == "rip":
        steps = max(1, int((right - left - 2 * radius - 8.0) / 6.0) + 1)
        level = min(max(y, low), high)
        yield from ((left + radius + 4.0 + 6.0 * i, level) for i in range(steps))
        return
    far = radius + (0.0 if row.first and row.last else BREAK)
    x = min(max(x, row.view.across(row.start) + far), row.view.across(row.end) - far)
    # Between two parts of a run, their names need the middle.
    levels = (top, y, (y + top) / 2) if between else ((y + top) / 2, top, y)
    yield from ((x, min(max(level, low), high)) for level in levels)


def _between(cut: SawCut, parts: Sequence[Box], gap: float) -> bool:
    """Whether parts lie on both sides of a cut, no farther than its gap, in its strip. [mm]"""
    x, (low, high) = cut.start[0], (cut.start[1], cut.end[1])
    beside = [part for part in parts if part[2] >= low - 1e-6 and part[3] <= high + 1e-6]
    return all(
        any(0 <= far <= gap for far in side)
        for side in ((x - part[1] for part in beside), (part[0] - x for part in beside))
    )


def _row(rows: Sequence[Stretch], cut: SawCut) -> Stretch:
    """The row in which the most of a cut shows."""
    left, right = cut.start[0], cut.end[0]
    return max(rows, key=lambda row: min(row.end, right + 0.1) - max(row.start, left - 0.1))


def clear_of(discs: Sequence[Disc], *, spare: float = 1.0) -> list[Box]:
    """The squares that numbers inside the board take of it. [mm]"""
    boxes = []
    for disc in discs:
        view, (x, y), far = disc.row.view, disc.at, disc.radius + spare
        if view.up(0.0) - far < y < view.up(disc.row.width) + far:
            boxes.append(disc.row.on_board((x - far, x + far, y - far, y + far)))
    return boxes


def past(a: Point, b: Point, discs: Sequence[Disc]) -> list[tuple[Point, Point]]:
    """What of a straight line lies clear of every circle. [pt]"""
    spans = [(0.0, 1.0)]
    dx, dy = b[0] - a[0], b[1] - a[1]
    long = hypot(dx, dy)
    for disc in discs:
        x, y = disc.at[0] - a[0], disc.at[1] - a[1]
        along, off = (x * dx + y * dy) / long, abs(x * dy - y * dx) / long
        clear = disc.radius + _HALO
        if off >= clear:
            continue
        half = sqrt(clear**2 - off**2)
        start, end = (along - half) / long, (along + half) / long
        pieces = [
            (u, v)
            for low, high in spans
            for u, v in ((low, min(high, start)), (max(low, end), high))
        ]
        spans = [(u, v) for u, v in pieces if v > u]
    return [((a[0] + u * dx, a[1] + u * dy), (a[0] + v * dx, a[1] + v * dy)) for u, v in spans]


def draw_cuts(
    rows: Sequence[Stretch],
    cuts: Sequence[SawCut],
    discs: Sequence[Disc],
    board: Board,
    *,
    rule: Rule,
) -> None:
    """Every cut with its number, in the order of sawing, and its size. [mm]"""
    sheet = rows[0].view.sheet
    for disc in discs:
        cut, row = disc.cut, disc.row
        sheet.name(f"cut {cut.number}", [cut.start, cut.end])
        around, (x, y) = circle(disc.at, disc.radius, count=28), disc.at
        fill(sheet, around, "disc", "disc edge")
        sheet.write(str(cut.number), [Slot(x, y - 0.365 * sheet.text, "center")], rank=-1)
        for other in rows:
            if _whole(cut, board) and other is row:
                x = row.view.across(cut.start[0])
                ends = (x, row.view.up(0.0) - _PAST), (x, disc.at[1] - disc.radius)
            elif other.has(cut.start[0] - 0.1, cut.end[0] + 0.1):
                left, right = max(cut.start[0], other.start), min(cut.end[0], other.end)
                ends = other.view.at(left, cut.start[1]), other.view.at(right, cut.end[1])
            else:
                continue
            for piece in past(*ends, discs):
                sheet.line("saw", piece)
    for row in rows:
        here = [cut for cut in cuts if _whole(cut, board) and _row(rows, cut) is row]
        if here:
            _running(row, here, rule)


def _whole(cut: SawCut, board: Board) -> bool:
    """Whether a cut goes right across the board."""
    return cut.kind == "crosscut" and abs(cut.end[1] - cut.start[1]) >= board.width - 1e-6


def _running(row: Stretch, cuts: Sequence[SawCut], rule: Rule) -> None:
    """Sizes from the board's left end: running dimensions, ISO 129-1:2018 (from memory)."""
    view, sheet = row.view, row.view.sheet
    level = view.up(0.0) - _BELOW
    left = view.across(row.start)
    sheet.line("dimension", [(left, level), (view.across(cuts[-1].start[0]), level)])
    if row.first:
        fill(sheet, circle((left, level), 1.6, count=12), "void", "dimension")
        sheet.line("dimension", [(left, view.up(0.0) - 1.8), (left, level - 2.2)])
    for cut in cuts:
        x = view.across(cut.start[0])
        sheet.line("arrow", arrow_head((x, level), turn=0.0), closed=True)
        sheet.line("dimension", [(x, level + 1.0), (x, level - 2.2)])
        text = cut.on(rule)
        drop = 0.76 * sheet.text
        levels = (level - 4.5 - drop, level - 7.5 - 2 * drop)
        spots = spread(x, levels, (0.0, 4.0, -4.0, 8.0, -8.0))
        sheet.write(text, spots, rank=1)
