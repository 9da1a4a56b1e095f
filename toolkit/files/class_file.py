"""Reads a class file: when the class meets, who comes, and what there is for it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from os import PathLike
from pathlib import Path as FilePath
from typing import Any

from toolkit.files.boards_file import impossible, read_boards
from toolkit.files.checking import checked, problems_at
from toolkit.files.class_boxes import ClassBoxes
from toolkit.files.class_record import SHARED, ClassFile, Day, Student, WeekendClass
from toolkit.files.errors import BoxFileError, ClassFileError, Fault, shown
from toolkit.files.records import FileSection, file_of, record_of
from toolkit.files.syntax import file_text, values_of
from toolkit.stock import Board

ClassSchema = file_of(ClassFile, name="ClassFile")


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
    faults = list(_between(values))
    read = checked(
        ClassSchema, values, text=text, name=place.name, error=ClassFileError, faults=faults
    )
    taught: ClassFile = record_of(ClassFile, read)
    faults = [*_hours(taught.hours), *_numbers(taught.student), *impossible(taught.board)]
    if faults:
        raise ClassFileError(place.name, problems_at(faults, text))
    boxes = ClassBoxes(taught, text, place.name, place.absolute().parent, values)
    boards = read_boards(boxes.folder / taught.boards) if taught.boards else taught.board
    students = [
        _student(student, row, boxes, index)
        for index, (student, row) in enumerate(
            zip(taught.student, read.given()["student"], strict=True)
        )
    ]
    return _whole(taught, boxes, students, boards, files=tuple(_files(taught, place)))


def _files(taught: ClassFile, place: FilePath) -> Iterator[FilePath]:
    """The class file and every file that it names, whether it can be read or not."""
    yield place.absolute()
    named = [taught.box, taught.inch_box, taught.boards, *(row.box for row in taught.student)]
    yield from (place.absolute().parent / name for name in named if name)


def _whole(
    taught: ClassFile,
    boxes: ClassBoxes,
    students: list[Student],
    boards: tuple[Board, ...],
    *,
    files: tuple[FilePath, ...],
) -> WeekendClass:
    """The class of a file that is in order."""
    room, tools = taught.room, taught.tools
    return WeekendClass(
        title=taught.title,
        box=boxes.everybodys(),
        day=taught.hours,
        students=tuple(sorted(students, key=lambda student: student.number)),
        boards=boards,
        tools={name: tools[key] for name in SHARED if (key := name.replace(" ", "_")) in tools},
        benches=len(students) if room.benches is None else room.benches,
        helpers=room.helpers,
        buying=taught.buying,
        words=taught.words,
        paper=taught.paper,
        files=files,
    )


def _student(student: Student, row: FileSection, boxes: ClassBoxes, index: int) -> Student:
    """A student with what is left to the class, and with a box or why there is none."""
    taught = boxes.taught
    left = {key: getattr(taught, key) for key in ("words", "paper") if not row.has(key)}
    try:
        choices, fault = boxes.of(student, index=index), ""
    except BoxFileError as error:
        choices, fault = None, str(error)
    return replace(student, **left, choices=choices, fault=fault)


def _between(values: dict[str, Any]) -> Iterator[Fault]:
    if "boards" in values and "board" in values:
        yield (
            ("boards",),
            f"read {shown(values['boards'])}: there are [[board]] blocks too; keep one of the two",
        )


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
