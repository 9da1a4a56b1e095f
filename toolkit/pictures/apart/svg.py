"""What the drawing of the box apart writes besides: many lines at once, dots on faces."""

from __future__ import annotations

from collections.abc import Iterable

from toolkit.pictures.apart.view import Floats
from toolkit.pictures.kit import svg
from toolkit.pictures.kit.lettering import Place
from toolkit.pictures.kit.pens import INK

DOT = 1.5  # radius of the dot that ends a leader on a face [pt]


def data(lines: Iterable[Floats], *, height: float, closed: bool = False) -> str:
    """Path data of lines on a page so high. [pt]"""
    return "".join(svg.way(line.tolist(), height=height, closed=closed, digits=2) for line in lines)


def dots(places: Iterable[Place], *, height: float) -> str:
    """The dots that end leaders on the faces they speak of. [pt]"""
    ends = [place.leader[0] for place in places if place.leader]
    return "".join(
        f'<circle cx="{svg.number(x)}" cy="{svg.number(height - y)}" r="{DOT:g}" fill="{INK}"/>'
        for x, y in ends
    )
