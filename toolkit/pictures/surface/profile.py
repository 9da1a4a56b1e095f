"""A section across the tracks, under the patch and at its scale, heights enlarged as it says."""

from __future__ import annotations

from itertools import pairwise

import numpy as np

from toolkit.measures import Rule
from toolkit.pictures.kit.dimensions import single
from toolkit.pictures.kit.lettering import Place
from toolkit.pictures.kit.picture import Point
from toolkit.pictures.kit.sheet import Sheet
from toolkit.pictures.kit.view import View
from toolkit.pictures.strokes import points_of
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


def outline(view: View, surface: Surface, *, enlarged: int) -> list[Point]:
    """The section's upper line on the page, its highest place at the view's zero. [pt]"""
    every = max(1, len(surface.across) // _MOST_POINTS)
    across, heights = surface.across[::every], surface.profile[::every]
    rise = (heights - heights.max()).astype(np.float64) * enlarged
    across = np.concatenate(([0.0], across, [surface.width]))
    return view.points(points_of(across, np.pad(rise, 1, "edge")))


def draw_section(view: View, surface: Surface, *, enlarged: int, rule: Rule) -> float:
    """Cut wood under the line, its height and the distance of two tracks; gives its foot. [pt]"""
    sheet, line = view.sheet, outline(view, surface, enlarged=enlarged)
    x, right, foot = view.x, view.across(surface.width), view.y - TALL - BODY
    wood = [*line, (right, foot), (x, foot)]
    sheet.name("section", wood)
    sheet.line("end cut", wood, closed=True)
    sheet.line("visible", line)
    for end in (line[0], line[-1]):
        sheet.line("thin", [(end[0], foot), end])
    # The wood goes on below: a broken edge.
    steps = np.arange(41)
    ragged = foot + 0.9 * np.sin(2.3 * steps) + 0.7 * np.sin(5.1 * steps)
    sheet.line("thin", points_of(np.linspace(x, right, len(steps)), ragged))
    (from_low, low), (from_high, high) = (end(line, key=lambda at: at[1]) for end in (min, max))
    if high - low > 3.0:
        text, starts = fine(surface.rise, rule=rule, unit=False), [from_low, from_high]
        single(sheet, (low, high), text, at=x - 16.0, starts=starts, axis="up", side=-1, rank=1)
    _tracks(view, surface, foot=foot, rule=rule)
    return foot


def _tracks(view: View, surface: Surface, *, foot: float, rule: Rule) -> None:
    """How far apart the middles of two tracks lie, those nearest the middle of the patch."""
    inside = sorted(row.centre for row in surface.last_pass if 0 < row.centre < surface.width)
    left, right = min(
        pairwise(inside), key=lambda two: abs(sum(two) - surface.width), default=(0.0, 0.0)
    )
    if right > left:
        text, at = f"{rule.show(right - left, unit=False)} between tracks", view.sheet.text + 4.5
        stops = view.across(left), view.across(right)
        single(view.sheet, stops, text, at=foot - at, starts=foot, axis="along", rank=1)


def cut_line(sheet: Sheet, *, left: float, right: float, y: float) -> None:
    """Where the section is taken: short pieces of its line outside the patch, lettered A. [pt]"""
    for edge, way in ((left, -1.0), (right, 1.0)):
        sheet.line("gauge", [(edge + way * 2.0, y), (edge + way * 15.0, y)])
        spots = [Place(edge + way * 18.0, y - 3.4, "left" if way > 0 else "right")]
        spots += [Place(edge + way * 8.0, y + up, "center") for up in (4.0, -11.5)]
        sheet.write("A", spots, rank=-1, size=sheet.text + 0.7)
