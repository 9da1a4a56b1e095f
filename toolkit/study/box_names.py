"""The names of a student's boxes, and which of them is the current one."""

from __future__ import annotations

import unicodedata

from toolkit.files import FileError, locked, write_file
from toolkit.study.folder import student_folder

DEFAULT = "box"
LONGEST_NAME = 40
_CURRENT = ".current_box"
# A rack of boards of one's own has the file of that name.
_TAKEN = ("boards",)


class BoxNameError(ValueError):
    """A name that no box can have; the message says which ones can."""


def boxes() -> tuple[str, ...]:
    """The names of the student's own boxes that exist, ``box`` first."""
    names = set()
    for path in student_folder().glob("my_*.toml"):
        name = unicodedata.normalize("NFC", path.stem.removeprefix("my_"))
        if _is_name(name):
            names.add(name)
    return tuple(sorted(names, key=lambda name: (name != DEFAULT, name.casefold(), name)))


def current_name() -> str:
    """The name of the box chosen last; ``box`` where none was, or nothing can be read there."""
    try:
        name = (student_folder() / _CURRENT).read_text(encoding="utf-8").strip()
    except (OSError, ValueError):
        return DEFAULT
    return name if _is_name(name) else DEFAULT


def choose_box(name: str) -> str:
    """Make one box the current one in every lesson, and remember it.

    Parameters
    ----------
    name : str
        Its name; it need not exist yet.

    Returns
    -------
    str
        The name as it is spelled on the disk.

    Raises
    ------
    BoxNameError
        No box can have that name.
    FileError
        The choice can't be written down.
    """
    name = spelled_name(name)
    with locked(student_folder() / _CURRENT, error=FileError) as target:
        write_file(target, f"{name}\n".encode(), error=FileError)
    return name


def spelled_name(name: str) -> str:
    """A name as it is spelled on the disk: systems differ over capitals, students too."""
    name = unicodedata.normalize("NFC", name.strip())
    if not _is_name(name):
        raise BoxNameError(
            f"{name[: LONGEST_NAME + 1]!r} can't name a box; use letters, digits, - and _, at "
            f"most {LONGEST_NAME}, such as gift-box"
        )
    known = boxes()
    same = [other for other in known if other.casefold() == name.casefold()]
    return name if name in known or not same else same[0]


def _is_name(name: str) -> bool:
    letters = all(c.isalnum() or c in "-_" for c in name)
    return 0 < len(name) <= LONGEST_NAME and letters and name.casefold() not in _TAKEN
