"""The true board inside a warped one: along its length and across its middle."""

from __future__ import annotations

from collections.abc import Sequence
from contextlib import suppress

import numpy as np
from numpy.typing import NDArray

from toolkit.measures import Rule
from toolkit.pictures.kit.figure_of_wood import hatch
from toolkit.pictures.kit.lettering import Place
from toolkit.pictures.kit.notes import title, unit_words, units_said
from toolkit.pictures.kit.picture import Picture, Point
from toolkit.pictures.kit.sheet import PAPER_TEXT, TEXT, Sheet
from toolkit.truing import SAW_MARKS, Warp, face_of, thickest_board

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
    rows = [("the rough board", whole, ROWS[0] - (HEIGHT - height))]
    if piece is not None:
        rows.append(("crosscut first", piece, ROWS[1]))
    for name, warp, middle in rows:
        _row(sheet, name, warp, thickness, wanted, rule, middle, scale * times, scale)
    title(sheet, "along the middle", x=LEFT + WIDE / 2, y=height - 22.0)
    title(sheet, "across the middle", x=ACROSS + NARROW / 2, y=height - 22.0)
    units = units_said(rule)
    unit_words(sheet, rule=rule, instead=f"heights drawn × {times}; hatched: to be planed; {units}")
    return sheet.picture(sentence)


def _row(
    sheet: Sheet,
    name: str,
    warp: Warp,
    thickness: float,
    wanted: float,
    rule: Rule,
    middle: float,
    tall: float,
    scale: float,
) -> None:
    """One board: its two sections with the true board in them, and what is left."""
    along, across = _GRID
    face = face_of(warp, thickness=thickness, along=along, across=across)
    top = face.height.reshape(along, across)
    x = face.x.reshape(along, across)[:, 0]
    y = face.y.reshape(along, across)[0]
    best = None
    with suppress(ValueError):  # more warp than wood: there is no true board to draw
        best = thickest_board(x=face.x, y=face.y, top=face.height, bottom=face.bottom)
    a, b, c = best.plane if best is not None else (0.0, 0.0, 0.0)
    centre = float(top.mean()) - thickness / 2
    thick = best.thickness if best is not None else 0.0
    left_over = thick - 2 * SAW_MARKS
    enough = left_over >= wanted

    def up(height: float) -> float:
        return middle + (height - centre) * tall

    left = LEFT + (WIDE - warp.length * scale) / 2
    mid_y, mid_x = across // 2, along // 2
    views: list[tuple[list[float], Floats, Floats, float, float]] = [
        (
            [float(value) for value in x - x[0]],
            top[:, mid_y],
            a * x + b * y[mid_y] + c,
            left,
            scale,
        ),
        (
            [float(value) for value in y - y[0]],
            top[mid_x],
            a * x[mid_x] + b * y + c,
            ACROSS,
            NARROW / max(warp.width, 1e-6),
        ),
    ]
    for index, (places, rough, plane, start, step) in enumerate(views):
        upper = [(start + s * step, up(float(z))) for s, z in zip(places, rough, strict=True)]
        lower = [(px, py - thickness * tall) for px, py in upper]
        outline = [*upper, *reversed(lower)]
        sheet.line("face" if index == 0 else "end", outline, closed=True)
        if best is not None:
            true = [(start + s * step, up(float(z))) for s, z in zip(places, plane, strict=True)]
            under = [(px, py - best.upright * tall) for px, py in true]
            _planed(sheet, upper, true)
            _planed(sheet, under, lower)
            pen = "visible" if enough else "wrong"
            sheet.line(pen, [true[0], true[-1], under[-1], under[0]], closed=True)
        sheet.line("thin", outline, closed=True)
    sheet.name(name, [(0.0, 0.0), (warp.length, 0.0), (warp.length, thick)])
    text = f"{name}: {rule.exact(round(max(left_over, 0.0), 2), unit=False)} left"
    text += f" after saw marks, {rule.exact(wanted, unit=False)} wanted"
    sheet.write(text, [Place(LEFT, middle - ROOM / 2 - 12.0)], rank=0, red=not enough)


def _planed(sheet: Sheet, upper: Sequence[Point], lower: Sequence[Point]) -> None:
    """Hatch what lies between two lines, place by place, where there is anything."""
    for i in range(len(upper) - 1):
        shape = [upper[i], upper[i + 1], lower[i + 1], lower[i]]
        if max(shape[0][1] - shape[3][1], shape[1][1] - shape[2][1]) > 0.3:
            hatch(sheet, shape)
