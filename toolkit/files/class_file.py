"""Reads a class file: when the class meets, who comes, and what there is for it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from copy import deepcopy
from dataclasses import dataclass, replace
from functools import cache
from os import PathLike
from pathlib import Path as FilePath
from typing import Any

from toolkit.box import Choices
from toolkit.files.boards_file import impossible, read_boards
from toolkit.files.box_file import box_from_values
from toolkit.files.checking import checked, problems_at
from toolkit.files.class_record import SHARED, ClassFile, Day, Student, WeekendClass
from toolkit.files.errors import BoxFileError, ClassFileError, Fault, Problem, dotted, shown
from toolkit.files.formats import bring_up, formerly
from toolkit.files.lines import lines_of
from toolkit.files.records import FileSection, file_of, record_of
from toolkit.files.syntax import file_text, values_of
from toolkit.files.together import SECTIONS, with_keys


@cache
def class_schema() -> type[FileSection]:
    """The schema of a class file; made when one is read."""
    return file_of(ClassFile, name="ClassFile", kind="class")


def read_class(path: str | PathLike[str]) -> WeekendClass:
    """A class as its file has it.

    Files that it names are looked for from its own folder. One student's box that can't be read
    is told with that student; everything else that is wrong is refused.

    Parameters
    ----------
    path : path-like
        The file.

    Returns
    -------
    WeekendClass
        The class; a key left out has its default.

    Raises
    ------
    ClassFileError
        The file cannot be read or says what it cannot say; one line, and all in ``problems``.
    BoxFileError, BoardsFileError
        The box or the boards that it names cannot be read.
    """
    place = FilePath(path)
    text = file_text(place, error=ClassFileError)
    values = values_of(text, name=place.name, error=ClassFileError)
    bring_up(values, kind="class")
    faults: list[Fault] = []
    if "boards" in values and "board" in values:
        said = "there are [[board]] blocks too; keep one of the two"
        faults.append((("boards",), f"read {shown(values['boards'])}: {said}"))
    read = checked(
        class_schema(), values, text=text, name=place.name, error=ClassFileError, faults=faults
    )
    taught: ClassFile = record_of(ClassFile, read)
    faults = [*_hours(taught.hours), *_numbers(taught.student), *impossible(taught.board)]
    if faults:
        raise ClassFileError(place.name, problems_at(faults, text))
    boxes = ClassBoxes(taught, text, place.name, place.absolute().parent, values)
    boards = read_boards(boxes.folder / taught.boards) if taught.boards else taught.board
    rows = zip(taught.student, read.given()["student"], strict=True)
    students = [_student(one, row, boxes, index) for index, (one, row) in enumerate(rows)]
    room, tools = taught.room, taught.tools
    box = boxes.everybodys()
    return WeekendClass(
        title=taught.title,
        box=box,
        day=taught.hours,
        students=tuple(sorted(students, key=lambda student: student.number)),
        boards=boards,
        tools={name: tools[key] for name in SHARED if (key := name.replace(" ", "_")) in tools},
        benches=len(students) if room.benches is None else room.benches,
        helpers=room.helpers,
        buying=taught.buying,
        words=taught.words or box.rule.words,
        paper=taught.paper,
        files=tuple(_files(taught, place)),
    )


def _files(taught: ClassFile, place: FilePath) -> Iterator[FilePath]:
    """The class file and every file that it names, whether it can be read or not."""
    yield place.absolute()
    named = [taught.box, taught.inch_box, taught.boards, *(row.box for row in taught.student)]
    yield from (place.absolute().parent / name for name in named if name)


def _student(student: Student, row: FileSection, boxes: ClassBoxes, index: int) -> Student:
    """A student with what is left to the class, and with a box or why there is none."""
    taught = boxes.taught
    paper = student.paper if row.has("paper") else taught.paper
    words = student.words if row.has("words") else taught.words
    hands = {}
    try:
        choices, fault = boxes.of(student, index=index), ""
        hands = {key: getattr(student, key) for key in ("hand", "plough_hand") if row.has(key)}
        choices = choices.having({f"tools.{key}": hand for key, hand in hands.items()})
        hands = {key: getattr(choices.tools, key) for key in ("hand", "plough_hand")}
    except BoxFileError as error:
        choices, fault = None, str(error)
    words = words or (choices or boxes.everybodys()).rule.words
    return replace(student, paper=paper, words=words, choices=choices, fault=fault, **hands)


def _hours(day: Day) -> Iterator[Fault]:
    """What no day can be, though each time by itself is right."""
    if day.end <= day.start:
        yield (
            ("hours", "end"),
            f"read {_clock(day.end)}: the day begins at {_clock(day.start)}; type a later end",
        )
    elif day.minutes <= day.no_chopping:
        yield (
            ("hours", "end"),
            f"read {_clock(day.end)}: breaks and lunch leave {day.minutes} min at the bench, of "
            f"which nobody chops in the last {day.no_chopping} min; type a later end or fewer "
            "minutes",
        )
    elif not day.start <= day.lunch <= day.end - day.lunch_minutes:
        yield (
            ("hours", "lunch"),
            f"read {_clock(day.lunch)}: lunch of {day.lunch_minutes} min lies within the day, "
            f"from {_clock(day.start)} to {_clock(day.end)}; type such as "
            f'"{_clock((day.start + day.end - day.lunch_minutes) // 2)}"',
        )


def _clock(minutes: int) -> str:
    return f"{minutes // 60:02d}:{minutes % 60:02d}"


def _numbers(students: tuple[Student, ...]) -> Iterator[Fault]:
    seen: dict[int, int] = {}
    for index, student in enumerate(students):
        if student.number in seen:
            yield (
                ("student", index, "number"),
                f"read {student.number}: entry {seen[student.number]} has this number already; "
                f"type another, such as {max(row.number for row in students) + 1}",
            )
        seen.setdefault(student.number, index + 1)


Values = dict[str, Any]


@dataclass(slots=True)
class ClassBoxes:
    """Makes each student's box from the files that a class names, in its folder."""

    taught: ClassFile
    text: str
    name: str
    folder: FilePath
    typed: Values

    def everybodys(self) -> Choices:
        """The class's own box; raises a ``BoxFileError`` where there is none."""
        return self._box(self._values(self.taught.box), self.taught.box)

    def of(self, student: Student, *, index: int) -> Choices:
        """The box of the student at this place in the file, or a ``BoxFileError`` with its line."""
        inches = student.units == "in"
        base = student.box or (inches and self.taught.inch_box) or self.taught.box
        values = self._values(base)
        rule = values.get("rule")
        units = rule.get("units", "mm") if isinstance(rule, dict) else "mm"
        if student.units and units != student.units:
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
            Problem(
                f"student {number}.changes.{row.key}",
                row.said,
                lines.get(row.key) or lines.get(dotted(formerly(tuple(row.key.split("."))))),
            )
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
