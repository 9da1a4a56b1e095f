"""The box apart and together: what is seen, what is lined, where the words stand, how it opens."""

import re
from functools import lru_cache
from itertools import combinations, pairwise
from pathlib import Path
from types import SimpleNamespace
from xml.etree import ElementTree

import numpy as np
import pytest
from numpy.typing import NDArray

from tests.boxes import ears, inch_postcard, lift_off, postcard
from tests.pictures.designs import overlap, some
from tests.pictures.raster import FINE, Floats, Ints, areas, nearest, size
from toolkit.box import Choices
from toolkit.pictures.exploded.drawing import box_apart, shifts
from toolkit.pictures.exploded.view import on_paper, tints
from toolkit.pictures.kit.pens import INK
from toolkit.pictures.kit.picture import PX_PER_PT, Picture
from toolkit.plan import Plan, plan
from toolkit.shape import solids

ROOT = Path(__file__).parents[2]
NOTHING = 1e-3  # [mm³]
# Share of pixels that may differ: the page's coordinates are rounded to 0.01 pt, and an edge runs
# through some pixels' middles. No more than 0.00015 were found to.
AGREES = 3e-4

BOXES: dict[str, Choices] = {
    "postcard": postcard(),
    "tails on sides": ears(),
    "through": postcard().having({"corner.joint": "through", "corner.lap": None}),
    "through, tails on sides": ears().having({"corner.joint": "through", "corner.lap": None}),
    "lift-off": lift_off(),
    "battens": lift_off().having({"lid.seat": "battens"}),
    "bevelled": postcard().having({"panels.lid_profile": "bevelled"}),
    "tall": postcard().having(
        {"size.inside_height": 108.0, "corner.tails_back": 5, "corner.tails_front": 5}
    ),
    "thin": postcard().having(
        {
            "thickness.side": 6.0,
            "thickness.end": 6.0,
            "thickness.bottom": 4.0,
            "thickness.lid": 4.0,
            "corner.lap": 2.0,
            "groove.width": 3.0,
            "groove.depth": 2.0,
            "size.inside_length": 300.0,
            "size.inside_height": 30.0,
        }
    ),
    "inches": inch_postcard(),
}
every_box = pytest.mark.parametrize("box", BOXES.values(), ids=BOXES)


@lru_cache(maxsize=len(BOXES))
def _all_pictures(box: Choices) -> list[tuple[Plan, list[Floats], Picture]]:
    """Apart and part open, and half apart and closed too where the corners differ."""
    p = plan(box)
    d = p.design
    parts = solids(d)
    rows = [
        (p, shifts(d, parts=parts, opened=1.0), box_apart(p)),
        (p, shifts(d, parts=parts, opened=0.3), box_apart(p, open=0.3)),
    ]
    if box in (BOXES["postcard"], BOXES["tails on sides"]):
        rows.append((p, shifts(d, parts=parts, opened=0.55), box_apart(p, open=0.55)))
        rows.append((p, shifts(d, parts=parts, opened=0.0), box_apart(p, open=0.0)))
    return rows


def _through_depth(p: Plan, moves: list[Floats], picture: Picture) -> tuple[Ints, Ints]:
    """The same view through a depth buffer: tint, and number of the face, at each pixel."""
    drawn = picture.drawn
    columns, rows = size(picture.svg)
    scale = drawn.scale / PX_PER_PT * FINE
    lined = np.concatenate([points for pen, points in drawn.strokes if pen == "visible"]) * FINE
    paper = np.concatenate([outline.points for outline in drawn.outlines]) * scale
    # The outermost edges lie where the outermost corners do.
    shift = lined.min(axis=0) - paper.min(axis=0)
    triangles, numbers, colours = [], [], [0]
    known: dict[tuple[float, ...], int] = {}
    for part, move in zip(solids(p.design), moves, strict=True):
        mesh = part.shape.to_mesh64()
        points = np.asarray(mesh.vert_properties)[:, :3] + move
        corners = points[np.asarray(mesh.tri_verts, dtype=np.int64)]
        cross = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
        length = np.linalg.norm(cross, axis=1, keepdims=True)
        normals = cross / np.maximum(length, 1e-12)
        seen = (length[:, 0] > 1e-6) & (on_paper(normals)[:, 2] > 1e-9)
        for triangle, normal in zip(corners[seen], normals[seen], strict=True):
            plane = (id(part), *np.round((*normal, triangle[0] @ normal), 3).tolist())
            if plane not in known:
                known[plane] = len(colours)
                face = SimpleNamespace(normal=tuple(normal))
                tint = tints(face, grain=part.grain)[0]  # type: ignore[arg-type]
                colours.append(int(tint[1:], 16))
            numbers.append(known[plane])
            flat = on_paper(triangle) * scale
            flat[:, :2] += shift
            flat[:, 1] = drawn.height / PX_PER_PT * FINE - flat[:, 1]
            triangles.append(flat)
    faces = nearest(np.array(triangles), np.array(numbers), (rows, columns))
    return np.array(colours)[faces], faces


def _near(flags: NDArray[np.bool_], reach: int) -> NDArray[np.bool_]:
    """Pixels no further than so many from one that is flagged."""
    wide = np.pad(flags, reach)
    rows, columns = flags.shape
    return np.any(
        [
            wide[i : i + rows, j : j + columns]
            for i in range(2 * reach + 1)
            for j in range(2 * reach + 1)
        ],
        axis=0,
    )


def _lined(picture: Picture, shape: tuple[int, int]) -> NDArray[np.bool_]:
    """Pixels that an edge runs through."""
    flags = np.zeros(shape, dtype=bool)
    for pen, points in picture.drawn.strokes:
        if pen in ("visible", "thin"):
            for start, end in pairwise(np.array(points) * FINE):
                count = 2 + int(4 * np.linalg.norm(end - start))
                x, y = np.linspace(start, end, count).T
                row = np.clip((picture.drawn.height / PX_PER_PT * FINE - y).astype(int), 0, None)
                flags[np.minimum(row, shape[0] - 1), np.minimum(x.astype(int), shape[1] - 1)] = True
    return flags


def _lines_agree(picture: Picture, faces: Ints) -> None:
    """Edges are lined wherever a face ends, and nowhere else."""
    ends = np.zeros(faces.shape, dtype=bool)
    ends[:, 1:] |= faces[:, 1:] != faces[:, :-1]
    ends[1:] |= faces[1:] != faces[:-1]
    lined = _lined(picture, faces.shape)
    assert not (ends & ~_near(lined, 2)).any()
    assert not (lined & ~_near(ends, 2)).any()


@every_box
def test_faces_and_edges_are_those_that_a_depth_buffer_sees(box: Choices) -> None:
    for p, moves, picture in _all_pictures(box):
        drawn, (true, faces) = areas(picture.svg), _through_depth(p, moves, picture)
        assert np.count_nonzero(true) > 0.1 * true.size
        assert np.mean(drawn != true) < AGREES
        _lines_agree(picture, faces)


def test_the_comparison_sees_one_small_face_missing() -> None:
    p, moves, picture = _all_pictures(postcard())[0]
    true = _through_depth(p, moves, picture)[0]
    colours = re.findall(r'<path fill="#([0-9a-f]{6})"', picture.svg.replace(INK, ""))
    least = min(colours, key=lambda colour: np.count_nonzero(true == int(colour, 16)))
    worse = re.sub(rf'<path fill="#{least}" d="[^"]*"/>', "", picture.svg)
    assert np.mean(areas(worse) != true) > AGREES


@every_box
def test_every_part_comes_away_without_cutting_another(box: Choices) -> None:
    d = plan(box).design
    parts = solids(d)
    for opened in np.linspace(0, 1, 21):
        moved = [
            part.shape.translate(tuple(move))
            for part, move in zip(parts, shifts(d, parts=parts, opened=float(opened)), strict=True)
        ]
        for (i, one), (j, other) in combinations(enumerate(moved), 2):
            names = f"{parts[i].name} and {parts[j].name} at {opened:.2f}"
            assert (one ^ other).volume() < NOTHING, names


def test_parts_stand_clear_when_all_apart() -> None:
    for box in BOXES.values():
        d = plan(box).design
        parts = solids(d)
        moves = shifts(d, parts=parts, opened=1.0)
        for (a, by_a), (b, by_b) in combinations(zip(parts, moves, strict=True), 2):
            gap = a.shape.translate(tuple(by_a)).min_gap(b.shape.translate(tuple(by_b)), 4.0)
            assert gap == pytest.approx(4.0), (a.name, b.name)


@every_box
def test_every_part_is_named_clear_of_every_edge(box: Choices) -> None:
    drawn = _all_pictures(box)[0][2].drawn
    assert not drawn.dropped
    assert len(drawn.labels) <= 15
    words = " ".join(label.text for label in drawn.labels)
    for name in ("side", "back end", "front end", "bottom", "lid"):
        assert name in words
    assert ("batten" in words) == (box.lid.kind == "lift-off" and box.lid.seat == "battens")
    for one, other in combinations(drawn.labels, 2):
        assert not overlap(one, other)
    for label in drawn.labels:
        assert min(label.x0, label.y0) > 0
        assert label.x1 < drawn.width
        assert label.y1 < drawn.height
        for line in drawn.lines:
            for start, end in pairwise(line.points):
                points = np.linspace(start, end, 2 + int(np.hypot(*np.subtract(end, start))))
                inside = (points > (label.x0, label.y0)) & (points < (label.x1, label.y1))
                assert not inside.all(axis=1).any(), (label.text, line.pen)


@every_box
def test_the_page_is_small_sound_and_speaks(box: Choices) -> None:
    for _, _, picture in _all_pictures(box):
        root = ElementTree.fromstring(picture.svg)
        assert root.get("role") == "img"
        assert root.get("aria-label") == picture.sentence
        assert root.get("width") == "720"
        assert not any(element.get("id") for element in root.iter())
        assert len(picture.svg.encode()) < 150_000
        assert "nan" not in picture.svg
        # 9 pt at 720 px wide is 12 px.
        assert picture.drawn.text >= 12
        assert picture.drawn.width == 720


def test_the_page_keeps_still_while_the_box_opens() -> None:
    p = plan(postcard())
    apart = [box_apart(p, open=opened).drawn for opened in (0.0, 0.3, 0.7, 1.0)]
    assert len({(row.width, row.height, row.scale) for row in apart}) == 1


def test_faces_differ_in_grey_as_well() -> None:
    """A print in black and white tells top, side and front apart, and end grain from long."""

    def grey(normal: tuple[int, int, int], grain: int) -> float:
        tint = tints(SimpleNamespace(normal=normal), grain=grain)[0]  # type: ignore[arg-type]
        red, green, blue = (int(tint[at : at + 2], 16) for at in (1, 3, 5))
        return 0.299 * red + 0.587 * green + 0.114 * blue

    greys = sorted(
        [
            grey((0, 0, 1), 0), grey((0, -1, 0), 0), grey((1, 0, 0), 1), grey((0, -1, 0), 1),
            grey((1, 0, 0), 0),
        ]
    )  # fmt: skip
    assert min(b - a for a, b in pairwise(greys)) > 12


def test_opening_too_far_is_refused_in_words() -> None:
    p = plan(postcard())
    for opened in (-0.1, 1.1, float("nan")):
        with pytest.raises(ValueError, match="give 0 for together"):
            box_apart(p, open=opened)


@pytest.mark.parametrize("number", range(12))
def test_boxes_of_any_proportion_are_drawn(number: int) -> None:
    p = plan(list(some(12, seed=11))[number])
    if not p.design.exists:
        with pytest.raises(ValueError, match="cannot be drawn"):
            box_apart(p)
        return
    picture = box_apart(p)
    assert len(picture.svg.encode()) < 150_000
    ElementTree.fromstring(picture.svg)
    if p.works:
        parts = solids(p.design)
        moves = shifts(p.design, parts=parts, opened=1.0)
        true = _through_depth(p, moves, picture)[0]
        assert np.mean(areas(picture.svg) != true) < AGREES
