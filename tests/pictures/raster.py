"""Pictures as pixels, drawn twice: the SVG's own areas, and the solids through a depth buffer.

Neither way shares code with the drawing's hidden surfaces: areas are filled by their outlines
alone, and solids triangle by triangle, the nearest winning at each pixel.
"""

import re

import numpy as np
from numpy.typing import NDArray

from toolkit.pictures.kit.pens import INK

Ints = NDArray[np.int64]
Floats = NDArray[np.float64]

FINE = 1.5  # pixels to a point of the page


def size(svg: str) -> tuple[int, int]:
    """Columns and rows of pixels for a page."""
    found = re.search(r'viewBox="0 0 ([\d.]+) ([\d.]+)"', svg)
    assert found
    return int(float(found[1]) * FINE), int(float(found[2]) * FINE)


def fill(image: Ints, outlines: list[Floats], value: int) -> None:
    """Fill outlines, by the even-odd rule at the middle of each pixel."""
    rows, columns = image.shape
    x0, y0 = np.concatenate(outlines).T
    x1, y1 = np.concatenate([np.roll(outline, -1, axis=0) for outline in outlines]).T
    first = np.clip(np.ceil(np.minimum(y0, y1) - 0.5), 0, rows).astype(int)
    last = np.clip(np.ceil(np.maximum(y0, y1) - 0.5), 0, rows).astype(int)
    edge = np.repeat(np.arange(len(x0)), last - first)
    at = np.arange(len(edge)) - np.repeat(np.cumsum(last - first) - last, last - first)
    x = x0[edge] + (at + 0.5 - y0[edge]) * (x1 - x0)[edge] / (y1 - y0)[edge]
    column = np.clip(np.ceil(x - 0.5).astype(int), 0, columns)
    flips = np.zeros((rows, columns + 1), dtype=np.int64)
    np.add.at(flips, (at, column), 1)
    image[np.cumsum(flips, axis=1)[:, :-1] % 2 == 1] = value


def areas(svg: str) -> Ints:
    """The colours of all areas of a page, as numbers; 0 where there is none.

    What is filled with ink is no area: the dots at the ends of the leaders.
    """
    columns, rows = size(svg)
    image = np.zeros((rows, columns), dtype=np.int64)
    for colour, data in re.findall(r'<path fill="(#[0-9a-f]{6})" d="([^"]*)"', svg):
        if colour == INK:
            continue
        outlines = [
            np.array([[float(word) for word in corner.split()] for corner in loop.split("L")])
            * FINE
            for loop in re.findall(r"M([^MZ]*)Z", data)
        ]
        fill(image, outlines, int(colour[1:], 16))
    return image


def nearest(triangles: Floats, values: Ints, shape: tuple[int, int]) -> Ints:
    """The value of the nearest triangle at each pixel, 0 where there is none.

    Corners are given as column, row (down) and nearness to the eye. [pixels]
    """
    image = np.zeros(shape, dtype=np.int64)
    depth = np.full(shape, -np.inf)
    for (a, b, c), value in zip(triangles, values.tolist(), strict=True):
        double = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
        if abs(double) < 1e-9:
            continue
        low = np.floor(np.minimum(np.minimum(a, b), c)[:2]).astype(int)
        high = np.ceil(np.maximum(np.maximum(a, b), c)[:2]).astype(int) + 1
        low, high = np.maximum(low, 0), np.minimum(high, shape[::-1])
        x, y = np.meshgrid(np.arange(low[0], high[0]) + 0.5, np.arange(low[1], high[1]) + 0.5)
        share_b = ((x - a[0]) * (c[1] - a[1]) - (y - a[1]) * (c[0] - a[0])) / double
        share_c = ((b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0])) / double
        near = a[2] + share_b * (b[2] - a[2]) + share_c * (c[2] - a[2])
        window = (slice(low[1], high[1]), slice(low[0], high[0]))
        wins = (share_b >= 0) & (share_c >= 0) & (share_b + share_c <= 1)
        wins &= near > depth[window] + 1e-6
        depth[window][wins] = near[wins]
        image[window][wins] = value
    return image
