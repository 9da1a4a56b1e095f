"""The student's own box: made from the example at the first change, kept, never lost.

All five lessons share it, and two of them may be open at once.
"""

from __future__ import annotations

import time
from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from toolkit.box import Choices
from toolkit.files import BoxFileError, box_from_text, change_box, read_box, undo, write_box
from toolkit.files.editing import edited
from toolkit.files.syntax import file_text
from toolkit.files.writing import locked
from toolkit.measures import Fineness, Rule, Units
from toolkit.study.box_names import current_name, spelled_name
from toolkit.study.folder import example_path, last_set_aside, set_aside, student_folder

# An editor that saves in two strokes is through both in less than this. [s]
_MOMENT = 0.2
_FINENESSES: tuple[Fineness, ...] = ("joints", "sizes", "rough")


@dataclass(frozen=True, slots=True)
class Loaded:
    """A box as the lessons use it.

    ``path`` is the student's own file, or None while it is the workbook's example; ``notice``
    is a sentence to show above the lesson, or empty.
    """

    choices: Choices
    path: Path | None
    notice: str = ""


class OwnBox:
    """One of the student's own boxes, by its name; without a name, the one chosen last.

    Parameters
    ----------
    name : str, optional
        Letters, digits, ``-`` and ``_``, at most 40; the first one is called ``box``.

    Raises
    ------
    BoxNameError
        No box can have that name.

    Source
    ------
    The workbook's own.
    """

    def __init__(self, name: str | None = None) -> None:
        self.name = current_name() if name is None else spelled_name(name)

    @property
    def path(self) -> Path:
        """The student's own file, whether or not it exists yet."""
        return student_folder() / f"my_{self.name}.toml"

    def load(self) -> Loaded:
        """The student's box if there is one, else the workbook's example.

        A damaged file is set aside and the example takes its place; the notice tells.

        Raises
        ------
        BoxFileError
            The workbook's own example cannot be read.
        """
        path = self.path
        if path.exists():
            try:
                return Loaded(read_box(path), path)
            except BoxFileError:
                return self._after_damage()
        aside = last_set_aside(path)
        notice = (
            ""
            if aside is None
            else (
                f"There is no {path.name} now; a damaged one is set aside as {aside.name}. "
                "This is the workbook's example."
            )
        )
        return self._example(notice)

    def keep(self, changes: Mapping[str, Any]) -> Loaded:
        """Keep changes in the student's own file, which the first change makes.

        Parameters
        ----------
        changes : mapping of str to value
            By key, such as ``groove.depth``; values as in the file, so lengths are text with a
            unit. None takes a key out.

        Raises
        ------
        BoxFileError
            A value can't be read, or the file can't; the file is then as it was.

        Source
        ------
        The workbook's own.
        """
        path = self.path
        if not path.exists():
            # A value that will be refused must not leave a file behind, and the example's own
            # state must be the one that undoing the first change brings back.
            example = file_text(example_path(), error=BoxFileError)
            box_from_text(edited(example, changes, name=path.name), name=path.name)
            change_box(path, {}, start=example_path())
        return Loaded(change_box(path, changes, backup=True), path)

    def undo(self) -> Loaded:
        """Take the last change back; again goes one change further.

        Raises
        ------
        BoxFileError
            Nothing is left to take back.
        """
        self.load()
        return Loaded(undo(self.path), self.path)

    def start_again(self) -> Loaded:
        """Begin again from the example; the box so far is kept, so that undoing brings it back.

        Raises
        ------
        BoxFileError
            The file can't be written.
        """
        own = self.load()
        if own.path is None:
            return own
        example = file_text(example_path(), error=BoxFileError)
        return Loaded(write_box(self.path, example, backup=True), self.path)

    def switch_units(self, units: Units) -> Loaded:
        """Read and write lengths on the other rule, with that rule's usual finenesses.

        The sizes of the box stay what they are.

        Parameters
        ----------
        units : str
            ``"mm"`` or ``"in"``.

        Raises
        ------
        MeasureError
            It is neither.
        BoxFileError
            The file can't be written.

        Source
        ------
        The workbook's own.
        """
        own = self.load()
        if own.choices.rule.units == units:
            return own
        usual = Rule.inches() if units == "in" else Rule.millimetres()
        # Refuses what is no unit at all.
        rule = replace(usual, units=units)
        marks = {f"rule.{name}": rule.exact(rule.mark(name)) for name in _FINENESSES}
        return self.keep({"rule.units": units, **marks})

    def _after_damage(self) -> Loaded:
        path = self.path
        try:
            with locked(path, error=BoxFileError) as target:
                time.sleep(_MOMENT)
                try:
                    return Loaded(read_box(target), path)
                except BoxFileError as problem:
                    return self._example(_set_aside(target, problem))
        except BoxFileError as problem:
            return self._example(f"{problem}. The workbook's example is shown instead.")

    def _example(self, notice: str) -> Loaded:
        return Loaded(read_box(example_path()), None, notice)


def _set_aside(target: Path, problem: BoxFileError) -> str:
    """What to say of a file that can't be read, after setting it aside where that is right."""
    shown = "the workbook's example is shown instead"
    try:
        # A file that the system will not open may be quite in order.
        with target.open("rb"):
            pass
        aside = set_aside(target)
    except OSError:
        return f"{problem}. It is left where it is, and {shown}."
    return (
        f"{problem}. The file is set aside as {aside.name} in {aside.parent}, and {shown}. "
        f"Nothing of it is lost: put it right and name it {target.name} again, or go on from here."
    )
