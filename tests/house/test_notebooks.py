"""House rules of the lessons: their outline, their hidden plumbing, their words, their tidiness."""

import json
import re
from itertools import pairwise
from pathlib import Path

import nbformat
import pytest

from tests.house.notebooks import CHECKED, DELIVERED, ROOT, delivered, notebooks, tidied
from toolkit.handout.page import SCREEN

LESSONS = [path for path in notebooks() if path.parent.name == "lessons"]
HIDDEN = "hide-input"


@pytest.fixture(params=notebooks(), ids=lambda path: path.name)
def book(request: pytest.FixtureRequest) -> nbformat.NotebookNode:
    return nbformat.read(request.param, as_version=4)


@pytest.mark.parametrize("path", notebooks(), ids=lambda path: path.name)
def test_tidy(path: Path) -> None:
    # Whether the outputs are still what the cells say is seen when the notebook itself is a test.
    assert path.read_text(encoding="utf-8") == tidied(path, afresh=False), (
        f"{path.name} is not tidy; run: python -m tests.house.notebooks"
    )


def test_code_is_known_as_delivered() -> None:
    # A lesson of other code would wait behind its button.
    assert DELIVERED.read_text(encoding="utf-8") == delivered(), (
        "code of a lesson was changed; run: python -m tests.house.notebooks"
    )


def test_code_cells_are_short_and_hidden_in_both_ways(book: nbformat.NotebookNode) -> None:
    for cell in book.cells:
        if cell.cell_type == "code":
            assert len(cell.source.splitlines()) <= 6, cell.source
            # What is for the screen alone comes on no paper, code and all.
            assert (HIDDEN in cell.metadata.tags) != (SCREEN in cell.metadata.tags), cell.source
            assert cell.metadata.jupyter.source_hidden, cell.source


def test_one_import_from_one_place(book: nbformat.NotebookNode) -> None:
    code = "\n".join(cell.source for cell in book.cells if cell.cell_type == "code")
    imports = [line for line in code.splitlines() if re.match(r"\s*(from|import)\b", line)]
    assert len(imports) == 1
    assert imports[0].startswith(("from toolkit.explore import ", "from toolkit.classroom import "))


def test_checked_cells_hold_outputs_and_others_none(book: nbformat.NotebookNode) -> None:
    checked = [cell for cell in book.cells if CHECKED in cell.metadata.get("tags", [])]
    assert checked, "no cell of this notebook is checked"
    for cell in book.cells:
        if cell.cell_type != "code":
            continue
        if cell in checked:
            assert cell.outputs
            assert cell.execution_count
        else:
            assert not cell.outputs
    assert "widgets" not in book.metadata


def _headings(text: str) -> list[int]:
    return [len(mark) for mark in re.findall(r"^(#+) ", text, flags=re.MULTILINE)]


def test_one_h1_and_no_level_skipped(book: nbformat.NotebookNode) -> None:
    prose = "\n".join(cell.source for cell in book.cells if cell.cell_type == "markdown")
    levels = _headings(prose)
    assert levels[0] == 1
    assert levels.count(1) == 1
    assert all(after - before <= 1 for before, after in pairwise(levels))


def test_prose_comes_in_short_pieces(book: nbformat.NotebookNode) -> None:
    for cell in book.cells[1:]:
        if cell.cell_type == "markdown":
            assert len(cell.source.split()) <= 90, cell.source[:60]


@pytest.mark.parametrize("path", LESSONS, ids=lambda path: path.name)
def test_a_lesson_has_its_parts_in_order(path: Path) -> None:
    book = nbformat.read(path, as_version=4)
    title = book.cells[0].source
    assert title.splitlines()[0].rstrip().endswith("?"), "a lesson's title is a bench question"
    for part in ("*You need*", "*Minutes:*", "*You will be able to*"):
        assert part in title
    prose = "\n".join(cell.source for cell in book.cells if cell.cell_type == "markdown")
    assert "Local rules and the shop's licensed or insured practice come first" in prose
    assert "**Sources.**" in prose
    order = ["Guess first", "Move it", "The same on paper", "Your turn", "Carry to the bench"]
    places = [prose.index(f"## {heading}") for heading in order]
    assert places == sorted(places)


def test_every_notebook_is_indented_json_that_git_can_compare() -> None:
    for path in notebooks():
        text = path.read_text(encoding="utf-8")
        assert json.loads(text)
        assert text.startswith('{\n "cells"')
        assert path.is_relative_to(ROOT)
