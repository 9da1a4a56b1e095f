"""A panel's edge in its groove through the year: it nears the bottom in the damp, the mouth dry."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from math import ceil, floor, pi

from toolkit.measures import MM_PER_INCH, Rule
from toolkit.pictures.kit import (
    Anchor,
    PartView,
    Picture,
    Point,
    Sheet,
    Slot,
    band,
    rectangle,
    still_scale,
)
from toolkit.pictures.kit.notes import title, unit_words
from toolkit.pictures.kit.strokes import arrow_head, break_line, hatch, spread
from toolkit.pictures.tree.states import Year
from toolkit.wood import MONTHS

HEIGHT = 330.0
# Where January begins and December ends, and the room that widths have. [pt]
LEFT, RIGHT, LOW, HIGH = 92.0, 416.0, 78.0, 282.0
MONTH = (RIGHT - LEFT) / len(MONTHS)
_WALL = 16.0  # of wood drawn behind the bottom of a groove [pt]
_PANEL = 20.0  # of the panel drawn below the least width [pt]
_RULE = 20.0  # width of the upright rule [pt]
# Steps that the upright rule may be marked in, and what is written on it at most.
_MARKS_MM = (0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0)
_MARKS_INCH = tuple(MM_PER_INCH / parts for parts in (64, 32, 16, 8, 4, 2, 1))
_MOST_MARKS = 6
# Twelve months and the marks of a rule come on top of what a drawing says.
_MOST_LABELS = 30


def year_picture(year: Year, *, rule: Rule, ghost: Year | None = None) -> Picture:
    """Draw a panel's edge through the months, between the bottom of its groove and its mouth.

    The panel is pushed into the groove that is not drawn. Up the page its width is true against
    the rule that stands beside it; along the page go the months.

    Parameters
    ----------
    year : Year
        The panel's width in each month, and what its grooves allow. [mm]
    rule : Rule
        Whose rule the widths are read on.
    ghost : Year, optional
        An earlier state, drawn thinly behind. [mm]

    Returns
    -------
    Picture
        The year; where the panel presses or leaves its groove, that is red and said.
    """
    rows = [year] if ghost is None else [year, ghost]
    middle = year.made
    if year.widest is not None and year.narrowest is not None:
        middle = (year.widest + year.narrowest) / 2
    far = max(abs(width - middle) for row in rows for width in _all(row))
    # Hairs, drawn larger than any part is: the steps of the scale are taken ten times as fine.
    scale = 10 * still_scale((20 * max(far, 0.2), HIGH - LOW))
    sheet = Sheet(scale=scale, height=HEIGHT)
    # A view whose heights are widths; along the page a month takes the room of a millimetre.
    view = PartView(sheet, LEFT, (LOW + HIGH) / 2 - middle * scale, scale)
    _groove(view, year)
    _panel(view, year)
    if ghost is not None:
        sheet.line("ghost", _curve(view, ghost))
        sheet.name("ghost width by month", list(enumerate(ghost.widths)))
    _faults(view, year)
    _months(sheet)
    _upright_rule(view, rule)
    _said(view, year, rule)
    named = f"the {year.name}'s width through the year, {year.place.name}"
    title(sheet, named, x=sheet.width / 2, y=HEIGHT - 19.0)
    more = "; the place's figures are provisional" if year.provisional else ""
    unit_words(sheet, rule=rule, ghost=ghost is not None, more=more)
    return sheet.picture(year.sentence(rule), most=_MOST_LABELS)


def _all(year: Year) -> Iterator[float]:
    """Every width that must be on the page. [mm]"""
    yield year.made
    yield from year.widths
    yield from (limit for limit in (year.widest, year.narrowest) if limit is not None)


def _at(view: PartView, month: float, width: float) -> Point:
    """The middle of a month, 0 for January, at a width. [mm to pt]"""
    return LEFT + (month + 0.5) * MONTH, view.up(width)


def _curve(view: PartView, year: Year) -> list[Point]:
    """The panel's edge from the first day of the year to the last. [pt]"""
    turn = (year.widths[0] + year.widths[-1]) / 2
    months = [_at(view, month, width) for month, width in enumerate(year.widths)]
    return [(LEFT, view.up(turn)), *months, (RIGHT, view.up(turn))]


def _foot(view: PartView, year: Year) -> float:
    """Where the panel is broken off below. [pt]"""
    return min(LOW, *(view.up(width) for width in _all(year))) - _PANEL


def _groove(view: PartView, year: Year) -> None:
    """The wall behind the bottom of the groove, and the line of its mouth."""
    sheet = view.sheet
    if year.widest is not None:
        low = view.up(year.widest)
        # Where the panel would have to press into it, the wall is drawn as far as that.
        high = low + max(_WALL, (max(year.widths) - year.widest) * view.scale + 6.0)
        wall = rectangle((LEFT, RIGHT), (low, high))
        sheet.line("floor", wall, closed=True)
        for i in range(1, ceil((high - low) / 5.5)):
            sheet.line("ring", [(LEFT, low + 5.5 * i), (RIGHT, low + 5.5 * i)])
        sheet.line("visible", [(LEFT, low), (RIGHT, low)])
        sheet.line("thin", [(LEFT, high), (RIGHT, high)])
        sheet.name("groove bottom", [(0.0, year.widest), (12.0, year.widest)])
    if year.narrowest is not None:
        level = view.up(year.narrowest)
        sheet.line("hidden", [(LEFT, level), (RIGHT + 6.0, level)])
        sheet.name("groove mouth", [(0.0, year.narrowest), (12.0, year.narrowest)])


def _panel(view: PartView, year: Year) -> None:
    sheet, curve, foot = view.sheet, _curve(view, year), _foot(view, year)
    broken = [(x, y) for y, x in break_line(foot, low=LEFT, high=RIGHT, sway=0.8)]
    shape = [*broken, *reversed(curve)]
    sheet.line("face", shape, closed=True)
    clip = sheet.within(shape)
    for i in range(ceil((max(y for _, y in curve) - foot) / 8.5)):
        sheet.line("face grain", [(x, y - (i + 0.6) * 8.5) for x, y in curve], clip=clip)
    sheet.line("visible", curve)
    sheet.line("thin", broken)
    sheet.name("width by month", list(enumerate(year.widths)))
    x, y = _at(view, year.near, year.made)
    sheet.line("arrow", arrow_head((x, y), turn=pi / 2, long=8.0, half=3.4), closed=True)


def _faults(view: PartView, year: Year) -> None:
    """Where the panel presses on the bottom of its groove, and where it has left it."""
    curve = _curve(view, year)
    for name, wrong, width, far in (
        ("presses", year.presses, year.widest, -1.0),
        ("leaves", year.leaves, year.narrowest, 1.0),
    ):
        if not wrong or width is None:
            continue
        limit = view.up(width)
        low, high = (limit, HEIGHT) if far < 0 else (0.0, limit)
        shape = band([*curve, (RIGHT, limit + far), (LEFT, limit + far)], low=low, high=high)
        hatch(view.sheet, shape, pen="wrong hatch", gap=3.0)
        view.sheet.line("wrong", shape, closed=True)
        points = [((x - LEFT) / MONTH, (y - view.y) / view.scale) for x, y in shape]
        view.sheet.name(name, points)


def _months(sheet: Sheet) -> None:
    """A stick with the months on it, along the foot."""
    top = 48.0
    sheet.line("thin", [(LEFT, top), (RIGHT, top)])
    for month, name in enumerate((*MONTHS, "")):
        x = LEFT + month * MONTH
        sheet.line("thin", [(x, top), (x, top - (14.0 if month % 3 == 0 else 6.0))])
        if name:
            spot = Slot(x + 0.5 * MONTH, top - 5.0 - 0.76 * sheet.text, "center")
            sheet.write(name[0], [spot], rank=0)


def _upright_rule(view: PartView, rule: Rule) -> None:
    """The student's rule, standing where the year begins."""
    sheet, right = view.sheet, LEFT - 10.0
    low, high = LOW - 14.0, HIGH + 10.0
    least, most = ((at - view.y) / view.scale for at in (low + 3.0, high - 3.0))
    steps, parts = (_MARKS_MM, 5) if rule.units == "mm" else (_MARKS_INCH, 4)
    fine = next((step for step in steps if (most - least) / step <= _MOST_MARKS), steps[-1]) / parts
    sheet.line("thin", rectangle((right - _RULE, right), (low, high)), closed=True)
    for count in range(ceil(least / fine), floor(most / fine) + 1):
        big, level = count % parts == 0, view.up(count * fine)
        sheet.line("thin", [(right - (11.0 if big else 5.0), level), (right, level)])
        if big:
            place = Slot(right - _RULE - 4.0, level - 0.36 * sheet.text, "right")
            sheet.write(rule.exact(count * fine, unit=False), [place], rank=1)


def _said(view: PartView, year: Year, rule: Rule) -> None:
    """Limits at the right-hand side; what it was made, and its extremes, where they are."""
    sheet, drop = view.sheet, 0.36 * view.sheet.text
    show = partial(rule.exact, unit=False)
    for word, limit, way, red in (
        ("bottom", year.widest, 1.0, year.presses),
        ("mouth", year.narrowest, -1.0, year.leaves),
    ):
        if limit is not None:
            level, shifts = view.up(limit), (0.0, 14.0, -14.0, 28.0)
            spots = [Slot(RIGHT + 10.0, level - drop + way * shift) for shift in shifts]
            text = f"{word} of\nits groove, {show(limit)}"
            sheet.write(text, spots, rank=1, red=red, at=(RIGHT, level))
    rows = (
        (f"widest {show(max(year.widths))}", year.most, 1.0, year.presses),
        (f"narrowest {show(min(year.widths))}", year.least, -1.0, year.leaves),
    )
    for text, month, way, red in rows:
        x, y = _at(view, month, year.widths[month])
        near = y + (6.0 if way > 0 else -6.0 - 2 * drop)
        # Words about an early month begin at it, those about a late one end there.
        anchor: Anchor = "left" if month < 2 else "right" if month > 9 else "center"
        spots = spread(x, (near, near + 6.0 * way), (0.0, -20.0, 20.0, -40.0, 40.0), anchor)
        sheet.write(text, spots, rank=2, red=red, at=(x, y))
    x, y = _at(view, year.near, year.made)
    under = y - 12.0 - 2 * drop
    spots = spread(x, (under, under - 10.0, under - 20.0), (0.0, 24.0, -24.0))
    text = f"made at {year.moisture_from:.1f} %, {show(year.made)}"
    sheet.write(text, spots, rank=3, at=(x, y - 4.0))
