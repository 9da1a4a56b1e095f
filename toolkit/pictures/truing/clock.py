"""A shop clock: how long the strokes of a face take a practised hand, and how long a learner."""

from __future__ import annotations

from math import ceil, pi

import numpy as np

from toolkit.pictures.kit.figure_of_wood import hatch
from toolkit.pictures.kit.lettering import Place
from toolkit.pictures.kit.notes import title
from toolkit.pictures.kit.picture import Picture, Point
from toolkit.pictures.kit.sheet import WIDTH, Sheet
from toolkit.pictures.strokes import away, circle, fill
from toolkit.truing import BenchTime

HEIGHT = 290.0
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
    sheet = Sheet(scale=1.0, height=HEIGHT)
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
        sheet.write(row, [Place(x, top - number * 34.0)], rank=0)
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
        sheet.write(text, [Place(x, y - 3.0, "center")], rank=1)
