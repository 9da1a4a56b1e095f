"""The log's end with the board in it, and the board's end before and after it dried."""

from __future__ import annotations

from math import atan2, cos, dist, pi, radians, sin

from toolkit.measures import Rule
from toolkit.pictures.kit import Anchor, PartView, Picture, Point, Sheet, Slot, still_scale
from toolkit.pictures.kit.lettering import edition
from toolkit.pictures.kit.notes import title, unit_words
from toolkit.pictures.kit.strokes import ARROW, arrow_head, away, circle, fill
from toolkit.pictures.tree.ends import (
    AFTER,
    AS_SAWN,
    HEART,
    MIDDLE,
    SECTION_ROOM,
    WarpedSection,
    draw_after,
    draw_as_sawn,
    ring_radii,
    warp_of,
)
from toolkit.pictures.tree.states import Sawn

# Where the pith lies on the page, and how much room the log has about it. [pt]
PITH_X, PITH_Y, LOG_ROOM = 134.0, 176.0, 112.0
# Radii of logs, so that the log stays as it is while the board moves in it. [mm]
LOGS = (100.0, 125.0, 160.0, 200.0, 250.0, 315.0, 400.0, 500.0, 630.0, 800.0, 1000.0)
_PITH = (0.0, 0.0)  # the log's own zero [mm]
_BARK = 0.07
_CLEAR = 0.93  # of the radius; what reaches further is not sawn from this log


def log_radius(*boards: Sawn, least: float) -> float:
    """Radius of a log that boards can come from. [mm]"""
    need = max(dist(corner, board.pith) for board in boards for corner in board.section) / _CLEAR
    if least >= need:
        return least
    return next((radius for radius in LOGS if radius >= max(need, least)), need)


def _log(view: PartView, board: Sawn, *, radius: float, ghost: Sawn | None, rule: Rule) -> None:
    """The log's end about the pith at the view's zero, with the board in it. [mm]"""
    sheet, bark = view.sheet, []
    for i in range(72):
        turn = 2 * pi * i / 72
        sway = sin(3 * turn + 0.6) + 0.7 * sin(7 * turn) + 0.5 * sin(23 * turn)
        bark.append(away(_PITH, turn=turn, far=radius * (1 + _BARK) * (1 + 0.007 * sway)))
    inner = circle(_PITH, radius, count=72)
    # Bark is a ring: out along its outside, back along its inside.
    ring = [*bark, bark[0], inner[0], *reversed(inner)]
    sheet.line("bark", view.points(ring), closed=True)
    view.area("sapwood", inner, fill="sap end")
    view.area("heartwood", circle(_PITH, radius * HEART, count=72), fill="end", edge="ring")
    sheet.line("thin", view.points(bark), closed=True)
    for far in ring_radii(view.scale, most=radius):
        sheet.line("ring", view.points(circle(_PITH, far, count=60)), closed=True)
    fill(sheet, circle((view.x, view.y), 2.0, count=12), "void", "thin")
    if ghost is not None:
        view.area("ghost board in the log", _in_log(ghost), edge="ghost")
    edge = "wrong" if board.cup is None else "visible"
    view.area("board in the log", _in_log(board), edge=edge)
    _radius(view, board, rule)
    _names(view, radius)


def _in_log(board: Sawn) -> list[Point]:
    return [(x - board.pith[0], y - board.pith[1]) for x, y in board.section]


def _radius(view: PartView, board: Sawn, rule: Rule) -> None:
    """From the pith to the middle of the board, with its figure."""
    sheet, (x, y) = view.sheet, board.pith
    start, end = view.at(0.0, 0.0), view.at(-x, -y)
    if dist(start, end) < 2 * ARROW:
        return
    owner = (sheet.next_label,)
    sheet.line("gauge", [start, end], owners=owner)
    turn = atan2(end[1] - start[1], end[0] - start[0])
    for head in (arrow_head(start, turn=turn + pi), arrow_head(end, turn=turn)):
        sheet.line("arrow", head, closed=True, owners=owner)
    middle = ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
    # Off the line at a right angle to it, below it first: there lies no board.
    spots = []
    for off in (6.0, 9.0, 12.0, -6.0, -9.0, -12.0):
        across, up = off * sin(turn), off * cos(turn)
        anchor: Anchor = "center" if abs(up) > abs(across) else "left" if off > 0 else "right"
        spots.append(Slot(middle[0] + across, middle[1] - 0.36 * sheet.text - 1.3 * up, anchor))
    sheet.write(rule.exact(board.ring_radius, unit=False), spots, rank=1, at=middle)


def _names(view: PartView, radius: float) -> None:
    """What is what, on leaders out of the log to the corners that it leaves free."""
    sheet = view.sheet
    high, low = PITH_Y + LOG_ROOM + 12.0, PITH_Y - LOG_ROOM - 18.0
    left, right = PITH_X - LOG_ROOM - 8.0, PITH_X + LOG_ROOM + 4.0
    bark, sap = radius * (1 + _BARK / 2), radius * (1 + HEART) / 2
    for text, at, far, spot in (
        ("bark", 140.0, bark, Slot(left, high)),
        ("sapwood", 40.0, sap, Slot(right, high, "right")),
        ("heartwood", 222.0, radius * 0.55, Slot(left, low)),
        ("pith", 308.0, 1.0 / view.scale, Slot(right, low, "right")),
    ):
        tip = view.at(*away(_PITH, turn=radians(at), far=far))
        end = (spot.x + (12.0 if spot.anchor == "left" else -12.0), spot.y - 3.0)
        if spot.y < PITH_Y:
            end = (end[0], spot.y + 0.76 * sheet.text + 2.5)
        sheet.write(text, [Slot(spot.x, spot.y, spot.anchor, (tip, end))], rank=4)


HEIGHT = 318.0
LOG = 160.0  # radius of the log that is drawn, unless told: no source [mm]
WARP = 8


def log_end(
    board: Sawn,
    *,
    rule: Rule,
    log: float = LOG,
    warp: int = WARP,
    ghost: Sawn | None = None,
) -> Picture:
    """Draw the end of a log, the board where it was sawn from it, and what became of the board.

    Parameters
    ----------
    board : Sawn
        The board's end in the log, with its cup. [mm]
    rule : Rule
        Whose rule the sizes are read on.
    log : float
        Radius of the log; a board that reaches further gets a larger one. [mm]
    warp : int
        How many times the change of shape is drawn; fewer where there is no room. [1]
    ghost : Sawn, optional
        An earlier state, drawn thinly behind. [mm]

    Returns
    -------
    Picture
        Log and sections in true proportion; the exaggeration of the change is said beside it.

    Source
    ------
    The shape is the result's own. Where the heartwood ends and how far apart the rings lie is
    how it is drawn, no source.
    """
    text = edition().text
    radius = log_radius(*([board] if ghost is None else [board, ghost]), least=log)
    small = still_scale((radius, LOG_ROOM * 1.06))
    kept = None
    if ghost is not None:
        kept = still_scale((ghost.width, SECTION_ROOM[0]), (ghost.thickness, SECTION_ROOM[1]))
    large = still_scale(
        (board.width, SECTION_ROOM[0]), (board.thickness, SECTION_ROOM[1]), kept=kept
    )
    sheet = Sheet(scale=small, height=HEIGHT, text=text)
    _log(PartView(sheet, PITH_X, PITH_Y, small), board, radius=radius, ghost=ghost, rule=rule)
    title(sheet, "the log's end", x=PITH_X, y=26.0)
    draw_as_sawn(PartView(sheet, MIDDLE, AS_SAWN, large), board, radius=radius, rule=rule)
    title(sheet, "the board's end as sawn", x=MIDDLE, y=HEIGHT - 20.0)
    after = PartView(sheet, MIDDLE, AFTER, large)
    if board.cup is None:
        words = "the pith lies in the board:\nit splits as it dries,\nand no cup can be foretold"
        sheet.write(words, [Slot(MIDDLE, AFTER + 12.0, "center")], rank=0, red=True)
    else:
        larger = warp_of(board.cup, scale=large, times=warp)
        if ghost is not None and ghost.cup is not None:
            before = WarpedSection(ghost.cup, times=larger.times)
            after.area("ghost after", before.outline, edge="ghost")
        draw_after(after, board, board.cup, larger, radius=radius, rule=rule)
        title(sheet, f"{board.became}, warp × {larger.times:g}", x=MIDDLE, y=26.0)
    unit_words(sheet, rule=rule, ghost=ghost is not None)
    return sheet.picture(board.sentence(rule))
