"""Reads the boards on the rack, with their defects."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import asdict, dataclass, field
from functools import cache
from os import PathLike
from pathlib import Path as FilePath
from typing import Any

from pydantic import Field, create_model

from toolkit.files import values
from toolkit.files.checking import checked, problems_at
from toolkit.files.errors import BoardsFileError, Fault, Path, Problem, dotted, shown
from toolkit.files.records import FileSection, file_of, record_of, section_of
from toolkit.files.syntax import KindOfFile, file_text, values_of
from toolkit.measures import Rule, declared
from toolkit.results import above, below
from toolkit.stock import LONGEST_BOARD, MOST_TABLES, Board, Defect

_MILLIMETRES = Rule.millimetres()


@dataclass(frozen=True, slots=True)
class _Rack:
    """The boards on the rack for the hand-tool class workbook."""

    board: tuple[Board, ...] = field(metadata=declared(least=1, most=MOST_TABLES))


@cache
def boards_schema() -> type[FileSection]:
    """The schema of a boards file; made when one is read."""
    return file_of(_Rack, name="BoardsFile", kind="boards")


def read_boards(path: str | PathLike[str]) -> tuple[Board, ...]:
    """The boards of a file, in its order.

    Parameters
    ----------
    path : path-like
        The file.

    Returns
    -------
    tuple of Board
        The boards; a defect given backwards is turned round. [mm]

    Raises
    ------
    BoardsFileError
        The file cannot be read, or a board is impossible; one line, and all in ``problems``.
    """
    return boards_from_text(file_text(path, error=BoardsFileError), name=FilePath(path).name)


def boards_from_text(text: str, *, name: str = "boards.toml") -> tuple[Board, ...]:
    """Boards from the text of a file, called ``name`` in messages; raises as for a file.

    >>> text = "[[board]]\\nname = 'a'\\nspecies = 'black cherry'\\nthickness = '1 in'\\n"
    >>> text += "length = '1 m'\\nwidth = '90 mm'"
    >>> boards_from_text(text)[0].thickness
    25.4
    """
    text = text.replace("\r\n", "\n")
    values = values_of(text, name=name, error=BoardsFileError)
    read = checked(boards_schema(), values, text=text, name=name, error=BoardsFileError)
    boards: tuple[Board, ...] = record_of(_Rack, read).board
    if faults := list(impossible(boards)):
        raise BoardsFileError(name, problems_at(faults, text))
    return boards


BOARDS = KindOfFile(BoardsFileError, boards_from_text)


def same_name(name: str) -> str:
    """A board's name as it is compared: whatever its capitals and its spaces."""
    return " ".join(name.casefold().split())


def impossible(boards: tuple[Board, ...], *, rule: Rule = _MILLIMETRES) -> Iterator[Fault]:
    """What no board can be, though each length is right, as (path, what to say on this rule)."""
    seen: dict[str, int] = {}
    for index, board in enumerate(boards):
        at: Path = ("board", index)
        name = same_name(board.name)
        if name in seen:
            yield (
                (*at, "name"),
                f'read "{board.name}": board {seen[name] + 1} has this name already, and cuts are '
                'told by the name; type another, such as "'
                f'{board.name} 2"',
            )
        seen.setdefault(name, index)
        for number, defect in enumerate(board.defects):
            yield from _defect(board, defect, (*at, "defect", number), rule)
        yield from _heart_line(board, (*at, "heart_line"), rule)


def _defect(board: Board, defect: Defect, at: Path, rule: Rule) -> Iterator[Fault]:
    for way, reach, end, remedy in (
        ("along", defect.to_along, board.length, "measure from the lower left corner"),
        ("across", defect.to_across, board.width, "type along first, then across"),
    ):
        if above(reach, end):
            most = rule.exact(end)
            yield (
                at,
                f"the {defect.kind} reaches {rule.exact(reach)} {way} a board of {most}; "
                f"{remedy}, at most {shown(most)}",
            )
    if defect.from_along == defect.to_along and defect.from_across == defect.to_across:
        low, high = (
            f"{shown(rule.exact(rule.round(along, fineness='sizes')))}, "
            f"{shown(rule.exact(rule.round(across, fineness='sizes')))}"
            for along, across in ((300, 40), (335, 70))
        )
        yield (
            at,
            f"the {defect.kind} begins and ends in one point; "
            f"type two opposite corners, such as from = [{low}] and to = [{high}]",
        )


def _heart_line(board: Board, at: Path, rule: Rule) -> Iterator[Fault]:
    before = None
    for number, (along, across) in enumerate(board.heart_line):
        if before is not None and not below(before, along):
            yield (
                at,
                f"point {number + 1} of the heart line, at {rule.exact(along)} along, does not "
                f"lie beyond point {number}, at {rule.exact(before)}; "
                "list the points from left to right",
            )
        if above(along, board.length) or above(across, board.width):
            size = f"{rule.exact(board.length, unit=False)} × {rule.exact(board.width)}"
            yield (
                at,
                f"point {number + 1} of the heart line, {rule.exact(along)} along and "
                f"{rule.exact(across)} across, lies off the board of {size}; "
                "type along first, then across",
            )
        before = along


_IN_MESSAGES = "This board"


@dataclass(frozen=True, slots=True)
class TypedDefect:
    """A defect as typed: two opposite corners, each length as text with its unit."""

    kind: str
    from_along: str
    from_across: str
    to_along: str
    to_across: str


@dataclass(frozen=True, slots=True)
class TypedBoard:
    """A board as typed: each length is text with its unit, in whatever unit."""

    name: str
    species: str
    length: str
    width: str
    thickness: str
    defects: tuple[TypedDefect, ...] = ()
    heart_line: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True)
class _Place:
    along: float = field(metadata=declared(least=0, most=LONGEST_BOARD))
    across: float = field(metadata=declared(least=0, most=LONGEST_BOARD))


@cache
def _fields() -> type[FileSection]:
    """A board's schema with a field for each length, those of its defects and places too."""
    places: Any = (list[section_of(_Place)], Field(max_length=values.MOST_POINTS))  # type: ignore[misc]
    return create_model("Fields", __base__=section_of(Board, apart=True), heart_line=places)


def board_from_typed(typed: TypedBoard, *, rule: Rule = _MILLIMETRES) -> Board:
    """The board that was typed, checked as one in a file is.

    Parameters
    ----------
    typed : TypedBoard
        What was typed.
    rule : Rule
        Whose units the sentences have.

    Returns
    -------
    Board
        The board. [mm]

    Raises
    ------
    BoardsFileError
        Something can't be read, or no board can be like that: which field, what was read and
        what to type; ``problems`` has them all.

    >>> board_from_typed(TypedBoard("short", "black cherry", "4 ft", '7"', "16 mm")).width
    177.8
    """
    said = asdict(typed)
    said["defect"] = said.pop("defects")
    said["heart_line"] = [{"along": at, "across": over} for at, over in typed.heart_line]
    try:
        read = checked(_fields(), said, text="", name=_IN_MESSAGES, error=BoardsFileError)
    except BoardsFileError as error:
        problems = [Problem(_spoken(each.key), each.said) for each in error.problems]
        raise BoardsFileError(_IN_MESSAGES, problems) from None
    line = tuple((place.along, place.across) for place in read.given()["heart_line"])
    board: Board = record_of(Board, read, heart_line=line)
    faults: list[Fault] = [(path[2:], said) for path, said in impossible((board,), rule=rule)]
    if len(line) == 1:
        few = "read 1 point: it needs 2 or more; add one, or take this one out"
        faults.append((("heart_line",), few))
    if faults:
        problems = [Problem(_spoken(dotted(path)), said) for path, said in faults]
        raise BoardsFileError(_IN_MESSAGES, problems)
    return board


def _spoken(key: str) -> str:
    """A key as the fields are called: ``defect 2.from_along`` is ``defect 2, from along``."""
    return key.replace("heart_line ", "heart line, point ").replace(".", ", ").replace("_", " ")
