"""A board as somebody types it, field by field, into something that is not a file."""

from __future__ import annotations

from dataclasses import asdict, dataclass, field
from functools import cache
from typing import Any

from pydantic import Field, create_model

from toolkit.files import values
from toolkit.files.boards_file import impossible
from toolkit.files.checking import checked
from toolkit.files.errors import BoardsFileError, Fault, Problem, dotted
from toolkit.files.records import FileSection, record_of, section_of
from toolkit.measures import Rule, declared
from toolkit.stock import LONGEST_BOARD, Board

_MILLIMETRES = Rule.millimetres()
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
    """A board as typed: each length is text with its unit, in whatever unit.

    ``heart_line`` holds places, along and across, from left to right; without any there is none.
    """

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

    >>> board_from_typed(TypedBoard("short", "cherry", "4 ft", '7"', "16 mm")).width
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
