"""The true board inside a warped one: along its length and across its middle."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import suppress
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from toolkit.measures import Rule
from toolkit.pictures.kit.figure_of_wood import hatch
from toolkit.pictures.kit.lettering import Place
from toolkit.pictures.kit.notes import title, unit_words, units_said
from toolkit.pictures.kit.picture import Picture, Point
from toolkit.pictures.kit.sheet import PAPER_TEXT, TEXT, Sheet
from toolkit.truing import SAW_MARKS, ThickestBoard, Warp, face_of, thickest_board

Floats = NDArray[np.float64]

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
    paper: bool = False,
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
    paper : bool
        Larger letters, for print.

    Returns
    -------
    Picture
        Both from the side and across the middle, heights drawn larger by a factor that is told;
        what is planed away is hatched.

    Source
    ------
    The plane of the thickest board is the result's own.
    """
    height = HEIGHT if piece is not None else ALONE
    sheet = Sheet(scale=WIDE / whole.length, height=height, text=PAPER_TEXT if paper else TEXT)
    reach = thickness + 2 * (abs(whole.bow) + abs(whole.cup)) + abs(whole.twist)
    scale = WIDE / whole.length
    times = next((n for n in TIMES if reach * scale * n <= ROOM), 1)
    rows = [("the rough board", whole, ghost, ROWS[0] - (HEIGHT - height))]
    if piece is not None:
        rows.append(("crosscut first", piece, ghost_piece, ROWS[1]))
    for name, warp, before, middle in rows:
        page = _Page(middle, scale, scale * times)
        _row(sheet, name, _section(warp, thickness), wanted, rule, page)
        if before is not None:
            _dotted(sheet, _section(before, thickness), page)
    title(sheet, "along the middle", x=LEFT + WIDE / 2, y=height - 22.0)
    title(sheet, "across the middle", x=ACROSS + NARROW / 2, y=height - 22.0)
    said = f"heights drawn × {times}; hatched: to be planed; {units_said(rule)}"
    dotted = "dotted: before; " if ghost is not None or ghost_piece is not None else ""
    unit_words(sheet, rule=rule, instead=dotted + said)
    return sheet.picture(sentence)


@dataclass(frozen=True, slots=True)
class _Page:
    """Where a row lies: the middle of its board up the page [pt], and its scales [pt/mm]."""

    middle: float
    scale: float
    tall: float


@dataclass(frozen=True, slots=True, eq=False)
class _Section:
    """A warped board cut along its middle and across it, and the true board in it. [mm]

    ``cuts`` are two: places, heights of the upper face, heights of the true board's.
    """

    warp: Warp
    thickness: float
    best: ThickestBoard | None
    centre: float
    cuts: tuple[tuple[Floats, Floats, Floats], tuple[Floats, Floats, Floats]]

    def lines(self, page: _Page) -> Iterator[tuple[list[Point], ...]]:
        """Upper and lower face, and those of the true board if there is one, of both cuts. [pt]"""
        left = LEFT + (WIDE - self.warp.length * page.scale) / 2
        steps = (left, page.scale), (ACROSS, NARROW / max(self.warp.width, 1e-6))
        for (places, rough, true), (start, step) in zip(self.cuts, steps, strict=True):
            faces = [rough, rough - self.thickness]
            if self.best is not None:
                faces += [true, true - self.best.upright]
            yield tuple(
                [
                    (start + float(s) * step, page.middle + (float(z) - self.centre) * page.tall)
                    for s, z in zip(places, face, strict=True)
                ]
                for face in faces
            )


@lru_cache(maxsize=64)
def _section(warp: Warp, thickness: float) -> _Section:
    along, across = _GRID
    face = face_of(warp, thickness=thickness, along=along, across=across)
    top = face.height.reshape(along, across)
    x = face.x.reshape(along, across)[:, 0]
    y = face.y.reshape(along, across)[0]
    best = None
    with suppress(ValueError):  # more warp than wood: there is no true board to draw
        best = thickest_board(x=face.x, y=face.y, top=face.height, bottom=face.bottom)
    a, b, c = best.plane if best is not None else (0.0, 0.0, 0.0)
    mid_y, mid_x = across // 2, along // 2
    cuts = (
        (x - x[0], top[:, mid_y], a * x + b * y[mid_y] + c),
        (y - y[0], top[mid_x], a * x[mid_x] + b * y + c),
    )
    return _Section(warp, thickness, best, float(top.mean()) - thickness / 2, cuts)


def _row(sheet: Sheet, name: str, board: _Section, wanted: float, rule: Rule, page: _Page) -> None:
    """One board: its two sections with the true board in them, and what is left."""
    thick = board.best.thickness if board.best is not None else 0.0
    left_over = thick - 2 * SAW_MARKS
    enough = left_over >= wanted
    for fill, lines in zip(("face", "end"), board.lines(page), strict=True):
        upper, lower, *true = lines
        outline = [*upper, *reversed(lower)]
        sheet.line(fill, outline, closed=True)
        if true:
            _planed(sheet, upper, true[0])
            _planed(sheet, true[1], lower)
            corners = [true[0][0], true[0][-1], true[1][-1], true[1][0]]
            sheet.line("visible" if enough else "wrong", corners, closed=True)
        sheet.line("thin", outline, closed=True)
    sheet.name(name, [(0.0, 0.0), (board.warp.length, 0.0), (board.warp.length, thick)])
    text = f"{name}: {rule.exact(round(max(left_over, 0.0), 2), unit=False)} left"
    text += f" after saw marks, {rule.exact(wanted, unit=False)} wanted"
    place = Place(LEFT, page.middle - ROOM / 2 - 12.0)
    sheet.write(text, [place], rank=0, red=not enough)


def _dotted(sheet: Sheet, board: _Section, page: _Page) -> None:
    """A board as it was kept: its faces and the true board in it."""
    for upper, lower, *true in board.lines(page):
        sheet.line("ghost", [*upper, *reversed(lower)], closed=True)
        if true:
            corners = [true[0][0], true[0][-1], true[1][-1], true[1][0]]
            sheet.line("ghost", corners, closed=True)


def _planed(sheet: Sheet, upper: Sequence[Point], lower: Sequence[Point]) -> None:
    """Hatch what lies between two lines, if there is anything to see."""
    if max(a[1] - b[1] for a, b in zip(upper, lower, strict=True)) > 0.3:
        hatch(sheet, [*upper, *reversed(lower)])
