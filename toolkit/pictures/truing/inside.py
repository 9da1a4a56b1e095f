"""The true board inside a warped one: along its length and across its middle."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from contextlib import suppress
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from toolkit.measures import Rule
from toolkit.pictures.kit import Picture, Point, Sheet, Slot, rectangle
from toolkit.pictures.kit.notes import title, unit_words, units_said
from toolkit.pictures.kit.strokes import hatch, points_of
from toolkit.truing import SAW_MARKS, Warp, face_of, thickest_board

Floats = NDArray[np.float64]
Cut = tuple[Floats, list[Floats]]

HEIGHT, ALONE = 330.0, 196.0  # of two boards, and of one [pt]
LEFT, WIDE = 40.0, 330.0  # the board along the page [pt]
ACROSS, NARROW = 420.0, 92.0  # and its section [pt]
ROWS = (232.0, 96.0)  # middle of the rough board and of the piece [pt]
ROOM = 84.0  # up the page for each [pt]
TIMES = (20, 15, 10, 8, 6, 5, 4, 3, 2, 1)
_GRID = (41, 21)


def board_inside(
    whole: Warp,
    *,
    piece: Warp | None = None,
    thickness: float,
    wanted: float,
    rule: Rule,
    sentence: str,
    ghost: Warp | None = None,
    ghost_piece: Warp | None = None,
) -> Picture:
    """Draw the thickest true board in a rough one, and in a piece that was cut from it first.

    Parameters
    ----------
    whole : Warp
        The rough board. [mm]
    piece : Warp, optional
        What is cut from it before any planing. [mm]
    thickness : float
        Of the rough board. [mm]
    wanted : float
        Thickness of the part to be made. [mm]
    rule : Rule
        Whose rule the sizes are read on.
    sentence : str
        What it comes to, from the room that reckons it.
    ghost, ghost_piece : Warp, optional
        The rough board and the piece as they were kept, of the same thickness. [mm]

    Returns
    -------
    Picture
        Both from the side and across the middle, heights drawn larger by a factor that is told;
        what is planed away is hatched.
    """
    height = HEIGHT if piece is not None else ALONE
    scale = WIDE / whole.length
    sheet = Sheet(scale=scale, height=height)
    reach = thickness + 2 * (abs(whole.bow) + abs(whole.cup)) + abs(whole.twist)
    times = next((n for n in TIMES if reach * scale * n <= ROOM), 1)
    rows = [("the rough board", whole, ghost, ROWS[0] - (HEIGHT - height))]
    if piece is not None:
        rows.append(("crosscut first", piece, ghost_piece, ROWS[1]))
    for name, warp, before, middle in rows:
        thick, cuts = _cuts(warp, thickness)
        left_over = thick - 2 * SAW_MARKS
        enough = left_over >= wanted
        _board(sheet, _on_page(warp, cuts, middle, scale, times), enough=enough)
        sheet.name(name, rectangle((0.0, warp.length), (0.0, thick))[:3])
        text = f"{name}: {rule.exact(round(max(left_over, 0.0), 2), unit=False)} left"
        text += f" after saw marks, {rule.exact(wanted, unit=False)} wanted"
        sheet.write(text, [Slot(LEFT, middle - ROOM / 2 - 12.0)], rank=0, red=not enough)
        if before is not None:
            for lines in _on_page(before, _cuts(before, thickness)[1], middle, scale, times):
                for shape in _shapes(lines):
                    sheet.line("ghost", shape, closed=True)
    title(sheet, "along the middle", x=LEFT + WIDE / 2, y=height - 22.0)
    title(sheet, "across the middle", x=ACROSS + NARROW / 2, y=height - 22.0)
    said = f"heights drawn × {times}; hatched: to be planed; {units_said(rule)}"
    dotted = "dotted: before; " if ghost is not None or ghost_piece is not None else ""
    unit_words(sheet, rule=rule, instead=dotted + said)
    return sheet.picture(sentence)


@lru_cache(maxsize=64)
def _cuts(warp: Warp, thickness: float) -> tuple[float, list[Cut]]:
    """A warped board along its middle and across it, and how thick the true board in it is. [mm]

    Each cut has places, and over them heights about the board's middle: of upper and lower face,
    then of the true board's if there is one.
    """
    along, across = _GRID
    face = face_of(warp, thickness=thickness, along=along, across=across)
    x, y, top = (row.reshape(_GRID) for row in (face.x, face.y, face.height))
    heights, thick = [top, top - thickness], 0.0
    with suppress(ValueError):  # more warp than wood: there is no true board to draw
        best = thickest_board(x=face.x, y=face.y, top=face.height, bottom=face.bottom)
        a, b, c = best.plane
        true, thick = a * x + b * y + c, best.thickness
        heights += [true, true - best.upright]
    low = float(top.mean()) - thickness / 2
    long, wide = np.s_[:, across // 2], np.s_[along // 2]
    return thick, [
        (places[way] - places.min(), [row[way] - low for row in heights])
        for places, way in ((x, long), (y, wide))
    ]


def _on_page(
    warp: Warp, cuts: Sequence[Cut], middle: float, scale: float, times: int
) -> Iterator[list[list[Point]]]:
    """The lines of both cuts. [mm to pt]"""
    left = LEFT + (WIDE - warp.length * scale) / 2
    steps = (left, scale), (ACROSS, NARROW / max(warp.width, 1e-6))
    for (places, heights), (start, step) in zip(cuts, steps, strict=True):
        yield [points_of(start + places * step, middle + z * scale * times) for z in heights]


def _shapes(lines: Sequence[list[Point]]) -> Iterator[list[Point]]:
    """The outline of a cut, and that of the true board if there is one. [pt]"""
    for upper, lower in zip(lines[::2], lines[1::2], strict=True):
        yield [*upper, *reversed(lower)]


def _board(sheet: Sheet, cuts: Iterable[list[list[Point]]], *, enough: bool) -> None:
    """One board: its two sections with the true board in them."""
    for fill, lines in zip(("face", "end"), cuts, strict=True):
        outline, *true = _shapes(lines)
        sheet.line(fill, outline, closed=True)
        if true:
            # What lies between rough and true, if there is anything to see.
            for upper, lower in ((lines[0], lines[2]), (lines[3], lines[1])):
                if max(a[1] - b[1] for a, b in zip(upper, lower, strict=True)) > 0.3:
                    hatch(sheet, [*upper, *reversed(lower)])
            sheet.line("visible" if enough else "wrong", true[0], closed=True)
        sheet.line("thin", outline, closed=True)
