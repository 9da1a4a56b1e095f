"""The names of a student's boxes, and which of them is the current one."""

from __future__ import annotations

import unicodedata
from collections.abc import Mapping
from contextlib import AbstractContextManager
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from toolkit.box import Choices
from toolkit.files import (
    BOARDS,
    BOX,
    FileError,
    TypedBoard,
    as_toml,
    edited,
    locked,
    with_board,
    without_board,
    write_file,
)
from toolkit.measures import Fineness, Rule, Units
from toolkit.stock import Board
from toolkit.study.folder import example_path, lessons_folder, student_folder
from toolkit.study.own_file import OwnFile, bound

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


_FINENESSES: tuple[Fineness, ...] = ("joints", "sizes", "rough")


@dataclass(frozen=True, slots=True)
class Loaded:
    """A box as the lessons use it."""

    choices: Choices
    path: Path | None
    notice: str = ""


class OwnBox(OwnFile[Choices, Loaded]):
    """One of the student's own boxes, by its name; without a name, the one chosen last."""

    kind = BOX

    def __init__(self, name: str | None = None) -> None:
        self.name = current_name() if name is None else spelled_name(name)

    @property
    def path(self) -> Path:
        """The student's own file, whether or not it exists yet."""
        return student_folder() / f"my_{self.name}.toml"

    @property
    def example(self) -> Path:
        """The workbook's example box, or the one that is bound, written out."""
        if self._bound is None:
            return example_path()
        written = student_folder() / "bound.toml"
        written.write_text(as_toml(self._bound), encoding="utf-8")
        return written

    def _given(self, what: Choices, path: Path | None, notice: str = "") -> Loaded:
        return Loaded(what, path, notice)

    def keep(self, changes: Mapping[str, Any]) -> Loaded:
        """Keep changes in the student's own file, which the first change makes."""
        return self._change(lambda text: edited(text, changes, name=self.path.name))

    def switch_units(self, units: Units) -> Loaded:
        """Read and write lengths on the other rule, with its usual finenesses; sizes stay."""
        own = self.load()
        if own.choices.rule.units == units:
            return own
        usual = Rule.inches() if units == "in" else Rule.millimetres()
        # Refuses what is no unit at all.
        rule = replace(usual, units=units)
        marks = {f"rule.{name}": rule.exact(rule.mark(name)) for name in _FINENESSES}
        return self.keep({"rule.units": units, **marks})


def bound_to(choices: Choices) -> AbstractContextManager[None]:
    """Inside, this box is the student's own, and the rack is the workbook's example."""
    return bound({OwnBox.__name__: choices})


@dataclass(frozen=True, slots=True)
class LoadedBoards:
    """A rack of boards as the lessons use it. [mm]"""

    boards: tuple[Board, ...]
    path: Path | None
    notice: str = ""


class OwnBoards(OwnFile[tuple[Board, ...], LoadedBoards]):
    """The boards that the student has entered, or the workbook's example of a rack."""

    kind = BOARDS

    @property
    def path(self) -> Path:
        """The student's own file, whether or not it exists yet."""
        return student_folder() / "my_boards.toml"

    @property
    def example(self) -> Path:
        """The workbook's example of a rack."""
        return lessons_folder() / "boards.toml"

    def _given(self, what: tuple[Board, ...], path: Path | None, notice: str = "") -> LoadedBoards:
        return LoadedBoards(what, path, notice)

    def keep(self, board: TypedBoard, *, instead_of: str | None = None) -> LoadedBoards:
        """Keep a board in the student's own file, which the first change makes."""
        return self._change(
            lambda text: with_board(text, board, name=self.path.name, instead_of=instead_of)
        )

    def remove(self, name: str) -> LoadedBoards:
        """Take a board off the rack, unless it is the only one; undoing brings it back."""
        return self._change(lambda text: without_board(text, name, name=self.path.name))
