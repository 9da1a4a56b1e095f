"""The box of each student: the class's, or a file of their own, with their changes put in."""

from __future__ import annotations

from collections.abc import Mapping
from copy import deepcopy
from dataclasses import dataclass
from pathlib import Path as FilePath
from typing import Any

from toolkit.box.choices import Choices
from toolkit.files.box_file import box_from_values
from toolkit.files.class_sections import ClassFile, StudentSection
from toolkit.files.errors import BoxFileError, Problem, dotted, shown
from toolkit.files.formats import bring_up
from toolkit.files.lines import lines_of
from toolkit.files.sections import BoxFile
from toolkit.files.syntax import file_text, values_of

Values = dict[str, Any]

# A key that a student gives, and those of the class's box that it stands for.
_INSTEAD: dict[tuple[str, str], tuple[str, ...]] = {
    **{
        ("size", f"{one}_{axis}"): (f"{other}_{axis}",)
        for axis in ("length", "width", "height")
        for one, other in (("inside", "outside"), ("outside", "inside"))
    },
    ("size", "contents"): ("inside_length", "outside_length", "inside_width", "outside_width"),
    ("corner", "lap"): ("tail_length",),
    ("corner", "tail_length"): ("lap",),
    ("panels", "across"): ("bottom_across", "lid_across"),
    ("panels", "bottom_across"): ("across",),
    ("panels", "lid_across"): ("across",),
    ("wood", "walls"): ("sides", "ends"),
    ("wood", "sides"): ("walls",),
    ("wood", "ends"): ("walls",),
    ("wood", "panels"): ("bottom", "lid"),
    ("wood", "bottom"): ("panels",),
    ("wood", "lid"): ("panels",),
}


PLAIN = ("format", "title")  # keys of a box file that are no sections


@dataclass(slots=True)
class ClassBoxes:
    """Makes each student's box from the files that a class names.

    Attributes
    ----------
    read : ClassFile
        The class file, checked.
    text, name : str
        Its text, for the numbers of lines, and its name.
    folder : Path
        From which it names other files.
    typed : mapping
        What it says, before it was read.
    """

    read: ClassFile
    text: str
    name: str
    folder: FilePath
    typed: Values

    def everybodys(self) -> Choices:
        """The class's own box; raises a ``BoxFileError`` where there is none."""
        return self._box(self._with_rooms(self._values(self.read.box)), self.read.box)

    def of(self, student: StudentSection, *, index: int) -> Choices:
        """A student's box.

        Parameters
        ----------
        student : StudentSection
            The student.
        index : int
            Place in the file, from 0.

        Returns
        -------
        Choices
            The box that this student makes. [mm]

        Raises
        ------
        BoxFileError
            A key of it can't be read; the text names the class file and the line.

        Source
        ------
        The workbook's own.
        """
        inches = student.has("units") and student.units == "in"
        base = self.read.box
        if student.has("box"):
            base = student.box
        elif inches and self.read.has("inch_box"):
            base = self.read.inch_box
        values = self._with_rooms(self._values(base))
        if student.has("units") and _units(values) != student.units:
            values["rule"] = {"units": student.units}
        # The class's box may be wrong too, and then its own file is to be named.
        whole = self._box(values, base)
        if not student.has("changes"):
            return whole
        try:
            self._sections(student.changes)
            return box_from_values(changed(values, by=student.changes), text="", name=self.name)
        except BoxFileError as error:
            raise self._placed(error, index, student.number) from None

    def _values(self, file: str) -> Values:
        path = self.folder / file
        text = file_text(path, error=BoxFileError)
        values = values_of(text, name=path.name, error=BoxFileError)
        bring_up(values)
        return values

    def _with_rooms(self, values: Values) -> Values:
        if self.read.has("rooms"):
            return changed(values, by={"rooms": self.typed["rooms"]})
        return values

    def _box(self, values: Values, file: str) -> Choices:
        path = self.folder / file
        text = file_text(path, error=BoxFileError)
        return box_from_values(deepcopy(values), text=text, name=path.name)

    def _sections(self, changes: Values) -> None:
        """A section that is none would take the place of the class's, whose keys then miss."""
        for name, keys in changes.items():
            if name in BoxFile.model_fields and name not in PLAIN and not isinstance(keys, dict):
                said = f"read {shown(keys)}: this is a section; type its keys below it"
                raise BoxFileError(self.name, [Problem(name, said)])

    def _placed(self, error: BoxFileError, index: int, number: int) -> BoxFileError:
        """A complaint about a student's changes, with its line in the class file."""
        above = ("student", index, "changes")
        lines = {
            dotted(path[len(above) :]): line
            for path, line in lines_of(self.text).items()
            if path[: len(above)] == above
        }
        problems = [
            Problem(f"student {number}.changes.{row.key}", row.said, lines.get(row.key))
            for row in error.problems
        ]
        return BoxFileError(self.name, problems)


def changed(values: Values, *, by: Mapping[str, Any]) -> Values:
    """The values of a box file with some changed; what a new key excludes goes.

    Parameters
    ----------
    values : dict
        What a file says. It is left as it is.
    by : mapping
        Sections, and keys in them.

    Returns
    -------
    dict
        Both together.

    Source
    ------
    The workbook's own.

    >>> changed({"corner": {"lap": "4 mm"}}, by={"corner": {"tail_length": "8 mm"}})
    {'corner': {'tail_length': '8 mm'}}
    """
    whole = deepcopy(values)
    for section, keys in by.items():
        old = whole.get(section)
        if not isinstance(keys, dict) or not isinstance(old, dict):
            whole[section] = deepcopy(keys)
            continue
        gone = {other for key in keys for other in _INSTEAD.get((section, key), ())}
        if section == "corner" and keys.get("joint") == "through":
            gone |= {"lap", "tail_length"}
        for key in gone - set(keys):
            old.pop(key, None)
        for key, value in keys.items():
            inner = old.get(key)
            if isinstance(inner, dict) and isinstance(value, dict):
                old[key] = {**inner, **value}
            else:
                old[key] = deepcopy(value)
    return whole


def _units(values: Values) -> Any:
    rule = values.get("rule")
    return rule.get("units", "mm") if isinstance(rule, dict) else "mm"
