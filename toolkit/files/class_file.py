"""Reads a class file: when the class meets, who comes, and what there is for it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from os import PathLike
from pathlib import Path as FilePath
from typing import Any

from toolkit.files.boards_file import board_of, impossible, read_boards
from toolkit.files.checking import Fault, checked, problems_at
from toolkit.files.class_boxes import ClassBoxes
from toolkit.files.class_record import Buying, Day, Student, WeekendClass
from toolkit.files.class_sections import SHARED, ClassFile, HoursSection, StudentSection
from toolkit.files.errors import BoxFileError, ClassFileError, shown
from toolkit.files.syntax import file_text, values_of
from toolkit.stock import Board

# Customs of a day, common practice, no source. [min]
LUNCH_MINUTES, BREAK_MINUTES, NO_CHOPPING_MINUTES = 45, 45, 60


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

    Source
    ------
    The workbook's own.
    """
    place = FilePath(path)
    text = file_text(place, error=ClassFileError)
    values = values_of(text, name=place.name, error=ClassFileError)
    faults = list(_between(values))
    read = checked(
        ClassFile, values, text=text, name=place.name, error=ClassFileError, faults=faults
    )
    faults = [*_hours(read.hours), *_numbers(read.student)]
    own_boards = tuple(board_of(section) for section in read.board)
    faults += impossible(own_boards)
    if faults:
        raise ClassFileError(place.name, problems_at(faults, text))
    boxes = ClassBoxes(read, text, place.name, place.absolute().parent, values)
    boards = read_boards(boxes.folder / read.boards) if read.has("boards") else own_boards
    return replace(_whole(read, boxes, boards), files=tuple(_files(read, place)))


def _files(read: ClassFile, place: FilePath) -> Iterator[FilePath]:
    """The class file and every file that it names, whether it can be read or not."""
    yield place.absolute()
    for row in (read, *read.student):
        for key in ("box", "inch_box", "boards"):
            if row.has(key):
                yield place.absolute().parent / getattr(row, key)


def _whole(read: ClassFile, boxes: ClassBoxes, boards: tuple[Board, ...]) -> WeekendClass:
    """The class of a file that is in order."""
    room = read.room.given() if read.has("room") else {}
    words = read.words if read.has("words") else "british"
    paper = read.paper if read.has("paper") else "a4"
    tools = read.tools.given() if read.has("tools") else {}  # type: ignore[attr-defined]
    students = [
        _student(row, boxes, index, words=words, paper=paper)
        for index, row in enumerate(read.student)
    ]
    return WeekendClass(
        title=read.title,
        box=boxes.everybodys(),
        day=_day(read.hours),
        students=tuple(sorted(students, key=lambda student: student.number)),
        boards=boards,
        tools={name: tools[key] for name in SHARED if (key := name.replace(" ", "_")) in tools},
        benches=room.get("benches", len(students)),
        helpers=room.get("helpers", 0),
        buying=Buying(**read.buying.given()) if read.has("buying") else Buying(),
        words=words,
        paper=paper,
    )


def _student(row: StudentSection, boxes: ClassBoxes, index: int, **usual: Any) -> Student:
    given = {**usual, **row.given()}
    given.pop("units", None)
    given["measured"] = row.measured.given() if row.has("measured") else {}
    own = bool(given.pop("box", None)) | bool(given.pop("changes", None))
    try:
        return Student(**given, own=own, choices=boxes.of(row, index=index))
    except BoxFileError as error:
        return Student(**given, own=own, choices=None, fault=str(error))


def _day(hours: HoursSection) -> Day:
    given = hours.given()
    lunch = given.get("lunch_minutes", LUNCH_MINUTES)
    return Day(
        dates=hours.dates,
        start=hours.start,
        end=hours.end,
        lunch=given.get("lunch", (hours.start + hours.end - lunch) // 2),
        lunch_minutes=lunch,
        breaks=given.get("break_minutes", BREAK_MINUTES),
        no_chopping=given.get("no_chopping_minutes", NO_CHOPPING_MINUTES),
    )


def _between(values: dict[str, Any]) -> Iterator[Fault]:
    if "boards" in values and "board" in values:
        yield (
            ("boards",),
            f"read {shown(values['boards'])}: there are [[board]] blocks too; keep one of the two",
        )


def _hours(hours: HoursSection) -> Iterator[Fault]:
    """What no day can be, though each time by itself is right."""
    day = _day(hours)
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


def _numbers(students: list[StudentSection]) -> Iterator[Fault]:
    seen: dict[int, int] = {}
    for index, student in enumerate(students):
        if student.number in seen:
            yield (
                ("student", index, "number"),
                f"read {student.number}: entry {seen[student.number]} has this number already; "
                f"type another, such as {max(row.number for row in students) + 1}",
            )
        seen.setdefault(student.number, index + 1)
