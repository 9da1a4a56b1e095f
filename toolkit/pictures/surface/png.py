"""A field of tones as a PNG of one tint of wood.

Source
------
W3C Portable Network Graphics (PNG), third edition: chunks, palette, filter types.
"""

from __future__ import annotations

import struct
import zlib
from functools import cache

import numpy as np
from numpy.typing import NDArray

from toolkit.pictures.kit.pens import FACE

LEVEL = 0.74  # how light a level surface in the lamp's light is, of the wood's own tint [1]
_LEVELS = 160  # as fine as a screen tells apart in so light a tint
_TOP = 1.4  # the brightest tone that is told apart, of a level surface's [1]
_SQUEEZE = 4  # three times as fast as the usual 6, and a sixth larger


def _linear(colour: str) -> NDArray[np.float64]:
    parts = np.array([int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)])
    return np.where(parts <= 0.04045, parts / 12.92, ((parts + 0.055) / 1.055) ** 2.4)


@cache
def _palette() -> bytes:
    """The wood's tint from no light to the brightest."""
    tones = np.linspace(0.0, _TOP, _LEVELS + 1)[:, None]
    light = np.clip(tones * LEVEL * _linear(FACE)[None, :], 0.0, 1.0)
    shown = np.where(light <= 0.0031308, 12.92 * light, 1.055 * light ** (1 / 2.4) - 0.055)
    return bytes(np.round(255 * shown).astype(np.uint8).tobytes())


def wood_png(tones: NDArray[np.float32]) -> bytes:
    """A PNG of tones, 1 for a level surface, rows from the bottom up.

    Source: Light is turned into what a screen shows by IEC 61966-2-1 (sRGB).
    """
    levels = np.clip(tones[::-1] * (_LEVELS / _TOP), 0, _LEVELS).astype(np.uint8)
    rows, columns = levels.shape
    # Each row as its difference from the one above: along the strokes little changes.
    lines = np.empty((rows, columns + 1), dtype=np.uint8)
    lines[:, 0] = 2
    lines[0, 1:] = levels[0]
    np.subtract(levels[1:], levels[:-1], out=lines[1:, 1:])
    head = struct.pack(">IIBBBBB", columns, rows, 8, 3, 0, 0, 0)
    body = zlib.compress(lines.tobytes(), _SQUEEZE)
    chunks = ((b"IHDR", head), (b"PLTE", _palette()), (b"IDAT", body), (b"IEND", b""))
    return b"\x89PNG\r\n\x1a\n" + b"".join(
        struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data))
        for name, data in chunks
    )
