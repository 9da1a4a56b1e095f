"""The lamp: where it stands, and how its low light falls on a field of heights.

Every ray is followed, so that steps cast shadows. Along each of them a place is lit by as much as
its own ray passes over the highest place before it; that gives slopes their shade and shadows
their true length, down to a part of a cell.
"""

from __future__ import annotations

from functools import cache, lru_cache
from io import BytesIO
from math import ceil, cos, hypot, pi, radians, sin, tan

import numpy as np
from matplotlib.colors import to_rgb
from numpy.lib.stride_tricks import sliding_window_view
from numpy.typing import NDArray
from PIL import Image

from toolkit.pictures.kit import Point, Sheet, Slot, rectangle
from toolkit.pictures.kit.pens import FACE
from toolkit.pictures.kit.strokes import arrow, away, circle, fill

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


def lamp_beside(sheet: Sheet, corners: tuple[Point, Point], *, direction: float) -> None:
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
    spots = [Slot(x, y - BULB - 5.0 - size, "center"), Slot(x, y + BULB + 7.0, "center")]
    for lift in (0.0, 10.0, -10.0, 18.0, -18.0, 26.0, -26.0):
        pair = [Slot(x + 13.0, y + lift - 0.36 * size)]
        pair.append(Slot(x - 13.0, y + lift - 0.36 * size, "right"))
        spots += pair if dx > -0.1 else pair[::-1]
    sheet.write("lamp", spots, rank=0)


def lamp_from_the_side(sheet: Sheet, at: Point, *, room: float, height: float, left: bool) -> None:
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
    spots = [Slot(x + room / 2 - way * aside, low, "center") for aside in (0.0, 12.0, -12.0)]
    sheet.write(text, spots, rank=0)


Numbers = NDArray[np.float32]

LEVEL = 0.74  # how light a level surface in the lamp's light is, of the wood's own tint [1]
_LEVELS = 160  # as fine as a screen tells apart in so light a tint
_TOP = 1.4  # the brightest tone that is told apart, of a level surface's [1]
_SQUEEZE = 4  # twice as fast as the usual 6, and a sixth larger


def lit(heights: Numbers, *, step: float, lamp_height: float, lamp_direction: float) -> Numbers:
    """Light on each cell, as a share of a level surface's: Lambert's law and straight rays."""
    turn = radians(lamp_direction)
    away_across, away_along = -sin(turn), -cos(turn)
    if abs(away_across) < abs(away_along):
        return _down_rows(heights, away_along, away_across, step, lamp_height)
    return _down_rows(heights.T, away_across, away_along, step, lamp_height).T


def _down_rows(
    heights: Numbers, main: float, other: float, step: float, lamp_height: float
) -> Numbers:
    """Light whose rays go from row to row, and sideways by less than that."""
    field = np.ascontiguousarray(heights if main > 0 else heights[::-1])
    rows, columns = field.shape
    slant = other / abs(main)
    if abs(slant) * rows < 0.5:
        slant = 0.0
    extra = ceil(abs(slant) * rows)
    shifts = slant * np.arange(rows) - (extra if slant > 0 else 0)
    rays = _shifted(field, shifts, columns + extra) if extra else field
    # How far each ray comes down from one row to the next.
    fall = tan(radians(lamp_height)) * step * hypot(1.0, slant)
    passed = rays + (fall * np.arange(rows))[:, None].astype(np.float32)
    np.maximum.accumulate(passed, axis=0, out=passed)
    light = np.ones_like(passed)
    np.subtract(passed[1:], passed[:-1], out=light[1:])
    light[1:] /= np.float32(fall)
    if extra:
        light = _shifted(light, -shifts, columns)
    return light if main > 0 else light[::-1]


def _shifted(field: Numbers, shifts: NDArray[np.float64], columns: int) -> Numbers:
    """Each row moved by its own part of a cell; beyond the field it is like its edge."""
    whole = np.floor(shifts).astype(np.intp)
    part = (shifts - whole).astype(np.float32)[:, None]
    before = max(-int(whole.min()), 0)
    after = max(int(whole.max()) + columns + 1 - field.shape[1], 0)
    windows = sliding_window_view(np.pad(field, ((0, 0), (before, after)), "edge"), columns, axis=1)
    rows = np.arange(field.shape[0])
    moved = windows[rows, whole + before]
    moved += part * (windows[rows, whole + before + 1] - moved)
    return np.asarray(moved)


@lru_cache(maxsize=4)
def figure(rows: int, columns: int, step: float) -> Numbers:
    """The faint figure of the wood, the same for the same patch: a share of its lightness. [mm]"""
    y = ((np.arange(rows, dtype=np.float32) + 0.5) * step)[:, None]
    x = ((np.arange(columns, dtype=np.float32) + 0.5) * step)[None, :]
    # Growth rings cut at a slant: arches in the middle of the board that flow out at its sides.
    middle, far = x - 0.43 * columns * step, y + 1.3 * np.sin(x / 7.0) + 0.8 * np.sin(x / 2.9 + 1)
    flow = 0.055 * far + (middle / 13.5) ** 2 + 0.12 * np.sin(y / 11 + x / 17)
    rings = np.mod(flow + 0.16 * np.sin(2 * np.pi * flow / 3.3), 1.0)
    # Earlywood darkens slowly into latewood, and the next year begins at once.
    late = rings**3 * np.clip((1 - rings) / 0.06, 0, 1)
    return np.asarray(1.02 - 0.10 * late, dtype=np.float32)


@cache
def _palette() -> bytes:
    """The wood's tint from no light to the brightest, as of IEC 61966-2-1 (sRGB)."""
    face = np.array(to_rgb(FACE))
    wood = np.where(face <= 0.04045, face / 12.92, ((face + 0.055) / 1.055) ** 2.4)
    light = np.clip(np.linspace(0.0, _TOP, _LEVELS + 1)[:, None] * LEVEL * wood, 0.0, 1.0)
    shown = np.where(light <= 0.0031308, 12.92 * light, 1.055 * light ** (1 / 2.4) - 0.055)
    return np.round(255 * shown).astype(np.uint8).tobytes()


def wood_png(tones: Numbers) -> bytes:
    """A PNG of tones in the wood's tint, 1 for a level surface, rows from the bottom up."""
    levels = np.clip(tones[::-1] * (_LEVELS / _TOP), 0, _LEVELS).astype(np.uint8)
    image, file = Image.fromarray(levels), BytesIO()
    image.putpalette(_palette())
    image.save(file, "PNG", compress_level=_SQUEEZE)
    return file.getvalue()
