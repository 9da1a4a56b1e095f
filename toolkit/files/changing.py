"""Changes a box file in place, keeping its author's remarks and order, and takes changes back."""

from __future__ import annotations

from collections.abc import Mapping
from os import PathLike
from pathlib import Path as FilePath
from typing import Any

from toolkit.box.choices import Choices
from toolkit.files.box_file import box_from_text, read_box
from toolkit.files.editing import edited
from toolkit.files.errors import BoxFileError, Problem
from toolkit.files.formats import bring_up
from toolkit.files.syntax import file_text, values_of
from toolkit.files.writing import backups, keep_backup, locked, write_file


def change_box(
    path: str | PathLike[str],
    changes: Mapping[str, Any],
    *,
    backup: bool = True,
    start: str | PathLike[str] | None = None,
) -> Choices:
    """Change keys of a box file, leaving every other line of it as it is.

    Parameters
    ----------
    path : path-like
        The file.
    changes : mapping of str to value
        By key, such as ``groove.depth`` or ``rooms.make.humidity``; values as in the file, so
        lengths are text with a unit. None takes a key or a section out.
    backup : bool
        Whether to keep the file as it was, so that ``undo`` can bring it back.
    start : path-like, optional
        The file to begin with where there is none yet.

    Returns
    -------
    Choices
        What the file says now.

    Raises
    ------
    BoxFileError
        The file cannot be read or written, or would not be right after the change; it is then as
        it was.

    Source
    ------
    The workbook's own.
    """
    name = FilePath(path).name
    if start is None and not FilePath(path).exists():
        file_text(path, error=BoxFileError)
    with locked(path, error=BoxFileError) as target:
        exists = target.exists()
        source = target if exists or start is None else start
        old = file_text(source, error=BoxFileError)
        new = edited(old, changes, name=name)
        choices = box_from_text(new, name=name)
        if new != old or not exists:
            # Nobody asks for a change of format, so that one can always be taken back.
            older = bring_up(values_of(old, name=name, error=BoxFileError))
            if exists and (backup or older):
                keep_backup(target, error=BoxFileError)
            write_file(target, _content(new, like=target), error=BoxFileError)
    return choices


def write_box(path: str | PathLike[str], text: str, *, backup: bool = True) -> Choices:
    """Write a whole box file, if it is right.

    Parameters
    ----------
    path : path-like
        The file; it may exist already.
    text : str
        The whole file, for example from ``as_toml``.
    backup : bool
        Whether to keep the file as it was, so that ``undo`` can bring it back.

    Returns
    -------
    Choices
        What the file says.

    Raises
    ------
    BoxFileError
        The text is not right or could not be written; an old file is then as it was.

    Source
    ------
    The workbook's own.
    """
    choices = box_from_text(text, name=FilePath(path).name)
    with locked(path, error=BoxFileError) as target:
        if backup and target.exists():
            keep_backup(target, error=BoxFileError)
        write_file(target, text.encode("utf-8"), error=BoxFileError)
    return choices


def migrate_box(path: str | PathLike[str]) -> bool:
    """Bring a box file of an older format up to the present one, with a backup.

    Parameters
    ----------
    path : path-like
        The file.

    Returns
    -------
    bool
        Whether it was of an older format.

    Raises
    ------
    BoxFileError
        The file cannot be read or written, or would not be right afterwards.

    Source
    ------
    The workbook's own.
    """
    before = file_text(path, error=BoxFileError)
    change_box(path, {})
    return file_text(path, error=BoxFileError) != before


def undo(path: str | PathLike[str]) -> Choices:
    """Bring a file back to what it was before the last change; again goes one change further.

    What the file said until now is kept in the folder of backups, under its name and ``undone``.

    Parameters
    ----------
    path : path-like
        The file.

    Returns
    -------
    Choices
        What the file says now.

    Raises
    ------
    BoxFileError
        No change is left to take back, or the file could not be written.

    Source
    ------
    The workbook's own.
    """
    with locked(path, error=BoxFileError) as target:
        kept = backups(target)
        if not kept:
            said = "no earlier state of it is kept, so there is nothing to take back"
            raise BoxFileError(target.name, [Problem("", said)])
        last = kept[-1]
        choices = read_box(last)
        if target.exists():
            aside = last.with_name(f"{target.stem}-undone{target.suffix}")
            write_file(aside, target.read_bytes(), error=BoxFileError)
        write_file(target, last.read_bytes(), error=BoxFileError)
        last.unlink(missing_ok=True)
    return choices


def _content(text: str, *, like: FilePath) -> bytes:
    """The text as it goes into a file, with the line ends of the one it replaces."""
    windows = like.exists() and b"\r\n" in like.read_bytes()
    return (text.replace("\n", "\r\n") if windows else text).encode("utf-8")
