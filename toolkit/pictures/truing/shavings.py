"""What a plane with a curved iron leaves: tracks side by side, and the ridges between them."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from toolkit.measures import Rule
from toolkit.pictures.kit.lettering import Place
from toolkit.pictures.kit.notes import title, unit_words, units_said
from toolkit.pictures.kit.picture import Picture, Point
from toolkit.pictures.kit.sheet import Sheet
from toolkit.pictures.strokes import points_of
from toolkit.truing import Strokes

HEIGHT = 330.0
LEFT, WIDE = 40.0, 350.0
TOP, ROW = 272.0, 86.0  # first row, and from one to the next [pt]
DEEP = 34.0  # the shaving's depth on the page [pt]
BODY = 16.0  # wood under it [pt]
_POINTS = 240


def shavings_picture(
    planes: Sequence[Strokes],
    *,
    rule: Rule,
    sentence: str,
    ghost: Strokes | None = None,
) -> Picture:
    """Draw across a board what each plane's tracks leave after one pass.

    Parameters
    ----------
    planes : sequence of Strokes
        Up to three planes with their tracks over one board. [mm]
    rule : Rule
        Whose rule the sizes are read on.
    sentence : str
        What it comes to.
    ghost : Strokes, optional
        The first plane as it was before. [mm]

    Returns
    -------
    Picture
        Sections across the board, heights drawn larger by a factor that is told for each.
    """
    board = planes[0].width
    scale = WIDE / board
    sheet = Sheet(scale=scale, height=HEIGHT)
    for index, strokes in enumerate(planes):
        level = TOP - index * ROW
        times = _times(strokes, scale)
        surface = _surface(strokes, scale, times, level)
        wood = [(LEFT, level - DEEP - BODY), *surface, (LEFT + WIDE, level - DEEP - BODY)]
        sheet.line("end", wood, closed=True)
        sheet.line("hidden", [(LEFT, level), (LEFT + WIDE, level)])
        if ghost is not None and index == 0:
            sheet.line("ghost", _surface(ghost, scale, times, level))
        sheet.line("visible", surface)
        sheet.name(strokes.plane.name, [(px - LEFT, py) for px, py in surface])
        spot = Place(LEFT + WIDE + 12.0, level - 4.0)
        text = (
            f"{strokes.plane.name}\nheights × {times}\n"
            f"{strokes.tracks} tracks {rule.exact(round(strokes.step, 1), unit=False)} apart\n"
            f"ridge {rule.exact(round(strokes.ridge, 3), unit=False)}"
        )
        sheet.write(text, [spot], rank=0)
    title(sheet, "across the board, after one pass", x=LEFT + WIDE / 2, y=HEIGHT - 22.0)
    units = units_said(rule)
    more = "dotted: before; " if ghost is not None else ""
    unit_words(sheet, rule=rule, instead=f"{more}short dashes: the face before the pass; {units}")
    return sheet.picture(sentence)


def _times(strokes: Strokes, scale: float) -> int:
    """The exaggeration: a rounded number that lets the cut fill its room."""
    most = DEEP / (strokes.plane.shaving * scale)
    steps = [n * 10**power for power in range(4) for n in (1, 2, 5)]
    return max((step for step in steps if step <= most), default=1)


def _surface(strokes: Strokes, scale: float, times: int, level: float) -> list[Point]:
    """The section after one pass; between tracks too far apart the old face stands. [pt]"""
    plane = strokes.plane
    x = np.linspace(0.0, strokes.width, _POINTS + 1)
    middles = (np.arange(strokes.tracks) + 0.5) * strokes.step
    cut = plane.iron.edge(x[:, None] - middles[None, :]) - plane.shaving
    height = np.minimum(cut.min(axis=1), 0.0)
    return points_of(LEFT + x * scale, level + height * scale * times)
