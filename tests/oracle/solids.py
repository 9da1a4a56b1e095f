"""Six solids built from a plan's plain data and the choices, and from nothing else.

x runs from the outside of the back end, y across, z up from the bottom edge. Each board is made
as at the bench: its own length, its own gauge settings, tails from the list of tails and pins
from the list of pins, grooves ploughed into it by itself. Then it is put where it belongs.
"""

from dataclasses import dataclass, field, replace
from typing import Any

import numpy as np
from manifold3d import Manifold

from tests.oracle.reading import Corner, Facts, read
from tests.oracle.shapes import (
    Corners,
    Pair,
    block,
    hull,
    ploughed,
    shifted,
    together,
    turned_over,
    wedge,
)
from toolkit.box import Choices

PAST = 1.0  # how far a plough is carried past the wood that it cuts. [mm]


@dataclass(frozen=True)
class Solids:
    """The parts of a box in place; ``pieces`` are the convex pieces of what moves. [mm]"""

    facts: Facts
    walls: dict[str, Manifold]
    panels: dict[str, Manifold]
    pieces: dict[str, list[Corners]] = field(default_factory=dict)

    def moved(self, name: str, x: float = 0.0, y: float = 0.0, z: float = 0.0) -> "Solids":
        """The same box with one part out of its place. [mm]"""
        shift = [x, y, z]
        walls = {k: v.translate(shift) if k == name else v for k, v in self.walls.items()}
        panels = {k: v.translate(shift) if k == name else v for k, v in self.panels.items()}
        return replace(self, walls=walls, panels=panels)


def _teeth(axis: str, reach: Pair, rows: list[dict[str, float]], width: Pair) -> list[Corners]:
    """Tails or pins from one list: ``reach`` runs from the tips to the baseline."""
    return [
        wedge(axis, reach, (row["tip_low"], row["tip_high"]), (row["low"], row["high"]), width)
        for row in rows
    ]


def _pin_board(
    *,
    axis: str,
    length: float,
    height: float,
    thickness: float,
    ends: tuple[tuple[Corner, float], tuple[Corner, float]],
) -> list[Corners]:
    """A board with sockets at both ends, its outside face at 0, its first end at 0. [mm]

    ``axis`` is the one across its thickness. Each end has its corner and the second gauge
    setting, the thickness of the tail board that comes there.
    """

    def put(run: Pair, across: Pair) -> Corners:
        x, y = (run, across) if axis == "y" else (across, run)
        return block(x, y, (0.0, height))

    gauged = (ends[0][1], length - ends[1][1])
    pieces = [put(gauged, (0.0, thickness))]
    for (corner, _), run in zip(ends, ((0.0, gauged[0]), (gauged[1], length)), strict=True):
        lap = thickness - corner.socket
        pieces.append(put(run, (0.0, lap)))
        pieces += _teeth(axis, (lap, thickness), corner.pins, run)
    return pieces


def _tail_board(
    *,
    axis: str,
    length: float,
    height: float,
    thickness: float,
    tips: Pair,
    corners: tuple[Corner, Corner],
) -> list[Corners]:
    """A board with tails at both ends, its outside face at 0, its first end at 0. [mm]

    ``axis`` is the one along it. ``tips`` tells how far each row of tips stands in from its end,
    which is nothing unless an ear is left long there.
    """
    across = (0.0, thickness)
    first, last = corners
    base = (tips[0] + first.tail_length, length - tips[1] - last.tail_length)
    x, y = (base, across) if axis == "x" else (across, base)
    return [
        block(x, y, (0.0, height)),
        *_teeth(axis, (tips[0], base[0]), first.tails, across),
        *_teeth(axis, (length - tips[1], base[1]), last.tails, across),
    ]


def _side(f: Facts) -> list[Corners]:
    """The side whose outside face is at y = 0, where it belongs."""
    length, height, thickness = f.side
    if f.tails_on == "ends":
        ends = ((f.back_corner, f.back[2]), (f.front_corner, f.front[2]))
        return _pin_board(axis="y", length=length, height=height, thickness=thickness, ends=ends)
    start = f.back[2] - f.back_corner.socket
    ear = f.front[2] - f.front_corner.socket if f.sliding else 0.0
    pieces = _tail_board(
        axis="x",
        length=length,
        height=height,
        thickness=thickness,
        tips=(0.0, ear),
        corners=(f.back_corner, f.front_corner),
    )
    if f.sliding:
        # Above the low front the side is not cut away: it runs on to its own end.
        base = length - ear - f.front_corner.tail_length
        pieces.append(block((base, length), (0.0, thickness), (f.front[1], height)))
    return shifted(pieces, x=start)


def _end(f: Facts, size: tuple[float, float, float], corner: Corner) -> list[Corners]:
    """An end whose outside face is at x = 0."""
    length, height, thickness = size
    if f.tails_on == "sides":
        ends = ((corner, f.side[2]), (corner, f.side[2]))
        return _pin_board(axis="x", length=length, height=height, thickness=thickness, ends=ends)
    pieces = _tail_board(
        axis="y",
        length=length,
        height=height,
        thickness=thickness,
        tips=(0.0, 0.0),
        corners=(corner, corner),
    )
    # It goes in until its tips meet the bottom of the left-hand sockets.
    return shifted(pieces, y=f.side[2] - corner.socket)


def _ploughed(f: Facts) -> tuple[list[Corners], list[Corners], list[Corners]]:
    """What the plough takes from the left side, from the back and from the front."""
    deep = f.depth
    side, back, front = f.side[2], f.back[2], f.front[2]
    along, across = (-PAST, f.length + PAST), (-PAST, f.width + PAST)
    if not f.ploughed_through:
        # Far enough past the inside corner for the panel's own corner, and no further.
        along = (back - deep, f.length - front + deep)
        across = (side - deep, f.width - side + deep)
    in_side, in_back, in_front = [], [], []
    for name, span in f.grooves.items():
        # The lid's groove leaves through the front whatever becomes of the other ends.
        run = (along[0], f.length + PAST) if name == "lid" else along
        in_side.append(block(run, (side - deep, side + PAST), span))
        in_back.append(block((back - deep, back + PAST), across, span))
        if name != "lid":
            face = f.length - front
            in_front.append(block((face - PAST, face + deep), across, span))
    return in_side, in_back, in_front


def _tongued(f: Facts, name: str, x: Pair, y: Pair) -> list[Corners]:
    """A panel lying on the floor of its grooves, as convex pieces."""
    panel = f.panels[name]
    floor = f.grooves[name][0]
    lid = name == "lid"
    if panel.profile == "flat" or panel.tongue >= panel.thickness:
        return [block(x, y, (floor, floor + panel.thickness))]
    edge = (floor, floor + panel.tongue)
    # The bottom is rebated underneath and its floor is flush; the lid on top, and not in front.
    body = (floor, floor + panel.thickness) if lid else (edge[1] - panel.thickness, edge[1])
    # A bevel comes to the tongue's thickness where the panel reaches deepest into the groove. On
    # a panel too small for a bevel as flat as that there is a rebate too. A width asked for is
    # kept, but for a third of the panel, beyond which bevels would meet in its middle.
    small = min(panel.length, panel.width)
    asked = f.choices.panels.bevel_width
    bevel = max(16.0, 2.0 * panel.thickness * f.depth / panel.tongue)
    if asked is not None:
        bevel = min(asked, small / 3)
    if panel.profile == "rebated" or (asked is None and bevel > 0.4 * small):
        inset = f.depth + 1.0
        run = (x[0] + inset, x[1] if lid else x[1] - inset)
        across = (y[0] + inset, y[1] - inset)
        return [block(x, y, edge), block(run, across, body)]
    share = f.depth / bevel
    thin = (panel.tongue - panel.thickness * share) / (1.0 - share)
    edge = (floor, floor + thin) if lid else (edge[1] - thin, edge[1])
    run = (x[0] + bevel, x[1] if lid else x[1] - bevel)
    across = (y[0] + bevel, y[1] - bevel)
    return [np.vstack([block(x, y, edge), block(run, across, body)])]


def _lift_off(f: Facts) -> dict[str, list[Corners]]:
    """A lid on the rim: its plate, and what reaches down between the walls."""
    lid = f.panels["lid"]
    x = ((f.length - lid.length) / 2, (f.length + lid.length) / 2)
    y = ((f.width - lid.width) / 2, (f.width + lid.width) / 2)
    rim = f.height
    # The plain data holds no size of the raised centre: the largest that lifts out freely, one
    # millimetre less than the inside, stands for it.
    inner_x = (f.back[2] + 0.5, f.length - f.front[2] - 0.5)
    inner_y = (f.side[2] + 0.5, f.width - f.side[2] - 0.5)
    if f.seat == "rebate":
        plate = block(x, y, (rim, rim + lid.thickness - f.rebate_depth))
        return {"lid": [plate, block(inner_x, inner_y, (rim - f.rebate_depth, rim))]}
    assert f.batten is not None
    long, wide, thick = f.batten
    across = ((f.width - long) / 2, (f.width + long) / 2)
    down = (rim - thick, rim)
    return {
        "lid": [block(x, y, (rim, rim + lid.thickness))],
        "back batten": [block((inner_x[0], inner_x[0] + wide), across, down)],
        "front batten": [block((inner_x[1] - wide, inner_x[1]), across, down)],
    }


def build(data: dict[str, Any], choices: Choices) -> Solids:
    """The solids of a box.

    Parameters
    ----------
    data : dict
        The plan's plain data. [mm]
    choices : Choices
        As the box file gives them. [mm]
    """
    f = read(data, choices)
    in_side, in_back, in_front = _ploughed(f)
    side = _side(f)
    front = turned_over(_end(f, f.front, f.front_corner), "x", f.length)
    walls = {
        "left side": ploughed(side, in_side),
        "right side": ploughed(turned_over(side, "y", f.width), turned_over(in_side, "y", f.width)),
        "back": ploughed(_end(f, f.back, f.back_corner), in_back),
        "front": ploughed(front, in_front),
    }
    bottom = f.panels["bottom"]
    middle = (f.back[2] + f.length - f.front[2]) / 2
    x = (middle - bottom.length / 2, middle + bottom.length / 2)
    y = ((f.width - bottom.width) / 2, (f.width + bottom.width) / 2)
    pieces = {"bottom": _tongued(f, "bottom", x, y)}
    if f.sliding:
        lid = f.panels["lid"]
        y = ((f.width - lid.width) / 2, (f.width + lid.width) / 2)
        pieces["lid"] = _tongued(f, "lid", (f.length - lid.length, f.length), y)
    elif "lid" in f.panels:
        pieces |= _lift_off(f)
    panels = {name: together(hull(piece) for piece in row) for name, row in pieces.items()}
    return Solids(f, walls, panels, pieces)
