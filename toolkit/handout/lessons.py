"""The lessons on paper: their prose and their stills with the student's own numbers."""

from __future__ import annotations

import ast
from collections.abc import Callable, Sequence
from hashlib import sha256
from pathlib import Path
from typing import Any

import nbformat

from toolkit.document import Block, OtherHtml, Plot, Prose, Section, Sentence
from toolkit.plan import Plan
from toolkit.results import capital
from toolkit.stock import Board
from toolkit.study import OwnBoards, bound_to, lesson_files

SCREEN = "screen-only"
OURS = "ours"


class LessonError(ValueError):
    """A lesson could not be put on paper; the message names the lesson and the cell."""


def rack_of(plan: Plan) -> tuple[Board, ...]:
    """The boards that the lessons on paper speak of. [mm]"""
    with bound_to(plan.choices):
        return OwnBoards().load().boards


def on_paper(
    plan: Plan, *, numbers: Sequence[int] | None, told: Callable[[str], object]
) -> tuple[list[Section], list[str]]:
    """The lessons with the numbers of a box, and the titles that a teacher wrote."""
    books = {int(path.name[:2]): path for path in lesson_files()}
    wanted = dict.fromkeys(books if numbers is None else numbers)
    for number in wanted:
        if number not in books:
            known = ", ".join(map(str, books))
            raise LessonError(f"there is no lesson {number}; the lessons are {known}")
    sections, typed, closure = [], [], plan.choices.lid.closure
    said: tuple[Block, ...] = ()
    if not closure.lids:
        said = (Sentence(f"{capital(closure.says)}: pass over what is said of one."),)
    with bound_to(plan.choices):
        for number in wanted:
            told(f"lesson {number}")
            section, theirs = _lesson(number, books[number], said)
            sections.append(section)
            typed += theirs
    return sections, typed


def prose_mark(source: str) -> str:
    """What a notebook's metadata hold of each cell's prose as we wrote it."""
    return sha256(source.encode("utf-8", "replace")).hexdigest()[:8]


def _lesson(number: int, path: Path, said: Sequence[Block]) -> tuple[Section, list[str]]:
    """One lesson, and its title where a teacher wrote that."""
    book = nbformat.read(path, as_version=4)
    ours = book.metadata.get(OURS, "").split()
    names: dict[str, Any] = {}
    title, typed = "", []
    blocks = list(said)
    for place, cell in enumerate(book.cells, start=1):
        if SCREEN in cell.metadata.get("tags", []):
            continue
        if cell.cell_type == "markdown":
            source = cell.source
            theirs = prose_mark(source) not in ours
            if not title:
                first, _, source = source.partition("\n")
                title = first.lstrip("# ").strip()
                typed = [title] if theirs else []
            if source.strip():
                blocks.append(Prose(source, typed=theirs))
            continue
        try:
            value = _value(cell.source, names)
        except Exception as error:
            cause = f"lesson {number}, cell {place} ({cell.source.strip()}): {error}"
            raise LessonError(cause) from error
        if value is not None:
            blocks.append(_block(value))
    short = f"Lesson {number}: {path.stem.partition('_')[2].replace('_', ' ')}"
    heading = f"Lesson {number}. {title}"
    return Section(f"lesson-{number}", heading, "", tuple(blocks), short), typed


def _value(source: str, names: dict[str, Any]) -> Any:
    """Run a cell and give the value of its last line, as a notebook does."""
    tree = ast.parse(source)
    last = tree.body[-1] if tree.body else None
    if not isinstance(last, ast.Expr):
        exec(compile(tree, "<lesson>", "exec"), names)
        return None
    exec(compile(ast.Module(tree.body[:-1], []), "<lesson>", "exec"), names)
    return eval(compile(ast.Expression(last.value), "<lesson>", "eval"), names)


def _block(value: Any) -> Block:
    """A cell's value: a block as it is, anything else as a notebook shows it."""
    if isinstance(value, Block):
        return value
    # A cell may end with a figure, its axes, or what was drawn on them.
    drawn = value[0] if isinstance(value, list) and value else value
    figure: Any = drawn if hasattr(drawn, "savefig") else getattr(drawn, "figure", None)
    if hasattr(figure, "savefig"):
        return Plot(figure)
    html = getattr(value, "_repr_html_", lambda: None)()
    return OtherHtml(html) if html else Sentence(str(value))
