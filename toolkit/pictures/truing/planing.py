"""What the strokes of a plane leave between tracks, and how long they take, on a shop clock."""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil, pi

import numpy as np

from toolkit.measures import Rule
from toolkit.pictures.kit import WIDTH, Picture, Point, Sheet, Slot
from toolkit.pictures.kit.notes import title, unit_words, units_said
from toolkit.pictures.kit.strokes import away, circle, fill, hatch, points_of
from toolkit.truing import BenchTime, Strokes

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
        spot = Slot(LEFT + WIDE + 12.0, level - 4.0)
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


_CLOCK = 290.0
MIDDLE: Point = (WIDTH / 2 - 80.0, 134.0)
DIAL = 108.0  # radius of the dial [pt]
RING = 17.0  # one hour on it, and from one hour to the next further in [pt]
RINGS = 5  # hours that find room
_WORDS = 375.0  # where words stand beside the dial [pt]


def clock_picture(time: BenchTime, *, before: BenchTime | None = None) -> Picture:
    """Draw an estimate of time as it goes round a clock, one ring an hour.

    Parameters
    ----------
    time : BenchTime
        The estimate. [min]
    before : BenchTime, optional
        The one that was kept, whose end is dotted. [min]

    Returns
    -------
    Picture
        A practised hand's minutes tinted, and the rest of a learner's hatched.
    """
    sheet = Sheet(scale=1.0, height=_CLOCK)
    _dial(sheet)
    for shape in _bands(0.0, time.practised):
        fill(sheet, shape, "end", "thin")
    for shape in _bands(time.practised, time.minutes):
        hatch(sheet, shape)
        sheet.line("thin", shape, closed=True)
    sheet.line("visible", _hand(time.minutes))
    sheet.name("learner", _hand(time.minutes))
    if before is not None:
        sheet.line("ghost", _hand(before.minutes))
    x, top = _WORDS, MIDDLE[1] + 62.0
    rows = (
        f"{time.strokes} strokes: counted",
        f"tinted: {time.practised:.1f} min\nof strokes alone",
        f"all of it: {time.minutes:.1f} min\nfor a learner",
        "one ring an hour",
    )
    for number, row in enumerate((*rows, "dotted: as it was") if before else rows):
        sheet.write(row, [Slot(x, top - number * 34.0)], rank=0)
    title(sheet, "one side's face on the shop clock: an estimate", x=sheet.width / 2, y=268.0)
    return sheet.picture(time.sentence)


def _at(minutes: float, radius: float) -> Point:
    """A point of the dial: noon at the top, and round to the right. [min, pt]"""
    return away(MIDDLE, turn=pi / 2 - 2 * pi * minutes / 60, far=radius)


def _arc(start: float, end: float, radius: float) -> list[Point]:
    steps = max(2, ceil(abs(end - start)) + 1)
    return [_at(minute, radius) for minute in np.linspace(start, end, steps).tolist()]


def _outer(hour: int) -> float:
    return DIAL - 8.0 - hour * (RING + 2.0)


def _bands(start: float, end: float) -> list[list[Point]]:
    """The rings between two times, hour by hour; what finds no room is left to the words."""
    shapes = []
    for hour in range(RINGS):
        first, last = max(start, hour * 60.0), min(end, (hour + 1) * 60.0)
        if last - first > 0.01:
            outer = _outer(hour)
            shapes.append([*_arc(first, last, outer), *_arc(last, first, outer - RING)])
    return shapes


def _hand(minutes: float) -> list[Point]:
    """The minute hand, out to the ring of its hour."""
    hour = min(int(minutes // 60), RINGS - 1)
    return [MIDDLE, _at(minutes, _outer(hour) + 5.0)]


def _dial(sheet: Sheet) -> None:
    fill(sheet, circle(MIDDLE, DIAL, count=60), "face", "thin")
    for minute in range(0, 60, 5):
        long = 6.0 if minute % 15 == 0 else 3.0
        sheet.line("thin", [_at(minute, DIAL), _at(minute, DIAL - long)])
    for minute in range(0, 60, 15):
        x, y = _at(minute, DIAL + 12.0)
        text = "60 min" if minute == 0 else str(minute)
        sheet.write(text, [Slot(x, y - 3.0, "center")], rank=1)
