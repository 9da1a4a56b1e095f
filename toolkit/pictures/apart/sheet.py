"""The page of a box apart: tints, figure, edges and names, written as SVG."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np
from manifold3d import CrossSection

from toolkit.pictures.apart.figure import Log, figure
from toolkit.pictures.apart.region import Region
from toolkit.pictures.apart.sight import split_edges, visible_faces, visible_lines
from toolkit.pictures.apart.svg import data, dots
from toolkit.pictures.apart.tints import tints
from toolkit.pictures.apart.view import Edges, Face, Floats, on_paper
from toolkit.pictures.apart.words import CLEAR, Normal, Shown, labels
from toolkit.pictures.kit.lettering import Box, Label, Place
from toolkit.pictures.kit.pens import PENS
from toolkit.pictures.kit.picture import PX_PER_PT, Drawn, LabelBox, Outline, Picture
from toolkit.pictures.kit.placing import Page
from toolkit.pictures.kit.svg import area, page, stroke, words

WIDTH = 540.0  # 720 px on a screen [pt]
TALLEST = 460.0  # [pt]
MARGIN = 14.0  # [pt]
BESIDE = 14.0  # left above and below for names that find no room on their part [pt]
TEXT = 11.7  # 11 pt when a picture is printed 508 pt (179 mm) wide [pt]
MOST = 15  # labels
SPECK = 0.01  # smaller than this nothing is seen of a face [pt²]

Bounds = tuple[float, float, float, float]


@dataclass(frozen=True, slots=True)
class Scene:
    """What is drawn: faces and edges, and for each part its name, its fibres and its log. [mm]

    ``trails`` are lines of assembly; ``marks`` lines on the wood, each with the name of its pen.
    Faces of which less than ``plain`` is seen show no figure. [mm²]
    """

    keys: tuple[str, ...]
    grains: tuple[int, ...]
    logs: tuple[Log, ...]
    faces: list[Face]
    edges: Edges
    trails: list[Floats]
    marks: tuple[tuple[str, Floats], ...] = ()
    plain: float = 0.0


class Frame:
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
Naming = Callable[[list[Shown], Frame, Sequence[Floats]], Sequence[Label]]


def _colours(
    scene: Scene, shown: list[CrossSection], frame: Frame
) -> tuple[dict[str, list[Floats]], dict[str, list[Floats]]]:
    """The visible faces by their tint, and the lines of the figure by theirs, on the page."""
    areas: dict[str, list[Floats]] = defaultdict(list)
    lines: dict[str, list[Floats]] = defaultdict(list)
    for face, seen in zip(scene.faces, shown, strict=True):
        tint, darker = tints(face, grain=scene.grains[face.part])
        areas[tint] += [frame.page(loop) for loop in seen.to_polygons()]
        if seen.area() > scene.plain:
            drawn = figure(face, shown=seen, log=scene.logs[face.part])
            lines[darker] += [frame.page(line) for line in drawn]
    return areas, lines


def _kept_clear(lines: list[Floats], boxes: Sequence[Box]) -> list[Floats]:
    """Lines without what would run through words."""
    page = np.array(((-1e4, -1e4), (1e4, -1e4), (1e4, 1e4), (-1e4, 1e4)))
    holes = [
        np.array(((x0, y0), (x0, y1), (x1, y1), (x1, y0)))
        + 2.0 * np.array(((-1, -1), (-1, 1), (1, 1), (1, -1)))
        for x0, y0, x1, y1 in boxes
    ]
    return Region([page, *holes]).within(lines)


def _shown(scene: Scene, shown: list[CrossSection], frame: Frame) -> list[Shown]:
    """The faces of each part that are seen on the page, largest first."""
    own: dict[int, list[tuple[Normal, CrossSection]]] = defaultdict(list)
    for face, seen in zip(scene.faces, shown, strict=True):
        pieces = [frame.face(piece) for piece in seen.decompose()]
        own[face.part] += [(face.normal, piece) for piece in pieces if piece.area() > SPECK]
    return [
        Shown(key, tuple(sorted(own[part], key=lambda row: -row[1].area())))
        for part, key in enumerate(scene.keys)
    ]


def _edges(scene: Scene, frame: Frame) -> dict[str, list[Floats]]:
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


def _by_their_faces(parts: list[Shown], frame: Frame, trails: Sequence[Floats]) -> Sequence[Label]:
    return labels(parts, trails=trails, size=TEXT)


def draw(scene: Scene, *, frame: Frame, sentence: str, naming: Naming = _by_their_faces) -> Picture:
    """Draw a scene on a page whose frame is given, so that it stays still while parts move.

    Parameters
    ----------
    scene : Scene
        What is drawn. [mm]
    frame : Frame
        Where it lies on the page.
    sentence : str
        What the picture shows.
    naming : callable
        Gives the labels; by default each part's name, on its largest face or beside it.

    Source
    ------
    Outlines of parts heavy, edges within a part thin, ways of assembly long-dash-dot: ISO 128-2
    (from memory) and common practice.
    """
    height = frame.height
    shown = visible_faces(scene.faces)
    parts = _shown(scene, shown, frame)
    inked = _edges(scene, frame)
    lines = [line.ravel() for pen in ("visible", "thin") for line in inked[pen]]
    paper = Page(WIDTH, height, np.array(lines).reshape(-1, 4), most=MOST, clear=CLEAR)
    placed, dropped = paper.settle(naming(parts, frame, inked["gauge"]))
    inked["dimension"] = [np.array(place.leader) for _, place, _ in placed if place.leader]
    areas, wood = _colours(scene, shown, frame)
    boxes = [box for _, _, box in placed]
    inked["gauge"] = _kept_clear(inked["gauge"], boxes)

    rows = [
        area(data(loops, height=height, closed=True), colour=tint)
        for tint, loops in areas.items()
        if loops
    ]
    for tint, found in wood.items():
        kept = _kept_clear(found, boxes)
        if kept:
            rows.append(stroke(data(kept, height=height), colour=tint, width=PENS["ring"].width))
    for name in ("gauge", "thin", "dimension", "baseline", "visible"):
        if inked.get(name):
            pen, lined = PENS[name], data(inked[name], height=height)
            rows.append(stroke(lined, colour=pen.colour, width=pen.width, dash=pen.dash))
    rows.append(dots((place for _, place, _ in placed), height=height))
    rows.append(words([(label, place) for label, place, _ in placed], height=height))
    svg = page("".join(rows), sentence=sentence, width=WIDTH, height=height, cap="round")
    return Picture(svg, sentence, _drawn(frame, parts, inked, placed, dropped))


def _drawn(
    frame: Frame,
    parts: list[Shown],
    inked: dict[str, list[Floats]],
    placed: list[tuple[Label, Place, Box]],
    dropped: list[str],
) -> Drawn:
    def points(line: Floats) -> tuple[tuple[float, float], ...]:
        return tuple((float(x), float(y)) for x, y in line)

    return Drawn(
        width=WIDTH * PX_PER_PT,
        height=frame.height * PX_PER_PT,
        text=TEXT * PX_PER_PT,
        scale=frame.scale * PX_PER_PT,
        outlines=tuple(
            Outline(part.key, points(frame.paper(face.to_polygons()[0])))
            for part in parts
            for _, face in part.faces
        ),
        strokes=tuple((pen, points(line)) for pen, rows in inked.items() for line in rows),
        labels=tuple(
            LabelBox(label.text, *(edge * PX_PER_PT for edge in box)) for label, _, box in placed
        ),
        dropped=tuple(dropped),
    )
