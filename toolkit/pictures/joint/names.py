"""Names for a joint apart: each on a leader to its place on the wood, in two columns."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np

from toolkit.pictures.apart.sheet import TEXT, Frame
from toolkit.pictures.apart.sight import visible_lines
from toolkit.pictures.apart.view import Face, Floats, on_paper
from toolkit.pictures.corner.jointed import Joint
from toolkit.pictures.joint.columns import column
from toolkit.pictures.joint.pose import Posed
from toolkit.pictures.kit.lettering import Label
from toolkit.plan import Plan

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


def feet(plan: Plan, j: Joint, p: Posed, *, moved: Floats, faces: Sequence[Face]) -> list[Foot]:
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


def columns(rows: Sequence[Foot], frame: Frame, *, sides: tuple[float, float]) -> list[Label]:
    """Names as labels: those of the pin board on its side of the drawing, the others opposite.

    Source: Leaders that end on a face end in a dot: ISO 128-2:2020 (from memory).
    """
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
