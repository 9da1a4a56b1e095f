"""Where a student's own work lies, and where the workbook's example lies."""

from __future__ import annotations

import os
from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from datetime import datetime
from pathlib import Path
from tempfile import TemporaryDirectory

from toolkit.files import FileError, Problem

ENVIRONMENT = "WORKBOOK_FOLDER"
_LESSONS = Path(__file__).resolve().parents[2] / "lessons"
_PASSING: ContextVar[Path | None] = ContextVar("a folder that passes", default=None)


class NoLessonsError(FileNotFoundError):
    """The folder of lessons is not beside the toolkit; the message says what to do."""


def lessons_folder() -> Path:
    """The workbook's own lessons, which lie beside the toolkit in every clone.

    Raises
    ------
    NoLessonsError
        The toolkit was copied or installed without them.
    """
    if not (_LESSONS / "box.toml").is_file():
        raise NoLessonsError(
            f"there are no lessons in {_LESSONS}: the workbook is used from a clone or an "
            "unpacked copy; fetch it again, whole, and start it there"
        )
    return _LESSONS


def example_path() -> Path:
    """The workbook's example box, never the student's own.

    Raises
    ------
    NoLessonsError
        The toolkit was copied or installed without its lessons.
    """
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


def lesson_file(lesson: str) -> Path:
    """A lesson's notebook by its number or a piece of its name.

    Raises
    ------
    ValueError
        No lesson answers to that; the message lists those there are.
    """
    files = lesson_files()
    wanted = lesson.strip().lower()
    for file in files:
        number = file.name[:2].lstrip("0")
        if wanted == number or (not wanted.isdigit() and wanted and wanted in file.stem):
            return file
    names = ", ".join(f"{file.name[:2].lstrip('0')} ({file.stem[3:]})" for file in files)
    raise ValueError(f"there is no lesson {lesson!r}; type one of {names}")


def set_aside(path: Path) -> Path:
    """Rename a damaged file, beside where it was; nothing is overwritten. Hold its lock."""
    stamp = datetime.now().strftime("%Y%m%d-%H%M%S")
    stem, number = f"{path.stem}.damaged-{stamp}", 1
    aside = path.with_name(f"{stem}{path.suffix}")
    while aside.exists():
        number += 1
        aside = path.with_name(f"{stem}-{number}{path.suffix}")
    return path.rename(aside)


def last_set_aside(path: Path) -> Path | None:
    """The newest damaged file that was set aside from here, or None."""
    found = path.parent.glob(f"{path.stem}.damaged-*{path.suffix}")
    return max(found, key=lambda aside: aside.name, default=None)
