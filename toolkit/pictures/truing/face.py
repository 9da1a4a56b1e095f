"""A face seen from above: how much has to come off where, as lines of equal removal."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import pairwise
from typing import Any

import numpy as np
from contourpy import contour_generator
from numpy.typing import NDArray

from toolkit.measures import Rule
from toolkit.pictures.kit.dimensions import single
from toolkit.pictures.kit.figure_of_wood import hatch
from toolkit.pictures.kit.lettering import Place
from toolkit.pictures.kit.notes import title, unit_words, units_said
from toolkit.pictures.kit.picture import Picture, Point
from toolkit.pictures.kit.sheet import PAPER_TEXT, TEXT, Sheet
from toolkit.pictures.kit.view import rectangle
from toolkit.truing import LeastPlaning

Floats = NDArray[np.float64]

HEIGHT = 300.0
LEFT, WIDE = 76.0, 400.0  # where the board lies along the page [pt]
LOW, TALL = 104.0, 118.0  # and up it [pt]
_STICK_OUT = 24.0  # of a winding stick over the edges [pt]
_STEPS = (0.05, 0.1, 0.2, 0.25, 0.5, 1.0, 2.0, 2.5, 5.0, 10.0)
_MOST_LINES = 5
_FINE = 4  # points between two readings, so that lines run smoothly


def face_map(
    planed: LeastPlaning,
    *,
    along: int,
    across: int,
    rule: Rule,
    shaving: float = 0.4,
    paper: bool = False,
) -> Picture:
    """Draw what has to come off a face until it is flat, and where to plane first.

    Parameters
    ----------
    planed : LeastPlaning
        The least planing of readings on a grid, x changing slowest. [mm]
    along, across : int
        Readings along and across.
    rule : Rule
        Whose rule the sizes are read on.
    shaving : float
        Depth of the first cut, whose ground is hatched. [mm]
    paper : bool
        Larger letters, for print.

    Returns
    -------
    Picture
        The face from above, drawn wider than it is by a factor that is told, with winding sticks
        and straightedge where they would lie.

    Source
    ------
    The planing is the result's own; lines of equal height by contourpy.
    """
    x = planed.x.reshape(along, across)[:, 0]
    y = planed.y.reshape(along, across)[0]
    removal = planed.removal.reshape(along, across)
    length, width = float(x[-1] - x[0]), float(y[-1] - y[0])
    scale, tall = WIDE / length, TALL / width
    sheet = Sheet(scale=scale, height=HEIGHT, text=PAPER_TEXT if paper else TEXT)

    def at(point: Point) -> Point:
        return LEFT + (point[0] - x[0]) * scale, LOW + (point[1] - y[0]) * tall

    outline = [at(corner) for corner in rectangle((x[0], x[-1]), (y[0], y[-1]))]
    sheet.line("face", outline, closed=True)
    sheet.name("face", rectangle((0.0, length), (0.0, width)))
    fine_x, fine_y, fine = _finer(x, y, removal)
    generator = contour_generator(fine_x, fine_y, fine.T)
    deep = planed.deepest
    if deep > 0.005:
        _first(sheet, generator, at, deep=deep, shaving=shaving)
        for level in _levels(deep):
            _line(sheet, generator, at, level=level, rule=rule)
    sheet.line("visible", outline, closed=True)
    _sticks(sheet)
    text = f"drawn {tall / scale:.2g} × as wide as it is; " if tall / scale > 1.05 else ""
    single(
        sheet,
        (LEFT, LEFT + WIDE),
        rule.show(length, fineness="sizes", unit=False),
        at=LOW - 36.0,
        starts=LOW,
        axis="along",
    )
    single(
        sheet,
        (LOW, LOW + TALL),
        rule.show(width, fineness="sizes", unit=False),
        at=LEFT + WIDE + 26.0,
        starts=LEFT + WIDE,
        axis="up",
    )
    title(sheet, "the face from above: how much comes off", x=sheet.width / 2, y=HEIGHT - 22.0)
    unit_words(sheet, rule=rule, instead=f"{text}{units_said(rule)}; hatched: plane here first")
    return sheet.picture(planed.sentence(rule))


def _finer(x: Floats, y: Floats, removal: Floats) -> tuple[Floats, Floats, Floats]:
    """The same heights on a finer grid, straight between the readings."""
    fine_x = np.linspace(x[0], x[-1], (len(x) - 1) * _FINE + 1)
    fine_y = np.linspace(y[0], y[-1], (len(y) - 1) * _FINE + 1)
    along = np.array([np.interp(fine_x, x, column) for column in removal.T]).T
    both = np.array([np.interp(fine_y, y, row) for row in along])
    return fine_x, fine_y, both


def _levels(deep: float) -> Iterator[float]:
    """Rounded steps of removal between nothing and the deepest. [mm]"""
    step = next((row for row in _STEPS if deep / row <= _MOST_LINES), _STEPS[-1])
    for count in range(1, int(deep / step) + 1):
        if count * step < deep * 0.98:
            yield count * step


def _first(
    sheet: Sheet, generator: Any, at: Callable[[Point], Point], *, deep: float, shaving: float
) -> None:
    """Hatching where the first strokes go: all that lies within a shaving of the highest."""
    polygons, offsets = generator.filled(max(deep - shaving, deep * 0.5), deep + 1.0)
    for points, breaks in zip(polygons, offsets, strict=True):
        for start, end in pairwise(breaks):
            loop = [at((float(a), float(b))) for a, b in points[start:end][:-1]]
            if len(loop) > 2:
                hatch(sheet, loop)
                sheet.line("waste edge", loop, closed=True)


def _line(
    sheet: Sheet, generator: Any, at: Callable[[Point], Point], *, level: float, rule: Rule
) -> None:
    """A line of equal removal with its figure where there is room."""
    for found in generator.lines(level):
        points = [at((float(a), float(b))) for a, b in found]
        sheet.line("thin", points)
    longest = max(generator.lines(level), key=len, default=None)
    if longest is not None:
        points = [at((float(a), float(b))) for a, b in longest]
        spots = [
            Place(px + dx, py + dy)
            for px, py in (points[len(points) * share // 16] for share in (8, 4, 12, 2, 14, 1, 15))
            for dx, dy in ((3.0, 3.0), (3.0, -10.0), (-18.0, 3.0), (6.0, 8.0), (-22.0, -14.0))
        ]
        sheet.write(rule.exact(level, unit=False), spots, rank=2)


def _sticks(sheet: Sheet) -> None:
    """Winding sticks over both ends, a straightedge along the middle."""
    for x, anchor in ((LEFT + 8.0, "left"), (LEFT + WIDE - 8.0, "right")):
        low, high = LOW - _STICK_OUT, LOW + TALL + _STICK_OUT
        sheet.line("beside", rectangle((x - 2.5, x + 2.5), (low, high)), closed=True)
        place = Place(x, high + 6.0, "left" if anchor == "left" else "right")
        sheet.write("winding stick", [place], rank=3)
    middle = LOW + TALL / 2
    sheet.line("gauge", [(LEFT - 20.0, middle), (LEFT + WIDE + 12.0, middle)])
    sheet.write("straight-\nedge", [Place(LEFT - 6.0, middle + 18.0, "right")], rank=3)
