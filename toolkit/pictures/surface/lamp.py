"""The lamp: where it stands beside the patch, and how high its light comes in."""

from __future__ import annotations

from math import cos, pi, radians, sin

from toolkit.pictures.kit.lettering import Place
from toolkit.pictures.kit.picture import Point
from toolkit.pictures.kit.sheet import Sheet
from toolkit.pictures.kit.view import rectangle
from toolkit.pictures.strokes import arrow, away, circle, fill

BULB = 5.5  # [pt]
OFF = 25.0  # from the patch to the lamp [pt]
_RAY = 17.0
_THICK = 8.0  # wood under the lamp's light [pt]
_SIDES = "far end", "far right", "right", "near right", "near end", "near left", "left", "far left"


def from_where(direction: float) -> str:
    """Where the lamp stands, in words, for a direction round like a clock. [degrees]"""
    return f"the {_SIDES[round((direction % 360) / 45) % 8]}"


def _bulb(sheet: Sheet, at: Point) -> None:
    """A lamp seen from outside: a ring with short rays all round. [pt]"""
    fill(sheet, circle(at, BULB), "void", "visible")
    rays = zip(circle(at, BULB + 1.6, count=8), circle(at, BULB + 4.0, count=8), strict=True)
    for ray in rays:
        sheet.line("thin", ray)


def beside(sheet: Sheet, corners: tuple[Point, Point], *, direction: float) -> None:
    """The lamp where it stands round a patch, and its light falling on it. [pt, degrees]"""
    (x0, y0), (x1, y1) = corners
    turn = radians(90 - direction)
    dx, dy = cos(turn), sin(turn)
    # From the middle out to the edge of the patch, and a little further.
    reach = min((x1 - x0) / max(2 * abs(dx), 1e-9), (y1 - y0) / max(2 * abs(dy), 1e-9))
    lamp = x, y = away(((x0 + x1) / 2, (y0 + y1) / 2), turn=turn, far=reach + OFF)
    _bulb(sheet, lamp)
    for aside in (-5.0, 0.0, 5.0):
        start = away(lamp, turn=turn, far=-11.0, aside=aside)
        arrow(sheet, start, away(start, turn=turn, far=-_RAY))
    # Beside, under and over the lamp, the side that faces away from the patch first.
    size = sheet.text
    spots = [Place(x, y - BULB - 5.0 - size, "center"), Place(x, y + BULB + 7.0, "center")]
    for lift in (0.0, 10.0, -10.0, 18.0, -18.0, 26.0, -26.0):
        pair = [Place(x + 13.0, y + lift - 0.36 * size)]
        pair.append(Place(x - 13.0, y + lift - 0.36 * size, "right"))
        spots += pair if dx > -0.1 else pair[::-1]
    sheet.write("lamp", spots, rank=0)


def from_the_side(sheet: Sheet, at: Point, *, room: float, height: float, left: bool) -> None:
    """How high the lamp's light comes in, at its true angle; ``at`` is left on the surface. [pt]"""
    x, y = at
    way = -1.0 if left else 1.0
    foot = (x + room if left else x), y
    # The wood ends before the lamp, which at a low angle reaches below its surface.
    wood = rectangle((foot[0], foot[0] + way * 0.7 * room), (y, y - _THICK))
    fill(sheet, wood, "face cut", "thin")
    sheet.line("visible", wood[:2])

    def ray(far: float, share: float = 1.0) -> Point:
        turn = radians(height) * share
        return away(foot, turn=pi - turn if left else turn, far=far)

    tip = ray(3.0)
    arrow(sheet, ray(room - 11.0), (tip[0], tip[1] + 0.7))
    _bulb(sheet, ray(room))
    sheet.line("thin", [ray(0.5 * room, i / 12) for i in range(13)])
    text, low = f"light {height:g}°\nabove wood", y - _THICK - 3.0 - sheet.text
    spots = [Place(x + room / 2 - way * aside, low, "center") for aside in (0.0, 12.0, -12.0)]
    sheet.write(text, spots, rank=0)
