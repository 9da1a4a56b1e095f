"""What lies on a page: ink, words and shaded surfaces, y upwards; and the same as a figure."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from io import BytesIO
from typing import TYPE_CHECKING, Literal

from toolkit.pictures.kit.lettering import Anchor
from toolkit.pictures.kit.pens import INK, PAPER, Pen
from toolkit.pictures.kit.picture import Point

if TYPE_CHECKING:
    from matplotlib.figure import Figure
    from matplotlib.patches import PathPatch
    from matplotlib.path import Path
    from matplotlib.transforms import Transform

Unit = Literal["pt", "mm"]
PER_INCH: dict[Unit, float] = {"pt": 72.0, "mm": 25.4}


@dataclass(frozen=True, slots=True)
class Ink:
    """Lines or areas of one pen, each with whether it is closed; shown only in some regions.

    ``digits`` are those of its coordinates where these are written as text.
    """

    pen: Pen
    lines: Sequence[tuple[Sequence[Point], bool]]
    regions: Sequence[Sequence[Point]] = ()
    digits: int = 1


@dataclass(frozen=True, slots=True)
class Words:
    """One line of words where they stand; ``upright`` runs up the page."""

    text: str
    x: float
    y: float
    size: float
    anchor: Anchor = "left"
    colour: str = INK
    upright: bool = False


@dataclass(frozen=True, slots=True)
class Image:
    """A shaded surface: a PNG, its lower left corner and its size."""

    png: bytes
    x: float
    y: float
    width: float
    height: float


@dataclass(frozen=True, slots=True)
class Marks:
    """A page from ``low`` to ``high``: images below, then inks in their order, then words.

    All lengths, those of pens too, are in the page's own ``unit``; ``sentence`` says what it shows.
    """

    width: float
    low: float
    high: float
    inks: Sequence[Ink]
    words: Sequence[Words]
    sentence: str
    images: Sequence[Image] = ()
    unit: Unit = "pt"
    paper: str = PAPER
    cap: Literal["butt", "round"] = "butt"

    @property
    def height(self) -> float:
        """Of the page."""
        return self.high - self.low


LETTERS = ["DejaVu Sans"]  # the face that drawings are measured in
# Beside those that the drawing library has by itself, for somebody's own change nothing here.
SETTINGS = {"font.family": LETTERS, "path.simplify": False, "lines.scale_dashes": False}


def to_figure(marks: Marks) -> Figure:
    """A figure as large as the page, with every mark as an artist in the page's own lengths."""
    # Loaded here, for a lesson that shows no figure need not wait for it.
    from matplotlib import style
    from matplotlib.figure import Figure
    from matplotlib.image import BboxImage, imread
    from matplotlib.text import Text
    from matplotlib.transforms import Affine2D, Bbox, TransformedBbox

    inch = PER_INCH[marks.unit]
    point = inch / 72
    with style.context(["default", SETTINGS]):
        figure = Figure(
            figsize=(marks.width / inch, marks.height / inch),
            facecolor=marks.paper,
            edgecolor=marks.paper,
        )
        to_page = Affine2D().translate(0.0, -marks.low).scale(1 / inch) + figure.dpi_scale_trans
        for row in marks.images:
            room = Bbox.from_bounds(row.x, row.y, row.width, row.height)
            image = BboxImage(TransformedBbox(room, to_page), origin="upper")
            image.set_data(imread(BytesIO(row.png)))
            figure.add_artist(image)
        for number, ink in enumerate(marks.inks):
            patch = _patch(ink, point, to_page, marks.cap)
            patch.set_zorder(1 + number / 1000)
            figure.add_artist(patch)
            if ink.regions:
                patch.set_clip_path(_path([(row, True) for row in ink.regions]), to_page)
        for word in marks.words:
            figure.add_artist(
                Text(
                    word.x,
                    word.y,
                    word.text,
                    fontfamily=LETTERS,
                    fontsize=word.size / point,
                    color=word.colour,
                    ha=word.anchor,
                    va="baseline",
                    rotation=90 if word.upright else 0,
                    rotation_mode="anchor",
                    transform=to_page,
                    parse_math=False,
                )
            )
    return figure


def _path(lines: Sequence[tuple[Sequence[Point], bool]]) -> Path:
    from matplotlib.path import Path

    points: list[Point] = []
    codes: list[int] = []
    for line, closed in lines:
        points += [*line, line[0]] if closed else line
        rest = [Path.LINETO] * (len(line) - 1) + [Path.CLOSEPOLY] * closed
        codes += map(int, (Path.MOVETO, *rest))
    return Path(points, codes)


def _patch(ink: Ink, point: float, to_page: Transform, cap: str) -> PathPatch:
    from matplotlib.patches import PathPatch

    pen = ink.pen
    return PathPatch(
        _path(ink.lines),
        facecolor=pen.fill or "none",
        edgecolor="none" if pen.fill else pen.colour,
        linewidth=pen.width / point,
        linestyle=(0.0, [length / point for length in pen.dash]) if pen.dash else "-",
        capstyle="butt" if cap == "butt" else "round",
        joinstyle="miter" if pen.width / point > 1 or cap == "butt" else "round",
        transform=to_page,
    )
