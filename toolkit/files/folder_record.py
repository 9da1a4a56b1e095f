"""What was made in a folder, and from what: a second run then makes only what is missing."""

from __future__ import annotations

import json
from contextlib import suppress
from dataclasses import asdict, dataclass
from hashlib import sha256
from pathlib import Path as FilePath

from toolkit.files.errors import FileError
from toolkit.files.writing import write_file

RECORD = "made.json"
_FORMAT = 1


@dataclass(frozen=True, slots=True)
class MadePage:
    """A page: a mark of what it was made from, one of what it holds, and what it says in short."""

    source: str
    holds: str
    said: str = ""
    day: str = ""


def mark(*parts: object) -> str:
    """Sixteen characters that change whenever what is given does.

    >>> mark("a", 1) == mark("a", 1), mark("a", 1) == mark("a", 2)
    (True, False)
    """
    return sha256("\x1f".join(map(repr, parts)).encode()).hexdigest()[:16]


def mark_of_file(path: FilePath) -> str:
    """The same of what a file holds; empty where there is none."""
    try:
        return sha256(path.read_bytes()).hexdigest()[:16]
    except OSError:
        return ""


def mark_of_files(paths: list[FilePath]) -> str:
    """The same of several files, with their names."""
    return mark(*((path.name, mark_of_file(path)) for path in sorted(paths)))


def read_record(folder: FilePath) -> dict[str, MadePage]:
    """What a folder's record says was made there; nothing if there is none that can be read.

    Parameters
    ----------
    folder : Path
        The folder.

    Returns
    -------
    dict
        Pages by their path within the folder.

    Source
    ------
    The workbook's own.
    """
    # A record that cannot be read costs time and no work: everything is made anew.
    with suppress(OSError, ValueError, TypeError, AttributeError, KeyError):
        data = json.loads((folder / RECORD).read_text(encoding="utf-8"))
        if data["format"] == _FORMAT:
            return {str(name): MadePage(**page) for name, page in data["pages"].items()}
    return {}


def write_record(folder: FilePath, *, pages: dict[str, MadePage]) -> None:
    """Write what was made in a folder.

    Parameters
    ----------
    folder : Path
        The folder.
    pages : dict
        Pages by their path within it.

    Raises
    ------
    FileError
        It could not be written.

    Source
    ------
    The workbook's own.
    """
    data = {"format": _FORMAT, "pages": {name: asdict(page) for name, page in pages.items()}}
    text = json.dumps(data, ensure_ascii=False, indent=1) + "\n"
    write_file(folder / RECORD, text.encode(), error=FileError)


def still_there(folder: FilePath, *, name: str, page: MadePage | None) -> bool:
    """Whether a page lies in the folder as it was made."""
    return page is not None and page.holds == mark_of_file(folder / name)
