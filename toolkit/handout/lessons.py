"""The lessons on paper: their prose and their stills with the student's own numbers.

The cells that a reader of paper needs are run here, one after another in this process and bound to
the plan, so that what a teacher wrote into a lesson is on paper too.
"""

from __future__ import annotations

import ast
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path
from typing import Any

import nbformat

from toolkit.document import Block, OtherHtml, Prose, Section, Sentence
from toolkit.plan import Plan
from toolkit.stock import Board
from toolkit.study import OwnBoards, bound_to, lesson_files

SCREEN = "screen-only"
OURS = "ours"


class LessonError(ValueError):
    """A lesson could not be put on paper; the message names the lesson and the cell."""


@dataclass(frozen=True, slots=True)
class Lesson:
    """One lesson on paper: its number, its short name, its title and its blocks.

    A title that a teacher wrote is ``typed``.
    """

    number: int
    name: str
    title: str
    typed: bool
    blocks: tuple[Block, ...]

    @property
    def section(self) -> Section:
        """It as a section of a document."""
        heading = f"Lesson {self.number}. {self.title}"
        return Section(f"lesson-{self.number}", heading, "", self.blocks, self.name)


def rack_of(plan: Plan) -> tuple[Board, ...]:
    """The boards that the lessons on paper speak of. [mm]"""
    with bound_to(plan.choices):
        return OwnBoards().load().boards


def on_paper(
    plan: Plan,
    *,
    numbers: Sequence[int] | None = None,
    told: Callable[[str], object] = lambda _: None,
) -> tuple[Lesson, ...]:
    """The lessons with the numbers of a box."""
    books = {int(path.name[:2]): path for path in lesson_files()}
    wanted = list(books) if numbers is None else list(dict.fromkeys(numbers))
    for number in wanted:
        if number not in books:
            known = ", ".join(map(str, books))
            raise LessonError(f"there is no lesson {number}; the lessons are {known}")
    made = []
    with bound_to(plan.choices):
        for number in wanted:
            told(f"lesson {number}")
            made.append(_lesson(number, books[number]))
    return tuple(made)


def prose_mark(source: str) -> str:
    """What a cell's metadata hold of its prose as we wrote it; a teacher's own has another."""
    return sha256(source.encode("utf-8", "replace")).hexdigest()[:8]


def _lesson(number: int, path: Path) -> Lesson:
    book = nbformat.read(path, as_version=4)
    names: dict[str, Any] = {}
    title, typed = "", False
    blocks: list[Block] = []
    for place, cell in enumerate(book.cells, start=1):
        if SCREEN in cell.metadata.get("tags", []):
            continue
        if cell.cell_type == "markdown":
            source = cell.source
            theirs = cell.metadata.get(OURS) != prose_mark(source)
            if not title:
                first, _, source = source.partition("\n")
                title, typed = first.lstrip("# ").strip(), theirs
            if source.strip():
                blocks.append(Prose(source, typed=theirs))
            continue
        try:
            value = _value(cell.source, names)
        except Exception as error:
            raise LessonError(
                f"lesson {number}, cell {place} ({cell.source.strip()}): {error}"
            ) from error
        if value is not None:
            blocks.append(_block(value))
    name = f"Lesson {number}: {path.stem.partition('_')[2].replace('_', ' ')}"
    return Lesson(number, name, title, typed, tuple(blocks))


def _value(source: str, names: dict[str, Any]) -> Any:
    """Run a cell and give the value of its last line, as a notebook does."""
    tree = ast.parse(source)
    last = tree.body.pop() if tree.body else None
    if last is not None and not isinstance(last, ast.Expr):
        tree.body.append(last)
    exec(compile(tree, "<lesson>", "exec"), names)
    if not isinstance(last, ast.Expr):
        return None
    return eval(compile(ast.Expression(last.value), "<lesson>", "eval"), names)


def _block(value: Any) -> Block:
    """A cell's value: a block as it is, anything else as a notebook shows it."""
    if isinstance(value, Block):
        return value
    html = getattr(value, "_repr_html_", lambda: None)()
    return OtherHtml(html) if html else Sentence(str(value))
