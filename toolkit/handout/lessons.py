"""The lessons on paper: their prose and their stills with the student's own numbers.

The cells that a reader of paper needs are run here, one after another in this process, so that a
class of twelve pays once for what a kernel would import twelve times.
"""

from __future__ import annotations

import ast
import os
import re
import tempfile
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from hashlib import sha256
from html import escape
from pathlib import Path
from typing import Any

import nbformat
from nbconvert.filters import markdown2html

from toolkit.files import FileError, as_toml, write_box
from toolkit.measures import as_typed
from toolkit.plan import Plan
from toolkit.study import lesson_files

SCREEN = "screen-only"
OURS = "ours"
_STYLE = re.compile(r"<style>.*?</style>", re.DOTALL)
_ANCHOR = re.compile(r'<a class="anchor-link".*?</a>', re.DOTALL)
_HEADING = re.compile(r"<(/?)h([1-5])\b([^>]*)>")
# What to write into a cell is of no use on paper.
_ASIDE = re.compile(r"\s*\(`lesson\.[^`]*`\)")
_CELL = re.compile(r"\s+[^.!?`]*`lesson\.[^`]*`[^.!?]*[.!?]")
_TEXT = re.compile(r"(?<=>)[^<]+|^[^<]+")
_DEEPER = 1  # a lesson's title is a section of the handout


class LessonError(ValueError):
    """A lesson could not be put on paper; the message names the lesson and the cell."""


@dataclass(frozen=True, slots=True)
class Lesson:
    """One lesson on paper: its number, its short name, its title and its blocks of HTML."""

    number: int
    name: str
    title: str
    blocks: tuple[str, ...]


def on_paper(
    plan: Plan,
    *,
    numbers: Sequence[int] | None = None,
    told: Callable[[str], object] = lambda _: None,
) -> tuple[Lesson, ...]:
    """The lessons with the numbers of a box.

    Parameters
    ----------
    plan : Plan
        The box. [mm]
    numbers : sequence of int, optional
        Which lessons; all that there are if left out.
    told : callable
        Told of each lesson as it is begun.

    Raises
    ------
    LessonError
        There is no such lesson, or a cell of it failed.

    Source
    ------
    The lessons' own.
    """
    books = {int(path.name[:2]): path for path in lesson_files()}
    wanted = list(books) if numbers is None else list(dict.fromkeys(numbers))
    for number in wanted:
        if number not in books:
            known = ", ".join(map(str, books))
            raise LessonError(f"there is no lesson {number}; the lessons are {known}")
    made = []
    with _their_own(plan):
        for number in wanted:
            told(f"lesson {number}")
            made.append(_lesson(number, books[number]))
    return tuple(made)


@contextmanager
def _their_own(plan: Plan) -> Iterator[None]:
    """A student's folder for the moment, in which this box is the student's own."""
    before = os.environ.get("WORKBOOK_FOLDER")
    with tempfile.TemporaryDirectory() as folder:
        try:
            write_box(Path(folder) / "my_box.toml", as_toml(plan.choices))
        except FileError as problem:
            # The reader knows no such file, but can make room in the folder that it lies in.
            said = problem.problems[0].said.replace("its folder", tempfile.gettempdir())
            raise LessonError(f"the lessons' copy of the box: {said}") from problem
        os.environ["WORKBOOK_FOLDER"] = folder
        try:
            yield
        finally:
            if before is None:
                del os.environ["WORKBOOK_FOLDER"]
            else:
                os.environ["WORKBOOK_FOLDER"] = before


def prose_mark(source: str) -> str:
    """What a cell's metadata hold of its prose as we wrote it; a teacher's own has another."""
    return sha256(source.encode("utf-8", "replace")).hexdigest()[:8]


def _lesson(number: int, path: Path) -> Lesson:
    book = nbformat.read(path, as_version=4)
    names: dict[str, Any] = {}
    title, blocks = "", []
    for place, cell in enumerate(book.cells, start=1):
        if SCREEN in cell.metadata.get("tags", []):
            continue
        if cell.cell_type == "markdown":
            source = cell.source
            theirs = cell.metadata.get(OURS) != prose_mark(source)
            if not title:
                first, _, source = source.partition("\n")
                title = first.lstrip("# ").strip()
                title = as_typed(title) if theirs else title
            prose = _prose(source)
            blocks.append(_TEXT.sub(lambda m: as_typed(m[0]), prose) if theirs else prose)
            continue
        try:
            value = _value(cell.source, names)
        except Exception as error:
            raise LessonError(
                f"lesson {number}, cell {place} ({cell.source.strip()}): {error}"
            ) from error
        if value is not None:
            blocks.append(_shown(value))
    name = f"Lesson {number}: {path.stem.partition('_')[2].replace('_', ' ')}"
    return Lesson(number, name, title, tuple(block for block in blocks if block.strip()))


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


def _shown(value: Any) -> str:
    """A value as a notebook shows it, without the style sheet that the page has already."""
    html = getattr(value, "_repr_html_", lambda: None)()
    return _STYLE.sub("", html) if html else f"<p>{escape(str(value))}</p>"


def _prose(source: str) -> str:
    """Markdown as HTML, its headings one level deeper."""
    source = _CELL.sub("", _ASIDE.sub("", source))
    html = _ANCHOR.sub("", markdown2html(source))

    def deeper(match: re.Match[str]) -> str:
        # Ids repeat from lesson to lesson, and nothing links to them.
        return f"<{match[1]}h{int(match[2]) + _DEEPER}>"

    return _HEADING.sub(deeper, html)
