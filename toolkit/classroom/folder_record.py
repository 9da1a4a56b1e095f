"""What was made in a folder, and from what: a second run then makes only what is missing."""

from __future__ import annotations

import json
import os
from dataclasses import asdict, astuple, dataclass
from hashlib import sha256
from itertools import count
from pathlib import Path as FilePath

from toolkit.files import FileError, Problem, write_file

RECORD = "made.json"
# Beside the pages, what a run writes into the folder: its record, and the lock on that.
OWN_FILES = (RECORD, f".{RECORD}.lock")
# A class of sixty has a record of 40 kB.
LARGEST = 4_000_000
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
        # Reading a pipe would wait for ever.
        return mark_of_bytes(path.read_bytes()) if path.is_file() else ""
    except OSError:
        return ""


def mark_of_bytes(content: bytes) -> str:
    """The same of what a file is to hold."""
    return sha256(content).hexdigest()[:16]


def mark_of_files(paths: list[FilePath]) -> str:
    """The same of several files, with their names."""
    return mark(*((path.name, mark_of_file(path)) for path in sorted(paths)))


def read_record(folder: FilePath) -> dict[str, MadePage]:
    """What a folder's record says was made there, by path within it; nothing where there is none.

    Names that lead out of the folder are left out; a damaged record is a ``FileError``.
    """
    path = folder / RECORD
    if not os.path.lexists(path):
        return {}
    try:
        pages = _pages(path)
    # Anything may stand in a damaged file, nesting too deep to be read among it.
    except (OSError, ValueError, TypeError, LookupError, AttributeError, RecursionError):
        raise FileError(RECORD, [Problem("", "this can't be read as a record")]) from None
    return {name: page for name, page in pages.items() if _relative(name)}


def _pages(path: FilePath) -> dict[str, MadePage]:
    if not path.is_file():
        raise ValueError(path)
    with path.open("rb") as stream:
        # A longer one is cut short, and can then not be read.
        raw = stream.read(LARGEST)
    data = json.loads(raw.decode("utf-8"))
    if data["format"] != _FORMAT:
        raise ValueError(path)
    pages = {name: MadePage(**page) for name, page in data["pages"].items()}
    # Half a character can be read, and never be written again.
    "".join(text for name, page in pages.items() for text in (name, *astuple(page))).encode()
    return pages


def _relative(name: str) -> bool:
    path = FilePath(name)
    return bool(path.name) and "\0" not in name and not path.anchor and ".." not in path.parts


def lies_below(folder: FilePath, *, name: str) -> bool:
    """Whether a name leads to a place in the folder, symbolic links followed."""
    return FilePath(os.path.realpath(folder / name)).is_relative_to(os.path.realpath(folder))


def set_aside(path: FilePath) -> FilePath:
    """Rename what lies in the way of a page, never over anything else; gives the new path."""
    names = (path.with_name(f"{path.stem}-set-aside-{n}{path.suffix}") for n in count(1))
    aside = next(name for name in names if not os.path.lexists(name))
    try:
        path.rename(aside)
    except OSError as problem:
        said = f"it could not be set aside ({problem.strerror}); move it and try again"
        raise FileError(str(path), [Problem("", said)]) from problem
    return aside


def write_record(folder: FilePath, *, pages: dict[str, MadePage]) -> None:
    """Write what was made in a folder, by path within it; a ``FileError`` if it can't be."""
    data = {"format": _FORMAT, "pages": {name: asdict(page) for name, page in pages.items()}}
    text = json.dumps(data, ensure_ascii=False, indent=1) + "\n"
    write_file(folder / RECORD, text.encode(), error=FileError)


def still_there(folder: FilePath, *, name: str, page: MadePage | None) -> bool:
    """Whether a page lies in the folder as it was made."""
    return page is not None and page.holds == mark_of_file(folder / name) != ""
