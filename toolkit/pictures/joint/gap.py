"""How well a joint is likely to fit: a hundred corners on a scale of gaps, and feeler blades."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from toolkit.box import BLADES, Gaps
from toolkit.measures import Rule
from toolkit.pictures.kit import PartView, Picture, Point, Sheet, Slot, rectangle, still_scale
from toolkit.pictures.kit.strokes import long_grain, rings
from toolkit.plan import FAIR, FINE

COUNT = 100  # corners, each a block
COLUMNS = 28
SPANS = (0.4, 0.8, 1.6, 3.2)  # how wide a gap the scale reaches; few, so that it stays [mm]
MOST = 0.97  # share of the corners that must lie within the scale


@dataclass(frozen=True, slots=True)
class Heap:
    """How many of 100 corners have no gap, and how many stand in each column of a scale. [mm]

    ``middle`` and ``late``: half the corners, and 95 of 100, have no wider gap.
    """

    span: float
    closed: int
    columns: tuple[int, ...]
    middle: float
    late: float


def _gaps_at(curve: tuple[tuple[float, float], ...], shares: list[float]) -> list[float]:
    """The gap that each share of corners stays within; none where all of them close. [mm]"""
    gaps, reached = zip(*curve, strict=True)
    found: list[float] = np.interp(shares, reached, gaps, left=0.0).tolist()
    return found


@lru_cache(maxsize=32)
def heap(gaps: Gaps, *, kept: float | None = None) -> Heap:
    """A hundred corners, from the tightest to the widest, laid on a scale."""
    curve = gaps.curve()
    *each, middle, late = _gaps_at(curve, [*((i + 0.5) / COUNT for i in range(COUNT)), 0.5, 0.95])
    most = each[round(MOST * COUNT) - 1]
    span = next((span for span in SPANS if most <= span), SPANS[-1])
    if kept is not None and most <= kept <= 2 * span:
        span = kept
    columns = [0] * COLUMNS
    for gap in each:
        if gap > 0:
            columns[min(int(gap / span * COLUMNS), COLUMNS - 1)] += 1
    return Heap(
        span=span,
        closed=sum(gap <= 0 for gap in each),
        columns=tuple(columns),
        middle=middle,
        late=late,
    )


HEIGHT, WALK = 356.0, 126.0  # of the page, and of the line that the corners stand on [pt]
LEFT, BLOCK = 98.0, 10.6  # where the scale begins, and the side of a block [pt]
TALL = 172.0  # room for the highest column [pt]
STACK = 6  # blocks side by side of corners without a gap
ROOM = LEFT + COLUMNS * BLOCK  # where the scale ends [pt]
LEAF = 13.5  # from one feeler blade to the next [pt]
DETAIL, HIGH = (424.0, 100.0), 82.0  # left and width of the enlarged cheeks; their height [pt]


def gap_picture(gaps: Gaps, *, rule: Rule, ghost: Gaps | None = None) -> Picture:
    """Draw how well a corner is likely to fit.

    Parameters
    ----------
    gaps : Gaps
        The spread of gaps.
    rule : Rule
        The rule on which gaps are written.
    ghost : Gaps, optional
        An earlier state, drawn thinly behind.

    Returns
    -------
    Picture
        A hundred such corners, each a block over its widest gap; feeler blades at the same
        scale; one cheek enlarged, as half the corners are and as the worst of twenty is.
    """
    before = heap(ghost) if ghost is not None else None
    now = heap(gaps, kept=before.span if before is not None else None)
    if before is not None and ghost is not None and before.span != now.span:
        before = heap(ghost, kept=now.span)
        before = before if before.span == now.span else None
    sheet = Sheet(scale=(ROOM - LEFT) / now.span, height=HEIGHT)
    _blocks(sheet, now)
    if before is not None:
        _ghost(sheet, before, now)
    _scale(sheet, gaps, rule)
    _blades(sheet, gaps, rule)
    for number, (share, gap) in enumerate(((50, now.middle), (95, now.late))):
        _cheek(sheet, gaps, rule, number, share=share, gap=gap)
    sheet.write(
        "100 such corners, each a block over its widest gap",
        [Slot(LEFT, HEIGHT - 22.0)],
        rank=0,
        size=sheet.text + 0.7,
    )
    face = "inside" if gaps.face == "far" else "outside"
    words = f"read at the {face} of the joint" + ("; dotted: before" if before else "")
    sheet.write(words, [Slot(LEFT, HEIGHT - 22.0 - 1.4 * sheet.text)], rank=1)
    return sheet.picture(gaps.sentence(rule), most=24)


def _course(heaps: Heap) -> float:
    """The height of one block: less than its width where a column would leave the page. [pt]"""
    return min(BLOCK, TALL / max(1, *heaps.columns))


def _cell(x: float, row: int, course: float) -> list[Point]:
    low = WALK + row * course
    return rectangle((x + 0.6, x + BLOCK - 0.6), (low + 0.6, low + course - 0.6))


def _blocks(sheet: Sheet, now: Heap) -> None:
    """The corners: those without a gap in a stack of their own, the others over their gaps."""
    left, course = LEFT - 12.0 - STACK * BLOCK, _course(now)
    for i in range(now.closed):
        row, place = divmod(i, STACK)
        _block(sheet, _cell(left + place * BLOCK, row, BLOCK), "far")
    step = now.span / COLUMNS
    for i, count in enumerate(now.columns):
        middle = (i + 0.5) * step
        pen = "face" if middle <= FINE else "floor" if middle <= FAIR else "end"
        for row in range(count):
            _block(sheet, _cell(LEFT + i * BLOCK, row, course), pen)
    sheet.name("closed corners", rectangle((0.0, 1.0), (0.0, float(now.closed))))
    sheet.line("visible", [(left - 2.0, WALK), (LEFT - 10.0, WALK)])
    words = f"no gap: {now.closed}"
    middle = left + STACK * BLOCK / 2
    sheet.write(words, [Slot(middle, WALK - 14.0, "center"), Slot(8.0, WALK - 14.0)], rank=1)


def _block(sheet: Sheet, cell: list[Point], pen: str) -> None:
    sheet.line(pen, cell, closed=True)
    sheet.line("thin", cell, closed=True)


def _ghost(sheet: Sheet, before: Heap, now: Heap) -> None:
    """The outline of an earlier heap, its blocks as high as those of the present one."""
    course = _course(now)
    line: list[Point] = [(LEFT, WALK)]
    for i, count in enumerate(before.columns):
        top = WALK + min(count * course, TALL)
        line += [(LEFT + i * BLOCK, top), (LEFT + (i + 1) * BLOCK, top)]
    sheet.line("ghost", [*line, (ROOM, WALK)])
    sheet.name("ghost heap", [(float(i), float(n)) for i, n in enumerate(before.columns)])


def _scale(sheet: Sheet, gaps: Gaps, rule: Rule) -> None:
    """The edge of a rule, its marks the blades' own thicknesses; two of them go up the heap."""
    sheet.line("visible", [(LEFT, WALK), (ROOM + 6.0, WALK)])
    for blade in BLADES:
        x = LEFT + blade * sheet.scale
        if x <= ROOM + 1e-6:
            high = 176.0 if blade in (FINE, FAIR) else 4.0
            sheet.line("gauge" if blade in (FINE, FAIR) else "thin", [(x, WALK), (x, WALK + high)])
            if blade in (FINE, FAIR):
                within = f"{gaps.at_most(blade) * 100:.0f} within\n{rule.exact(blade)}"
                spots = [Slot(x - 3.0, WALK + 166.0 - k, "right") for k in (0.0, 14.0, 28.0)]
                spots += [Slot(x + 3.0, WALK + 166.0 - k) for k in (0.0, 14.0, 28.0)]
                sheet.write(within, spots, rank=2)


def _blades(sheet: Sheet, gaps: Gaps, rule: Rule) -> None:
    """Feeler blades from the zero of the scale, as thick as the scale makes them."""
    for i, blade in enumerate(BLADES):
        y = WALK - 10.0 - i * LEAF
        x = LEFT + blade * sheet.scale
        if x > ROOM + 1e-6:
            continue
        leaf = rectangle((LEFT, x), (y - 7.0, y))
        sheet.name(f"blade {blade:g}", rectangle((0.0, blade), (0.0, 1.0)))
        sheet.line("void", leaf, closed=True)
        sheet.line("knife", leaf, closed=True)
        never = round(gaps.at_most(blade) * COUNT)
        words = f"feeler {rule.exact(blade)} stays out of {never}"
        sheet.write(words, [Slot(x + 6.0, y - 3.5 - 0.36 * sheet.text)], rank=3 + i)


def _cheek(sheet: Sheet, gaps: Gaps, rule: Rule, number: int, *, share: int, gap: float) -> None:
    """One cheek between pin and tail, in true proportion, so many times as large. [mm]"""
    joint = gaps.joint
    scale = still_scale((joint.tail_length, HIGH))
    left, wide = DETAIL
    length, out = joint.tail_length, joint.tail_length / joint.slope
    y = HEIGHT - 24.0 - HIGH - number * (HIGH + 44.0)
    view = PartView(sheet, left, y, scale)
    far, middle = wide / scale, wide / scale / 2
    # The tail stands at the right, its tip up; its cheek leans over the pin.
    foot, tip = middle + out / 2, middle - out / 2
    pin = [(0.0, 0.0), (foot - gap, 0.0), (tip - gap, length), (0.0, length)]
    tail = [(foot, 0.0), (far, 0.0), (far, length), (tip, length)]
    view.area(f"pin, {share} of 100", pin, fill="end", edge="thin")
    rings(view, pin, across=70.0)
    view.area(f"tail, {share} of 100", tail, fill="face", edge="thin")
    long_grain(view, tail)
    opened = [(foot - gap, 0.0), (foot, 0.0), (tip, length), (tip - gap, length)]
    view.area(f"gap, {share} of 100", opened, fill="gap")
    times = f"(drawn × {scale / (72.0 / 25.4):.1f})"
    words = (
        f"{share} of 100: {rule.exact(gap)}\nor less {times}" if gap else f"{share} of 100: no gap"
    )
    sheet.write(words, [Slot(left, y - 13.0)], rank=1)
    for name, x in (("pin", (foot + tip) / 4), ("tail", far - (far - foot) / 2)):
        spot = view.at(x, length / 2)
        sheet.write(name, [Slot(spot[0], spot[1] - 3.4, "center")], rank=6)
