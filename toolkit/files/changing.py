"""Changes a box file in place, keeping its author's remarks and order, and takes changes back."""

from __future__ import annotations

from collections.abc import Mapping
from os import PathLike
from pathlib import Path as FilePath
from typing import Any

from toolkit.box.choices import Choices
from toolkit.files.box_file import box_from_text
from toolkit.files.editing import edited
from toolkit.files.errors import BoxFileError
from toolkit.files.formats import bring_up
from toolkit.files.keeping import KindOfFile
from toolkit.files.syntax import file_text, values_of


def _older(text: str, name: str) -> bool:
    """Whether a text is of an older format."""
    return bring_up(values_of(text, name=name, error=BoxFileError))


# Nobody asks for a change of format, so that one can always be taken back.
BOX = KindOfFile(BoxFileError, box_from_text, always_kept=_older)


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
    return BOX.change(
        path, lambda text: edited(text, changes, name=name), backup=backup, start=start
    )


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
    return BOX.write(path, text, backup=backup)


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
    return BOX.undo(path)
