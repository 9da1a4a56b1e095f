"""The box of each student: the class's, or a file of their own, with their changes put in."""

from __future__ import annotations

from collections.abc import Mapping
from copy import deepcopy
from dataclasses import dataclass
from pathlib import Path as FilePath
from typing import Any

from toolkit.box.choices import Choices
from toolkit.files.box_file import box_from_values
from toolkit.files.class_record import ClassFile, Student
from toolkit.files.errors import BoxFileError, Problem, dotted, shown
from toolkit.files.formats import bring_up
from toolkit.files.lines import lines_of
from toolkit.files.syntax import file_text, values_of
from toolkit.files.together import SECTIONS, with_keys

Values = dict[str, Any]


@dataclass(slots=True)
class ClassBoxes:
    """Makes each student's box from the files that a class names, in its folder.

    ``text`` is the class file's, for the numbers of lines, and ``typed`` what it says unread.
    """

    taught: ClassFile
    text: str
    name: str
    folder: FilePath
    typed: Values

    def everybodys(self) -> Choices:
        """The class's own box; raises a ``BoxFileError`` where there is none."""
        return self._box(self._with_rooms(self._values(self.taught.box)), self.taught.box)

    def of(self, student: Student, *, index: int) -> Choices:
        """The box of the student at this place in the file, or a ``BoxFileError`` with its line."""
        inches = student.units == "in"
        base = student.box or (inches and self.taught.inch_box) or self.taught.box
        values = self._with_rooms(self._values(base))
        if student.units and _units(values) != student.units:
            values["rule"] = {"units": student.units}
        # The class's box may be wrong too, and then its own file is to be named.
        whole = self._box(values, base)
        if student.changes is None:
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
        if "rooms" in self.typed:
            return changed(values, by={"rooms": self.typed["rooms"]})
        return values

    def _box(self, values: Values, file: str) -> Choices:
        path = self.folder / file
        text = file_text(path, error=BoxFileError)
        return box_from_values(deepcopy(values), text=text, name=path.name)

    def _sections(self, changes: Mapping[str, Any]) -> None:
        """A section that is none would take the place of the class's, whose keys then miss."""
        for name, keys in changes.items():
            if name in SECTIONS and not isinstance(keys, dict):
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

    >>> changed({"corner": {"lap": "4 mm"}}, by={"corner": {"tail_length": "8 mm"}})
    {'corner': {'tail_length': '8 mm'}}
    """
    whole = deepcopy(values)
    for section, keys in by.items():
        old = whole.get(section)
        if not isinstance(keys, dict) or not isinstance(old, dict):
            whole[section] = deepcopy(keys)
            continue
        for key, value in with_keys(section, old, keys).items():
            inner = old.get(key)
            if value is None:
                old.pop(key, None)
            elif isinstance(inner, dict) and isinstance(value, dict):
                old[key] = {**inner, **value}
            else:
                old[key] = deepcopy(value)
    return whole


def _units(values: Values) -> Any:
    rule = values.get("rule")
    return rule.get("units", "mm") if isinstance(rule, dict) else "mm"
