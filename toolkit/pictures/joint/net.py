"""One end of a wall unfolded: inside face, end grain, outside face in a row, edges above and below.

Every face keeps its own millimetres: along it from the end of the board, and up from the bottom
edge; on the end grain across from the inside face; on an edge upwards from the inside face's
arris (top edge) or down from it (bottom edge).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from toolkit.box import Line, Piece, setting_out_lines
from toolkit.pictures.kit import PartView, Point, Sheet, rectangle, still_scale
from toolkit.pictures.kit.strokes import break_line, face_mark, hatch, long_grain, rings
from toolkit.plan import Plan
from toolkit.shape import JointedEnd, JointedWall, Which, wall_as_cut, waste_on

Board = Literal["tail board", "pin board"]

MIDDLE, BOTTOM = 270.0, 110.0  # of the end grain across the page, of the faces up it [pt]
BODY = 100.0  # how much of the board is drawn before it is broken off [pt]
ROOMS = (296.0, 48.0, 66.0)  # up: faces and edges; across: the end grain; along: the lines [pt]


@dataclass(frozen=True, slots=True)
class UnfoldedEnd:
    """What a drawing of one unfolded end needs. Lengths in mm.

    ``turn`` is 1 where the board runs to the right from its end, seen on its inside face.
    """

    board: Board
    which: Which
    part: str
    wall: JointedWall
    through: bool
    lines: tuple[Line, ...]
    turn: int

    @property
    def end(self) -> JointedEnd:
        """The end that is unfolded."""
        return self.wall.ends[self.which == "front"]

    @property
    def title(self) -> str:
        """Which end of which board."""
        where = f"{self.which} end" if self.part != "side" else f"side, its {self.which} end"
        return f"{where} ({self.board}), unfolded round its end"

    @property
    def baseline(self) -> float:
        """The farthest line gauged from the end. [mm]"""
        return max(
            (row.setting.value for row in self.lines if row.setting and from_end(row)), default=0.0
        )


def from_end(row: Line) -> bool:
    """Whether a line is gauged from the end of its board."""
    return row.gauged_from == "the end"


def unfolded(plan: Plan, *, board: Board, which: Which, left_handed: bool | None) -> UnfoldedEnd:
    """Gather one end of one wall."""
    if board not in ("tail board", "pin board") or which not in ("back", "front"):
        raise ValueError(
            f'no {which!r} corner has a {board!r}: give "tail board" or "pin board", and "back" or '
            '"front"'
        )
    d, corner = plan.design, plan.design.choices.corner
    left = plan.left_handed if left_handed is None else left_handed
    is_side = (corner.tails_on == "ends") != (board == "tail board")
    part, where = ("side", f"{which} end") if is_side else (which, "each end")
    lines = setting_out_lines(d)
    return UnfoldedEnd(
        board=board,
        which=which,
        part=part,
        wall=wall_as_cut(d, part),
        through=corner.joint == "through",
        lines=tuple(row for row in lines if row.part == part and row.end in (where, "along")),
        turn=(-1 if is_side and which == "front" else 1) * (-1 if left else 1),
    )


@dataclass(frozen=True, slots=True)
class Net:
    """The five faces of an unfolded end as views of one sheet."""

    inside: PartView
    end: PartView
    outside: PartView
    top: PartView
    bottom: PartView
    far: float

    def face(self, name: str) -> PartView:
        """The view of a face by its name."""
        return {
            "inside face": self.inside,
            "outside face": self.outside,
            "end grain": self.end,
            "top edge": self.top,
            "bottom edge": self.bottom,
        }[name]


def net_scale(w: UnfoldedEnd, *, kept: float | None = None) -> float:
    """The scale at which an unfolded end fits its page. [pt/mm]"""
    sizes = (w.wall.height + 2 * w.end.thickness, w.end.thickness, w.baseline)
    return still_scale(*zip(sizes, ROOMS, strict=True), kept=kept)


def lay_out_net(sheet: Sheet, w: UnfoldedEnd) -> Net:
    """Where each face lies on the page."""
    scale, turn = sheet.scale, w.turn
    inner = MIDDLE + turn * w.end.thickness * scale / 2
    outer = MIDDLE - turn * w.end.thickness * scale / 2
    top = BOTTOM + w.wall.height * scale
    return Net(
        inside=PartView(sheet, inner, BOTTOM, scale, turn),
        end=PartView(sheet, inner, BOTTOM, scale, -turn),
        outside=PartView(sheet, outer, BOTTOM, scale, -turn),
        top=PartView(sheet, inner, top, scale, turn),
        bottom=PartView(sheet, inner, BOTTOM - w.end.thickness * scale, scale, turn),
        far=BODY / scale,
    )


def draw_wood(net: Net, w: UnfoldedEnd) -> None:
    """The wood of all five faces, its arrises, its face mark. [mm]"""
    thick, high, far = w.end.thickness, w.wall.height, net.far
    for view, up, name in (
        (net.inside, high, "inside face"),
        (net.outside, high, "outside face"),
        (net.top, thick, "top edge"),
        (net.bottom, thick, "bottom edge"),
    ):
        _broken(view, far, up, name)
    end = rectangle((0.0, thick), (0.0, high))
    net.end.area("end grain", end, fill="end", edge="visible")
    rings(net.end, end, across=82.0)
    face_mark(net.inside.sheet, x=net.inside.across(0.72 * far), edge=net.inside.up(0.0) + 6.0)


def _broken(view: PartView, far: float, up: float, name: str) -> None:
    """A face of long grain, broken off away from the end. [mm]"""
    sheet = view.sheet
    torn = break_line(view.across(far), low=view.up(0.0), high=view.up(up))
    whole: Sequence[Point] = [view.at(0.0, up), view.at(0.0, 0.0), *torn]
    sheet.line("face", whole, closed=True)
    sheet.line("visible", [torn[0], view.at(0.0, 0.0), view.at(0.0, up), torn[-1]])
    sheet.line("thin", torn)
    sheet.name(name, rectangle((0.0, far), (0.0, up)))
    long_grain(view, rectangle((0.0, far), (0.0, up)))


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
                edges = _at_end(tail, row.face)
                for z in edges:
                    view.line("knife", (0.0, z), (w.baseline, z))


def _at_end(tail: Piece, face: str) -> tuple[float, float]:
    """Where the pins' lines run down a face: wide inside, narrow outside. [mm]"""
    return (tail.low, tail.high) if face == "inside face" else (tail.tip_low, tail.tip_high)


def _gauged(view: PartView, net: Net, w: UnfoldedEnd, row: Line, *, at: float) -> None:
    if row.face in ("top edge", "bottom edge"):
        view.line("baseline", (at, 0.0), (at, w.end.thickness))
        return
    if row.gauged_from == "the bottom edge":
        reach = w.end.thickness if row.face == "end grain" else w.baseline
        view.line("gauge", (0.0, at), (net.far if row.end == "along" else reach, at))
        return
    pen = "baseline" if from_end(row) and at >= w.baseline - 1e-9 else "gauge"
    view.line(pen, (at, row.low), (at, row.high))


def _on_end(view: PartView, w: UnfoldedEnd, row: Line) -> None:
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
        for i, shape in enumerate(waste_on(w.end, on=on), 1):
            if shape:
                view = net.face(on)
                view.sheet.name(f"waste {i}, {on}", shape)
                hatch(view.sheet, view.points(shape))
