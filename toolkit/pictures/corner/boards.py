"""The two boards of a corner as drawn: the tail board's inside face, the pin board's end grain.

In the tail board's view x is 0 at the baseline and grows into the board, so that the tails lie at
negative x. In the pin board's view x is 0 at the inside face and grows into the board.
"""

from __future__ import annotations

from dataclasses import dataclass

from toolkit.box import Corner, Hole, Piece, Span
from toolkit.pictures.kit import PartView, Point, band, rectangle
from toolkit.pictures.kit.strokes import (
    break_line,
    face_mark,
    hatch,
    long_grain,
    rings,
    waste,
)
from toolkit.plan import Plan
from toolkit.shape import JointedEnd, JointedWall, Outline, Which, end_grain, wall, waste_on


@dataclass(frozen=True, slots=True)
class Joint:
    """What a drawing of one corner needs. Lengths in mm.

    ``grooves_end`` is ``through``, ``stopped`` or ``plugged``; ``front_lap`` is how far an ear runs
    on beyond the tips of the tails, None without an ear; ``pin_wood`` is what is left of the pin
    board's end grain.
    """

    which: Which
    corner: Corner
    tail_board: JointedWall
    pin_board: JointedWall
    lap: float
    through: bool
    on_ends: bool
    grooves_end: str
    front_lap: float | None
    holes: tuple[Hole, ...]
    pin_wood: tuple[Outline, ...]
    left_handed: bool

    @classmethod
    def of(cls, plan: Plan, which: Which, *, left_handed: bool | None = None) -> Joint:
        """Gather one corner."""
        if which not in ("back", "front"):
            raise ValueError(f'no corner is called {which!r}: type "back" or "front"')
        d, f, c = plan.design, plan.design.frame, plan.design.choices
        back, on_ends = which == "back", c.corner.tails_on == "ends"
        lap = (f.lap_back if back else f.lap_front).value
        tail_part, pin_part = (which, "side") if on_ends else ("side", which)
        has_ear = f.lid_groove is not None and not (back or on_ends)
        shown = [hole for hole in d.holes if hole.corner == which and c.groove.ends == "through"]
        return cls(
            which=which,
            corner=d.back if back else d.front,
            tail_board=wall(d, tail_part),
            pin_board=wall(d, pin_part),
            lap=lap,
            through=c.corner.joint == "through",
            on_ends=on_ends,
            grooves_end=c.groove.ends,
            front_lap=lap if has_ear else None,
            holes=tuple(shown),
            pin_wood=end_grain(d, part=pin_part, which=which),
            left_handed=plan.left_handed if left_handed is None else left_handed,
        )

    @property
    def tail_end(self) -> JointedEnd:
        """The end of the tail board."""
        return self.tail_board.ends[self.which == "front"]

    @property
    def pin_end(self) -> JointedEnd:
        """The end of the pin board."""
        return self.pin_board.ends[self.which == "front"]

    @property
    def tail_length(self) -> float:
        """How long the tails are. [mm]"""
        return self.tail_end.tip

    @property
    def wall_height(self) -> float:
        """How high the side is, and with it the box. [mm]"""
        return (self.pin_board if self.on_ends else self.tail_board).height

    @property
    def reach(self) -> float:
        """How far tails, or the ear if it is longer, stand out from the baseline. [mm]"""
        return self.tail_length + (self.front_lap or 0.0)

    @property
    def socket_depth(self) -> float:
        """How deep the pin board is cut: no deeper than it is thick. [mm]"""
        return min(self.tail_length, self.pin_board.thickness)

    @property
    def turn(self) -> int:
        """1 with the tails to the left; -1 with them right: a side's front end, a left hand."""
        turn = -1 if self.which == "front" and not self.on_ends else 1
        return -turn if self.left_handed else turn


BODY = 96.0  # how much of the board is drawn before it is broken off [pt]


def tail_shape(tail: Piece, *, length: float) -> list[Point]:
    """A tail in the tail board's view. [mm]"""
    return [(0.0, tail.low), (-length, tail.tip_low), (-length, tail.tip_high), (0.0, tail.high)]


def _front_edge(j: Joint) -> list[Point]:
    """The tail board's edge along its tails, from the bottom edge up. [mm]"""
    edge: list[Point] = [(0.0, 0.0)]
    for tail in j.corner.tails:
        edge += tail_shape(tail, length=j.tail_length)
    top = j.corner.height
    if j.front_lap is None:
        return [*edge, (0.0, j.tail_board.height)]
    return [*edge, (0.0, top), (-j.reach, top), (-j.reach, j.tail_board.height)]


def tail_wastes(j: Joint) -> list[list[Point]]:
    """What is sawn and chopped out between the tails, the lowest first. [mm]"""
    base = j.tail_end.base
    shapes = waste_on(j.tail_end, on="inside face")[: len(j.corner.pins)]
    return [[(u - base, z) for u, z in shape] for shape in shapes]


def draw_tail_board(view: PartView, j: Joint, *, ghost: bool = False) -> None:
    """The tail board's inside face, broken off to the side. [mm]"""
    sheet, top = view.sheet, j.tail_board.height
    edge = view.points(_front_edge(j))
    if ghost:
        sheet.line("ghost", [view.at(BODY / view.scale, 0.0), *edge])
        sheet.line("ghost", [edge[-1], view.at(BODY / view.scale, top)])
        sheet.name("ghost tail board", _front_edge(j))
        for _, span in j.tail_board.grooves:
            for z in (span.low, span.high):
                view.line("ghost", (BODY / view.scale, z), (0.0, z))
        return
    end = view.across(BODY / view.scale)
    broken = break_line(end, low=view.up(0.0), high=view.up(top))
    whole = [*edge, *reversed(broken)]
    sheet.line("face", whole, closed=True)
    sheet.line("thin", broken)
    sheet.line("visible", [broken[0], *edge, broken[-1]])
    sheet.name("tail board", _front_edge(j))
    for i, tail in enumerate(j.corner.tails, 1):
        sheet.name(f"tail {i}", tail_shape(tail, length=j.tail_length))
    far = BODY / view.scale
    long_grain(view, [*_front_edge(j), (far, top), (far, 0.0)])
    for i, shape in enumerate(tail_wastes(j), 1):
        waste(view, f"waste between tails {i}", shape)
    for name, span in j.tail_board.grooves:
        _groove_along(view, j, name, span)
    crown = j.corner.height if j.front_lap is not None else top
    over = 9.0 if j.front_lap is None else 0.0
    sheet.line(
        "baseline",
        [(view.across(0.0), view.up(0.0) - 9.0), (view.across(0.0), view.up(crown) + over)],
    )
    side = 0.62 if view.turn > 0 else 0.72
    face_mark(sheet, x=view.across(BODY * side / view.scale), edge=view.up(0.0))


def _groove_along(view: PartView, j: Joint, name: str, span: Span) -> None:
    """A groove in the tail board's inside face: its floor tinted, its two walls as lines."""
    low, high = span.low, span.high
    far = BODY / view.scale - 2.5 / view.scale
    pieces = [rectangle((0.0, far), (low, high))]
    if name in j.tail_end.stopped and j.grooves_end == "stopped":
        view.line("thin", (0.0, low), (0.0, high))
    elif name in j.tail_end.stopped:
        plug = rectangle((-j.tail_length, 0.0), (low, high))
        view.area(f"plug, {name} groove", plug, edge="thin")
        view.line("thin", *plug[::2])
        view.line("thin", *plug[1::2])
    else:
        for tail in j.corner.tails:
            inside = band(tail_shape(tail, length=j.tail_length), low=low, high=high)
            if len(inside) > 2:
                pieces.append(inside)
        if j.front_lap is not None and low >= j.corner.height:
            pieces.append(rectangle((-j.reach, 0.0), (low, high)))
    view.sheet.name(f"{name} groove, tail board", pieces[0])
    for piece in pieces:
        page = view.points(piece)
        view.sheet.line("floor", page, closed=True)
        for (x0, z0), (x1, z1) in zip(piece, [*piece[1:], *piece[:1]], strict=True):
            if z0 == z1 and z0 in (low, high):
                view.line("thin", (x0, z0), (x1, z1))


def draw_pin_board(view: PartView, j: Joint, *, ghost: bool = False) -> None:
    """The pin board's end grain, with its sockets and the grooves that come to it. [mm]"""
    sheet, shapes = view.sheet, j.pin_wood
    if ghost:
        for i, shape in enumerate(shapes, 1):
            view.area(f"ghost pin board {i}", shape, edge="ghost")
        return
    whole = rectangle((0.0, j.pin_board.thickness), (0.0, j.pin_board.height))
    sheet.name("pin board", whole)
    for i, shape in enumerate(shapes, 1):
        view.area(f"pin board wood {i}", shape, fill="end", edge="visible")
    # A flat-sawn board with the heart of its tree towards the outside of the box.
    rings(view, whole, across=8.0, pieces=shapes)
    for i, shape in enumerate(waste_on(j.pin_end, on="end grain"), 1):
        page = view.area(f"socket {i}", shape, edge="waste edge")
        hatch(sheet, page)
    for name, span in j.pin_board.grooves:
        _groove_end(view, j, name, span)
    if j.corner.tails and j.lap > 0:
        ends = [(view.across(j.socket_depth), view.up(z)) for z in (0.0, j.pin_board.height)]
        sheet.line("gauge", [(ends[0][0], ends[0][1] - 7.0), (ends[1][0], ends[1][1] + 7.0)])


def _groove_end(view: PartView, j: Joint, name: str, span: Span) -> None:
    """A groove where it meets the pin board's end: an open notch, or hidden where it ends early."""
    deep, title = min(j.pin_board.depth, j.pin_board.thickness), f"{name} groove, pin board"
    shape = rectangle((0.0, deep), (span.low, span.high))
    if name not in j.pin_end.stopped:
        view.area(title, shape, fill="notch")
        view.line("thin", *shape)
        return
    view.area(title, shape, edge="hidden" if j.grooves_end == "stopped" else "thin")
    if j.grooves_end == "plugged":
        view.line("thin", *shape[::2])
        view.line("thin", *shape[1::2])
