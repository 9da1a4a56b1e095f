"""Names for a joint apart, each on a leader to its place on the wood; and the pose it is seen in.

Axes of the pose: the pin board's end is the plane x = 0 and the board runs away from it to
negative x; its inside face is the plane y = 0 and its outside lies at positive y. The tail board
runs from the corner to negative y. So the tail board always comes off along x, and always shows
its outside. The workbook's boxes are alike on both sides, so that either of two like corners may
stand for both. [mm]
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

import numpy as np
from manifold3d import Manifold

from toolkit.box import Design
from toolkit.pictures.corner.boards import Joint
from toolkit.pictures.exploded.hidden_lines import visible_lines
from toolkit.pictures.exploded.sheet import TEXT, PageFrame
from toolkit.pictures.exploded.view import FlatFace, Floats, on_paper
from toolkit.pictures.joint.words import column
from toolkit.pictures.kit.lettering import Label
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
    """Baselines and the tips' line, each with its pen; the tail board is moved by so much. [mm]

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


BESIDE = 9.0  # from the drawing to a column of names [pt]
HAIR = 0.05  # a foot is a line so short [mm]


@dataclass(frozen=True, slots=True, eq=False)
class Foot:
    """A name, the point of the pose that it speaks of [mm], and the board it belongs to."""

    text: str
    at: Floats
    board: Literal["pin", "tail"]
    rank: int


def _of_pins(j: Joint, p: Posed) -> list[Foot]:
    c, share = j.corner, min(p.tail_length, p.pin_thickness)
    rows = []

    def name(text: str, x: float, y: float, z: float, rank: int) -> None:
        rows.append(Foot(text, np.array((x, y, z)), "pin", rank))

    along = (float(p.pin_board.bounding_box()[0]) - p.tail_thickness) / 2
    name(f"{p.pin_part} (pin board),\ninside face", along, 0.0, 0.62 * j.pin_board.height, 0)
    low = c.half_pins[0]
    name("half pin", 0.0, share / 2, (low.low + low.tip_high) / 2, 2)
    if c.whole_pins:
        pin = c.whole_pins[len(c.whole_pins) // 2]
        name("pin,\nend grain", 0.0, share / 2, (pin.low + pin.high) / 2, 1)
    tail = c.tails[len(c.tails) // 2]
    middle = (tail.low + tail.high) / 2
    name("socket", -p.tail_thickness, share / 2, middle, 3)
    if not j.through and j.lap > 0:
        high_tail = c.tails[-1]
        beside = (high_tail.low + high_tail.high) / 2
        name("lap", 0.0, (p.tail_length + p.pin_thickness) / 2, beside, 2)
    if j.pin_board.height > c.height:
        name("rim over the\nlow front", 0.0, p.pin_thickness * 0.7, j.pin_board.height - 2.0, 1)
    return rows


def _of_tails(j: Joint, p: Posed, moved: Floats) -> list[Foot]:
    c = j.corner
    rows = []

    def name(text: str, y: float, z: float, rank: int) -> None:
        rows.append(Foot(text, np.array((0.0, y, z)) + moved, "tail", rank))

    along = float(p.tail_board.bounding_box()[1]) / 2
    name(f"{p.tail_part} (tail board),\noutside face", along, 0.3 * j.tail_board.height, 0)
    tail = c.tails[-1]
    name("tail", p.tail_length * 0.6, (tail.low + tail.high) / 2, 1)
    pin = c.whole_pins[0] if c.whole_pins else c.half_pins[0]
    name("baseline", 0.0, (pin.low + pin.high) / 2, 2)
    if j.front_lap is not None:
        middle = (c.height + j.tail_board.height) / 2
        name("ear over the\nlow front", p.pin_thickness * 0.5, middle, 1)
    return rows


def feet(j: Joint, p: Posed, *, moved: Floats, faces: Sequence[FlatFace]) -> list[Foot]:
    """What has a name, where the eye can see it."""
    rows = [*_of_pins(j, p), *_of_tails(j, p, moved)]
    far = moved[0]
    if far > p.tail_thickness:
        gap = np.array(((far - p.tail_thickness) / 2, p.tail_length, j.corner.tails[-1].tip_high))
        way = "lengthwise" if j.on_ends else "crosswise"
        rows.append(Foot(f"comes off {way},\nno other way", gap, "tail", 1))
    up = np.array((0.0, 0.0, HAIR))
    tiny = on_paper(np.array([(row.at - up, row.at + up) for row in rows]).reshape(-1, 3))
    seen = visible_lines(tiny.reshape(-1, 2, 3), faces=faces)
    return [row for row, spans in zip(rows, seen, strict=True) if spans]


def columns(rows: Sequence[Foot], frame: PageFrame, *, sides: tuple[float, float]) -> list[Label]:
    """Names led to dots, ISO 128-2:2020 (from memory), the pin board's on its side. [pt]"""
    labels = []
    for board in ("pin", "tail"):
        own = [row for row in rows if row.board == board]
        points = frame.page(on_paper([row.at for row in own])[:, :2]) if own else ()
        right = (board == "tail") == (frame.ways[0] > 0)
        edge = sides[1] + BESIDE if right else sides[0] - BESIDE
        texts = [(row.text, (float(x), float(y))) for row, (x, y) in zip(own, points, strict=True)]
        for row, places in zip(own, column(texts, edge=edge, right=right, size=TEXT), strict=True):
            labels.append(Label(row.text, places, row.rank, TEXT))
    return labels
