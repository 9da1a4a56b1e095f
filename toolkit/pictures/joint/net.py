"""One end of a wall unfolded: inside face, end grain, outside face in a row, edges above and below.

Every face keeps its own millimetres: along it from the end of the board, and up from the bottom
edge; on the end grain across from the inside face; on an edge upwards from the inside face's
arris (top edge) or down from it (bottom edge).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from toolkit.box.joinery import Line, setting_out_lines
from toolkit.pictures.kit.figure_of_wood import break_line, face_mark, long_grain, rings
from toolkit.pictures.kit.picture import Point
from toolkit.pictures.kit.sheet import Sheet
from toolkit.pictures.kit.view import View, rectangle, still_scale
from toolkit.plan import Plan
from toolkit.shape import JointedEnd, JointedWall, Which, wall

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


def unfolded(
    plan: Plan, *, board: Board, which: Which, proud: float | None, left_handed: bool
) -> UnfoldedEnd:
    """Gather one end of one wall."""
    if board not in ("tail board", "pin board") or which not in ("back", "front"):
        raise ValueError(
            f'no {which!r} corner has a {board!r}: give "tail board" or "pin board", and "back" or '
            '"front"'
        )
    d, corner = plan.design, plan.design.choices.corner
    is_side = (corner.tails_on == "ends") != (board == "tail board")
    part, where = ("side", f"{which} end") if is_side else (which, "each end")
    lines = setting_out_lines(d, proud=proud)
    return UnfoldedEnd(
        board=board,
        which=which,
        part=part,
        wall=wall(d, part),
        through=corner.joint == "through",
        lines=tuple(row for row in lines if row.part == part and row.end in (where, "along")),
        turn=(-1 if is_side and which == "front" else 1) * (-1 if left_handed else 1),
    )


@dataclass(frozen=True, slots=True)
class Net:
    """The five faces of an unfolded end as views of one sheet."""

    inside: View
    end: View
    outside: View
    top: View
    bottom: View
    far: float

    def face(self, name: str) -> View:
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
        inside=View(sheet, inner, BOTTOM, scale, turn),
        end=View(sheet, inner, BOTTOM, scale, -turn),
        outside=View(sheet, outer, BOTTOM, scale, -turn),
        top=View(sheet, inner, top, scale, turn),
        bottom=View(sheet, inner, BOTTOM - w.end.thickness * scale, scale, turn),
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


def _broken(view: View, far: float, up: float, name: str) -> None:
    """A face of long grain, broken off away from the end. [mm]"""
    sheet = view.sheet
    torn = break_line(view.across(far), low=view.up(0.0), high=view.up(up))
    whole: Sequence[Point] = [view.at(0.0, up), view.at(0.0, 0.0), *torn]
    sheet.line("face", whole, closed=True)
    sheet.line("visible", [torn[0], view.at(0.0, 0.0), view.at(0.0, up), torn[-1]])
    sheet.line("thin", torn)
    sheet.name(name, rectangle((0.0, far), (0.0, up)))
    long_grain(view, rectangle((0.0, far), (0.0, up)))
