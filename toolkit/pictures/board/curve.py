"""What figure costs in board: a stair whose every step is a layout, most economical first."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial
from itertools import pairwise
from math import ceil, floor, isclose
from operator import attrgetter
from typing import NamedTuple

from toolkit.measures import MM_PER_INCH, Rule
from toolkit.pictures.kit import PartView, Picture, Sheet, Slot, rectangle
from toolkit.pictures.kit.notes import title, unit_words
from toolkit.pictures.kit.strokes import break_line, circle, long_grain
from toolkit.stock import Point, board_feet_by_volume

HEIGHT = 286.0
# Where the board lies, where the stair stands and how far both reach. [pt]
LEFT, RIGHT, FLOOR, TOP = 92.0, 500.0, 82.0, 236.0
_BOARD = 22.0


_MARKS = 7  # on the board, at most
_MM = (50.0, 100.0, 200.0, 250.0, 500.0, 1000.0, 2000.0)
_INCHES = tuple(inches * MM_PER_INCH for inches in (2, 4, 6, 12, 24, 48, 96))
_AMOUNTS = (0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0)
_LOOKS = (0.01, 0.02, 0.05, 0.1, 0.2, 0.5)
_CUBIC_METRE, _LITRES = 1e9, 1000.0  # in mm³, and litres in it


class Amounts(NamedTuple):
    """How the wood of a layout is counted.

    ``unit`` is that of the figures, where it is not the rule's own; ``steps`` may lie between two
    of them; ``of`` a layout is how much wood it takes, and ``show`` writes that.
    """

    what: str
    unit: str
    steps: Sequence[float]
    of: Callable[[Point], float]
    show: Callable[..., str]


def _amounts(curve: Sequence[Point], rule: Rule) -> Amounts:
    """By the length of board, which goes with its volume on boards of one section, or by that."""
    first, metric = curve[0], rule.units == "mm"
    if all(isclose(p.volume * first.used, first.volume * p.used, rel_tol=1e-6) for p in curve):
        show = partial(rule.show, fineness="sizes", direction="up")
        steps = _MM if metric else _INCHES
        return Amounts("length of board used", "", steps, attrgetter("used"), show)
    name = "litres" if metric else "board feet"

    def volume(point: Point) -> float:
        cubic = point.volume / _CUBIC_METRE
        return cubic * _LITRES if metric else board_feet_by_volume(cubic)

    def written(value: float, *, unit: bool = True) -> str:
        return f"{round(value, 2):g}{f' {name}' if unit else ''}"

    return Amounts("wood used", name, _AMOUNTS, volume, written)


class Axis(NamedTuple):
    """Values from ``low`` to ``high`` on the page from ``start`` to ``end`` [pt]."""

    low: float
    high: float
    start: float
    end: float
    step: float

    def at(self, value: float) -> float:
        """Where a value lies. [pt]"""
        return self.start + (value - self.low) / (self.high - self.low) * (self.end - self.start)

    def marks(self) -> list[float]:
        """Round values on it."""
        first, last = ceil(self.low / self.step - 1e-9), floor(self.high / self.step + 1e-9)
        return [i * self.step for i in range(first, last + 1)]


def along_of(curve: Sequence[Point], wood: Amounts) -> Axis:
    """From the left end of the board to a round mark past the layout of best figure. [pt]"""
    most = 1.06 * max(wood.of(point) for point in curve)
    step = next((step for step in wood.steps if most / step <= _MARKS), wood.steps[-1])
    return Axis(0.0, ceil(most / step) * step, LEFT, RIGHT, step)


def up_of(curve: Sequence[Point]) -> Axis:
    """From a round mark under the least looks to 1. [pt]"""
    low = max(0.0, floor(10 * min(point.looks for point in curve) - 0.5) / 10)
    step = next(step for step in _LOOKS if (1 - low) / step <= 5 + 1e-9)
    return Axis(low, 1.0, FLOOR + 8.0, TOP, step)


def curve_picture(
    curve: Sequence[Point],
    *,
    chosen: Point,
    rule: Rule,
    ghost: Point | None = None,
) -> Picture:
    """Draw the best figure to be had from every length of board, and the layout that is chosen.

    Parameters
    ----------
    curve : sequence of Point
        The trade-off, the most economical first. [mm]
    chosen : Point
        The layout that is chosen. [mm]
    rule : Rule
        Whose rule the lengths are read on.
    ghost : Point, optional
        The layout that was kept before. [mm]

    Returns
    -------
    Picture
        A stair over the board it is sawn from: along it the length of board used, up it the
        figure. Where it takes boards of several sections, the wood is counted by its volume.

    Raises
    ------
    ValueError
        The curve has no point.
    """
    if not curve:
        raise ValueError("curve has no point: the parts fit on no board, so there is no trade-off.")
    wood = _amounts(curve, rule)
    sheet = Sheet(scale=1.0, height=HEIGHT)
    page = _Page(sheet, along_of(curve, wood), up_of(curve), wood)
    _stair(page, curve)
    _board(page, chosen)
    ghosted = ghost is not None and wood.of(ghost) <= page.along.high and ghost.looks >= page.up.low
    if ghost is not None and ghosted:  # else it was kept from another board, and lies off this one
        x, y = page.at(ghost)
        sheet.line("ghost", [(x, FLOOR - _BOARD - 6.0), (x, y)])
        sheet.name("ghost chosen", [(wood.of(ghost), ghost.looks)])
    _named(page, curve, chosen)
    title(sheet, f"best figure for the {wood.what}", x=sheet.width / 2, y=HEIGHT - 20.0)
    unit_words(sheet, rule=rule, ghost=ghosted, instead=wood.unit and f"wood in {wood.unit}")
    return sheet.picture(_sentence(curve, chosen, wood), most=28)


class _Page(NamedTuple):
    """The sheet, with its two axes."""

    sheet: Sheet
    along: Axis
    up: Axis
    wood: Amounts

    def at(self, point: Point) -> tuple[float, float]:
        """Where a layout lies. [pt]"""
        return self.along.at(self.wood.of(point)), self.up.at(point.looks)


def _stair(page: _Page, curve: Sequence[Point]) -> None:
    """Each layout a step: as high as its figure, beginning where its wood suffices."""
    sheet, steps = page.sheet, [page.at(point) for point in curve]
    first = steps[0][0]
    corners = [(first, FLOOR)]
    for (x, y), (end, _) in pairwise([*steps, (RIGHT, FLOOR)]):
        corners += [(x, y), (end, y)]
    shape = [*corners, (RIGHT, FLOOR)]
    sheet.line("face", shape, closed=True)
    long_grain(PartView(sheet, 0.0, 0.0, 1.0), shape)
    sheet.line("visible", corners)
    sheet.name("stair", [(page.wood.of(point), point.looks) for point in curve])
    sheet.line("thin", [(LEFT, FLOOR), (LEFT, TOP)])
    for value in page.up.marks():
        y = page.up.at(value)
        sheet.line("thin", [(LEFT - 6.0, y), (LEFT, y)])
        spot = Slot(LEFT - 10.0, y - 0.36 * sheet.text, "right")
        sheet.write(f"{round(value, 2):g}", [spot], rank=2)
    sheet.write("figure, 1 at best", [Slot(LEFT - 42.0, TOP + 10.0)], rank=2)
    middle = (LEFT + first) / 2, (FLOOR + TOP) / 2
    short = [Slot(middle[0], middle[1] + off, "center") for off in (0.0, -30.0, 40.0)]
    sheet.write("too little\nfor all parts", short, rank=4)


def _board(page: _Page, chosen: Point) -> None:
    """The board that is used up from its left end, marked along its lower edge."""
    sheet, low, cut = page.sheet, FLOOR - _BOARD, page.at(chosen)[0]
    # Of the free-hand line every third point: a board so narrow has no room for more.
    ragged = [*break_line(RIGHT, low=low, high=FLOOR)[:-2:3], (RIGHT, FLOOR)]
    sheet.line("face", rectangle((LEFT, cut), (low, FLOOR)), closed=True)
    sheet.line("far", [(cut, low), *ragged, (cut, FLOOR)], closed=True)
    long_grain(PartView(sheet, 0.0, 0.0, 1.0), rectangle((LEFT, RIGHT), (low, FLOOR)))
    sheet.line("visible", [(RIGHT, FLOOR), (LEFT, FLOOR), (LEFT, low), (RIGHT, low)])
    sheet.line("thin", ragged)
    sheet.name("used", [(0.0, 0.0), (page.wood.of(chosen), 0.0)])
    for value in page.along.marks():
        x = page.along.at(value)
        sheet.line("thin", [(x, low), (x, low - 5.0)])
        place = Slot(x, low - 9.0 - 0.76 * sheet.text, "center")
        sheet.write(page.wood.show(value, unit=False), [place], rank=2)


def _named(page: _Page, curve: Sequence[Point], chosen: Point) -> None:
    """The chosen layout, a dot and plumb under it where its board is sawn off; the stair's ends."""
    sheet, wood, drop = page.sheet, page.wood, 0.76 * page.sheet.text
    x, y = page.at(chosen)
    sheet.line("gauge", [(x, y), (x, FLOOR - _BOARD - 6.0)])
    sheet.line("arrow", circle((x, y), 3.4, count=16), closed=True)
    sheet.name("chosen", [(wood.of(chosen), chosen.looks)])
    text = f"chosen: {wood.show(wood.of(chosen), unit=False)}, figure {chosen.looks:.2f}"
    spots = []
    for level in (6.0, -6.0 - drop, -16.0 - drop, 18.0):
        spots += [Slot(x - 6.0, y + level, "right"), Slot(x + 6.0, y + level)]
    sheet.write(text, spots, rank=0, at=(x, y))
    if len(curve) > 1:
        x, y = page.at(curve[0])
        spots = [Slot(x - 5.0, y - below - drop, "right") for below in (2.0, 14.0, 28.0)]
        sheet.write("most economical", spots, rank=1, at=(x, y))
        top = page.at(curve[-1])[1]
        spots = [Slot(RIGHT + off, top + 6.0, "right") for off in (0.0, 30.0, -40.0)]
        sheet.write("best figure", spots, rank=1, at=(RIGHT - 8.0, top))


def _sentence(curve: Sequence[Point], chosen: Point, wood: Amounts) -> str:
    def told(point: Point) -> str:
        of = "wood" if wood.unit else "board"
        return f"{wood.show(wood.of(point))} of {of} with a figure of {point.looks:.2f} of 1"

    if len(curve) == 1:
        return f"The most economical layout has the best figure too: {told(curve[0])}."
    return (
        f"From the most economical, {told(curve[0])}, to the best figure, {told(curve[-1])}, in "
        f"{len(curve)} steps; "
        f"chosen: {told(chosen)}."
    )
