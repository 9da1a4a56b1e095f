"""The end of a log with its rings, and the board where it was sawn from it."""

from __future__ import annotations

from collections.abc import Iterator
from math import atan2, ceil, cos, hypot, pi, sin

from toolkit.measures import Rule
from toolkit.pictures.kit.dimensions import ARROW, HALF_ARROW
from toolkit.pictures.kit.lettering import Anchor, Place
from toolkit.pictures.kit.picture import Point
from toolkit.pictures.kit.view import View
from toolkit.pictures.tree.sawn import Sawn

# Where the pith lies on the page, and how much room the log has about it. [pt]
PITH_X, PITH_Y, LOG_ROOM = 134.0, 176.0, 112.0
# Radii of logs, so that the log stays as it is while the board moves in it. [mm]
LOGS = (100.0, 125.0, 160.0, 200.0, 250.0, 315.0, 400.0, 500.0, 630.0, 800.0, 1000.0)
HEART = 0.8  # of the log's radius is heartwood: how it is drawn, no source
_BARK = 0.07
_CLEAR = 0.93  # of the radius; what reaches further is not sawn from this log
_RING = 2.5  # between two growth rings, about: how they are drawn, no source [mm]
_APART = 4.3  # between two rings on the page, at least [pt]


def log_radius(*boards: Sawn, least: float) -> float:
    """Radius of a log that boards can come from. [mm]"""
    far = max(
        hypot(x - board.pith[0], y - board.pith[1]) for board in boards for x, y in board.section
    )
    need = far / _CLEAR
    if least >= need:
        return least
    return next((radius for radius in LOGS if radius >= max(need, least)), need)


def ring_radii(scale: float, *, most: float) -> Iterator[float]:
    """Radii of the rings that are drawn at a scale [pt/mm]: some of the same ones at any. [mm]"""
    every = ceil(_APART / (_RING * scale))
    for i in range(every, int(most / _RING) + 1, every):
        radius = (i + 0.3 * sin(2.1 * i)) * _RING
        if radius < most:
            yield radius


def _circle(radius: float, *, sway: float = 0.0, count: int = 72) -> list[Point]:
    """A circle round the pith, drawn free-hand with ``sway``. [mm]"""
    points = []
    for i in range(count):
        turn = 2 * pi * i / count
        off = 1 + sway * (sin(3 * turn + 0.6) + 0.7 * sin(7 * turn) + 0.5 * sin(23 * turn))
        points.append((radius * off * cos(turn), radius * off * sin(turn)))
    return points


def draw_log(view: View, board: Sawn, *, radius: float, ghost: Sawn | None, rule: Rule) -> None:
    """The log's end about the pith at the view's zero, with the board in it. [mm]"""
    sheet = view.sheet
    bark = radius * (1 + _BARK)
    outer, inner = _circle(bark, sway=0.007), _circle(radius)
    # Bark is a ring: out along its outside, back along its inside.
    ring = [*outer, outer[0], inner[0], *reversed(inner)]
    sheet.line("bark", view.points(ring), closed=True)
    view.area("sapwood", inner, fill="sap end")
    heart = view.area("heartwood", _circle(radius * HEART), fill="end")
    sheet.line("ring", heart, closed=True)
    sheet.line("thin", view.points(outer), closed=True)
    for far in ring_radii(view.scale, most=radius):
        sheet.line("ring", view.points(_circle(far, count=60)), closed=True)
    sheet.line("void", view.points(_circle(2.0 / view.scale, count=12)), closed=True)
    sheet.line("thin", view.points(_circle(2.0 / view.scale, count=12)), closed=True)
    if ghost is not None:
        view.area("ghost board in the log", _in_log(ghost), edge="ghost")
    place = _in_log(board)
    wrong = board.cup is None
    view.area("board in the log", place, edge="wrong" if wrong else "visible")
    _radius(view, board, rule)
    _names(view, radius)


def _in_log(board: Sawn) -> list[Point]:
    return [(x - board.pith[0], y - board.pith[1]) for x, y in board.section]


def _radius(view: View, board: Sawn, rule: Rule) -> None:
    """From the pith to the middle of the board, with its figure."""
    sheet, (x, y) = view.sheet, board.pith
    start, end = view.at(0.0, 0.0), view.at(-x, -y)
    long = hypot(end[0] - start[0], end[1] - start[1])
    if long < 2 * ARROW:
        return
    owner = (sheet.next_label,)
    sheet.line("gauge", [start, end], owners=owner)
    turn = atan2(end[1] - start[1], end[0] - start[0])
    for tip, way in ((start, 1.0), (end, -1.0)):
        head = []
        for back, off in ((0.0, 0.0), (ARROW, HALF_ARROW), (ARROW, -HALF_ARROW)):
            along = way * back
            head.append(
                (
                    tip[0] + along * cos(turn) - off * sin(turn),
                    tip[1] + along * sin(turn) + off * cos(turn),
                )
            )
        sheet.line("arrow", head, closed=True, owners=owner)
    middle = ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
    text = rule.exact(board.ring_radius, unit=False)
    low = middle[1] - 0.36 * sheet.text
    # Off the line at a right angle to it, below it first: there lies no board.
    spots = []
    for off in (6.0, 9.0, 12.0, -6.0, -9.0, -12.0):
        anchor: Anchor = "left" if off > 0 else "right"
        across, up = off * sin(turn), off * cos(turn)
        if abs(up) > abs(across):
            anchor = "center"
        spots.append(Place(middle[0] + across, low - 1.3 * up, anchor))
    sheet.write(text, spots, rank=1, at=middle)


def _names(view: View, radius: float) -> None:
    """What is what, on leaders out of the log to the corners that it leaves free."""
    sheet = view.sheet
    high, low = PITH_Y + LOG_ROOM + 12.0, PITH_Y - LOG_ROOM - 18.0
    left, right = PITH_X - LOG_ROOM - 8.0, PITH_X + LOG_ROOM + 4.0
    bark, sap = radius * (1 + _BARK / 2), radius * (1 + HEART) / 2
    for text, at, far, spot in (
        ("bark", 140.0, bark, Place(left, high)),
        ("sapwood", 40.0, sap, Place(right, high, "right")),
        ("heartwood", 222.0, radius * 0.55, Place(left, low)),
        ("pith", 308.0, 1.0 / view.scale, Place(right, low, "right")),
    ):
        turn = at * pi / 180
        tip = view.at(far * cos(turn), far * sin(turn))
        end = (spot.x + (12.0 if spot.anchor == "left" else -12.0), spot.y - 3.0)
        if spot.y < PITH_Y:
            end = (end[0], spot.y + 0.76 * sheet.text + 2.5)
        sheet.write(text, [Place(spot.x, spot.y, spot.anchor, (tip, end))], rank=4)
