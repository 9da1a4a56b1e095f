"""One corner of a box as two boards in one pose, whatever its arrangement.

Axes of the pose: the pin board's end is the plane x = 0 and the board runs away from it to
negative x; its inside face is the plane y = 0 and its outside lies at positive y. The tail board
runs from the corner to negative y. So the tail board always comes off along x, and always shows
its outside. The workbook's boxes are alike on both sides, so that no part is mirrored for this:
of two like corners the one is taken that needs only turning. [mm]
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from manifold3d import Manifold

from toolkit.box import Design
from toolkit.pictures.apart.panels import block
from toolkit.pictures.apart.solids import solids
from toolkit.pictures.apart.view import Floats
from toolkit.pictures.corner.joint import Which

SHORT = (26.0, 46.0)  # least and most of a board that is drawn beyond the joint [mm]
SHARE = 0.7  # of the walls' height: how much of a board is drawn
AIR = 5.0  # between the boards on paper when they are apart [mm]
WAY = 1.54  # the eye's turn: a board so many times as long hides what it has left behind
FAR = 1e4


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


def _turned(shape: Manifold, turn: int, shift: tuple[float, float]) -> Manifold:
    """A solid turned by quarters about the upright axis, then shifted along x and y. [mm]"""
    c, s = ((1, 0), (0, 1), (-1, 0), (0, -1))[turn % 4]
    matrix = np.array([[c, -s, 0, shift[0]], [s, c, 0, shift[1]], [0, 0, 1, 0]], dtype=np.float64)
    return shape.transform(matrix)


@lru_cache(maxsize=16)
def posed(design: Design, which: Which) -> Posed:
    """Two boards of one corner in the pose.

    Parameters
    ----------
    design : Design
        The box. [mm]
    which : str
        ``"back"`` or ``"front"``.

    Raises
    ------
    ValueError
        There is no such box.

    Source
    ------
    Geometry.
    """
    f, on_ends = design.frame, design.choices.corner.tails_on == "ends"
    length, width = f.outside_length.value, f.outside_width.value
    back = which == "back"
    parts = {(part.name, part.place): part.shape for part in solids(design)}
    end = parts["back" if back else "front", ""]
    tail = (f.tail_back if back else f.tail_front).value
    end_thick = (f.back_thickness if back else f.front_thickness).value
    side_thick = f.side_thickness.value
    # Which side, how many quarters it is turned, and where that brings the corner.
    place, turn, shift = {
        (True, True): ("near", 2, (0.0, side_thick)),
        (True, False): ("far", 0, (-length, side_thick - width)),
        (False, True): ("far", 3, (-width, end_thick)),
        (False, False): ("near", 1, (0.0, end_thick - length)),
    }[on_ends, back]
    side = parts["side", place]
    boards = (end, side) if on_ends else (side, end)
    thick = (end_thick, side_thick) if on_ends else (side_thick, end_thick)
    inside = (f.inside_width, f.inside_length) if on_ends else (f.inside_length, f.inside_width)
    drawn = min(max(SHARE * f.wall_height.value, SHORT[0]), SHORT[1])
    tail_body, pin_body = (min(drawn, size.value / 2) for size in inside)
    room = block((-thick[0] - pin_body, FAR), (-tail_body, FAR), (-FAR, FAR))
    tail_board, pin_board = (_turned(shape, turn, shift) ^ room for shape in boards)
    return Posed(
        tail_board=tail_board,
        pin_board=pin_board,
        tail_part=f"{which} end" if on_ends else "side",
        pin_part="side" if on_ends else f"{which} end",
        tail_thickness=thick[0],
        pin_thickness=thick[1],
        tail_length=tail,
        off=thick[0] + max(tail_body / WAY, AIR) + AIR,
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
