"""A class's weekend as bars: a strip for each day, a row for each student, a bar for each step."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from toolkit.pictures.kit import WIDTH, PartView, Picture, Sheet, Slot, rectangle
from toolkit.pictures.kit.lettering import edition
from toolkit.pictures.kit.notes import title
from toolkit.pictures.kit.strokes import fill, hatch

Kind = Literal["bench", "shared tool", "chopping", "glue"]


@dataclass(frozen=True, slots=True)
class Bit:
    """One step of somebody, in minutes at the bench from the first morning. [min]

    ``queued`` is how long a tool was waited for before it; ``kind`` may be ``"glue"`` for waiting
    until it holds.
    """

    number: int
    start: float
    end: float
    queued: float = 0.0
    kind: Kind = "bench"


@dataclass(frozen=True, slots=True)
class Row:
    """One student: the words before the bars, the bars, and the words for running over."""

    label: str
    bits: tuple[Bit, ...]
    over: str = ""


@dataclass(frozen=True, slots=True)
class Weekend:
    """The days that the bars lie on, in minutes at the bench of each. [min]

    ``quiet`` is the end of every day but the last in which nobody chops; ``ticks`` are minutes,
    and the words that stand there.
    """

    days: int
    minutes: float
    lunch: float
    quiet: float
    ticks: tuple[tuple[float, str], ...]


TINTS = {"bench": "face", "shared tool": "floor", "chopping": "end"}
_LEFT, _RIGHT = 84.0, 12.0  # room for names, and beside the end of the day [pt]
_WORDS = 58.0  # room for what is said behind the last bar [pt]
_ABOVE, _BELOW, _TITLE, _KEY = 34.0, 10.0, 30.0, 30.0  # round a strip, over and under all [pt]
_HIGHEST = 26.0  # row [pt]
_LONGEST = 1.3  # of a day: what runs over further is cut off and told in words


def timetable_picture(
    rows: Sequence[Row],
    *,
    weekend: Weekend,
    sentence: str,
    room: int = 0,
) -> Picture:
    """Draw who does what when, who waits for a tool, and who runs over.

    Parameters
    ----------
    rows : sequence of Row
        The students with their bars. [min]
    weekend : Weekend
        The days. [min]
    sentence : str
        What the timetable comes to.
    room : int
        For how many rows the page is made: fewer are drawn higher, so that it keeps its size.

    Returns
    -------
    Picture
        A strip for each day; bars that run past the last one are cut at its edge.
    """
    text = edition().text
    strip = (text + 4.5) * max(room, len(rows))
    high = min(strip / len(rows), _HIGHEST)
    each = _ABOVE + strip + _BELOW
    height = _TITLE + weekend.days * each + _KEY
    sheet = Sheet(scale=1.0, height=height, text=text)
    last = max((bit.end for row in rows for bit in row.bits), default=0.0)
    over = last - weekend.days * weekend.minutes
    long = min(weekend.minutes + max(over, 0.0), weekend.minutes * _LONGEST)
    scale = (WIDTH - _LEFT - (_WORDS if over > 0 else _RIGHT)) / long
    for day in range(1, weekend.days + 1):
        top = height - _TITLE - (day - 1) * each - _ABOVE
        _day(PartView(sheet, _LEFT, top - high * len(rows), scale), weekend, day, top=top)
        most = long if day == weekend.days else weekend.minutes
        for number, row in enumerate(rows, 1):
            view = PartView(sheet, _LEFT, top - number * high, scale)
            level = view.y + high / 2 - 0.36 * text
            sheet.write(row.label, [Slot(_LEFT - 6.0, level, "right")], rank=0)
            end = _bars(view, row, weekend, day, high=high, most=most)
            if day == weekend.days and row.over:
                sheet.write(row.over, [Slot(view.across(end) + 4.0, level)], rank=0)
    title(sheet, "who does what when", x=WIDTH / 2, y=height - 16.0)
    _key(sheet)
    return sheet.picture(sentence, most=len(rows) * 60 + 40)


def _day(view: PartView, weekend: Weekend, day: int, *, top: float) -> None:
    """The strip of one day: its hours, lunch, its end, and the hour in which nobody chops."""
    sheet, low, end = view.sheet, view.y, view.across(weekend.minutes)
    words = top + 9.0 + sheet.text  # clear of the hours under them
    if day < weekend.days and weekend.quiet:
        start = end - weekend.quiet * view.scale
        quiet = rectangle((start, end), (top, low))
        sheet.line("far", quiet, closed=True)
        sheet.line("hidden", [quiet[3], quiet[0]])
        # The tint alone is lost in grey, and behind full rows.
        sheet.line("visible", quiet[:2])
        sheet.write("no chopping", [Slot(end - 3.0, words, "right")], rank=0)
    sheet.write(f"day {day}", [Slot(_LEFT - 6.0, words, "right")], rank=0)
    for minute, hour in weekend.ticks:
        x = view.across(minute)
        sheet.line("thin", [(x, top), (x, top + 3.0)])
        places = [Slot(x, top + 5.0, "center"), Slot(x + 4.0, top + 5.0)]
        sheet.write(hour, places, rank=1, size=sheet.text - 1.0, kind="remark")
    lunch = view.across(weekend.lunch)
    sheet.line("ghost", [(lunch, low), (lunch, top)])
    sheet.line("gauge", [(lunch, top), (lunch, top + 3.0)])
    sheet.write("lunch", [Slot(lunch, words, "center")], rank=0)
    sheet.line("thin", [(_LEFT, top), (end, top)])
    sheet.line("visible", [(end, low - 4.0), (end, top + 12.0)])


def _bars(
    view: PartView, row: Row, weekend: Weekend, day: int, *, high: float, most: float
) -> float:
    """The bars of one student on one day, and where the last of them ends. [min]"""
    sheet, level = view.sheet, view.y
    reached, begins = 0.0, (day - 1) * weekend.minutes

    def here(minute: float) -> float:
        return min(max(minute - begins, 0.0), most)

    for bit in row.bits:
        waits, start, end = (here(at) for at in (bit.start - bit.queued, bit.start, bit.end))
        left, right = view.across(start), view.across(end)
        if waits < start:
            shape = rectangle((view.across(waits), left), (level + 2.5, level + high - 2.5))
            hatch(sheet, shape)
            sheet.line("thin", shape, closed=True)
        if end <= start:
            continue
        reached = max(reached, end)
        if bit.kind == "glue":
            sheet.line("hidden", [(left, level + high / 2), (right, level + high / 2)])
            continue
        shape = rectangle((left, right), (level + 1.0, level + high - 1.0))
        fill(sheet, shape, TINTS[bit.kind], "thin")
        # A number keeps off the heavy line at the end of a day: it goes to the longer piece.
        cut = weekend.minutes
        if start < cut < end:
            start, end = (start, cut) if cut - start > end - cut else (cut, end)
        # It is smaller where the bar is short.
        digits = str(bit.number)
        size = min(sheet.text - 1.0, ((end - start) * view.scale - 4.5) / (0.64 * len(digits)))
        if size >= 0.55 * sheet.text:
            spot = Slot(view.across((start + end) / 2), level + high / 2 - 0.36 * size, "center")
            sheet.write(digits, [spot], rank=2, size=size)
        if day == weekend.days and bit.end - begins > most:
            _torn(sheet, right, low=level + 1.0, high=level + high - 1.0)
    return reached


def _torn(sheet: Sheet, x: float, *, low: float, high: float) -> None:
    """The end of a bar that goes on beyond the page."""
    tear = [(x + way, low + (high - low) * i / 4) for i, way in enumerate((-2.5, 2.5) * 2)]
    tear.append((x - 2.5, high))
    sheet.line("void", [*tear, (x + 4.0, high), (x + 4.0, low)], closed=True)
    sheet.line("visible", tear)


def _key(sheet: Sheet) -> None:
    """What the tints mean, in one line."""
    x, tints = 14.0, [(pen, "own tools" if pen == "face" else kind) for kind, pen in TINTS.items()]
    for pen, words in (*tints, ("hatch", "waiting for a tool"), ("hidden", "glue")):
        shape = rectangle((x, x + 16.0), (10.0, 19.0))
        if pen == "hidden":
            sheet.line(pen, [(x, 14.5), (x + 16.0, 14.5)])
        elif pen == "hatch":
            hatch(sheet, shape)
            fill(sheet, shape, "thin")
        else:
            fill(sheet, shape, pen, "thin")
        sheet.write(words, [Slot(x + 20.0, 11.0)], rank=0)
        x += 26.0 + 0.6 * sheet.text * len(words)
