"""From a file on disk to plain values, slips explained; changes are kept and can be taken back."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Callable
from dataclasses import dataclass
from os import PathLike, fspath
from pathlib import Path as FilePath
from typing import Any, Generic, NoReturn, TypeVar

from toolkit.files.errors import FileError, Problem, dotted, plain, shown
from toolkit.files.lines import lines_of, too_deep
from toolkit.files.writing import backups, keep_backup, locked, write_file

LARGEST = 256_000
# The parser takes minutes over thousands.
DEEPEST = 20
_PLACE = re.compile(r" \(at (?:line (\d+), column (\d+)|end of document)\)$")
_BARE_TEXT = re.compile(r"[^\"'\[\]{}#=]+")
_COMMENT = re.compile(r"\s#.*")
_DECIMAL_COMMA = re.compile(r"[0-9]+,[0-9]+")
_INCH_MARK = re.compile(r'"([^"]*)""')


def file_text(path: str | PathLike[str], *, error: type[FileError]) -> str:
    """The text of a file in UTF-8, with line feeds alone at its line ends; else a ``FileError``."""
    path = FilePath(path)
    try:
        if path.is_dir():
            _refuse(error, str(path), "this is a folder; name the file in it")
        if not path.exists():
            folder = plain(fspath(path.parent.absolute()), longest=200)
            _refuse(error, path.name, f"there is no such file in {folder}; check its name")
        if not path.is_file():
            _refuse(error, path.name, "this is not an ordinary file; name a TOML file")
        with path.open("rb") as stream:
            raw = stream.read(LARGEST + 1)
    except OSError as problem:
        why = problem.strerror or str(problem)
        _refuse(error, path.name, f"it could not be opened ({why}); check its name and rights")
    return text_of(raw, name=path.name, error=error)


def text_of(raw: bytes, *, name: str, error: type[FileError]) -> str:
    """Bytes of a file as text, without a byte-order mark and with plain line ends."""
    if len(raw) > LARGEST:
        _refuse(error, name, f"it is larger than {LARGEST // 1000} kB; this can't be such a file")
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError as problem:
        line = raw.count(b"\n", 0, problem.start) + 1
        said = "the file is not in UTF-8; save it again with the encoding UTF-8"
        raise error(name, [Problem("", said, line)]) from None
    return text.replace("\r\n", "\n")


def values_of(text: str, *, name: str, error: type[FileError]) -> dict[str, Any]:
    """What a TOML text says, as plain values; the usual slips are explained by line and column."""
    if len(text.encode("utf-8", "replace")) > LARGEST:
        _refuse(error, name, f"it is larger than {LARGEST // 1000} kB; this can't be such a file")
    if line := too_deep(text, most=DEEPEST):
        said = f"keys or brackets nested {DEEPEST} deep and more belong in no file; take them out"
        raise error(name, [Problem("", said, line)])
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError as problem:
        raise error(name, [_explained(text, str(problem))]) from None
    except ValueError:
        # Python refuses numbers of thousands of digits and dates that do not exist.
        _refuse(error, name, "it holds a number or a date that can't be read; lengths are text")


def _refuse(error: type[FileError], name: str, said: str) -> NoReturn:
    raise error(name, [Problem("", said)]) from None


def _explained(text: str, message: str) -> Problem:
    """The parser's complaint in words of the workbook, with the usual slip where it is one."""
    place = _PLACE.search(message)
    said = message[: place.start()] if place else message
    rows = text.split("\n")
    line = int(place[1]) if place and place[1] else len(text.rstrip().split("\n"))
    row = _COMMENT.sub("", rows[line - 1]).strip()
    if said.startswith("Cannot"):
        return _twice(rows, row, line)
    if place is None or place[1] is None:
        said = f"the file ends in the middle of something ({_lowered(said)}); complete this line"
        return Problem("", said, line)
    return Problem("", f"read {shown(row)}: {_slip(row, said)}", line, int(place[2]))


def _slip(row: str, said: str) -> str:
    """What to type instead of a line that is not TOML."""
    key, equals, value = (part.strip() for part in row.partition("="))
    if any(mark in row for mark in "“”„«»"):
        return 'curly quotes are not TOML; type straight ones, such as depth = "4 mm"'
    if inches := _INCH_MARK.fullmatch(value):
        return f'an inch mark ends the text; type {plain(key)} = "{plain(inches[1])} in"'
    if _DECIMAL_COMMA.fullmatch(value):
        return f"a number has a decimal point; type {plain(key)} = {value.replace(',', '.')}"
    if _BARE_TEXT.fullmatch(value):
        return f'text stands between quotes; type {plain(key)} = "{plain(value)}"'
    if value.count('"') == 1 or value.count("'") == 1:
        return 'the text has only one of its two quotes; type such as depth = "4 mm"'
    if not equals and not row.startswith("["):
        return 'there is no "=" in it; type a key, "=" and a value, such as depth = "4 mm"'
    return f'this is not TOML ({_lowered(said)}); type such as depth = "4 mm" or [groove]'


def _twice(rows: list[str], row: str, line: int) -> Problem:
    """A key or a section that is there twice."""
    before = rows[: line - 1]
    first = lines_of("\n".join(before))
    # The line by itself, below its section's heading, tells which key it is.
    heading = next((above for above in reversed(before) if above.lstrip().startswith("[")), "")
    alone = row if row.startswith("[") else f"{heading}\n{row}"
    path = max((path for path in lines_of(alone) if path in first), key=len, default=())
    if not path:
        return Problem("", f"read {shown(row)}: this is there already; keep one of the two", line)
    said = f"this is on line {first[path]} already; keep one of the two"
    return Problem(dotted(path), said, line)


def _lowered(said: str) -> str:
    return plain(said[:1].lower() + said[1:], longest=80)


T = TypeVar("T")
Place = str | PathLike[str]


@dataclass(frozen=True, slots=True)
class KindOfFile(Generic[T]):
    """How the files of one kind are read, and what is raised for one that can't be."""

    error: type[FileError]
    # From a text and the ``name`` that its file has in messages.
    from_text: Callable[..., T]

    def read(self, path: Place) -> T:
        """What a file says, or a ``FileError``."""
        return self.from_text(file_text(path, error=self.error), name=FilePath(path).name)

    def change(
        self,
        path: Place,
        edit: Callable[[str], str],
        *,
        start: Place | None = None,
    ) -> T:
        """Put the text that ``edit`` makes of a file's, or of ``start``'s, in its place, if right.

        Nobody else can write meanwhile, and ``undo`` can bring the old text back; refused with a
        ``FileError``, the file is as it was.
        """
        name = FilePath(path).name
        if start is None and not FilePath(path).exists():
            file_text(path, error=self.error)
        with locked(path, error=self.error) as target:
            exists = target.exists()
            old = file_text(target if exists or start is None else start, error=self.error)
            new = edit(old)
            read = self.from_text(new, name=name)
            if new != old or not exists:
                if exists:
                    keep_backup(target, error=self.error)
                write_file(target, _content(new, like=target), error=self.error)
        return read

    def write(self, path: Place, text: str) -> T:
        """Write a whole file, if it is right; else a ``FileError`` and an old one as it was."""
        read = self.from_text(text, name=FilePath(path).name)
        with locked(path, error=self.error) as target:
            if target.exists():
                keep_backup(target, error=self.error)
            write_file(target, text.encode("utf-8"), error=self.error)
        return read

    def undo(self, path: Place) -> T:
        """Bring a file back to what it was before the last change; again goes one change further.

        What the file said until now is kept beside its backups as ``undone``. A ``FileError`` if no
        change is left to take back.
        """
        with locked(path, error=self.error) as target:
            kept = backups(target)
            if not kept:
                said = "no earlier state of it is kept, so there is nothing to take back"
                raise self.error(target.name, [Problem("", said)])
            last = kept[-1]
            read = self.read(last)
            if target.exists():
                aside = last.with_name(f"{target.stem}-undone{target.suffix}")
                write_file(aside, target.read_bytes(), error=self.error, called=target.name)
            write_file(target, last.read_bytes(), error=self.error)
            last.unlink(missing_ok=True)
        return read


def _content(text: str, *, like: FilePath) -> bytes:
    """The text as it goes into a file, with the line ends of the one it replaces."""
    windows = like.exists() and b"\r\n" in like.read_bytes()
    return (text.replace("\n", "\r\n") if windows else text).encode("utf-8")
