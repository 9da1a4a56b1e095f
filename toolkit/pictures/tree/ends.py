"""A board's end as it warps, enlarged: its rings go along, a straightedge lies on its hollow."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import atan2, ceil, cos, isclose, sin

import numpy as np
from contourpy import ContourGenerator, contour_generator
from numpy.typing import NDArray

from toolkit.measures import Rule
from toolkit.pictures.kit import PartView, Point, Slot
from toolkit.pictures.kit.dimensions import single
from toolkit.pictures.kit.strokes import away, fill, points_of
from toolkit.pictures.tree.states import Sawn
from toolkit.wood import Cup

Floats = NDArray[np.float64]

HEART = 0.8  # of the log's radius is heartwood: how it is drawn, no source
_RING = 2.5  # between two growth rings, about: how they are drawn, no source [mm]
_APART = 4.3  # between two rings on the page, at least [pt]
_STEP = 1.5  # between two points of a line that is to be bent, at most [mm]


class WarpedSection:
    """How every point of a section moves when its outline does, ``times`` as far. [mm]

    Between the four edges a point moves by a blend of what they do (a Coons patch); on the edges
    themselves it moves exactly as they do.

    Source: Coons patch: common geometry of surfaces.
    """

    def __init__(self, cup: Cup, *, times: float) -> None:
        self.times = times
        before, after = np.array(cup.outline_before), np.array(cup.outline_after)
        self._moves = after - before
        self.outline = points_of(before + times * self._moves)
        self._low, self._high = before.min(axis=0), before.max(axis=0)
        sides = []
        for across, limits in ((1, (self._low, self._high)), (0, (self._low, self._high))):
            along = before[:, 1 - across]
            for limit in limits:
                on = np.flatnonzero(np.isclose(before[:, across], limit[across]))
                on = on[np.argsort(along[on])]
                sides.append((along[on], self._moves[on]))
        self._bottom, self._top, self._left, self._right = sides

    @property
    def farthest(self) -> float:
        """How far the farthest point of the outline is drawn from where it was. [mm]"""
        return self.times * float(np.hypot(*self._moves.T).max())

    @property
    def size(self) -> float:
        """The larger side of the section. [mm]"""
        return float((self._high - self._low).max())

    def points(self, points: Sequence[Point]) -> list[Point]:
        """Where points of the section come to lie. [mm]"""
        return points_of(self.moved(np.array(points)))

    def moved(self, at: Floats) -> Floats:
        """The same for an array of them, a row each. [mm]"""
        u, v = ((at - self._low) / (self._high - self._low)).T[:, :, None]
        bottom, top = _read(self._bottom, at[:, 0]), _read(self._top, at[:, 0])
        left, right = _read(self._left, at[:, 1]), _read(self._right, at[:, 1])
        low = (1 - u) * self._bottom[1][0] + u * self._bottom[1][-1]
        high = (1 - u) * self._top[1][0] + u * self._top[1][-1]
        faces = (1 - v) * bottom + v * top
        edges = (1 - u) * left + u * right
        moves: Floats = faces + edges - ((1 - v) * low + v * high)
        return at + self.times * moves


def _read(side: tuple[Floats, Floats], at: Floats) -> Floats:
    """The moves of points on one side, by how far along it they lie."""
    along, moves = side
    return np.column_stack([np.interp(at, along, moves[:, i]) for i in (0, 1)])


def ring_radii(scale: float, *, most: float) -> Iterator[float]:
    """Radii of the rings that are drawn at a scale [pt/mm]: some of the same ones at any. [mm]"""
    every = ceil(_APART / (_RING * scale))
    for i in range(every, int(most / _RING) + 1, every):
        radius = (i + 0.3 * sin(2.1 * i)) * _RING
        if radius < most:
            yield radius


def within(
    section: Sequence[Point], *, pith: Point, warp: WarpedSection | None = None
) -> ContourGenerator:
    """How far every place of a section lies from the pith: contours of that are its rings. [mm]"""
    (x0, y0), _, (x1, y1), _ = section
    x, y = np.meshgrid(
        np.linspace(x0, x1, ceil((x1 - x0) / _STEP) + 1),
        np.linspace(y0, y1, ceil((y1 - y0) / _STEP) + 1),
    )
    far = np.hypot(x - pith[0], y - pith[1])
    if warp is not None:
        x, y = warp.moved(np.column_stack([x.ravel(), y.ravel()])).T.reshape(2, *x.shape)
    return contour_generator(x, y, far)


def draw_grain(
    view: PartView,
    section: Sequence[Point],
    *,
    pith: Point,
    radius: float,
    warp: WarpedSection | None,
) -> None:
    """Heartwood and rings of a section, gone along with it where it has warped."""
    tree = within(section, pith=pith, warp=warp)
    for heart in tree.filled(0.0, radius * HEART)[0]:
        view.sheet.line("end", view.points(points_of(np.asarray(heart))), closed=True)
    for far in ring_radii(view.scale, most=radius):
        for arc in tree.lines(far):
            view.sheet.line("ring", view.points(points_of(np.asarray(arc))))


# Middle of both views on the page; heights of their middles; room for a section and for what it
# becomes. [pt]
MIDDLE, AS_SAWN, AFTER = 400.0, 242.0, 118.0
SECTION_ROOM = (228.0, 52.0)
WARP_ROOM = (236.0, 76.0)
_TIMES = (5, 3, 2, 1)
_FARTHEST = 0.15  # of the section's larger side, that a point may be drawn from where it was
_EDGE = 5.0  # of the straightedge [pt]


def warp_of(cup: Cup, *, scale: float, times: int) -> WarpedSection:
    """The change drawn ``times`` as large, or as large as it still looks like a board. [pt/mm]"""
    for smaller in (times, *(row for row in _TIMES if row < times)):
        warp = WarpedSection(cup, times=smaller)
        xs, ys = zip(*warp.outline, strict=True)
        wide, high = (max(xs) - min(xs)) * scale, (max(ys) - min(ys)) * scale
        if wide <= WARP_ROOM[0] and high <= WARP_ROOM[1] and warp.farthest <= _FARTHEST * warp.size:
            break
    return warp


def draw_as_sawn(view: PartView, board: Sawn, *, radius: float, rule: Rule) -> None:
    """The section as sawn, the middle of the board at the view's zero. [mm]"""
    sheet = view.sheet
    view.area("as sawn", board.section, fill="sap end", edge="visible")
    draw_grain(view, board.section, pith=board.pith, radius=radius, warp=None)
    (left, low), _, (right, high), _ = view.points(board.section)
    text = rule.exact(board.width, unit=False)
    single(sheet, (left, right), text, at=low - 20.0, starts=low, axis="along")
    text = rule.exact(board.thickness, unit=False)
    single(sheet, (low, high), text, at=right + 12.0, starts=right, axis="up")
    if board.faces_differ:
        for side, level in (("bark", high + 4.0), ("heart", low - 4.0 - 0.76 * sheet.text)):
            sheet.write(f"{side} side", [Slot(left + 4.0, level)], rank=2, kind="remark")
    if board.cup is None:
        # It splits from the pith to the nearer face, or to both where it lies between them.
        (x, y), rise, lean = board.pith, board.thickness / 2, 0.03 * board.thickness
        for face in (rise, -rise):
            middle = (x + lean, (y + face) / 2)
            view.line("wrong", (x, max(y, -rise)), middle, (x - lean, face))


def draw_after(
    view: PartView, board: Sawn, cup: Cup, warp: WarpedSection, *, radius: float, rule: Rule
) -> None:
    """What the section became, with the change drawn larger. [mm]"""
    sheet = view.sheet
    view.area("after", warp.outline, fill="sap end", edge="visible")
    draw_grain(view, board.section, pith=board.pith, radius=radius, warp=warp)
    view.area("outline as sawn", board.section, edge="beside")
    low = view.up(min(-board.thickness / 2, *(y for _, y in warp.outline)))
    if cup.hollow_side != "neither":
        low = min(low, _straightedge(view, cup, warp, rule=rule))
    stops = [view.across(x) for x, _ in warp.points([(-board.width / 2, 0), (board.width / 2, 0)])]
    text = rule.exact(cup.width_after, unit=False)
    single(sheet, (stops[0], stops[1]), text, at=low - 19.0, starts=low, axis="along")


def _straightedge(view: PartView, cup: Cup, warp: WarpedSection, *, rule: Rule) -> float:
    """A straightedge on the corners of the hollow face, and its gap; its lowest point. [pt]"""
    sheet, bark = view.sheet, cup.hollow_side == "bark"
    depth = cup.bark_hollow if bark else cup.heart_hollow
    level = (max if bark else min)(y for _, y in cup.outline_before)
    pairs = zip(cup.outline_before, warp.outline, strict=True)
    face = [moved for _, moved in sorted((x, m) for (x, y), m in pairs if isclose(y, level))]
    page = view.points(face)
    (x0, y0), (x1, y1) = start, end = page[0], page[-1]
    turn, off = atan2(y1 - y0, x1 - x0), _EDGE if bark else -_EDGE
    edge = [
        away(at, turn=turn, far=far, aside=aside)
        for at, far, aside in (
            (start, -7.0, 0.0),
            (end, 7.0, 0.0),
            (end, 7.0, off),
            (start, -7.0, off),
        )
    ]
    sheet.name("straightedge", [face[0], face[-1]])
    fill(sheet, edge, "void", "thin")
    x, y = max(page, key=lambda at: abs((at[0] - x0) * sin(turn) - (at[1] - y0) * cos(turn)))
    words = f"{'bark' if bark else 'heart'} side {rule.exact(depth, unit=False)} hollow"
    drop, levels = 0.76 * sheet.text, [at[1] for at in edge]
    level = max(levels) + 9.0 if bark else min(levels) - 9.0 - drop
    tip = level - 3.0 if bark else level + drop + 2.5
    spots = [
        Slot(x + shift, level, "center", ((x, y), (x + shift, tip))) for shift in (0.0, 30.0, -30.0)
    ]
    sheet.write(words, spots, rank=0)
    return min(level, *levels)
