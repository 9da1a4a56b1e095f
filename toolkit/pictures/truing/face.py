"""A face seen from above: how much has to come off where, as lines of equal removal."""

from __future__ import annotations

from collections.abc import Collection

import numpy as np

from toolkit.measures import Rule
from toolkit.pictures.kit import Anchor, Picture, Point, Sheet, Slot, rectangle
from toolkit.pictures.kit.dimensions import single
from toolkit.pictures.kit.notes import title, unit_words, units_said
from toolkit.pictures.kit.strokes import points_of
from toolkit.pictures.truing.levels import Levels, draw_levels
from toolkit.truing import LeastPlaning

HEIGHT = 300.0
LEFT, WIDE = 76.0, 400.0  # where the board lies along the page [pt]
RIGHT = LEFT + WIDE
LOW, TALL = 104.0, 118.0  # and up it [pt]
BOARD = rectangle((LEFT, RIGHT), (LOW, LOW + TALL))
_STICK_OUT = 24.0  # of a winding stick over the edges [pt]
_STICK = 2.5  # half its width [pt]
_IN = 8.0  # from the end of the board to its middle [pt]
# What lies on the board besides: a straightedge, and the edges of the winding sticks.
_MIDDLE = [[(LEFT, LOW + TALL / 2), (RIGHT, LOW + TALL / 2)]]
_STICKS = [
    [(x + side, LOW), (x + side, LOW + TALL)]
    for x in (LEFT + _IN, RIGHT - _IN)
    for side in (-_STICK, _STICK)
]
_FLAT = 0.005  # less than this rounds to nothing on any rule [mm]
_AS_HIGH = 0.99  # of the most: as good as the highest place itself
_CROSS = 2.5  # half of a cross where a reading was taken [pt]


def face_map(
    planed: LeastPlaning,
    *,
    along: int,
    across: int,
    rule: Rule,
    shaving: float = 0.4,
    ghost: LeastPlaning | None = None,
    read: Collection[int] | None = None,
) -> Picture:
    """Draw what has to come off a face until it is flat, and where to plane first.

    Parameters
    ----------
    planed : LeastPlaning
        The least planing of readings on a grid, x changing slowest. [mm]
    along, across : int
        Readings along and across.
    rule : Rule
        Whose rule the sizes are read on.
    shaving : float
        Depth of the first cut, whose ground is hatched. [mm]
    ghost : LeastPlaning, optional
        The face as it was kept, on the same readings. [mm]
    read : collection of int, optional
        Which of the readings were really taken; each is marked with a cross.

    Returns
    -------
    Picture
        The face from above, drawn wider than it is by a factor that is told, with winding sticks
        and straightedge where they would lie.
    """
    length, width = float(np.ptp(planed.x)), float(np.ptp(planed.y))
    scale, tall = WIDE / length, TALL / width
    sheet = Sheet(scale=scale, height=HEIGHT)
    sheet.line("face", BOARD, closed=True)
    sheet.name("face", rectangle((0.0, length), (0.0, width)))

    def levels(of: LeastPlaning) -> Levels:
        return Levels(of, along=along, across=across, corner=(LEFT, LOW), size=(WIDE, TALL))

    face = levels(planed)
    if ghost is not None and ghost.deepest > _FLAT:
        before = levels(ghost)
        for level in face.steps(shaving, rule=rule) or before.steps(shaving, rule=rule):
            for line in before.at(level):
                sheet.line("ghost", points_of(line))
        for loop in before.first(shaving):
            sheet.line("ghost", loop, closed=True)
    crosses = _crosses(planed, read or ())
    if planed.deepest > _FLAT:
        place = _highest(face)
        fixed = [[*BOARD, BOARD[0]], *_MIDDLE, *_STICKS, *crosses, place.leader]
        draw_levels(sheet, face, shaving=shaving, rule=rule, keep_off=[np.array(f) for f in fixed])
        text = f"most: {rule.exact(round(planed.deepest, 2), unit=False)}"
        sheet.write(text, [place], rank=1)
    for cross in crosses:
        sheet.line("chalk", cross)
    sheet.line("visible", BOARD, closed=True)
    _sticks(sheet)
    text = "dotted: before; " if ghost is not None else ""
    text += "crosses: read; " if read is not None else ""
    text += f"drawn {tall / scale:.2g} × as wide as it is; " if tall / scale > 1.05 else ""
    said, up = rule.show(length, fineness="sizes", unit=False), (LOW, LOW + TALL)
    single(sheet, (LEFT, RIGHT), said, at=LOW - 36.0, starts=LOW, axis="along")
    said = rule.show(width, fineness="sizes", unit=False)
    single(sheet, up, said, at=RIGHT + 26.0, starts=RIGHT, axis="up")
    title(sheet, "the face from above: how much comes off", x=sheet.width / 2, y=HEIGHT - 22.0)
    unit_words(sheet, rule=rule, instead=f"{text}{units_said(rule)}; hatched: plane here first")
    return sheet.picture(planed.sentence(rule))


def _highest(face: Levels) -> Slot:
    """Where most comes off, of several such places the highest up the page: its figure."""
    rows, columns = face.removal.shape
    along, across = np.nonzero(face.removal >= face.deep * _AS_HIGH)
    xs, ys = along / (rows - 1), across / (columns - 1)
    best = int(np.lexsort((np.abs(xs - 0.5), -ys))[0])
    x, y = LEFT + WIDE * float(xs[best]), LOW + TALL * float(ys[best])
    # Over the board, between the words at the two winding sticks.
    start = min(max(x + (14.0 if x < LEFT + WIDE / 2 else -14.0), LEFT + 90.0), RIGHT - 90.0)
    level, way = LOW + TALL + 17.0, 1.0 if start > x else -1.0
    leader = ((x, y), (start - 3.0 * way, level + 3.0))
    return Slot(start, level, "left" if way > 0 else "right", leader)


def _crosses(planed: LeastPlaning, read: Collection[int]) -> list[list[Point]]:
    """The strokes of a cross at every place where a reading was taken. [pt]"""
    taken, c = list(read), _CROSS
    xs = LEFT + WIDE * (planed.x[taken] - planed.x.min()) / np.ptp(planed.x)
    ys = LOW + TALL * (planed.y[taken] - planed.y.min()) / np.ptp(planed.y)
    spots = points_of(xs, ys)
    return [[(x - c, y - way), (x + c, y + way)] for x, y in spots for way in (c, -c)]


def _sticks(sheet: Sheet) -> None:
    """Winding sticks over both ends, a straightedge along the middle."""
    low, high, level = LOW - _STICK_OUT, LOW + TALL + _STICK_OUT, LOW + TALL / 2
    ends: tuple[tuple[float, Anchor], ...] = ((LEFT + _IN, "left"), (RIGHT - _IN, "right"))
    for x, anchor in ends:
        sheet.line("beside", rectangle((x - _STICK, x + _STICK), (low, high)), closed=True)
        sheet.write("winding stick", [Slot(x, high + 6.0, anchor)], rank=3)
    sheet.line("gauge", [(LEFT - 20.0, level), (RIGHT + 12.0, level)])
    places = [Slot(LEFT - 6.0, level + up, "right") for up in (18.0, 22.0)]
    sheet.write("straight-\nedge", places, rank=3)
