"""One corner of a box as two boards in one pose, whatever its arrangement.

Axes of the pose: the pin board's end is the plane x = 0 and the board runs away from it to
negative x; its inside face is the plane y = 0 and its outside lies at positive y. The tail board
runs from the corner to negative y. So the tail board always comes off along x, and always shows
its outside. The workbook's boxes are alike on both sides, so that either of two like corners may
stand for both. [mm]
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from manifold3d import Manifold

from toolkit.box import Design
from toolkit.pictures.apart.view import Floats
from toolkit.shape import Which, moved, wall

SHORT = (26.0, 46.0)  # least and most of a board that is drawn beyond the joint [mm]
SHARE = 0.7  # of the walls' height: how much of a board is drawn
AIR = 5.0  # between the boards on paper when they are apart [mm]
WAY = 1.54  # the eye's turn: a board so many times as long hides what it has left behind


@dataclass(frozen=True, slots=True, eq=False)
class Posed:
    """Two boards cut short round their joint, in the axes of the pose. [mm]

    ``off`` is how far the tail board is drawn when they are apart; ``tail_part`` and ``pin_part``
    are the parts' names in the cut list.
    """

    tail_board: Manifold
    pin_board: Manifold
    tail_part: str
    pin_part: str
    tail_thickness: float
    pin_thickness: float
    tail_length: float
    off: float


@lru_cache(maxsize=16)
def posed(design: Design, which: Which) -> Posed:
    """Two boards of one corner in the pose. [mm]"""
    if not design.exists:
        raise ValueError("this box has no joint that could be drawn")
    f, number = design.frame, 0 if which == "back" else 1
    on_ends = design.choices.corner.tails_on == "ends"
    side, end = wall(design, "side"), wall(design, which)
    tails, pins = (end, side) if on_ends else (side, end)
    inside = (f.inside_width, f.inside_length) if on_ends else (f.inside_length, f.inside_width)
    drawn = min(max(SHARE * f.wall_height.value, SHORT[0]), SHORT[1])
    tail_body, pin_body = (min(drawn, size.value / 2) for size in inside)
    corner, thick = tails.ends[number], tails.thickness
    tail_board = tails.piece(number, corner.base + tail_body)
    pin_board = pins.piece(number, thick + pin_body)
    return Posed(
        tail_board=moved(tail_board, (0, 1, 0, -thick), (-1, 0, 0, corner.base), (0, 0, 1, 0)),
        pin_board=moved(pin_board, (-1, 0, 0, 0), (0, 1, 0, 0), (0, 0, 1, 0)),
        tail_part=f"{which} end" if on_ends else "side",
        pin_part="side" if on_ends else f"{which} end",
        tail_thickness=thick,
        pin_thickness=pins.thickness,
        tail_length=corner.tip,
        off=thick + max(tail_body / WAY, AIR) + AIR,
    )


def lines_on_wood(
    p: Posed, *, heights: tuple[float, float], moved: Floats
) -> list[tuple[str, Floats]]:
    """Baselines and the tip line, each with its pen; the tail board is moved by so much. [mm]

    ``heights`` are how high the tails' baseline and the pins' lines run.
    """
    tails_to, pins_to = heights
    base = -p.tail_thickness

    def upright(x: float, y: float, to: float) -> Floats:
        return np.array(((x, y, 0.0), (x, y, to)))

    rows = [
        ("baseline", upright(0.0, 0.0, tails_to) + moved),
        ("baseline", upright(base, 0.0, pins_to)),
    ]
    if p.tail_length < p.pin_thickness:
        rows.append(("gauge", upright(0.0, p.tail_length, pins_to)))
    return rows
