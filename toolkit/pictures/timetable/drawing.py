"""The timetable of a class: a strip for each day, a row for each student, a bar for each step."""

from __future__ import annotations

from collections.abc import Sequence

from toolkit.pictures.kit.figure_of_wood import hatch
from toolkit.pictures.kit.lettering import Place
from toolkit.pictures.kit.notes import title
from toolkit.pictures.kit.picture import Picture, Point
from toolkit.pictures.kit.sheet import PAPER_TEXT, TEXT, WIDTH, Sheet
from toolkit.pictures.timetable.rows import Bit, Row, Weekend

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
    paper: bool = False,
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
    paper : bool
        Larger letters, for print.

    Returns
    -------
    Picture
        A strip for each day; bars that run past the last one are cut at its edge.

    Source
    ------
    The minutes are those of the rows.
    """
    text = PAPER_TEXT if paper else TEXT
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
        _day(sheet, weekend, day, top=top, strip=high * len(rows), scale=scale)
        for number, row in enumerate(rows):
            level = top - (number + 1) * high
            x = _LEFT - 6.0
            sheet.write(row.label, [Place(x, level + high / 2 - 0.36 * text, "right")], rank=0)
            end = _bars(sheet, row, weekend, day, level=level, high=high, scale=scale, long=long)
            if day == weekend.days and row.over:
                spot = Place(_LEFT + end * scale + 4.0, level + high / 2 - 0.36 * text)
                sheet.write(row.over, [spot], rank=0)
    title(sheet, "who does what when", x=WIDTH / 2, y=height - 16.0)
    _key(sheet)
    return sheet.picture(sentence, most=len(rows) * 60 + 40)


def _day(
    sheet: Sheet, weekend: Weekend, day: int, *, top: float, strip: float, scale: float
) -> None:
    """The strip of one day: its hours, lunch, its end, and the hour in which nobody chops."""
    low = top - strip
    end = _LEFT + weekend.minutes * scale
    words = top + 9.0 + sheet.text  # clear of the hours under them
    if day < weekend.days and weekend.quiet:
        start = end - weekend.quiet * scale
        sheet.line("far", _box(start, end, low, top), closed=True)
        sheet.line("hidden", [(start, low), (start, top)])
        # The tint alone is lost in grey, and behind full rows.
        sheet.line("visible", [(start, top), (end, top)])
        sheet.write("no chopping", [Place(end - 3.0, words, "right")], rank=0)
    sheet.write(f"day {day}", [Place(_LEFT - 6.0, words, "right")], rank=0)
    for minute, hour in weekend.ticks:
        x = _LEFT + minute * scale
        sheet.line("thin", [(x, top), (x, top + 3.0)])
        places = [Place(x, top + 5.0, "center"), Place(x + 4.0, top + 5.0)]
        sheet.write(hour, places, rank=1, size=sheet.text - 1.0, kind="remark")
    lunch = _LEFT + weekend.lunch * scale
    sheet.line("ghost", [(lunch, low), (lunch, top)])
    sheet.line("gauge", [(lunch, top), (lunch, top + 3.0)])
    sheet.write("lunch", [Place(lunch, words, "center")], rank=0)
    sheet.line("thin", [(_LEFT, top), (end, top)])
    sheet.line("visible", [(end, low - 4.0), (end, top + 12.0)])


def _bars(
    sheet: Sheet,
    row: Row,
    weekend: Weekend,
    day: int,
    *,
    level: float,
    high: float,
    scale: float,
    long: float,
) -> float:
    """The bars of one student on one day, and where the last of them ends. [min]"""
    begins = (day - 1) * weekend.minutes
    most = long if day == weekend.days else weekend.minutes
    reached = 0.0

    def here(minute: float) -> float:
        return min(max(minute - begins, 0.0), most)

    for bit in row.bits:
        if bit.queued and here(bit.start) > here(bit.start - bit.queued):
            left, right = (_LEFT + here(t) * scale for t in (bit.start - bit.queued, bit.start))
            shape = _box(left, right, level + 2.5, level + high - 2.5)
            hatch(sheet, shape)
            sheet.line("thin", shape, closed=True)
        start, end = here(bit.start), here(bit.end)
        if end - start <= 0:
            continue
        left, right = _LEFT + start * scale, _LEFT + end * scale
        if bit.kind == "glue":
            sheet.line("hidden", [(left, level + high / 2), (right, level + high / 2)])
            reached = max(reached, end)
            continue
        shape = _box(left, right, level + 1.0, level + high - 1.0)
        sheet.line(TINTS[bit.kind], shape, closed=True)
        sheet.line("thin", shape, closed=True)
        # A number keeps off the heavy line at the end of a day: it goes to the longer piece.
        cut = weekend.minutes
        if start < cut < end:
            start, end = (start, cut) if cut - start > end - cut else (cut, end)
        _numbered(sheet, bit, (start + end) / 2 * scale, (end - start) * scale, level, high)
        if day == weekend.days and bit.end - begins > most:
            _cut(sheet, right, level, high)
        reached = max(reached, here(bit.end))
    return reached


def _cut(sheet: Sheet, x: float, level: float, high: float) -> None:
    """A bar that goes on beyond the page: its end torn off."""
    steps = [level + 1.0 + (high - 2.0) * i / 4 for i in range(5)]
    tear = [(x + (2.5 if i % 2 else -2.5), y) for i, y in enumerate(steps)]
    sheet.line("void", [*tear, (x + 4.0, steps[-1]), (x + 4.0, steps[0])], closed=True)
    sheet.line("visible", tear)


def _numbered(
    sheet: Sheet, bit: Bit, middle: float, wide: float, level: float, high: float
) -> None:
    """The step's number in its bar, smaller where the bar is short."""
    digits = str(bit.number)
    size = min(sheet.text - 1.0, (wide - 4.5) / (0.64 * len(digits)))
    if size < 0.55 * sheet.text:
        return
    spot = Place(_LEFT + middle, level + high / 2 - 0.36 * size, "center")
    sheet.write(digits, [spot], rank=2, size=size)


def _key(sheet: Sheet) -> None:
    """What the tints mean, in one line."""
    x = 14.0
    for pen, words in (
        ("face", "own tools"),
        ("floor", "shared tool"),
        ("end", "chopping"),
        ("hatch", "waiting for a tool"),
        ("hidden", "glue"),
    ):
        shape = _box(x, x + 16.0, 10.0, 19.0)
        if pen == "hidden":
            sheet.line(pen, [(x, 14.5), (x + 16.0, 14.5)])
        else:
            sheet.line("thin", shape, closed=True)
        if pen == "hatch":
            hatch(sheet, shape)
        elif pen != "hidden":
            sheet.line(pen, shape, closed=True)
        sheet.write(words, [Place(x + 20.0, 11.0)], rank=0)
        x += 26.0 + 0.6 * sheet.text * len(words)


def _box(left: float, right: float, low: float, high: float) -> list[Point]:
    return [(left, low), (right, low), (right, high), (left, high)]
