"""What is said of a file that cannot be read: the file, the key, the line, what to type."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from toolkit.measures import MeasureError

Path = tuple[str | int, ...]
# What is wrong: where, and what to say of it.
Fault = tuple[Path, str]

_LONGEST = 40
MOST_PROBLEMS = 50
# A family is several signs joined to one, some scripts join or part letters, a flag ends in tags.
_JOINERS = dict.fromkeys((0x200C, 0x200D, *range(0xE0020, 0xE0080)))


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing that is wrong with a file: where, and what to type instead."""

    key: str
    said: str
    line: int | None = None
    column: int | None = None

    @property
    def where(self) -> str:
        """The key with its line, either of which may be missing."""
        column = f", column {self.column}" if self.column else ""
        line = f" (line {self.line}{column})" if self.line else ""
        return f", {self.key}{line}" if self.key else line


class FileError(ValueError):
    """A file cannot be read or written; the text is one line about the first problem."""

    def __init__(self, file: str, problems: Iterable[Problem]) -> None:
        self.file = file
        self.problems = tuple(problems)
        super().__init__(file, self.problems)

    def __str__(self) -> str:
        return self.lines[0]

    @property
    def lines(self) -> tuple[str, ...]:
        """Every problem as one line."""
        name = plain(self.file, longest=200)
        return tuple(f"{name}{problem.where}: {problem.said}" for problem in self.problems)


class BoxFileError(FileError):
    """A box file cannot be read or written; the text is one line, ``problems`` has them all."""


class BoardsFileError(FileError):
    """A file of boards cannot be read or written; ``problems`` has everything that is wrong."""


class ClassFileError(FileError):
    """A class file cannot be read; ``problems`` has everything that is wrong."""


class UnfitError(ValueError):
    """Raised by a reader of one value: what is the matter with it and what to type."""


def measure_said(error: MeasureError) -> str:
    """What a measure's reader says, without the name and the value, which the line has already."""
    return f"it {error.problem}; {error.hint}"


def visible(text: str) -> str:
    """Text without what joins its signs and letters, which Python does not call printable.

    >>> visible("\N{MAN}\N{ZERO WIDTH JOINER}\N{GIRL}") == "\N{MAN}\N{GIRL}"
    True
    """
    return text.translate(_JOINERS)


def plain(text: str, *, longest: int = _LONGEST) -> str:
    """Text on one line, without anything unprintable, and cut short."""
    text = "".join(c if visible(c).isprintable() else "�" for c in text[: longest + 1])
    return text if len(text) <= longest else f"{text[: longest - 1]}…"


def shown(value: object) -> str:
    """A value as the file has it: text between quotes, a bare number as it is.

    >>> shown("4 mm"), shown(4), shown(True), shown([1, 2])
    ('"4 mm"', '4', 'true', 'a list of 2')
    """
    if isinstance(value, str):
        return f"“{plain(value)}”" if '"' in value else f'"{plain(value)}"'
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, int):
        # Printing an enormous whole number is refused by Python itself.
        return str(value) if abs(value) < 10**_LONGEST else "an enormous number"
    if isinstance(value, float):
        return f"{value:g}"
    if isinstance(value, list | tuple):
        return f"a list of {len(value)}" if value else "an empty list"
    if isinstance(value, dict):
        return "a table"
    return plain(str(value))


def dotted(path: Path) -> str:
    """A key as a person would write it; entries of a list are counted from 1.

    >>> dotted(("board", 0, "defect", 2, "to"))
    'board 1.defect 3.to'
    """
    words: list[str] = []
    for step in path:
        if isinstance(step, int):
            words[-1:] = [f"{words[-1] if words else ''} {step + 1}".strip()]
        else:
            words.append(plain(step))
    return ".".join(words)
