"""Where the lessons lie, and the student's folder."""

from __future__ import annotations

import os
from collections.abc import Collection, Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from pathlib import Path
from tempfile import TemporaryDirectory

from toolkit.files import FileError, Problem

ENVIRONMENT = "WORKBOOK_FOLDER"
_LESSONS = Path(__file__).resolve().parents[2] / "lessons"
_PASSING: ContextVar[Path | None] = ContextVar("a folder that passes", default=None)


class NoLessonsError(FileNotFoundError):
    """The folder of lessons is not beside the toolkit; the message says what to do."""


def lessons_folder() -> Path:
    """The workbook's own lessons, beside the toolkit in every clone; else a ``NoLessonsError``."""
    if not (_LESSONS / "box.toml").is_file():
        raise NoLessonsError(
            f"there are no lessons in {_LESSONS}: the workbook is used from a clone or an "
            "unpacked copy; fetch it again, whole, and start it there"
        )
    return _LESSONS


def example_path() -> Path:
    """The workbook's example box, never the student's own."""
    return lessons_folder() / "box.toml"


@contextmanager
def passing_folder() -> Iterator[Path]:
    """Inside, the student's folder is an empty one that is gone afterwards: nothing stays kept."""
    with TemporaryDirectory() as name:
        before = _PASSING.set(Path(name))
        try:
            yield Path(name)
        finally:
            _PASSING.reset(before)


def student_folder() -> Path:
    """The student's folder: what ``WORKBOOK_FOLDER`` names, or else the lessons.

    It is made if it does not exist yet.

    Raises
    ------
    NoLessonsError
        No folder is named and the toolkit has no lessons beside it.
    FileError
        The folder that is named is a file, or can't be made.
    """
    if (passing := _PASSING.get()) is not None:
        return passing
    named = os.environ.get(ENVIRONMENT, "").strip()
    if not named:
        return lessons_folder()
    try:
        folder = Path(named).expanduser().resolve()
        folder.mkdir(parents=True, exist_ok=True)
    except (OSError, RuntimeError) as problem:
        why = getattr(problem, "strerror", None) or str(problem)
        said = f"{ENVIRONMENT} names no folder that can be used ({why}); name another, or none"
        raise FileError(named, [Problem("", said)]) from problem
    return folder


def lesson_files() -> list[Path]:
    """The lessons' notebooks in their order."""
    return sorted(lessons_folder().glob("[0-9][0-9]_*.ipynb"))


class LessonError(ValueError):
    """A lesson that is not there, or can't be put on paper: the message names it, and the cell."""


def lessons_by_number(numbers: Collection[int] | None) -> dict[int, Path]:
    """The notebooks of some lessons, of all for None; else a `LessonError` tells what there is."""
    books = {int(path.name[:2]): path for path in lesson_files()}
    for number in numbers or ():
        if number not in books:
            known = ", ".join(map(str, books))
            raise LessonError(f"there is no lesson {number}; the lessons are {known}")
    return books if numbers is None else {number: books[number] for number in numbers}


def lesson_file(lesson: str) -> Path:
    """A lesson's notebook by its number or a piece of its name; else a ``ValueError`` lists all."""
    books = lessons_by_number(None)
    wanted = lesson.strip().lower()
    for number, file in books.items():
        if wanted == str(number) or (not wanted.isdigit() and wanted and wanted in file.stem):
            return file
    names = ", ".join(f"{number} ({file.stem[3:]})" for number, file in books.items())
    raise ValueError(f"there is no lesson {lesson!r}; type one of {names}")
