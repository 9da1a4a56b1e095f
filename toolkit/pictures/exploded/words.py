"""Words for a box apart: where the names of its parts stand, and the sentence that goes with it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import pi

import numpy as np
from manifold3d import CrossSection, OpType

from toolkit.pictures.exploded.figures import Region
from toolkit.pictures.exploded.view import Floats
from toolkit.pictures.kit.lettering import Label, Slot, box_of
from toolkit.plan import Plan

Normal = tuple[float, float, float]

NAMES = {"back": "back end", "front": "front end"}
# The broad face of a wall that the eye looks at, and its direction in the axes of the box.
FACES = {
    "side near": ("outside face", (0, -1, 0)),
    "side far": ("inside face", (0, -1, 0)),
    "back": ("inside face", (1, 0, 0)),
    "front": ("outside face", (1, 0, 0)),
}
COUNTS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight")
GRID = 19  # places tried across a face, and as many up it
CLEAR = 3.5  # between words and any line [pt]
# Clear wood wanted round words on a face, felt for at points so far apart along its edges. [pt]
ROOM, FEELER = CLEAR + 1.5, 2.5
GAP = 5.0  # between a part and the words beside it [pt]
DIRECTIONS = 32
TRIED = 60  # places on a face offered to its label
REACH = (24.0, 150.0, 6.0)  # how far from their foothold words may stand [pt]


@dataclass(frozen=True, slots=True)
class SeenPart:
    """What is seen of one part on the page: its faces, the largest first, each with its normal.

    Outlines in pt, normals in the axes of the box.
    """

    key: str
    faces: tuple[tuple[Normal, CrossSection], ...]

    def looked_at(self) -> tuple[CrossSection, str]:
        """The largest face, and what to call it where it is the broad face of a wall."""
        normal, face = self.faces[0]
        words, broad = FACES.get(self.key, ("", (0, 0, 0)))
        return face, words if np.allclose(normal, broad, atol=1e-6) else ""


def _texts(key: str, face: str) -> tuple[str, ...]:
    """What a part is called, on one line or two: its name, and which of its faces is looked at."""
    part, _, place = key.partition(" ")
    name = NAMES.get(part, part)
    if face:
        return f"{name}, {face}", f"{name},\n{face}"
    return () if part == "batten" and place == "back" else (name,)


def _box(text: str, size: float) -> tuple[Floats, Floats]:
    """Half the room that words take, and where their first line stands from its middle. [pt]"""
    x0, y0, x1, y1 = box_of(Label(text, (), 0, size), Slot(0.0, 0.0, "center"))
    return np.array((x1 - x0, y1 - y0)) / 2, -np.array((x0 + x1, y0 + y1)) / 2


def _grid(face: CrossSection) -> Floats:
    left, low, right, high = face.bounds()
    x, y = np.meshgrid(np.linspace(left, right, GRID), np.linspace(low, high, GRID))
    return np.column_stack((x.ravel(), y.ravel()))


def _points_along(line: Floats) -> Floats:
    """Points along a straight line, close enough together to be felt for. [pt]"""
    count = 2 + int(np.linalg.norm(line[-1] - line[0]) / FEELER)
    return np.linspace(line[0], line[-1], count)


def _clearance(points: Floats, middles: Floats, half: Floats) -> Floats:
    """How clear boxes of one size, at some middles, stand of some points; below 0, none. [pt]"""
    if not len(points):
        return np.full(len(middles), np.inf)
    x = np.abs(points[:, 0] - middles[:, :1]) - half[0]
    y = np.abs(points[:, 1] - middles[:, 1:]) - half[1]
    return np.asarray(np.maximum(x, y).min(axis=1))


def _on_face(text: str, size: float, face: CrossSection, trails: Floats) -> list[Slot]:
    """Places on one face with clear wood all round, those nearest its middle first.

    A trail across the face is avoided where that can be, else broken by the words.
    """
    half, shift = _box(text, size)
    left, low, right, high = face.bounds()
    if right - left < 2 * half[0] or high - low < 2 * half[1]:
        return []
    region, middles = Region(face.to_polygons()), _grid(face)
    edge = region.edge_points(FEELER)
    clear = _clearance(edge, middles, half)
    middles = middles[(clear > ROOM) & region.holds(middles)]
    off = np.hypot(*(middles - edge.mean(axis=0)).T)
    struck = _clearance(trails, middles, half) < CLEAR
    return [
        Slot(float(x + shift[0]), float(y + shift[1]), "center")
        for x, y in middles[np.lexsort((off, struck))][:TRIED]
    ]


def _foothold(face: CrossSection) -> Floats:
    """The point of a face that lies deepest in it, for a leader to end on."""
    region, points = Region(face.to_polygons()), _grid(face)
    points = points[region.holds(points)]
    if not len(points):
        return np.asarray(region.begin[0])
    edge = region.edge_points(FEELER)
    clear = np.hypot(*(edge[None] - points[:, None]).transpose(2, 0, 1)).min(axis=1)
    return np.asarray(points[np.argmax(clear)])


def _beside(
    text: str, size: float, face: CrossSection, *, taken: Region, trails: Floats
) -> list[Slot]:
    """Places on clear paper round a face, the nearest first, each with its leader."""
    half, shift = _box(text, size)
    foot = _foothold(face)
    turns = np.linspace(0.0, 2 * pi, DIRECTIONS, endpoint=False)
    ways = np.column_stack((np.cos(turns), 0.8 * np.sin(turns)))
    middles = foot + (np.arange(*REACH)[:, None, None] * ways).reshape(-1, 2)
    start = np.clip(foot, middles - half - GAP, middles + half + GAP)
    length = np.hypot(*(start - foot).T)
    # No edge may run through words, so that they lie on paper if their middle does.
    covered = taken.holds(middles) | (_clearance(trails, middles, half) < CLEAR)
    order = np.argsort(length, kind="stable")
    return [
        Slot(
            float(middles[k, 0] + shift[0]),
            float(middles[k, 1] + shift[1]),
            "center",
            ((float(foot[0]), float(foot[1])), _leaving(middles[k], half, foot)),
        )
        for k in order[~covered[order] & (length[order] > 0)]
    ]


def _leaving(middle: Floats, half: Floats, foot: Floats) -> tuple[float, float]:
    """Where a leader leaves some words: beside the middle of the side that looks at its end."""
    out = (foot - middle) / half
    if abs(out[0]) > abs(out[1]):
        return float(middle[0] + np.sign(out[0]) * (half[0] + 3.0)), float(middle[1])
    return float(middle[0]), float(middle[1] + np.sign(out[1]) * (half[1] + 2.5))


def labels(parts: Sequence[SeenPart], *, trails: Sequence[Floats], size: float) -> list[Label]:
    """A label for every part: on its largest face, else led to a dot, ISO 128-22 (from memory)."""
    faces = [face for part in parts for _, face in part.faces]
    taken = Region(CrossSection.batch_boolean(faces, OpType.Add).to_polygons())
    ways = np.concatenate([np.zeros((0, 2)), *(_points_along(line) for line in trails)])
    rows = []
    for rank, part in enumerate(parts):
        if not part.faces:
            continue
        face, words = part.looked_at()
        texts = _texts(part.key, words)
        places: list[Slot] = []
        for text in texts:
            places = _on_face(text, size, face, ways)
            if places:
                break
        if texts:
            places = places or _beside(text, size, face, taken=taken, trails=ways)
            rows.append(Label(text, tuple(places), rank, size))
    return rows


def _sizes(plan: Plan, place: str) -> str:
    f, rule = plan.design.frame, plan.choices.rule
    height = f.wall_height if place == "outside" else f.inside_height
    values = (getattr(f, f"{place}_length"), getattr(f, f"{place}_width"), height)
    figures = " × ".join(rule.show(row.value, fineness="sizes", unit=False) for row in values)
    return f"{place} {figures} {rule.units}"


def apart_sentence(plan: Plan, *, opened: float) -> str:
    """What the box apart shows: its parts, its sizes, and the order in which it comes apart."""
    d = plan.design
    has_battens = d.lift_off_lid is not None and d.lift_off_lid.batten is not None
    count = 4 + len(d.panels) + 2 * has_battens
    rest = " and ".join(f"a {panel.name}" for panel in d.panels)
    rest = "a bottom, a lid and its two battens" if has_battens else rest
    off = f"the lid {d.choices.lid.closure.comes_off}, then " if d.lids else ""
    tails = d.choices.corner.tails_on
    order = (
        "the ends come off lengthwise and the sides leave the bottom"
        if tails == "ends"
        else "the sides come off sideways and the ends leave the bottom"
    )
    state = "apart" if opened >= 1 else f"{100 * opened:.0f} % apart"
    return (
        f"{plan.choices.title} {state}. {COUNTS[count].capitalize()} parts: two sides, "
        f"a back end, a front end, {rest}; {_sizes(plan, 'outside')}, {_sizes(plan, 'inside')}. "
        f"Tails on the {tails}: {off}{order}."
    )
