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
    """How the files of one kind are read, and what is raised for one that can't be.

    ``always_kept`` tells of a text that is worth a backup even where none is asked for.
    """

    error: type[FileError]
    from_text: Reader[T]
    always_kept: Callable[[str, str], bool] | None = None

    def read(self, path: Place) -> T:
        """What a file says.

        Raises
        ------
        FileError
            It cannot be read.
        """
        return self.from_text(file_text(path, error=self.error), name=FilePath(path).name)

    def change(
        self,
        path: Place,
        edit: Callable[[str], str],
        *,
        backup: bool = True,
        start: Place | None = None,
    ) -> T:
        """Put another text in the place of a file's, if it is right.

        Parameters
        ----------
        path : path-like
            The file.
        edit : callable
            Makes the new text of the old one; called while nobody else can write.
        backup : bool
            Whether to keep the file as it was, so that ``undo`` can bring it back.
        start : path-like, optional
            The file to begin with where there is none yet.

        Raises
        ------
        FileError
            The file cannot be read or written, or would not be right; it is then as it was.
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
                always = self.always_kept is not None and self.always_kept(old, name)
                if exists and (backup or always):
                    keep_backup(target, error=self.error)
                write_file(target, _content(new, like=target), error=self.error)
        return read

    def write(self, path: Place, text: str, *, backup: bool = True) -> T:
        """Write a whole file, if it is right.

        Raises
        ------
        FileError
            The text is not right or could not be written; an old file is then as it was.
        """
        read = self.from_text(text, name=FilePath(path).name)
        with locked(path, error=self.error) as target:
            if backup and target.exists():
                keep_backup(target, error=self.error)
            write_file(target, text.encode("utf-8"), error=self.error)
        return read

    def undo(self, path: Place) -> T:
        """Bring a file back to what it was before the last change; again goes one change further.

        What the file said until now is kept in the folder of backups, under its name and
        ``undone``.

        Raises
        ------
        FileError
            No change is left to take back, or the file could not be written.
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
