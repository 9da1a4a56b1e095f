"""The file of guesses and answers in the student's folder: a page a question, none rubbed out."""

from __future__ import annotations

import json
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import asdict, dataclass, field, replace
from datetime import datetime
from math import isfinite
from pathlib import Path
from typing import Any, Literal, cast, get_args

from toolkit.files import FileError, Problem, locked, write_file
from toolkit.measures import whole
from toolkit.study.folder import student_folder
from toolkit.study.own_file import set_aside

FORMAT = 1
# Which example box guesses are kept for: its walls were 64 mm high at first, and are 66.
EXAMPLE = 2
Kind = Literal["length", "count", "word"]


class DamagedError(ValueError):
    """The file is not one that the workbook wrote; the message says in what."""


@dataclass(frozen=True, slots=True)
class Guess:
    """One guess: as typed, as read (mm, a count or a word), when, whether it was taken back, and
    which example box of the workbook's it was for."""

    kind: Kind
    said: str
    value: float | str
    when: str
    taken_back: bool = False
    example: int = EXAMPLE

    @property
    def remark(self) -> str:
        """What there is to say of a guess that was kept for an earlier example, with a blank."""
        if self.example == EXAMPLE:
            return ""
        return (
            " That guess was for the workbook's earlier example, a box a little lower, whose "
            "answer may have been another."
        )


@dataclass(frozen=True, slots=True)
class Answer:
    """One answer on the student's own box: as typed, whether it was right, when, and how many
    questions the lesson asked."""

    said: str
    right: bool
    when: str
    of: int


@dataclass(frozen=True, slots=True)
class QuestionPage:
    """All the guesses at one question in order, when its answer was shown, and all answers."""

    guesses: tuple[Guess, ...] = ()
    revealed: str = ""
    answers: tuple[Answer, ...] = ()

    @property
    def standing(self) -> tuple[Guess, ...]:
        """The guesses that were not taken back."""
        return tuple(guess for guess in self.guesses if not guess.taken_back)

    def first(self, kind: Kind) -> Guess | None:
        """The guess that counts, if it is of this kind of answer."""
        return next((guess for guess in self.standing if guess.kind == kind), None)

    def with_guess(self, kind: Kind, said: str, value: float | str) -> QuestionPage:
        """This page with one more guess, made now. Lengths in mm."""
        return replace(self, guesses=(*self.guesses, Guess(kind, said, value, _now())))

    def with_answer(self, said: str, right: bool, of: int) -> QuestionPage:
        """This page with one more answer, given now, to one of so many questions."""
        return replace(self, answers=(*self.answers, Answer(said, right, _now(), of)))

    def without_last(self) -> QuestionPage:
        """This page with the last standing guess marked as taken back."""
        last = self.standing[-1]
        rows = tuple(
            replace(guess, taken_back=True) if guess is last else guess for guess in self.guesses
        )
        return replace(self, guesses=rows)

    def now_revealed(self) -> QuestionPage:
        """This page with the answer shown now."""
        return replace(self, revealed=_now())


@dataclass(slots=True)
class Book:
    """The pages as read; ``notice`` tells of a damaged file that was set aside."""

    pages: dict[str, QuestionPage]
    notice: str = ""
    changed: bool = field(default=False, init=False)

    def page(self, question_id: str) -> QuestionPage:
        """The page of a question, empty where nobody guessed."""
        return self.pages.get(question_id, QuestionPage())

    def put(self, question_id: str, page: QuestionPage) -> None:
        """Replace the page of a question."""
        self.pages[question_id] = page
        self.changed = True


def book_path() -> Path:
    """The file of guesses in the student's folder."""
    return student_folder() / "guesses.json"


@contextmanager
def open_book() -> Iterator[Book]:
    """Hold the file of guesses, and write it at the end if a page was changed."""
    with locked(book_path(), error=FileError) as path:
        book = _opened(path)
        yield book
        if book.changed:
            write_file(path, _text(book.pages).encode(), error=FileError)


def _opened(path: Path) -> Book:
    try:
        return Book(_read(path))
    except DamagedError as problem:
        try:
            aside = set_aside(path)
        except OSError as refusal:
            why = refusal.strerror or str(refusal)
            said = f"it {problem}, and it could not be set aside ({why}); show it to your teacher"
            raise FileError(path.name, [Problem("", said)]) from refusal
        return Book(
            {},
            f"{path.name} {problem}. It is set aside as {aside.name}, and a new one is begun; "
            "show the old one to your teacher.",
        )
    except OSError as refusal:
        why = refusal.strerror or str(refusal)
        said = f"it could not be opened ({why}); check its folder and try again"
        raise FileError(path.name, [Problem("", said)]) from refusal


def _read(path: Path) -> dict[str, QuestionPage]:
    """The pages of the file, none where there is no file yet."""
    if not path.exists():
        return {}
    raw = path.read_bytes()
    try:
        data = json.loads(raw.decode("utf-8"))
    except (ValueError, RecursionError) as problem:
        raise DamagedError("is not the text that the workbook wrote") from problem
    if not isinstance(data, dict) or not isinstance(data.get("guesses"), dict):
        raise DamagedError("has no guesses in it")
    if data.get("format") != FORMAT:
        raise DamagedError(f"is not of format {FORMAT}, which is all that this workbook reads")
    return {whole(name): _page(whole(name), entry) for name, entry in data["guesses"].items()}


def _page(name: str, entry: Any) -> QuestionPage:
    if not isinstance(entry, dict) or not isinstance(entry.get("said"), list):
        raise DamagedError(f"has a question without guesses, {name[:40]!r}")
    revealed = entry.get("revealed", "")
    if not isinstance(revealed, str):
        raise DamagedError(f"has no time where one should be, at {name[:40]!r}")
    guesses = tuple(_guess(name, row) for row in entry["said"])
    return QuestionPage(guesses, whole(revealed), _answers(name, entry.get("answers", [])))


def _answers(name: str, rows: Any) -> tuple[Answer, ...]:
    kinds = {"said": str, "right": bool, "when": str, "of": int}
    if not isinstance(rows, list) or not all(
        isinstance(row, dict) and all(type(row.get(key)) is kind for key, kind in kinds.items())
        for row in rows
    ):
        raise DamagedError(f"has an answer that can't be read, at {name[:40]!r}")
    return tuple(Answer(whole(r["said"]), r["right"], whole(r["when"]), r["of"]) for r in rows)


def _guess(name: str, row: Any) -> Guess:
    fine = (
        isinstance(row, dict)
        and row.get("kind") in get_args(Kind)
        and isinstance(row.get("said"), str)
        and isinstance(row.get("when"), str)
        and isinstance(row.get("taken_back", False), bool)
        and type(row.get("example", 1)) is int
        and _fits(row.get("value"), row["kind"])
    )
    if not fine:
        raise DamagedError(f"has a guess that can't be read, at {name[:40]!r}")
    value = whole(row["value"]) if row["kind"] == "word" else float(row["value"])
    back = row.get("taken_back", False)
    kind, said, when = cast(Kind, row["kind"]), whole(row["said"]), whole(row["when"])
    return Guess(kind, said, value, when, back, row.get("example", 1))


def _fits(value: Any, kind: str) -> bool:
    if kind == "word":
        return isinstance(value, str)
    if isinstance(value, bool) or not isinstance(value, int | float):
        return False
    try:
        return isfinite(value)
    except OverflowError:
        return False


def _text(pages: dict[str, QuestionPage]) -> str:
    rows = {name: _entry(page) for name, page in pages.items()}
    data = {"format": FORMAT, "guesses": rows}
    return json.dumps(data, ensure_ascii=False, indent=1) + "\n"


def _entry(page: QuestionPage) -> dict[str, Any]:
    rows = map(asdict, page.guesses)
    # Only a guess that was taken back says so.
    said = [{key: value for key, value in row.items() if value is not False} for row in rows]
    answers = list(map(asdict, page.answers))
    more = {"revealed": page.revealed, "answers": answers}
    return {"said": said, **{key: value for key, value in more.items() if value}}


def _now() -> str:
    return datetime.now().astimezone().isoformat(timespec="seconds")
