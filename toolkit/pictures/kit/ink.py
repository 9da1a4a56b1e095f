"""How marks become a page: pen by pen in the order of laying them down, then the words."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from hashlib import sha256

from toolkit.pictures.kit import svg
from toolkit.pictures.kit.lettering import Label, Place
from toolkit.pictures.kit.pens import PENS
from toolkit.pictures.kit.picture import Point

_OWN = "\N{ZERO WIDTH SPACE}"  # stands for a picture's own name until it has one


@dataclass(frozen=True, slots=True)
class Stroke:
    """One line; with ``owners``, it is drawn only if one of these labels finds a place. [pt]"""

    points: Sequence[Point]
    closed: bool
    owners: frozenset[int] = frozenset()
    clip: int | None = None


@dataclass(frozen=True, slots=True)
class Image:
    """A shaded surface: a PNG, its lower left corner and its size on the page. [pt]"""

    png: bytes
    x: float
    y: float
    width: float
    height: float


def written(
    strokes: Mapping[str, Sequence[Stroke]],
    *,
    clips: Sequence[Sequence[Sequence[Point]]],
    images: Sequence[Image],
    words: Sequence[tuple[Label, Place]],
    sentence: str,
    width: float,
    height: float,
) -> tuple[str, str]:
    """The page as SVG [pt], pen by pen and then the words; and the mark in its regions' names."""
    body = [
        svg.image(row.png, x=row.x, y=row.y, width=row.width, size=row.height, height=height)
        for row in images
    ]
    used = sorted({row.clip for rows in strokes.values() for row in rows if row.clip is not None})
    for number in used:
        regions = "".join(svg.way(row, height=height, closed=True) for row in clips[number])
        body.append(svg.clip(regions, name=f"c{number}{_OWN}"))
    for pen in PENS:
        body += _paths(pen, strokes.get(pen, ()), height=height)
    body.append(svg.words(words, height=height))
    drawn = svg.page("".join(body), sentence=sentence, width=width, height=height)
    # Two pictures on one page must not share the name of a region, and the same plan must give
    # the same bytes: the picture itself names it.
    mark = f"-{sha256(drawn.encode()).hexdigest()[:8]}"
    return drawn.replace(_OWN, mark), mark if used else ""


def _paths(name: str, strokes: Sequence[Stroke], *, height: float) -> Iterator[str]:
    """One path for each region that strokes of a pen are kept in."""
    pen = PENS[name]
    parts: dict[int | None, list[Stroke]] = {}
    for stroke in strokes:
        parts.setdefault(stroke.clip, []).append(stroke)
    for clip, rows in parts.items():
        more = f' clip-path="url(#c{clip}{_OWN})"' if clip is not None else ""
        data = "".join([svg.way(row.points, height=height, closed=row.closed) for row in rows])
        if pen.fill is not None:
            yield svg.area(data, colour=pen.fill, more=more)
            continue
        # Corners of a heavy outline are as sharp as those of the wood.
        more += ' stroke-linejoin="miter"' if pen.width > 1 else ""
        yield svg.stroke(data, colour=pen.colour, width=pen.width, dash=pen.dash, more=more)
