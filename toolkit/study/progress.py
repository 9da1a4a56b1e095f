"""The lessons in their order, what each asks for, and how far a student is in it."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from toolkit.files import FileError
from toolkit.measures import whole
from toolkit.study.guess_book import Answer, QuestionPage, open_book
from toolkit.study.own_box import OwnBox

# What a lesson's first cell tells it by, in every notebook alike.
_NEEDS, _MINUTES = "*You need*", "*Minutes:*"


@dataclass(frozen=True, slots=True)
class Begun:
    """One lesson: its file, its name, the question that it asks, what it needs and takes, and how
    far the student is in it."""

    file: str
    name: str
    question: str
    needs: str
    minutes: str
    so_far: str


@dataclass(frozen=True, slots=True)
class SoFar:
    """All lessons of a folder, and what is kept; ``notice`` tells of a file that can't be read."""

    lessons: tuple[Begun, ...]
    kept: str
    notice: str


def keep_answer(question_id: str, said: str, *, right: bool, of: int) -> str:
    """Keep what was answered on the student's own box, one of so many questions of the lesson.

    Parameters
    ----------
    question_id : str
        Which question, such as ``lesson4.lid-length``.
    said : str
        The answer as typed.
    right : bool
        Whether it is.
    of : int
        How many questions were asked.

    Returns
    -------
    str
        What there is to tell of the file that keeps it, often nothing.
    """
    try:
        with open_book() as book:
            said = " ".join(whole(said).split())
            book.put(question_id, book.page(question_id).with_answer(said, right, of))
            return book.notice
    except FileError as refusal:
        return str(refusal)


def so_far(folder: Path) -> SoFar:
    """How far the student is in the lessons of a folder; nothing but their own folder tells it."""
    try:
        with open_book() as book:
            pages, notice = book.pages, book.notice
    except FileError as refusal:
        pages, notice = {}, str(refusal)
    files = sorted(folder.glob("[0-9][0-9]_*.ipynb"))
    return SoFar(tuple(_begun(file, pages) for file in files), _kept(), notice)


def _begun(file: Path, pages: Mapping[str, QuestionPage]) -> Begun:
    number, first = int(file.name[:2]), _first_cell(file)
    needs, _, after = first.partition(_NEEDS)[2].partition(_MINUTES)
    of_it = [page for name, page in pages.items() if name.startswith(f"lesson{number}.")]
    title = first.partition("\n")[0]
    return Begun(
        file=file.name,
        name=f"{number} · {file.stem[3:].replace('_', ' ')}",
        question=title.lstrip("# ").strip() if title.startswith("# ") else "",
        needs=needs.strip(),
        minutes=after.partition("\n")[0].strip(),
        so_far=_done(of_it),
    )


def _first_cell(file: Path) -> str:
    """A notebook's opening words; none of one that can't be read: opening it will tell."""
    try:
        cell = json.loads(file.read_text(encoding="utf-8"))["cells"][0]
        return "".join(cell["source"]) if cell["cell_type"] == "markdown" else ""
    except (OSError, ValueError, LookupError, TypeError):
        return ""


def _done(pages: list[QuestionPage]) -> str:
    """What was done of a lesson, in a few words; nothing where nothing was."""
    last: list[Answer] = [page.answers[-1] for page in pages if page.answers]
    words = ["guess kept"] if any(page.standing for page in pages) else []
    if last:
        asked = max(last, key=lambda answer: answer.when).of
        right = min(sum(answer.right for answer in last), asked)
        words.append(f"{right} of {asked} questions answered")
    return ", ".join(words)


def _kept() -> str:
    path = OwnBox().path
    if not path.exists():
        return "You have kept no box of your own yet: the lessons show the workbook's example."
    day = date.fromtimestamp(path.stat().st_mtime)
    return f"The lessons show your own box, {path.name}, kept on {day:%A}, {day.day} {day:%B}."
