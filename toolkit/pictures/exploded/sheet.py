"""The page of a box apart: tints, figure, edges and names."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np
from manifold3d import CrossSection

from toolkit.pictures.exploded.figures import Log, Region, figure
from toolkit.pictures.exploded.hidden_lines import split_edges, visible_faces, visible_lines
from toolkit.pictures.exploded.view import Edges, FlatFace, Floats, on_paper, tints
from toolkit.pictures.exploded.words import CLEAR, Normal, SeenPart, labels
from toolkit.pictures.kit import WIDTH, Label, Picture, Sheet
from toolkit.pictures.kit.lettering import Box
from toolkit.pictures.kit.pens import PENS, Pen
from toolkit.pictures.kit.sheet import PAPER_TEXT
from toolkit.pictures.kit.strokes import circle

TALLEST = 460.0  # [pt]
MARGIN = 14.0  # [pt]
BESIDE = 14.0  # left above and below for names that find no room on their part [pt]
TEXT = PAPER_TEXT
DOT = 1.5  # radius of the dot that ends a leader on a face [pt]
MOST = 15  # labels
SPECK = 0.01  # smaller than this nothing is seen of a face [pt²]

Bounds = tuple[float, float, float, float]


@dataclass(frozen=True, slots=True)
class SolidScene:
    """What is drawn: faces and edges, and for each part its name, its fibres and its log. [mm]

    ``trails`` are lines of assembly; ``marks`` lines on the wood, each with the name of its pen.
    Faces of which less than ``plain`` is seen show no figure. [mm²]
    """

    keys: tuple[str, ...]
    grains: tuple[int, ...]
    logs: tuple[Log, ...]
    faces: list[FlatFace]
    edges: Edges
    trails: list[Floats]
    marks: tuple[tuple[str, Floats], ...] = ()
    plain: float = 0.0


class PageFrame:
    """From the paper of the view [mm] to the page [pt, y upwards].

    Without a scale everything within the bounds is drawn as large as the page allows, and the
    page is no higher than that needs. ``mirrored`` turns left into right.
    """

    def __init__(
        self,
        bounds: Bounds,
        *,
        scale: float | None = None,
        height: float | None = None,
        mirrored: bool = False,
    ) -> None:
        low, high = np.array(bounds[:2]), np.array(bounds[2:])
        room = np.array((WIDTH - 2 * MARGIN, TALLEST - 2 * (MARGIN + BESIDE)))
        self.scale = float((room / (high - low)).min()) if scale is None else scale
        needed = round(self.scale * float((high - low)[1]) + 2 * (MARGIN + BESIDE), 1)
        self.height = needed if height is None else height
        self.ways = np.array((-self.scale if mirrored else self.scale, self.scale))
        self.shift = np.array((WIDTH, self.height)) / 2 - self.ways * (low + high) / 2

    def page(self, points: Floats) -> Floats:
        """Points of the paper on the page. [mm to pt]"""
        return np.asarray(points * self.ways + self.shift, dtype=np.float64)

    def paper(self, points: Floats) -> Floats:
        """Points of the page on the paper. [pt to mm]"""
        return np.asarray((points - self.shift) / self.ways, dtype=np.float64)

    def face(self, outline: CrossSection) -> CrossSection:
        """An outline on the page. [mm to pt]"""
        return outline.scale(tuple(self.ways)).translate(tuple(self.shift))


# Names of the parts for a page, from what is seen of each, the frame, and the trails. [pt]
Naming = Callable[[list[SeenPart], PageFrame, Sequence[Floats]], Sequence[Label]]


def _lay(sheet: Sheet, pen: str | Pen, lines: Sequence[Floats], *, closed: bool = False) -> None:
    for line in lines:
        sheet.line(pen, line.tolist(), closed=closed)


def _colours(sheet: Sheet, scene: SolidScene, shown: list[CrossSection], frame: PageFrame) -> None:
    """The visible faces in their tints, and the figure of the wood on them, but not under words."""
    boxes = [box for _, _, box in sheet.settle()]
    figures = []
    for face, seen in zip(scene.faces, shown, strict=True):
        tint, darker = tints(face, grain=scene.grains[face.part])
        pen = Pen(tint, width=0.0, fill=tint)
        _lay(sheet, pen, [frame.page(loop) for loop in seen.to_polygons()], closed=True)
        if seen.area() > scene.plain:
            lines = figure(face, shown=seen, log=scene.logs[face.part])
            figures.append((Pen(darker, PENS["ring"].width), [frame.page(row) for row in lines]))
    for pen, lines in figures:
        _lay(sheet, pen, _kept_clear(lines, boxes))


def _kept_clear(lines: list[Floats], boxes: Sequence[Box]) -> list[Floats]:
    """Lines without what would run through words."""
    page = np.array(((-1e4, -1e4), (1e4, -1e4), (1e4, 1e4), (-1e4, 1e4)))
    holes = [
        np.array(((x0, y0), (x0, y1), (x1, y1), (x1, y0)))
        + 2.0 * np.array(((-1, -1), (-1, 1), (1, 1), (1, -1)))
        for x0, y0, x1, y1 in boxes
    ]
    return Region([page, *holes]).within(lines)


def _shown(scene: SolidScene, shown: list[CrossSection], frame: PageFrame) -> list[SeenPart]:
    """The faces of each part that are seen on the page, largest first."""
    own: dict[int, list[tuple[Normal, CrossSection]]] = defaultdict(list)
    for face, seen in zip(scene.faces, shown, strict=True):
        pieces = [frame.face(piece) for piece in seen.decompose()]
        own[face.part] += [(face.normal, piece) for piece in pieces if piece.area() > SPECK]
    return [
        SeenPart(key, tuple(sorted(own[part], key=lambda row: -row[1].area())))
        for part, key in enumerate(scene.keys)
    ]


def _edges(scene: SolidScene, frame: PageFrame) -> dict[str, list[Floats]]:
    """Everything lined in ink, by its pen, on the page."""
    outlines, inner = split_edges(scene.edges, faces=scene.faces)
    drawn: dict[str, list[Floats]] = {"gauge": [], "thin": inner, "visible": outlines}
    pens = ["gauge"] * len(scene.trails) + [pen for pen, _ in scene.marks]
    every = [*scene.trails, *(line for _, line in scene.marks)]
    ways = on_paper(np.array(every).reshape(-1, 3)).reshape(-1, 2, 3)
    seen = visible_lines(ways, faces=scene.faces)
    for pen, ends, spans in zip(pens, ways, seen, strict=True):
        drawn.setdefault(pen, []).extend(
            ends[0, :2] + np.array(((low,), (high,))) * (ends[1, :2] - ends[0, :2])
            for low, high in spans
        )
    return {pen: [frame.page(line) for line in lines] for pen, lines in drawn.items()}


def _by_their_faces(
    parts: list[SeenPart], frame: PageFrame, trails: Sequence[Floats]
) -> Sequence[Label]:
    return labels(parts, trails=trails, size=TEXT)


def draw(
    scene: SolidScene, *, frame: PageFrame, sentence: str, naming: Naming = _by_their_faces
) -> Picture:
    """Draw a scene on a page whose frame is given, so that it stays still while parts move.

    Source: Outlines of parts heavy, edges within a part thin, ways of assembly long-dash-dot: ISO
    128-2 (from memory) and common practice.
    """
    sheet = Sheet(scale=frame.scale, height=frame.height, text=TEXT, clear=CLEAR, cap="round")
    shown = visible_faces(scene.faces)
    parts = _shown(scene, shown, frame)
    inked = _edges(scene, frame)
    trails = inked.pop("gauge")
    for pen, lines in inked.items():
        _lay(sheet, pen, lines)
    for part in parts:
        for _, face in part.faces:
            sheet.name(
                part.key, [tuple(row) for row in frame.paper(face.to_polygons()[0]).tolist()]
            )
    for label in naming(parts, frame, trails):
        sheet.write(label.text, label.places, rank=label.rank, size=label.size)
    placed = sheet.settle(most=MOST)
    _lay(sheet, "gauge", _kept_clear(trails, [box for _, _, box in placed]))
    for _, place, _ in placed:
        if place.leader:
            sheet.line("arrow", circle(place.leader[0], DOT, count=16), closed=True)
    _colours(sheet, scene, shown, frame)
    return sheet.picture(sentence)
