"""How marks become SVG: a path for each pen, then the words, drawn by one figure that lives on."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from io import StringIO
from threading import Lock
from typing import Any

import matplotlib as mpl
import numpy as np
from matplotlib.artist import Artist
from matplotlib.colors import to_rgb
from matplotlib.figure import Figure
from matplotlib.font_manager import FontProperties
from matplotlib.path import Path
from matplotlib.transforms import IdentityTransform, TransformedPath

from toolkit.pictures.kit.lettering import Label, Place, lines_of
from toolkit.pictures.kit.pens import INK, PAPER, PENS, RED
from toolkit.pictures.kit.picture import Point

# Whatever else somebody's own settings are, the same plan gives the same bytes.
_SETTINGS = {
    "svg.fonttype": "none",
    "svg.hashsalt": "workbook",
    "path.simplify": False,
    "savefig.bbox": None,
    "savefig.transparent": False,
}
_MOVE, _DRAW, _CLOSE = int(Path.MOVETO), int(Path.LINETO), int(Path.CLOSEPOLY)
_FACE = FontProperties(family=["DejaVu Sans"])
# One figure for each size of page lives on: making one costs more than drawing on it.
_figures: dict[tuple[float, float], tuple[Figure, _Ink]] = {}
_lock = Lock()


@dataclass(frozen=True, slots=True)
class Stroke:
    """One line; with ``owners``, it is drawn only if one of these labels finds a place. [pt]"""

    points: Sequence[Point]
    closed: bool
    owners: frozenset[int] = frozenset()
    clip: int | None = None


class _Anchored:
    """Tells the writer where a label is anchored, without the cost of laying a text out twice."""

    def __init__(self, place: Place) -> None:
        self.place = place

    def get_transform(self) -> IdentityTransform:
        return IdentityTransform()

    def get_unitless_position(self) -> Point:
        return self.place.x, self.place.y

    def get_ha(self) -> str:
        return self.place.anchor

    def get_rotation_mode(self) -> str:
        return "anchor"


class _Ink(Artist):
    """All marks of a picture as one artist: a path for each pen, then the words."""

    def __init__(self) -> None:
        super().__init__()
        self.strokes: list[tuple[str, Path, Path | None]] = []
        self.words: list[tuple[Label, Place]] = []

    def draw(self, renderer: Any) -> None:
        """Lay the strokes down in order, then letter. SVG is written at a point to a unit."""
        page = IdentityTransform()
        renderer.open_group("ink")
        for name, path, clip in self.strokes:
            pen = PENS[name]
            gc = renderer.new_gc()
            gc.set_foreground(pen.colour)
            gc.set_linewidth(pen.width)
            gc.set_joinstyle("miter" if pen.width > 1 else "round")
            if pen.dash:
                gc.set_dashes(0, pen.dash)
            if clip is not None:
                gc.set_clip_path(TransformedPath(clip, page))
            fill = None if pen.fill is None else (*to_rgb(pen.fill), 1.0)
            renderer.draw_path(gc, path, page, fill)
            gc.restore()
        for label, place in self.words:
            font = _FACE.copy()
            font.set_size(label.size)
            gc = renderer.new_gc()
            gc.set_foreground(RED if label.red else INK)
            for text, y in lines_of(label, place):
                down = renderer.height - y
                renderer.draw_text(gc, place.x, down, text, font, 0, mtext=_Anchored(place))
            gc.restore()
        renderer.close_group("ink")


def _figure(width: float, height: float) -> tuple[Figure, _Ink]:
    if (width, height) not in _figures:
        figure = Figure(figsize=(width / 72, height / 72), facecolor=PAPER)
        ink = _Ink()
        figure.add_artist(ink)
        _figures[width, height] = figure, ink
    return _figures[width, height]


def written(
    strokes: Mapping[str, Sequence[Stroke]],
    clips: Sequence[Sequence[Sequence[Point]]],
    words: list[tuple[Label, Place]],
    *,
    width: float,
    height: float,
) -> str:
    """Lay strokes down pen by pen, letter the words, and write the page as SVG.

    Parameters
    ----------
    strokes : mapping
        Lines by the name of their pen. [pt]
    clips : sequence
        Regions that some strokes are kept in, by their number. [pt]
    words : list
        Labels and where they stand. [pt]
    width, height : float
        Size of the page. [pt]

    Source
    ------
    The order of the pens is that of `PENS`.
    """
    paths = []
    for pen in PENS:
        parts: dict[int | None, list[Stroke]] = {}
        for stroke in strokes.get(pen, ()):
            parts.setdefault(stroke.clip, []).append(stroke)
        for clip, lines in parts.items():
            limits = [Stroke(region, True) for region in clips[clip]] if clip is not None else []
            paths.append((pen, _path(lines), _path(limits) if limits else None))
    out = StringIO()
    with _lock, mpl.rc_context(_SETTINGS):
        figure, ink = _figure(width, height)
        ink.strokes, ink.words = paths, words
        figure.savefig(out, format="svg", facecolor=PAPER, metadata={"Date": None})
    return out.getvalue()


def _path(strokes: Sequence[Stroke]) -> Path:
    points: list[Point] = []
    codes: list[int] = []
    for stroke in strokes:
        points += stroke.points
        codes += [_MOVE, *[_DRAW] * (len(stroke.points) - 1)]
        if stroke.closed:
            points.append(stroke.points[0])
            codes.append(_CLOSE)
    return Path(np.round(points, 2), codes)
