"""What stands on every sheet: title, date, fingerprint, bars to measure, what the lines mean."""

from __future__ import annotations

from collections.abc import Iterator

from toolkit.pictures.kit import extent, rectangle
from toolkit.pictures.kit.lettering import LEADING
from toolkit.pictures.sheets.marks import (
    SMALL,
    TEXT,
    Extent,
    Mark,
    Word,
    closed,
    hatched,
    printable,
    shortened,
)
from toolkit.pictures.sheets.page import Paper
from toolkit.pictures.sheets.words import DONT_CUT, HOW_TO_PRINT
from toolkit.plan import Plan

MM, INCHES = 100.0, 4 * 25.4  # the check bars [mm]
# A printer leaves more white at the edge that leaves it last than along the others: common
# practice, no source.
SIDE, EDGE = 13.0, 6.0
LINE = LEADING * TEXT
_TICK, _SMALL_TICK = 4.0, 2.0
_BAR_ROOM = 8.5  # across an upright bar with its word [mm]
_BARS = 6.0  # above the margin, up to the bars' own line [mm]
_FOOT = 13.5  # bars and what the lines mean [mm]
_SAMPLE = 12.0

_MEANS = (
    ("edge", "edge or groove"),
    ("gauge", "gauge line: baseline, tips"),
    ("fold", "fold on the arris"),
    ("match", "match line"),
    ("hatch", "waste"),
)


def room(paper: Paper, *, works: bool) -> Extent:
    """What the margins leave of a page. [mm]"""
    lines = 2 if works else 3
    top = paper.height - EDGE - lines * LINE - 1.0
    return Extent(SIDE, paper.width - SIDE - _BAR_ROOM, EDGE + _FOOT, top)


def heading(plan: Plan, paper: Paper, *, day: str, page: str) -> Iterator[Word]:
    """Title, date, fingerprint, page; how to print; whether the box works. [mm]"""
    y = paper.height - EDGE - 0.76 * TEXT
    right = f"full-size sheets · {day} · fingerprint {plan.fingerprint} · {page}"
    left = paper.width - 2 * SIDE - extent(right, size=TEXT)[0] - 6.0
    yield Word(shortened(printable(plan.choices.title), width=left), SIDE, y, typed=True)
    yield Word(right, paper.width - SIDE, y, anchor="right")
    for number, line in enumerate((HOW_TO_PRINT, *(() if plan.works else (DONT_CUT,))), 1):
        yield Word(line, SIDE, y - number * LINE)


def _bar(x: float, y: float, long: float, ticks: int, *, upright: bool) -> Iterator[Mark]:
    """A bar with a long tick at either end and short ones between. [mm]"""

    def at(along: float, off: float) -> tuple[float, float]:
        return (x - off, y + along) if upright else (x + along, y + off)

    yield Mark("bar", (at(0.0, 0.0), at(long, 0.0)))
    for i in range(ticks + 1):
        size = _TICK if i in (0, ticks) else _SMALL_TICK
        yield Mark("bar", (at(long * i / ticks, 0.0), at(long * i / ticks, size)))


def check_bars(paper: Paper, *, units: str) -> tuple[list[Mark], list[Word]]:
    """100 mm and 4 in along the page, and the student's own of the two up it.

    A printer may stretch the paper's length and not its width.

    Source: 1 in = 25.4 mm exactly.
    """
    y = EDGE + _BARS
    gap = extent("100 mm", size=TEXT)[0]
    second = SIDE + MM + gap + 8.0
    bars = ("100 mm", MM, 10), ("4 in", INCHES, 4)
    marks: list[Mark] = []
    words: list[Word] = []
    for left, (text, long, ticks) in zip((SIDE, second), bars, strict=True):
        marks += _bar(left, y, long, ticks, upright=False)
        words.append(Word(text, left + long + 2.0, y))
    text, long, ticks = bars[0 if units == "mm" else 1]
    # The tick marks point at the drawing, the word stands on the far side.
    x, low = paper.width - SIDE - 0.9 * TEXT - 0.6, y + 12.0
    marks += _bar(x, low, long, ticks, upright=True)
    words.append(Word(text, paper.width - SIDE, low + long / 2, anchor="center", upright=True))
    return marks, words


def meanings(*, used: set[str]) -> tuple[list[Mark], list[Word]]:
    """What the kinds of line on this page mean. [mm]"""
    marks: list[Mark] = []
    words: list[Word] = []
    x, y = SIDE, EDGE
    for pen, text in _MEANS:
        if pen not in used:
            continue
        middle = y + 0.36 * SMALL
        if pen == "hatch":
            box = rectangle((x, x + _SAMPLE), (y - 0.6, y + 3.0))
            marks += [*hatched(box), closed("edge", box)]
        else:
            marks.append(Mark(pen, ((x, middle), (x + _SAMPLE, middle))))
        words.append(Word(text, x + _SAMPLE + 1.5, y, SMALL))
        x += _SAMPLE + 1.5 + extent(text, size=SMALL)[0] + 6.0
    return marks, words
