"""The tints of wood under one lamp: long grain and end grain, flat all over each face."""

from __future__ import annotations

import numpy as np
from matplotlib.colors import to_hex, to_rgb

from toolkit.pictures.apart.view import Face
from toolkit.pictures.kit.pens import END, FACE

# Above and to the left of the near side: a top lies in full light, the near side in half, the
# front end in shade. Its direction in the axes of the box.
LAMP = np.array((-0.18, -0.42, 0.89)) / np.linalg.norm((-0.18, -0.42, 0.89))
FACE_SHADE = "#c4a270"
END_SHADE = "#a47444"
# A line of the figure is so much darker than the face that it runs on.
GRAIN, RING = 0.87, 0.80


def tints(face: Face, *, grain: int) -> tuple[str, str]:
    """The tint of a face, and that of the figure on it.

    Source: A dull surface is the lighter, the more it is turned to the lamp (Lambert's law); the
    colours are the drawing's own.
    """
    normal = np.array(face.normal)
    ends = abs(normal[grain]) > 0.9
    light, shade = (END, END_SHADE) if ends else (FACE, FACE_SHADE)
    dark, lit = np.array(to_rgb(shade)), max(0.0, float(normal @ LAMP))
    tint = dark + lit * (np.array(to_rgb(light)) - dark)
    return to_hex(tint), to_hex(tint * (RING if ends else GRAIN))
