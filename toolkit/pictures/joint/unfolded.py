"""Which line goes on which face: one end of a wall unfolded, with all its lines and their notes."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from toolkit.box import Line
from toolkit.measures import Rule
from toolkit.pictures.joint.net import (
    BOTTOM,
    Board,
    Net,
    UnfoldedEnd,
    draw_lines,
    draw_waste,
    draw_wood,
    from_end,
    lay_out_net,
    net_scale,
    unfolded,
)
from toolkit.pictures.joint.words import column, first_line, no_joint, unfolded_sentence, wrapped
from toolkit.pictures.kit import Anchor, PartView, Picture, Point, Sheet, Slot, extent
from toolkit.pictures.kit.notes import nothing, title, unit_words
from toolkit.plan import Plan
from toolkit.shape import Which

NO_BREAK = "\N{NO-BREAK SPACE}"
FACES = ("inside face", "outside face", "bottom edge", "top edge", "end grain")
BESIDE, MARGIN = 13.0, 4.0  # from a face's broken end to the notes, and from these to the edge [pt]


@dataclass(frozen=True, slots=True)
class Note:
    """Words, the point of the page that they speak of [pt], and whether they stand at the right."""

    words: tuple[str, str, str]
    at: Point
    right: bool


def _groups(lines: Iterable[Line]) -> list[list[Line]]:
    """Lines made with one tool at one setting from one side, in the order of the list."""
    found: dict[tuple[object, ...], list[Line]] = {}
    for row in lines:
        found.setdefault((row.tool, row.name, row.gauged_from), []).append(row)
    return list(found.values())


def _on(rows: list[Line]) -> str:
    faces = [face for face in FACES if any(row.face == face for row in rows)]
    if {"inside face", "outside face"} <= set(faces):
        rest = [face for face in faces if not face.endswith("face")]
        edges = "both edges" if len(rest) == 2 else "".join(f"the {face}" for face in rest)
        return f"on both faces and {edges}" if rest else "on both faces"
    return f"on the {faces[0]} only" if len(faces) == 1 else f"on {' and '.join(faces)}"


def _words(rows: list[Line], rule: Rule, *, slope: float) -> tuple[str, str, str]:
    """One note: the tool and its setting, where its fence runs, and which faces it marks."""
    first = rows[0]
    head = str(first.tool)
    if first.setting is not None:
        setting = rule.show(first.setting.value).replace(" ", NO_BREAK)
        head = f"{first.name}: {setting}"
    elif first.tool == "bevel gauge":
        head = f"bevel gauge: 1 in {slope:g}"
    return f"{head},", f"from {first.gauged_from},", _on(rows)


def notes(net: Net, w: UnfoldedEnd, rule: Rule) -> list[Note]:
    """A note for every setting, at one of the faces that it marks."""
    made = []
    for rows in _groups(w.lines):
        faces = {row.face for row in rows}
        inside = "inside face" in faces
        face = "inside face" if inside else rows[0].face
        row = next(row for row in rows if row.face == face)
        view, spot = net.face(face), _spot(net, w, row)
        words = _words(rows, rule, slope=w.end.corner.slope)
        made.append(Note(words, view.at(*spot), inside == (w.turn > 0)))
    return made


def _spot(net: Net, w: UnfoldedEnd, row: Line) -> Point:
    """A point of a line in its face's own axes, clear of other lines. [mm]"""
    tails = w.end.corner.tails
    if row.setting is not None:
        at = row.setting.value
        if row.gauged_from == "the bottom edge":
            return (net.far * 0.6 if row.end == "along" else w.baseline * 0.5, at)
        tail = tails[0] if from_end(row) and at >= w.baseline - 1e-9 else tails[-1]
        return (at, (tail.low + tail.high) / 2)
    if row.tool == "bevel gauge":
        tail = tails[len(tails) // 2]
        return (w.baseline - w.end.tip / 2, (tail.high + tail.tip_high) / 2)
    if row.face == "end grain":
        tail = tails[0]
        if row.tool == "square":
            return (w.end.thickness * 0.5, tail.tip_high)
        deep = min(w.end.tip, w.end.thickness)
        return (deep / 2, (tail.low + tail.tip_low) / 2)
    tail = tails[-1]
    return (w.baseline * 0.45, tail.low)


def write_notes(sheet: Sheet, net: Net, rows: list[Note]) -> None:
    """Notes in two columns beside the faces, in the order of their lines from above. [pt]"""
    across = sorted((net.inside.across(net.far), net.outside.across(net.far)))
    for right in (False, True):
        own = [row for row in rows if row.right == right]
        edge = across[1] + BESIDE if right else across[0] - BESIDE
        room = (sheet.width - edge if right else edge) - MARGIN
        texts = [wrapped(row.words, width=room, size=sheet.text) for row in own]
        beside = [(text, row.at) for text, row in zip(texts, own, strict=True)]
        found = column(beside, edge=edge, right=right, size=sheet.text)
        for text, places in zip(texts, found, strict=True):
            sheet.write(text, places, rank=1)


HEIGHT = 386.0  # [pt]


def unfolded_end(
    plan: Plan,
    *,
    board: Board = "pin board",
    which: Which = "back",
    left_handed: bool | None = None,
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
    left_handed : bool or None
        Whether left and right are changed about, as the board lies before a left-handed maker;
        None for the box's own maker.

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
    w = unfolded(plan, board=board, which=which, left_handed=left_handed)
    sheet = Sheet(scale=net_scale(w), height=HEIGHT)
    net = lay_out_net(sheet, w)
    draw_wood(net, w)
    draw_waste(net, w)
    draw_lines(net, w)
    _titles(net, w)
    unit_words(sheet, rule=plan.choices.rule)
    write_notes(sheet, net, notes(net, w, plan.choices.rule))
    return sheet.picture(unfolded_sentence(plan, w))


def _titles(net: Net, w: UnfoldedEnd) -> None:
    """What each face is, written on it; and below, which board."""
    sheet = net.inside.sheet
    under = BOTTOM - w.end.thickness * sheet.scale
    middle = net.end.across(w.end.thickness / 2)
    title(sheet, w.title, x=middle, y=under - 30.0)
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
    sheet.write("end grain", [Slot(away, low, anchor), Slot(away, low - 8.0, anchor)], rank=0)


def _name_face(view: PartView, words: str, *, clear: tuple[float, float], up: float) -> None:
    """The name of a face on its clear wood, in one line or two. [mm]"""
    sheet = view.sheet
    low, high = sorted(view.across(x) for x in clear)
    room = high - low - 12.0
    text = words if extent(words, size=sheet.text)[0] <= room else words.replace(" ", "\n")
    drop = first_line(text, size=sheet.text)
    heights = [view.up(up * share) for share in (0.5, 0.56, 0.44, 0.62, 0.38, 0.7, 0.3)]
    middle = (low + high) / 2
    places = [
        Slot(middle + aside, height + drop, "center")
        for height in heights
        for aside in (0.0, 3.0, -3.0)
    ]
    sheet.write(text, places, rank=2)
