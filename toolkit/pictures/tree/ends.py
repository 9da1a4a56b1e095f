"""A board's end enlarged, as sawn and as it became, with a straightedge on its hollow face."""

from __future__ import annotations

from math import hypot

from toolkit.measures import Rule
from toolkit.pictures.kit.dimensions import single
from toolkit.pictures.kit.lettering import Place
from toolkit.pictures.kit.picture import Point
from toolkit.pictures.kit.view import View
from toolkit.pictures.tree.log import HEART, ring_radii
from toolkit.pictures.tree.sawn import Sawn
from toolkit.pictures.tree.warp import WarpedSection, arcs_within, disc_within
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


def _grain(view: View, board: Sawn, *, radius: float, warp: WarpedSection | None) -> None:
    """Heartwood and rings of the section, gone along with it where it has warped."""
    sheet = view.sheet

    def moved(points: list[Point]) -> list[Point]:
        return view.points(warp.points(points) if warp is not None else points)

    heart = disc_within(board.section, pith=board.pith, radius=radius * HEART)
    if heart:
        sheet.line("end", moved(heart), closed=True)
    for far in ring_radii(view.scale, most=radius):
        for arc in arcs_within(board.section, pith=board.pith, radius=far):
            sheet.line("ring", moved(arc))


def draw_as_sawn(view: View, board: Sawn, *, radius: float, rule: Rule) -> None:
    """The section as sawn, the middle of the board at the view's zero. [mm]"""
    sheet = view.sheet
    view.area("as sawn", board.section, fill="sap end", edge="visible")
    _grain(view, board, radius=radius, warp=None)
    half, rise = board.width / 2, board.thickness / 2
    stops = view.across(-half), view.across(half)
    low = view.up(-rise)
    text = rule.exact(board.width, unit=False)
    single(sheet, stops, text, at=low - 20.0, starts=low, axis="along")
    text = rule.exact(board.thickness, unit=False)
    right = view.across(half)
    levels = low, view.up(rise)
    single(sheet, levels, text, at=right + 12.0, starts=right, axis="up")
    if board.faces_differ:
        x, drop = view.across(-half), 0.76 * sheet.text
        sheet.write("bark side", [Place(x + 4.0, view.up(rise) + 4.0)], rank=2, kind="remark")
        sheet.write("heart side", [Place(x + 4.0, low - 4.0 - drop)], rank=2, kind="remark")
    if board.cup is None:
        _crack(view, board)


def _crack(view: View, board: Sawn) -> None:
    """The split from the pith to the nearer face, or to both where it lies between them."""
    x, y = board.pith
    rise = board.thickness / 2
    for face in (rise, -rise):
        lean = 0.03 * board.thickness
        middle = (x + lean, (y + face) / 2)
        view.line("wrong", (x, max(y, -rise)), middle, (x - lean, face))


def draw_after(
    view: View, board: Sawn, cup: Cup, warp: WarpedSection, *, radius: float, rule: Rule
) -> None:
    """What the section became, with the change drawn larger. [mm]"""
    sheet = view.sheet
    view.area("after", warp.outline, fill="sap end", edge="visible")
    _grain(view, board, radius=radius, warp=warp)
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
    face = _face(cup, warp, bark=bark)
    (x0, y0), (x1, y1) = start, end = view.at(*face[0]), view.at(*face[-1])
    long = hypot(x1 - x0, y1 - y0)
    along = (x1 - x0) / long, (y1 - y0) / long
    off = _EDGE if bark else -_EDGE
    past = 7.0
    corners = []
    for (x, y), way, out in (
        (start, -past, 0.0),
        (end, past, 0.0),
        (end, past, off),
        (start, -past, off),
    ):
        corners.append((x + way * along[0] - out * along[1], y + way * along[1] + out * along[0]))
    sheet.name("straightedge", [face[0], face[-1]])
    sheet.line("void", corners, closed=True)
    sheet.line("thin", corners, closed=True)
    page = view.points(face)
    gaps = [abs((x - x0) * along[1] - (y - y0) * along[0]) for x, y in page]
    x, y = page[gaps.index(max(gaps))]
    words = f"{'bark' if bark else 'heart'} side {rule.exact(depth, unit=False)} hollow"
    level = max(y for _, y in corners) + 9.0
    if not bark:
        level = min(y for _, y in corners) - 9.0 - 0.76 * sheet.text
    tip = level - 3.0 if bark else level + 0.76 * sheet.text + 2.5
    spots = [
        Place(x + shift, level, "center", ((x, y), (x + shift, tip)))
        for shift in (0.0, 30.0, -30.0)
    ]
    sheet.write(words, spots, rank=0)
    return min(level, *(y for _, y in corners))


def _face(cup: Cup, warp: WarpedSection, *, bark: bool) -> list[Point]:
    """The points of one face from left to right, as drawn. [mm]"""
    half = max(y for _, y in cup.outline_before)
    level = half if bark else -half
    pairs = zip(cup.outline_before, warp.outline, strict=True)
    rows = [(x, moved) for (x, y), moved in pairs if abs(y - level) < 1e-9 * half]
    return [moved for _, moved in sorted(rows)]
