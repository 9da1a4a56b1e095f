"""A finding is known to its check alone: drawings ask for its place, lessons for its topic."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path
from typing import get_args

import pytest

from tests.boxes import postcard
from toolkit.box import joint_checks
from toolkit.lesson.lesson1_tree import SEASON as YEAR
from toolkit.lesson.lesson3_corner import CORNER
from toolkit.lesson.lesson4 import SEASON
from toolkit.lesson.lesson4_lid import EDGES, LID
from toolkit.lesson.scene import Scene, worked_out
from toolkit.pictures import Picture, corner_picture, lid_picture, section_across, section_along
from toolkit.plan import plan
from toolkit.results import LEVELS, About, Place, Spot, Topic, read_table

ROOT = Path(__file__).parents[2]
TREES = {
    path.relative_to(ROOT): ast.parse(path.read_text(encoding="utf-8"))
    for path in (ROOT / "toolkit").rglob("*.py")
}
CODE = re.compile(r"[a-z]+(-[a-z]+)*")


def _texts(tree: ast.AST) -> Iterator[ast.Constant]:
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant) and isinstance(node.value, str):
            yield node


def _codes(tree: ast.Module) -> set[str]:
    """The codes of the findings that a module makes: a level comes first, the code second."""
    found: set[str] = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Call) and len(node.args) > 2:
            level, code = node.args[:2]
            named = {text.value for text in _texts(level)} & set(LEVELS)
            if named or (isinstance(level, ast.Name) and level.id == "level"):
                # A code that comes out of a table: any word of the module that looks like one.
                table = not isinstance(code, ast.Constant | ast.IfExp)
                words = {text.value for text in _texts(tree if table else code)}
                found |= {
                    word for word in words if CODE.fullmatch(word) and (not table or "-" in word)
                }
    return found


def _says(tree: ast.Module) -> bool:
    """Whether a module says findings that stand in a table."""
    return any(isinstance(n, ast.Attribute) and n.attr == "say" for n in ast.walk(tree))


def test_no_code_of_a_finding_is_named_outside_its_check() -> None:
    made = {path: _codes(tree) for path, tree in TREES.items()}
    tables = [f"{path.parent.name}/{path.name}" for path in ROOT.glob("toolkit/*/findings.csv")]
    table = {row["finding"] for place in tables for row in read_table(place)}
    said = {path: {t.value for t in _texts(tree)} & table for path, tree in TREES.items()}
    said = {path: names for path, names in said.items() if _says(TREES[path])}
    assert set().union(*said.values()) == table
    for path, names in said.items():
        made[path] |= {name.partition(",")[0] for name in names}
    codes = set().union(*made.values())
    assert len(codes) > 100
    named = [
        f"{path}:{text.lineno}: {text.value}"
        for path, tree in TREES.items()
        for text in _texts(tree)
        if text.value in codes - made[path]
    ]
    assert named == []


# What made-up findings are about, where they are, the drawing and the scenes that show them.
NEW: tuple[tuple[Topic, Place, str, set[Scene]], ...] = (
    ("corner", Place("lap", corner="back"), "back", {CORNER}),
    ("marking out", Place("half pin", corner="front"), "front", {CORNER}),
    ("corner", Place("groove side", "bottom groove", "back"), "back", {CORNER}),
    ("lid", Place("front edge", "front"), "lid", {LID}),
    ("lid", Place("lid end", "lid"), "along", {LID}),
    ("panel", Place("tongue", "bottom"), "across", {LID, EDGES}),
    ("season", Place("clearance", "lid"), "across", {YEAR, SEASON, EDGES}),
)
SCENES = (CORNER, YEAR, LID, EDGES, SEASON)


def _drawings() -> dict[str, Picture]:
    made = plan(postcard())
    return {
        "back": corner_picture(made, which="back"),
        "front": corner_picture(made, which="front"),
        "across": section_across(made),
        "along": section_along(made),
        "lid": lid_picture(made, out=0.0),
    }


def _marks(picture: Picture) -> int:
    return sum(pen == "wrong" for pen, _ in picture.drawn.strokes)


def test_new_findings_show_in_their_lessons_and_their_drawings(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    well = _drawings()
    rows = [
        About(topic)("care", f"resin-{i}", place, "", brief=f"resin {i}", note=f"see {i}")
        for i, (topic, place, _, _) in enumerate(NEW)
    ]
    monkeypatch.setattr(joint_checks, "CHECKS", (*joint_checks.CHECKS, lambda _: rows))
    worked_out.cache_clear()
    try:
        shown = {scene: scene.view(postcard()).findings for scene in SCENES}
    finally:
        worked_out.cache_clear()
    now = _drawings()
    for row, (_, _, drawing, scenes) in zip(rows, NEW, strict=True):
        assert {scene for scene in SCENES if row in shown[scene]} == scenes, row
        assert row.brief in now[drawing].sentence, row
        assert any(row.note in label.text for label in now[drawing].drawn.labels), row
    for name, picture in now.items():
        assert _marks(picture) > _marks(well[name]) == 0, name
    assert "resin 0" not in now["front"].sentence
    assert "resin 1" not in now["back"].sentence


def test_every_finding_of_a_box_has_a_topic_and_each_spot_is_drawn() -> None:
    """A spot that no drawing asks for would be a mark that nobody sees."""
    asked = {
        text.value
        for path, tree in TREES.items()
        if "pictures" in path.parts
        for text in _texts(tree)
    }
    assert set(get_args(Spot)) - {""} <= asked
    assert all(row.topic for row in plan(postcard()).findings)
