"""What is written on full-size sheets: title, date, bars to measure, what lines mean, captions."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from toolkit.box import gauge_settings
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
from toolkit.plan import Plan
from toolkit.results import above, capital

if TYPE_CHECKING:
    from toolkit.pictures.sheets.walls import OpenedWall

HOW_TO_PRINT = (
    "Print at 100 %, “actual size”, not “fit”. Measure the three bars before you trust the print. "
    "Left and right are seen from the front."
)
DONT_CUT = (
    "This box won't work as it is: don't cut from this sheet. “workbook check” says what is wrong."
)
COPY_PINS = "Knife the pins from your own tails; this only checks them."


def _grooves(opened: OpenedWall, plan: Plan) -> str:
    rule, depth = plan.choices.rule, plan.design.choices.groove.depth
    rows = [
        f"{name} {rule.show(span.low, unit=False)} to {rule.show(span.high, unit=False)}"
        for name, span in opened.wall.grooves
    ]
    word = "Groove" if len(rows) == 1 else "Grooves"
    said = f"{word} {rule.show(depth)} deep: {', '.join(rows)} {rule.units} up."
    plugs = any(end.plugged and end.end.stopped for _, end in (opened.left, opened.right))
    return f"{said} Crossed: plugs." if plugs else said


def _baselines(opened: OpenedWall, plan: Plan) -> str:
    show, proud = plan.choices.rule.show, gauge_settings(plan.design).proud
    (left_name, left), (_, right) = opened.left, opened.right
    said = f"Baselines {show(left.base)} from either end"
    back, front = (left, right) if left_name == "back end" else (right, left)
    if abs(back.base - front.base) > 1e-6:
        said = f"Baselines {show(back.base)} from the back end, {show(front.base)} from the front"
    # The tails of a half-blind joint end in the wood.
    if proud and (not opened.tails or plan.choices.corner.joint == "through"):
        said += f" ({show(abs(proud))} {'proud' if proud > 0 else 'shy'})"
    return f"{said}."


def _ends(opened: OpenedWall, plan: Plan) -> str:
    """What else there is to know of a wall's two ends."""
    show = plan.choices.rule.show
    ends = [end for _, end in (opened.left, opened.right)]
    if not opened.tails:
        deep = [show(min(end.end.tip, end.thickness)) for end in ends]
        sockets = deep[0] if deep[0] == deep[1] else " and ".join(deep)
        # A through joint's sockets go right through, which the drawing shows.
        said = "" if any(end.flap for end in ends) else f", sockets {sockets} deep"
        return f"{said}. {COPY_PINS}"
    short = max(end.base - end.end.tip for end in ends)
    if above(short, 0.0):
        return f". Under the ear the tails end {show(short)} short of it."
    return ""


def wall_caption(opened: OpenedWall, plan: Plan) -> tuple[str, str]:
    """A wall's heading, and its numbers on the student's own rule."""
    rule = plan.choices.rule
    sizes = (opened.wall.length, opened.wall.height, opened.wall.thickness)
    figures = " × ".join(rule.show(size, unit=False) for size in sizes)
    kind = "tail board" if opened.tails else "pin board"
    heading = f"{opened.name}, {kind}: {figures} {rule.units}{_ends(opened, plan)}"
    return heading, f"{_baselines(opened, plan)} {_grooves(opened, plan)}"


def section_captions(plan: Plan) -> dict[str, tuple[str, str]]:
    """Heading and numbers of the three sections, by where they are cut."""
    d, rule = plan.design, plan.choices.rule
    show, f, g = rule.show, d.frame, d.choices.groove
    across = [f"Grooves {show(g.width)} wide, {show(g.depth)} deep."]
    if d.bottom.profile != "bevelled":
        across.append(f"Tongue of the bottom {show(d.bottom.tongue)}.")
    back = [
        f"{capital(one.name)} {show(one.length.value)} long, {show(one.thickness.value)} thick."
        for one in d.panels
    ]
    front = [f"Front {show(f.front_height.value)} high."]
    if (lid := d.sliding_lid) is not None and f.lid_floor is not None:
        if lid.profile != "bevelled":
            across.append(f"Tongue of the lid {show(lid.tongue)}.")
        gap = f.lid_floor.value - f.front_height.value
        where = "below" if gap >= 0 else "above"
        front.append(f"It ends {show(abs(gap))} {where} the floor of the lid groove.")
    return {
        "across": ("section at a side", " ".join(across)),
        "back": ("section at the back end", " ".join(back)),
        "front": ("section at the front end", " ".join(front)),
    }


def page_sentence(names: Sequence[str], plan: Plan, *, page: str) -> str:
    """What a page shows, for those who do not see it."""
    return (
        f"Full-size sheet {page} of a box {plan.outside} outside: {', '.join(names)}, with "
        "bars of 100 mm and 4 in to check the print by."
    )


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
    """Title, issue and date, page; how to print; whether the box works. [mm]"""
    y = paper.height - EDGE - 0.76 * TEXT
    right = f"full-size sheets · issue {plan.fingerprint} of {day} · {page}"
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
    """100 mm and 4 in (25.4 mm each) along the page, and the student's own of the two up it."""
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
    # A printer may stretch the paper's length and not its width. The tick marks point at the
    # drawing, the word stands on the far side.
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
