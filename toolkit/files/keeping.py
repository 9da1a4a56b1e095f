"""Changes files of one kind only into what can be read again, and takes changes back."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from os import PathLike
from pathlib import Path as FilePath
from typing import Generic, Protocol, TypeVar

from toolkit.files.errors import FileError, Problem
from toolkit.files.syntax import file_text
from toolkit.files.writing import backups, keep_backup, locked, write_file

T = TypeVar("T")
T_co = TypeVar("T_co", covariant=True)
Place = str | PathLike[str]


class Reader(Protocol[T_co]):
    """Reads the text of a file; ``name`` is the file's name in messages."""

    def __call__(self, text: str, *, name: str) -> T_co:
        """What the text says, or a ``FileError``."""
        ...


@dataclass(frozen=True, slots=True)
class KindOfFile(Generic[T]):
    """How the files of one kind are read, and what is raised for one that can't be."""

    error: type[FileError]
    from_text: Reader[T]

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
