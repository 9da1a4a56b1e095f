"""A finished picture: its marks as SVG, its finding in one sentence, and what was drawn."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from functools import cached_property
from typing import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from matplotlib.figure import Figure

    from toolkit.pictures.kit.marks import Marks

Point = tuple[float, float]
# A size and a part's name always stand; only a remark may be left out.
Kind = Literal["size", "name", "remark"]

PX_PER_PT = 4 / 3
DRAWN = "Workbook Drawings"  # the face that comes with the page
FONTS = f"{DRAWN}, DejaVu Sans, Verdana, Liberation Sans, Arial, sans-serif"


@dataclass(frozen=True, slots=True)
class LabelBox:
    """The room that a label takes on the page, y upwards. [px, at the picture's own width]"""

    text: str
    x0: float
    y0: float
    x1: float
    y1: float
    kind: Kind = field(default="name", kw_only=True)


@dataclass(frozen=True, slots=True)
class Outline:
    """A named shape in its own view's axes: across the page, and up from the bottom edge. [mm]"""

    name: str
    points: tuple[Point, ...]

    @property
    def bounds(self) -> tuple[float, float, float, float]:
        """Least and greatest x, least and greatest y. [mm]"""
        xs, ys = zip(*self.points, strict=True)
        return min(xs), max(xs), min(ys), max(ys)

    @property
    def width(self) -> float:
        """Size across the page. [mm]"""
        left, right, _, _ = self.bounds
        return right - left

    @property
    def height(self) -> float:
        """Size up the page. [mm]"""
        _, _, low, high = self.bounds
        return high - low


@dataclass(frozen=True, slots=True)
class DrawnLine:
    """A line as drawn: the pen, and its points on the page, y upwards. [px]"""

    pen: str
    points: tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class Drawn:
    """What a picture holds, for whoever wants to measure it.

    ``width`` and ``height`` of the page and ``text`` size are in px, ``scale`` in px to a
    millimetre. ``strokes`` are pens and points as laid on the page [pt]; ``dropped`` are labels
    for which there was no room.
    """

    width: float
    height: float
    text: float
    scale: float
    outlines: tuple[Outline, ...]
    strokes: tuple[tuple[str, Sequence[Point]], ...]
    labels: tuple[LabelBox, ...]
    dropped: tuple[str, ...]

    @property
    def lines(self) -> tuple[DrawnLine, ...]:
        """Every line, in the order of drawing. [px]"""
        return tuple(
            DrawnLine(pen, tuple((x * PX_PER_PT, y * PX_PER_PT) for x, y in points))
            for pen, points in self.strokes
        )

    def outline(self, name: str) -> Outline:
        """A shape by its name."""
        for outline in self.outlines:
            if outline.name == name:
                return outline
        raise KeyError(name)

    def named(self, start: str) -> tuple[Outline, ...]:
        """Every shape whose name begins so."""
        return tuple(row for row in self.outlines if row.name.startswith(start))


@dataclass(frozen=True)
class Picture:
    """A drawing that can be put into a page, and the sentence that says what it shows.

    ``drawn`` tells what it holds, ``marks`` how it is laid on its page, ``place`` where on a page
    it stands if one alike may stand there too.
    """

    sentence: str
    drawn: Drawn
    marks: Marks = field(repr=False)
    place: str = ""

    @cached_property
    def svg(self) -> str:
        """The drawing as SVG, written when it is first asked for."""
        from toolkit.pictures.kit.svg import to_svg

        return to_svg(self.marks, place=self.place)

    def with_unique_ids(self, place: str) -> Picture:
        """The same picture for another place of a page."""
        return replace(self, place=place)

    def figure(self) -> Figure:
        """The same drawing as a figure of matplotlib, to go on drawing or to save as PDF or PNG."""
        from toolkit.pictures.kit.marks import to_figure

        return to_figure(self.marks)

    def _repr_html_(self) -> str:
        """How a notebook shows it: inline, so that its sentence stays its alternative text."""
        return self.svg
