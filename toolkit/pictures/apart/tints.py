"""The tints of wood under one lamp: long grain and end grain, flat all over each face."""

from __future__ import annotations

import numpy as np

from toolkit.pictures.apart.view import Face, Floats
from toolkit.pictures.kit.pens import END, FACE

# Above and to the left of the near side: a top lies in full light, the near side in half, the
# front end in shade. Its direction in the axes of the box.
LAMP = np.array((-0.18, -0.42, 0.89)) / np.linalg.norm((-0.18, -0.42, 0.89))
FACE_SHADE = "#c4a270"
END_SHADE = "#a47444"
# A line of the figure is so much darker than the face that it runs on.
GRAIN, RING = 0.87, 0.80


def _rgb(colour: str) -> Floats:
    return np.array([int(colour[at : at + 2], 16) for at in (1, 3, 5)], dtype=np.float64)


def _name(rgb: Floats) -> str:
    return "#" + "".join(f"{round(float(value)):02x}" for value in rgb)


def tints(face: Face, *, grain: int) -> tuple[str, str]:
    """The tint of a face, and that of the figure on it.

    Parameters
    ----------
    face : Face
        The face.
    grain : int
        Number of the axis along which its part's fibres run.

    Returns
    -------
    tuple of str
        Colours as ``#rrggbb``.

    Source
    ------
    A dull surface is the lighter, the more it is turned to the lamp (Lambert's law); the colours
    are the drawing's own.
    """
    normal = np.array(face.normal)
    ends = abs(normal[grain]) > 0.9
    light, shade = (_rgb(END), _rgb(END_SHADE)) if ends else (_rgb(FACE), _rgb(FACE_SHADE))
    lit = max(0.0, float(normal @ LAMP))
    tint = shade + lit * (light - shade)
    return _name(tint), _name(tint * (RING if ends else GRAIN))
