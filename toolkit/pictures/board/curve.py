"""What looks cost in board: a stair whose every step is a layout, from sparing to handsome."""

from __future__ import annotations

from collections.abc import Sequence
from math import cos, pi, sin

from toolkit.measures import Rule
from toolkit.pictures.board.scales import Axis, Wood, along_of, one_section, up_of
from toolkit.pictures.kit.figure_of_wood import break_line
from toolkit.pictures.kit.lettering import Anchor, Place
from toolkit.pictures.kit.notes import title, unit_words
from toolkit.pictures.kit.picture import Picture
from toolkit.pictures.kit.sheet import PAPER_TEXT, TEXT, Sheet
from toolkit.pictures.kit.view import rectangle
from toolkit.stock import Point

HEIGHT = 286.0
# Where the board lies, where the stair stands and how far both reach. [pt]
LEFT, RIGHT, FLOOR, TOP = 92.0, 500.0, 82.0, 236.0
_BOARD = 22.0


def curve_picture(
    curve: Sequence[Point],
    *,
    chosen: Point,
    rule: Rule,
    ghost: Point | None = None,
    paper: bool = False,
) -> Picture:
    """Draw the best looks to be had from every length of board, and the layout that is chosen.

    Parameters
    ----------
    curve : sequence of Point
        The trade-off, the sparest first. [mm]
    chosen : Point
        The layout that is chosen. [mm]
    rule : Rule
        Whose rule the lengths are read on.
    ghost : Point, optional
        The layout that was kept before. [mm]
    paper : bool
        Larger letters, for print.

    Returns
    -------
    Picture
        A stair over the board it is sawn from: along it the length of board used, up it the
        looks. Where it takes boards of several sections, the wood is counted by its volume.

    Raises
    ------
    ValueError
        The curve has no point.

    Source
    ------
    The curve is the result's own.
    """
    if not curve:
        raise ValueError("curve has no point: the parts fit on no board, so there is no trade-off.")
    wood = Wood(rule, by_length=one_section(curve))
    sheet = Sheet(scale=1.0, height=HEIGHT, text=PAPER_TEXT if paper else TEXT)
    along = along_of(curve, wood, start=LEFT, end=RIGHT)
    up = up_of(curve, start=FLOOR + 8.0, end=TOP)
    _stair(sheet, curve, along, up, wood)
    _board(sheet, chosen, along, wood)
    if ghost is not None and (wood.of(ghost) > along.high or ghost.looks < up.low):
        ghost = None  # kept from another board: it lies off this one
    if ghost is not None:
        x = along.at(wood.of(ghost))
        sheet.line("ghost", [(x, FLOOR - _BOARD - 6.0), (x, up.at(ghost.looks))])
        sheet.name("ghost chosen", [(wood.of(ghost), ghost.looks)])
    _chosen(sheet, chosen, along, up, wood)
    _ends(sheet, curve, along, up, wood)
    title(sheet, f"best looks for the {wood.what}", x=sheet.width / 2, y=HEIGHT - 20.0)
    unit_words(sheet, rule=rule, ghost=ghost is not None, instead=wood.unit)
    return sheet.picture(_sentence(curve, chosen, wood), most=28)


def _stair(sheet: Sheet, curve: Sequence[Point], along: Axis, up: Axis, wood: Wood) -> None:
    """Each layout a step: as high as its looks, beginning where its wood suffices."""
    corners = [(along.at(wood.of(curve[0])), FLOOR)]
    for point, after in zip(curve, [*curve[1:], None], strict=True):
        x, y = along.at(wood.of(point)), up.at(point.looks)
        end = RIGHT if after is None else along.at(wood.of(after))
        corners += [(x, y), (end, y)]
    shape = [*corners, (RIGHT, FLOOR)]
    sheet.line("face", shape, closed=True)
    clip = sheet.within(shape)
    for i in range(int((TOP - FLOOR) / 8)):
        level = FLOOR + 6.0 + 8.0 * i
        line = [(LEFT + 12.0 * k, level + 1.3 * sin(0.5 * k + 0.8 * i)) for k in range(36)]
        sheet.line("face grain", line, clip=clip)
    sheet.line("visible", corners)
    sheet.name("stair", [(wood.of(point), point.looks) for point in curve])
    sheet.line("thin", [(LEFT, FLOOR), (LEFT, TOP)])
    for value in up.marks():
        y = up.at(value)
        sheet.line("thin", [(LEFT - 6.0, y), (LEFT, y)])
        text = f"{value:.2f}".rstrip("0").rstrip(".")
        sheet.write(text, [Place(LEFT - 10.0, y - 0.36 * sheet.text, "right")], rank=2)
    spots = [Place(LEFT - 42.0, TOP + 10.0)]
    sheet.write("looks, 1 at best", spots, rank=2)
    first = along.at(wood.of(curve[0]))
    short = [
        Place((LEFT + first) / 2, (FLOOR + TOP) / 2 + off, "center") for off in (0.0, -30.0, 40.0)
    ]
    sheet.write("too little\nfor all parts", short, rank=4)


def _board(sheet: Sheet, chosen: Point, along: Axis, wood: Wood) -> None:
    """The board that is used up from its left end, marked along its lower edge."""
    low, cut = FLOOR - _BOARD, along.at(wood.of(chosen))
    # Of the free-hand line every third point: a board so narrow has no room for more.
    ragged = break_line(RIGHT, low=low, high=FLOOR)[::3]
    ragged[-1] = (RIGHT, FLOOR)
    sheet.line("face", rectangle((LEFT, cut), (low, FLOOR)), closed=True)
    sheet.line("far", [(cut, low), *ragged, (cut, FLOOR)], closed=True)
    for i in range(3):
        line = [
            (LEFT + 12.0 * k, low + 4.5 + 6.5 * i + 1.2 * sin(0.6 * k + i))
            for k in range(int((RIGHT - LEFT) / 12))
        ]
        sheet.line("face grain", line)
    sheet.line("visible", [(RIGHT, FLOOR), (LEFT, FLOOR), (LEFT, low), (RIGHT, low)])
    sheet.line("thin", ragged)
    sheet.name("used", [(0.0, 0.0), (wood.of(chosen), 0.0)])
    for value in along.marks():
        x = along.at(value)
        sheet.line("thin", [(x, low), (x, low - 5.0)])
        place = Place(x, low - 9.0 - 0.76 * sheet.text, "center")
        sheet.write(wood.show(value, unit=False), [place], rank=2)


def _chosen(sheet: Sheet, chosen: Point, along: Axis, up: Axis, wood: Wood) -> None:
    """The chosen layout: a dot on its step, and plumb under it where the board is sawn off."""
    x, y = along.at(wood.of(chosen)), up.at(chosen.looks)
    sheet.line("gauge", [(x, y), (x, FLOOR - _BOARD - 6.0)])
    dot = [(x + 3.4 * cos(pi * i / 8), y + 3.4 * sin(pi * i / 8)) for i in range(16)]
    sheet.line("arrow", dot, closed=True)
    sheet.name("chosen", [(wood.of(chosen), chosen.looks)])
    text = f"chosen: {wood.show(wood.of(chosen), unit=False)}, looks {chosen.looks:.2f}"
    drop = 0.76 * sheet.text
    spots = [
        Place(x + way * off, y + level, anchor)
        for level in (6.0, -6.0 - drop, -16.0 - drop, 18.0)
        for way, off, anchor in _SIDES
    ]
    sheet.write(text, spots, rank=0, at=(x, y))


# Which way words go from a point, how far, and which of their ends is at it.
_SIDES: tuple[tuple[float, float, Anchor], ...] = ((-1.0, 6.0, "right"), (1.0, 6.0, "left"))


def _ends(sheet: Sheet, curve: Sequence[Point], along: Axis, up: Axis, wood: Wood) -> None:
    """The two ends of the stair in words."""
    x, y = along.at(wood.of(curve[0])), up.at(curve[0].looks)
    if len(curve) > 1:
        drop = 0.76 * sheet.text
        spots = [Place(x - 5.0, y - up_ - drop, "right") for up_ in (2.0, 14.0, 28.0)]
        sheet.write("sparing", spots, rank=1, at=(x, y))
        top = up.at(curve[-1].looks)
        spots = [Place(RIGHT + off, top + 6.0, "right") for off in (0.0, 30.0, -40.0)]
        sheet.write("handsome", spots, rank=1, at=(RIGHT - 8.0, top))


def _sentence(curve: Sequence[Point], chosen: Point, wood: Wood) -> str:
    def told(point: Point) -> str:
        of = " of board" if wood.by_length else " of wood"
        return f"{wood.show(wood.of(point))}{of} with looks {point.looks:.2f} of 1"

    if len(curve) == 1:
        return f"The most sparing layout is the handsomest too: {told(curve[0])}."
    return (
        f"From sparing, {told(curve[0])}, to handsome, {told(curve[-1])}, in {len(curve)} steps; "
        f"chosen: {told(chosen)}."
    )
