"""The lines and the waste on an unfolded end, each on the face where it is made."""

from __future__ import annotations

from toolkit.box import Piece
from toolkit.box.joinery import Line
from toolkit.pictures.joint.net import Net, UnfoldedEnd, from_end
from toolkit.pictures.kit.figure_of_wood import hatch
from toolkit.pictures.kit.view import View
from toolkit.shape import waste_on

TICK = 5.0  # a gauge line of an edge or a face runs so far past the wood [pt]


def draw_lines(net: Net, w: UnfoldedEnd) -> None:
    """Every line of the list, as its tool makes it. [mm]"""
    for row in w.lines:
        view = net.face(row.face)
        if row.setting is not None:
            _gauged(view, net, w, row, at=row.setting.value)
        elif row.tool == "bevel gauge":
            for tail in w.end.corner.tails:
                for low, tip in ((tail.low, tail.tip_low), (tail.high, tail.tip_high)):
                    view.line("knife", (w.baseline, low), (w.baseline - w.end.tip, tip))
        elif row.face == "end grain":
            _on_end(view, w, row)
        else:
            for tail in w.end.corner.tails:
                edges = _at_end(tail, w, row.face)
                for z in edges:
                    view.line("knife", (0.0, z), (w.baseline, z))


def _at_end(tail: Piece, w: UnfoldedEnd, face: str) -> tuple[float, float]:
    """Where the pins' lines run down a face: wide inside, narrow outside. [mm]"""
    return (tail.low, tail.high) if face == "inside face" else (tail.tip_low, tail.tip_high)


def _gauged(view: View, net: Net, w: UnfoldedEnd, row: Line, *, at: float) -> None:
    if row.face in ("top edge", "bottom edge"):
        view.line("baseline", (at, 0.0), (at, w.end.thickness))
        return
    if row.gauged_from == "the bottom edge":
        reach = w.end.thickness if row.face == "end grain" else w.baseline
        view.line("gauge", (0.0, at), (net.far if row.end == "along" else reach, at))
        return
    pen = "baseline" if from_end(row) and at >= w.baseline - 1e-9 else "gauge"
    view.line(pen, (at, row.low), (at, row.high))


def _on_end(view: View, w: UnfoldedEnd, row: Line) -> None:
    """Tails squared across the end, or pins knifed on it. [mm]"""
    for tail in w.end.corner.tails:
        for low, tip in ((tail.low, tail.tip_low), (tail.high, tail.tip_high)):
            if row.tool == "square":
                view.line("knife", (0.0, tip), (w.end.thickness, tip))
            else:
                deep = min(w.end.tip, w.end.thickness)
                share = deep / w.end.tip
                view.line("knife", (0.0, low), (deep, low + share * (tip - low)))


def draw_waste(net: Net, w: UnfoldedEnd) -> None:
    """What goes, hatched where a maker would hatch it. [mm]"""
    faces = (
        ("outside face", "end grain")
        if w.end.tails
        else ("end grain", "inside face", "outside face")
    )
    for on in faces:
        for i, shape in enumerate(waste_on(w.end, on=on, base=w.baseline), 1):
            if shape:
                view = net.face(on)
                view.sheet.name(f"waste {i}, {on}", shape)
                hatch(view.sheet, view.points(shape))
