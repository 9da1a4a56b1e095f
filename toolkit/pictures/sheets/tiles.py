"""A piece longer than the paper, over several pages: how it is cut up, and the marks that join it.

Neighbours overlap. In the middle of what they share runs a match line, with a letter of its own:
one of the two is cut there and laid over the other, line on line.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from math import ceil
from string import ascii_uppercase

from toolkit.pictures.kit.lettering import Anchor, Label, Slot
from toolkit.pictures.sheets.marks import TEXT, CutOut, Extent, Mark

OVERLAP = 20.0  # what two neighbours share [mm]
_OVER = 2.0  # how far a match line runs on beyond the piece [mm]
# Where along its line a letter may stand.
_SHARES = (0.5, 0.6, 0.4, 0.7, 0.3, 0.8, 0.2, 0.9, 0.1)


def letters(number: int) -> str:
    """A, B, … Z, AA, AB: the name of a match line.

    >>> letters(0), letters(25), letters(26)
    ('A', 'Z', 'AA')
    """
    before, left = divmod(number, 26)
    return (letters(before - 1) if before else "") + ascii_uppercase[left]


def stretches(low: float, high: float, *, room: float) -> list[tuple[float, float]]:
    """Equal stretches of a length that overlap and are each no longer than there is room.

    >>> stretches(0.0, 324.0, room=262.0)
    [(0.0, 172.0), (152.0, 324.0)]
    """
    whole = high - low
    if whole <= room + 1e-9:
        return [(low, high)]
    count = ceil((whole - OVERLAP) / (room - OVERLAP) - 1e-9)
    each = (whole - OVERLAP) / count + OVERLAP
    return [(low + i * (each - OVERLAP), low + i * (each - OVERLAP) + each) for i in range(count)]


def tiled(piece: CutOut, *, width: float, height: float, first: int) -> tuple[list[CutOut], int]:
    """A piece in as many parts as its paper needs, and the number of the next match line."""
    w = piece.window
    columns = stretches(w.left, w.right, room=width)
    rows = stretches(w.low, w.high, room=height)
    if len(columns) == len(rows) == 1:
        return [piece], first
    uprights = [letters(first + i) for i in range(len(columns) - 1)]
    levels = [letters(first + len(uprights) + i) for i in range(len(rows) - 1)]
    count, parts = len(columns) * len(rows), []
    for k, (low, high) in enumerate(rows):
        for i, (left, right) in enumerate(columns):
            joins = [
                *((*join, True) for join in _joins(columns, uprights, i)),
                *((*join, False) for join in _joins(rows, levels, k)),
            ]
            part = piece.within(Extent(left, right, low, high))
            marks, wishes = _matched(part, joins)
            number = k * len(columns) + i + 1
            name = f"{piece.name}, part {number} of {count}"
            named = ", ".join(dict.fromkeys(letter for _, letter, _, _ in joins))
            head, numbers = part.caption
            # The numbers are said on the first part alone.
            if number > 1:
                head, numbers = head.partition(":")[0], ""
            how = f"Cut on the match line and lay it on that of its neighbour: {named} on {named}."
            if len(joins) > 1:
                how = f"Cut on the match lines, lay each on its neighbour's: {named}."
            part = replace(
                part,
                name=name,
                caption=(head.replace(piece.name, name, 1), f"{numbers} {how}".strip()),
                marks=(*part.marks, *marks),
                wishes=(*part.wishes, *wishes),
            )
            parts.append(part)
    return parts, first + len(uprights) + len(levels)


def _joins(
    stretched: list[tuple[float, float]], named: list[str], i: int
) -> Iterator[tuple[float, str, int]]:
    """Where a stretch is joined to those beside it, and on which side of that it lies. [mm]"""
    for k, side in ((i - 1, 1), (i, -1)):
        if 0 <= k < len(named):
            yield (stretched[k][1] + stretched[k + 1][0]) / 2, named[k], side


def _matched(
    part: CutOut, joins: list[tuple[float, str, int, bool]]
) -> tuple[list[Mark], list[Label]]:
    """Match lines, and their letters on the side that is kept. [mm]"""
    w, marks, wishes = part.window, [], []
    for at, letter, side, upright in joins:
        places: list[Slot]
        if upright:
            marks.append(Mark("match", ((at, w.low - _OVER), (at, w.high + _OVER))))
            anchor: Anchor = "left" if side > 0 else "right"
            heights = [w.low + w.height * share for share in _SHARES]
            places = [Slot(at + side * off, z, anchor) for off in (1.5, 6.0) for z in heights]
        else:
            marks.append(Mark("match", ((w.left - _OVER, at), (w.right + _OVER, at))))
            level = at + 1.5 if side > 0 else at - 1.5 - 0.76 * TEXT
            places = [Slot(w.left + w.width * share, level, "center") for share in _SHARES]
        wishes.append(Label(letter, tuple(places), 0, TEXT))
    return marks, wishes
