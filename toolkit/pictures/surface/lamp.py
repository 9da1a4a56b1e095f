"""The lamp: where it stands beside the patch, and how high its light comes in."""

from __future__ import annotations

from math import cos, hypot, pi, radians, sin

from toolkit.pictures.kit.dimensions import ARROW, HALF_ARROW
from toolkit.pictures.kit.lettering import Place
from toolkit.pictures.kit.picture import Point
from toolkit.pictures.kit.sheet import Sheet

BULB = 5.5  # [pt]
OFF = 25.0  # from the patch to the lamp [pt]
_RAY = 17.0
_THICK = 8.0  # wood under the lamp's light [pt]
_SIDES = (
    "the far end",
    "the far right",
    "the right",
    "the near right",
    "the near end",
    "the near left",
    "the left",
    "the far left",
)


def from_where(direction: float) -> str:
    """Where the lamp stands, in words, for a direction round like a clock. [degrees]"""
    return _SIDES[round((direction % 360) / 45) % 8]


def arrow(sheet: Sheet, tail: Point, tip: Point) -> None:
    """A thin line with a filled head at its tip. [pt]"""
    (x0, y0), (x1, y1) = tail, tip
    size = hypot(x1 - x0, y1 - y0)
    dx, dy = (x1 - x0) / size, (y1 - y0) / size
    back = (x1 - dx * ARROW, y1 - dy * ARROW)
    sheet.line("thin", [tail, back])
    wing = 1.6 * HALF_ARROW
    head = [tip, *((back[0] + s * dy * wing, back[1] - s * dx * wing) for s in (1, -1))]
    sheet.line("arrow", head, closed=True)


def bulb(sheet: Sheet, at: Point) -> None:
    """A lamp seen from outside: a ring with short rays all round. [pt]"""
    x, y = at
    turns = [2 * pi * i / 24 for i in range(24)]
    ring = [(x + BULB * cos(turn), y + BULB * sin(turn)) for turn in turns]
    sheet.line("void", ring, closed=True)
    sheet.line("visible", ring, closed=True)
    for turn in turns[::3]:
        near, far = BULB + 1.6, BULB + 4.0
        points = [
            (x + far_or_near * cos(turn), y + far_or_near * sin(turn))
            for far_or_near in (near, far)
        ]
        sheet.line("thin", points)


def beside(sheet: Sheet, corners: tuple[Point, Point], *, direction: float) -> None:
    """The lamp where it stands round a patch, and its light falling on it. [pt, degrees]"""
    (x0, y0), (x1, y1) = corners
    turn = radians(direction)
    dx, dy = sin(turn), cos(turn)
    middle = ((x0 + x1) / 2, (y0 + y1) / 2)
    # From the middle out to the edge of the patch, and a little further.
    reach = min(
        (x1 - x0) / 2 / abs(dx) if abs(dx) > 1e-9 else 1e9,
        (y1 - y0) / 2 / abs(dy) if abs(dy) > 1e-9 else 1e9,
    )
    lamp = (middle[0] + (reach + OFF) * dx, middle[1] + (reach + OFF) * dy)
    bulb(sheet, lamp)
    for aside in (-5.0, 0.0, 5.0):
        start = (lamp[0] - 11.0 * dx - aside * dy, lamp[1] - 11.0 * dy + aside * dx)
        arrow(sheet, start, (start[0] - _RAY * dx, start[1] - _RAY * dy))
    # Beside, under and over the lamp, the side that faces away from the patch first.
    size, x, y = sheet.text, *lamp
    spots = [
        Place(x, y - BULB - 5.0 - size, "center"),
        Place(x, y + BULB + 7.0, "center"),
        *(
            Place(x + way * 13.0, y + lift - 0.36 * size, "left" if way > 0 else "right")
            for lift in (0.0, 10.0, -10.0, 18.0, -18.0, 26.0, -26.0)
            for way in ((1, -1) if dx > -0.1 else (-1, 1))
        ),
    ]
    sheet.write("lamp", spots, rank=0)


def from_the_side(sheet: Sheet, at: Point, *, room: float, height: float, left: bool) -> None:
    """How high the lamp's light comes in, at its true angle; ``at`` is left on the surface. [pt]"""
    x, y = at
    way = -1.0 if left else 1.0
    foot = x + room if left else x
    # The wood ends before the lamp, which at a low angle reaches below its surface.
    ends = (foot, foot + way * 0.7 * room)
    wood = [(ends[0], y), (ends[1], y), (ends[1], y - _THICK), (ends[0], y - _THICK)]
    sheet.line("face cut", wood, closed=True)
    sheet.line("thin", wood, closed=True)
    sheet.line("visible", wood[:2])
    turn = radians(height)
    lamp = (foot + way * room * cos(turn), y + room * sin(turn))
    tail = (foot + way * (room - 11) * cos(turn), y + (room - 11) * sin(turn))
    tip = (foot + way * 3 * cos(turn), y + 0.7 + 3 * sin(turn))
    arrow(sheet, tail, tip)
    bulb(sheet, lamp)
    bow = [
        (foot + way * 0.5 * room * cos(turn * i / 12), y + 0.5 * room * sin(turn * i / 12))
        for i in range(13)
    ]
    sheet.line("thin", bow)
    text, low = f"light {height:g}°\nabove wood", y - _THICK - 3.0 - sheet.text
    spots = [Place(x + room / 2 - way * aside, low, "center") for aside in (0.0, 12.0, -12.0)]
    sheet.write(text, spots, rank=0)
