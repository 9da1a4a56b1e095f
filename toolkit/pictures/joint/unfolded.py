"""Which line goes on which face: one end of a wall unfolded, with all its lines."""

from __future__ import annotations

from toolkit.pictures.joint.columns import first_line
from toolkit.pictures.joint.marked import draw_lines, draw_waste
from toolkit.pictures.joint.net import (
    BOTTOM,
    Board,
    Net,
    UnfoldedEnd,
    draw_wood,
    lay_out_net,
    net_scale,
    unfolded,
)
from toolkit.pictures.joint.notes import notes, write_notes
from toolkit.pictures.joint.words import no_joint, unfolded_sentence
from toolkit.pictures.kit.lettering import Anchor, Place, extent
from toolkit.pictures.kit.notes import nothing, unit_note
from toolkit.pictures.kit.picture import Picture
from toolkit.pictures.kit.sheet import Sheet
from toolkit.pictures.kit.view import View
from toolkit.plan import Plan
from toolkit.shape import Which

HEIGHT = 386.0  # [pt]


def unfolded_end(
    plan: Plan,
    *,
    board: Board = "pin board",
    which: Which = "back",
    proud: float | None = None,
    left_handed: bool = False,
) -> Picture:
    """Draw one end of a wall unfolded, every line on the face that carries it.

    Parameters
    ----------
    plan : Plan
        The box. [mm]
    board : str
        ``"tail board"`` or ``"pin board"``.
    which : str
        ``"back"`` or ``"front"`` corners.
    proud : float or None
        How much the second gauge goes over the tail board; None: the box's own customs. [mm]
    left_handed : bool
        Whether left and right are changed about, as the board lies before a left-handed maker.

    Returns
    -------
    Picture
        Inside face, end grain, outside face and both edges in true proportion.

    Raises
    ------
    ValueError
        There is no such board or corner.

    Source
    ------
    `setting_out_lines`; lines after ISO 128-2:2020 (from memory).
    """
    if not plan.design.exists:
        return nothing(no_joint(plan, which), height=HEIGHT)
    w = unfolded(plan, board=board, which=which, proud=proud, left_handed=left_handed)
    sheet = Sheet(scale=net_scale(w), height=HEIGHT)
    net = lay_out_net(sheet, w)
    draw_wood(net, w)
    draw_waste(net, w)
    draw_lines(net, w)
    _titles(net, w)
    unit_note(sheet, plan, ghost=False)
    write_notes(sheet, net, notes(net, w, plan.choices.rule))
    return sheet.picture(unfolded_sentence(plan, w))


def _titles(net: Net, w: UnfoldedEnd) -> None:
    """What each face is, written on it; and below, which board."""
    sheet = net.inside.sheet
    under = BOTTOM - w.end.thickness * sheet.scale
    middle = net.end.across(w.end.thickness / 2)
    sheet.write(w.title, [Place(middle, under - 30.0, "center")], rank=-1, size=sheet.text + 0.7)
    for view, up, words in (
        (net.inside, w.wall.height, "inside face"),
        (net.outside, w.wall.height, "outside face"),
        (net.top, w.end.thickness, "top edge"),
        (net.bottom, w.end.thickness, "bottom edge"),
    ):
        _name_face(view, words, clear=(w.baseline, net.far), up=up)
    away = net.end.across(w.end.thickness) + net.end.turn * 2.0
    anchor: Anchor = "right" if net.end.turn < 0 else "left"
    low = net.end.up(0.0) - 14.0
    sheet.write("end grain", [Place(away, low, anchor), Place(away, low - 8.0, anchor)], rank=0)


def _name_face(view: View, words: str, *, clear: tuple[float, float], up: float) -> None:
    """The name of a face on its clear wood, in one line or two. [mm]"""
    sheet = view.sheet
    low, high = sorted(view.across(x) for x in clear)
    room = high - low - 12.0
    text = words if extent(words, size=sheet.text)[0] <= room else words.replace(" ", "\n")
    drop = first_line(text, size=sheet.text)
    heights = [view.up(up * share) for share in (0.5, 0.56, 0.44, 0.62, 0.38, 0.7, 0.3)]
    middle = (low + high) / 2
    places = [
        Place(middle + aside, height + drop, "center")
        for height in heights
        for aside in (0.0, 3.0, -3.0)
    ]
    sheet.write(text, places, rank=2)
