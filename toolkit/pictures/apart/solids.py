"""The parts of a box as solids, built from the sizes of its design.

Axes: x along from the back end, y across, z up from the bottom edge. Tails come from the corner's
list of tails and pins from its list of pins: neither board is cut with the other, so that a fault
in either list shows as an overlap or as a gap.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

import numpy as np
from manifold3d import Manifold

from toolkit.box import Corner, Design, LiftOffLid, Piece, Span
from toolkit.pictures.apart.panels import Range, block, lift_off_shapes, panel_shape

Axis = Literal[0, 1]
PLACES = ("near", "far")


@dataclass(frozen=True, slots=True)
class Solid:
    """One part as a closed solid, where it stands in the finished box. [mm]

    ``name`` is the part's name in the cut list, ``place`` tells two of a kind apart, ``grain`` is
    the axis along which its fibres run: 0 along the box, 1 across.
    """

    name: str
    place: str
    shape: Manifold
    grain: Axis


@dataclass(frozen=True, slots=True)
class _Joint:
    """One of the four corners of the box: where its tails begin and end. [mm]

    ``base`` and ``tip`` lie along the tails, on ``axis``; ``span`` is the tail board's thickness,
    on the other axis.
    """

    corner: Corner
    axis: Axis
    base: float
    tip: float
    span: Range

    def tails(self, height: float) -> Manifold:
        """All tails, none of them reaching past the edges of its board."""
        return self._room(height) ^ _together([self._wedge(tail) for tail in self.corner.tails])

    def pins(self) -> Manifold:
        """All pins."""
        return _together([self._wedge(pin) for pin in self.corner.pins])

    def socketed(self, board: Manifold, height: float) -> Manifold:
        """A board with the room of the tails cut away and the pins put back."""
        return board - self._room(height) + self.pins()

    def _wedge(self, piece: Piece) -> Manifold:
        """The outline of a tail or pin from baseline to tip, carried over the tail board."""
        tip, low, high = self.tip, piece.tip_low, piece.tip_high
        if high < low:
            # The flanks of a pin meet before the tips of its tails: it ends there.
            share = piece.width / (piece.width - piece.tip_width)
            tip = self.base + (tip - self.base) * share
            low = high = piece.low + (piece.tip_low - piece.low) * share
        outline = [(self.base, piece.low), (self.base, piece.high), (tip, low), (tip, high)]
        corners = [
            (along, other, z) if self.axis == 0 else (other, along, z)
            for other in self.span
            for along, z in outline
        ]
        return Manifold.hull_points(np.array(corners, dtype=np.float64))

    def _room(self, height: float) -> Manifold:
        along = (min(self.base, self.tip), max(self.base, self.tip))
        x, y = (along, self.span) if self.axis == 0 else (self.span, along)
        return block(x, y, (0.0, height))


def _together(shapes: list[Manifold]) -> Manifold:
    whole = Manifold()
    for shape in shapes:
        whole = whole + shape
    return whole


def _joints(d: Design) -> dict[tuple[str, str], _Joint]:
    """The four joints, by end (``back``, ``front``) and side (``near``, ``far``)."""
    f, on_ends = d.frame, d.choices.corner.tails_on == "ends"
    length, width = f.outside_length.value, f.outside_width.value
    side, back, front = f.side_thickness.value, f.back_thickness.value, f.front_thickness.value
    ends: dict[str, tuple[Corner, float, Range, float, int]] = {
        "back": (d.back, f.tail_back.value, (0.0, back), back, -1),
        "front": (d.front, f.tail_front.value, (length - front, length), length - front, 1),
    }
    sides: dict[str, tuple[Range, float, int]] = {
        "near": ((0.0, side), side, -1),
        "far": ((width - side, width), width - side, 1),
    }
    made = {}
    for end, (corner, tail, span_x, inside_x, out_x) in ends.items():
        for place, (span_y, inside_y, out_y) in sides.items():
            made[end, place] = (
                _Joint(corner, 1, inside_y, inside_y + out_y * tail, span_x)
                if on_ends
                else _Joint(corner, 0, inside_x, inside_x + out_x * tail, span_y)
            )
    return made


def _stopped(d: Design, groove: str, end: str, *, tail_board: bool) -> bool:
    """Whether a groove stops short of an end's corners (a plug fills it to the same shape)."""
    cause = "tip" if tail_board else "pin"
    return d.choices.groove.ends != "through" and any(
        (hole.groove, hole.corner, hole.cause) == (groove, end, cause) for hole in d.holes
    )


def _grooves(d: Design) -> tuple[tuple[str, Span], ...]:
    f = d.frame
    rows = [("bottom", f.bottom_groove)]
    if f.lid_groove is not None:
        rows.append(("lid", f.lid_groove))
    return tuple(rows)


def _side(d: Design, joints: dict[tuple[str, str], _Joint], place: str) -> Manifold:
    f, on_ends = d.frame, d.choices.corner.tails_on == "ends"
    length, width, height = f.outside_length.value, f.outside_width.value, f.wall_height.value
    thick, back, front = f.side_thickness.value, f.back_thickness.value, f.front_thickness.value
    depth = d.choices.groove.depth
    y = (0.0, thick) if place == "near" else (width - thick, width)
    ends = (joints["back", place], joints["front", place])
    if on_ends:
        board = block((0.0, length), y, (0.0, height))
        for joint in ends:
            board = joint.socketed(board, height)
    else:
        low = f.front_height.value
        board = block((back, length - front), y, (0.0, height))
        board = board + ends[0].tails(height) + ends[1].tails(low)
        if f.lid_groove is not None:
            # The ear: what stands above the low front runs on to its face.
            board = board + block((length - front, length), y, (low, height))
    inside = (thick - depth, thick) if place == "near" else (width - thick, width - thick + depth)
    for name, span in _grooves(d):
        start = back - depth if _stopped(d, name, "back", tail_board=not on_ends) else -1.0
        end = length + 1.0
        if name == "bottom" and _stopped(d, name, "front", tail_board=not on_ends):
            end = length - front + depth
        board = board - block((start, end), inside, (span.low, span.high))
    return board


def _end(d: Design, joints: dict[tuple[str, str], _Joint], end: str) -> Manifold:
    f, on_ends = d.frame, d.choices.corner.tails_on == "ends"
    length, width, side = f.outside_length.value, f.outside_width.value, f.side_thickness.value
    depth = d.choices.groove.depth
    is_back = end == "back"
    thick = (f.back_thickness if is_back else f.front_thickness).value
    height = (f.wall_height if is_back else f.front_height).value
    x = (0.0, thick) if is_back else (length - thick, length)
    corners = [joints[end, place] for place in PLACES]
    if on_ends:
        board = block(x, (side, width - side), (0.0, height))
        for joint in corners:
            board = board + joint.tails(height)
    else:
        board = block(x, (0.0, width), (0.0, height))
        for joint in corners:
            board = joint.socketed(board, height)
    inside = (thick - depth, thick) if is_back else (length - thick, length - thick + depth)
    for name, span in _grooves(d):
        if name == "lid" and not is_back:
            continue
        across = (-1.0, width + 1.0)
        if _stopped(d, name, end, tail_board=on_ends):
            across = (side - depth, width - side + depth)
        board = board - block(inside, across, (span.low, span.high))
    return board


def solids(design: Design) -> tuple[Solid, ...]:
    """Every part of a box as a solid, where it stands in the finished box.

    Parameters
    ----------
    design : Design
        The box. [mm]

    Returns
    -------
    tuple of Solid
        Two sides, back, front, bottom, lid, and two battens where the lid has them. [mm]

    Raises
    ------
    ValueError
        The box has no space inside, or its tails do not fit: there is nothing to draw.

    Source
    ------
    Geometry of the design.
    """
    if not design.exists:
        raise ValueError(
            "this box cannot be drawn: it has no space inside or no room for its tails; "
            "the findings of its plan say what to change"
        )
    joints = _joints(design)
    rows: list[Solid] = [Solid("side", place, _side(design, joints, place), 0) for place in PLACES]
    rows += [Solid(end, "", _end(design, joints, end), 1) for end in ("back", "front")]
    panel: Axis = 1 if design.choices.panels.grain == "across" else 0
    rows.append(Solid("bottom", "", panel_shape(design, panel=design.bottom), panel))
    if isinstance(design.lid, LiftOffLid):
        lid, battens = lift_off_shapes(design, lid=design.lid)
        rows.append(Solid("lid", "", lid, 0))
        rows += [
            Solid("batten", place, shape, 1)
            for place, shape in zip(("back", "front"), battens, strict=False)
        ]
    else:
        rows.append(Solid("lid", "", panel_shape(design, panel=design.lid), panel))
    return tuple(rows)
