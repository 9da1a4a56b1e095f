"""A section across the tracks, under the patch and at its scale, heights enlarged as it says."""

from __future__ import annotations

import numpy as np

from toolkit.measures import Rule
from toolkit.pictures.kit.dimensions import single
from toolkit.pictures.kit.lettering import Place
from toolkit.pictures.kit.picture import Point
from toolkit.pictures.kit.sheet import Sheet
from toolkit.planes import Surface, fine

TALL = 40.0  # room for the heights [pt]
BODY = 13.0  # wood left under the deepest place [pt]
_TIMES = (5000, 3000, 2000, 1000, 500, 300, 200, 100, 50, 30, 20, 10, 5, 3, 2, 1)
_MOST_POINTS = 600


def times(surface: Surface, *, scale: float, kept: int | None = None) -> int:
    """How many times heights are drawn, a round number that holds still. [pt/mm]"""
    rise = max(surface.rise, 1e-9) * scale
    if kept is not None and rise * kept <= TALL:
        return kept
    return next((n for n in _TIMES if rise * n <= TALL), _TIMES[-1])


def outline(surface: Surface, *, x: float, top: float, scale: float, enlarged: int) -> list[Point]:
    """The section's upper line on the page, its highest place at ``top``. [pt]"""
    across, heights = surface.across, surface.profile
    every = max(1, len(across) // _MOST_POINTS)
    across, heights = across[::every], heights[::every]
    rise = (heights - heights.max()).astype(np.float64) * scale * enlarged
    ends = np.concatenate(([0.0], across, [surface.width]))
    rise = np.concatenate((rise[:1], rise, rise[-1:]))
    return [(x + scale * a, top + z) for a, z in zip(ends.tolist(), rise.tolist(), strict=True)]


def draw(
    sheet: Sheet,
    surface: Surface,
    *,
    x: float,
    top: float,
    scale: float,
    enlarged: int,
    rule: Rule,
) -> float:
    """Cut wood under the line, its height and the distance of two tracks; gives its foot. [pt]"""
    line = outline(surface, x=x, top=top, scale=scale, enlarged=enlarged)
    right = x + surface.width * scale
    foot = top - TALL - BODY
    wood = [*line, (right, foot), (x, foot)]
    sheet.name("section", [(a, b) for a, b in wood])
    sheet.line("end cut", wood, closed=True)
    sheet.line("visible", line)
    for side in (x, right):
        sheet.line("thin", [(side, foot), (side, line[0 if side == x else -1][1])])
    # The wood goes on below: a broken edge.
    count = 40
    broken = [
        (x + (right - x) * i / count, foot + 0.9 * np.sin(2.3 * i) + 0.7 * np.sin(5.1 * i))
        for i in range(count + 1)
    ]
    sheet.line("thin", broken)
    heights = [point[1] for point in line]
    low, high = min(heights), max(heights)
    if high - low > 3.0:
        text = fine(surface.rise, rule=rule, unit=False)
        starts = [line[heights.index(low)][0], line[heights.index(high)][0]]
        single(sheet, (low, high), text, at=x - 16.0, starts=starts, axis="up", side=-1, rank=1)
    _tracks(sheet, surface, x=x, foot=foot, scale=scale, rule=rule)
    return foot


def _tracks(
    sheet: Sheet, surface: Surface, *, x: float, foot: float, scale: float, rule: Rule
) -> None:
    """How far apart the middles of two tracks lie, those nearest the middle of the patch."""
    inside = sorted(row.centre for row in surface.last_pass if 0 < row.centre < surface.width)
    if len(inside) < 2:
        return
    at = min(
        range(len(inside) - 1),
        key=lambda i: abs(inside[i] + inside[i + 1] - surface.width),
    )
    left, right = inside[at], inside[at + 1]
    stops = (x + left * scale, x + right * scale)
    if right - left <= 0:
        return
    text = f"{rule.show(right - left, unit=False)} between tracks"
    single(sheet, stops, text, at=foot - sheet.text - 4.5, starts=foot, axis="along", rank=1)


def cut_line(sheet: Sheet, *, left: float, right: float, y: float) -> None:
    """Where the section is taken: short pieces of its line outside the patch, lettered A. [pt]"""
    for edge, way in ((left, -1.0), (right, 1.0)):
        sheet.line("gauge", [(edge + way * 2.0, y), (edge + way * 15.0, y)])
        x = edge + way * 18.0
        spots = [
            Place(x, y - 3.4, "left" if way > 0 else "right"),
            Place(edge + way * 8.0, y + 4.0, "center"),
            Place(edge + way * 8.0, y - 11.5, "center"),
        ]
        sheet.write("A", spots, rank=-1, size=sheet.text + 0.7)
