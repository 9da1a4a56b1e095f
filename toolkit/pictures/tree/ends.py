"""A board's end enlarged, as sawn and as it became, with a straightedge on its hollow face."""

from __future__ import annotations

from math import atan2, cos, isclose, sin

from toolkit.measures import Rule
from toolkit.pictures.kit.dimensions import single
from toolkit.pictures.kit.lettering import Place
from toolkit.pictures.kit.view import View
from toolkit.pictures.strokes import away, fill
from toolkit.pictures.tree.sawn import Sawn
from toolkit.pictures.tree.warp import WarpedSection, draw_grain
from toolkit.wood import Cup

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


def draw_as_sawn(view: View, board: Sawn, *, radius: float, rule: Rule) -> None:
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
            sheet.write(f"{side} side", [Place(left + 4.0, level)], rank=2, kind="remark")
    if board.cup is None:
        # It splits from the pith to the nearer face, or to both where it lies between them.
        (x, y), rise, lean = board.pith, board.thickness / 2, 0.03 * board.thickness
        for face in (rise, -rise):
            middle = (x + lean, (y + face) / 2)
            view.line("wrong", (x, max(y, -rise)), middle, (x - lean, face))


def draw_after(
    view: View, board: Sawn, cup: Cup, warp: WarpedSection, *, radius: float, rule: Rule
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


def _straightedge(view: View, cup: Cup, warp: WarpedSection, *, rule: Rule) -> float:
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
        Place(x + shift, level, "center", ((x, y), (x + shift, tip)))
        for shift in (0.0, 30.0, -30.0)
    ]
    sheet.write(words, spots, rank=0)
    return min(level, *levels)
