"""A board as somebody types it, field by field, into something that is not a file."""

from __future__ import annotations

from dataclasses import asdict, dataclass
from functools import partial
from typing import Annotated

from pydantic import Field

from toolkit.files import kinds, values
from toolkit.files.boards_file import defect_between, impossible
from toolkit.files.checking import checked
from toolkit.files.errors import BoardsFileError, Path, Problem, dotted
from toolkit.measures import Rule, length_text
from toolkit.stock import Board

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


_Place = Annotated[
    float,
    kinds.Read(partial(values.read_length, allow="zero", most=values.LONGEST_BOARD), {}),
]


class _DefectFields(kinds.Section):
    kind: kinds.DefectKind
    from_along: _Place
    from_across: _Place
    to_along: _Place
    to_across: _Place


class _PointFields(kinds.Section):
    along: _Place
    across: _Place


class _BoardFields(kinds.Section):
    name: kinds.BoardName
    species: kinds.Species
    length: kinds.BoardLength
    width: kinds.Length
    thickness: kinds.Length
    defect: list[_DefectFields] = Field(max_length=200)
    heart_line: list[_PointFields] = Field(max_length=values.MOST_POINTS)


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

    Source
    ------
    The workbook's own.

    >>> board_from_typed(TypedBoard("short", "cherry", "4 ft", '7"', "16 mm")).width
    177.8
    """
    fields = asdict(typed)
    fields["defect"] = list(fields.pop("defects"))
    fields["heart_line"] = [
        {"along": along, "across": across} for along, across in typed.heart_line
    ]
    try:
        read = checked(_BoardFields, fields, text="", name=_IN_MESSAGES, error=BoardsFileError)
    except BoardsFileError as error:
        problems = [Problem(_spoken(each.key), each.said) for each in error.problems]
        raise BoardsFileError(_IN_MESSAGES, problems) from None
    board = Board(
        name=read.name,
        species=read.species,
        length=read.length,
        width=read.width,
        thickness=read.thickness,
        defects=tuple(
            defect_between(
                each.kind, (each.from_along, each.from_across), (each.to_along, each.to_across)
            )
            for each in read.defect
        ),
        heart_line=tuple((point.along, point.across) for point in read.heart_line),
    )
    faults = [(path[2:], said) for path, said in impossible((board,), rule=rule)]
    if len(board.heart_line) == 1:
        few: Path = ("heart_line",)
        faults.append((few, "read 1 point: it needs 2 or more; add one, or take this one out"))
    if faults:
        problems = [Problem(_spoken(dotted(path)), said) for path, said in faults]
        raise BoardsFileError(_IN_MESSAGES, problems)
    return board


def typed_board(board: Board, *, rule: Rule = _MILLIMETRES) -> TypedBoard:
    """A board as somebody would have to type it to have exactly this one.

    Parameters
    ----------
    board : Board
        The board. [mm]
    rule : Rule
        Whose units the lengths have.

    Returns
    -------
    TypedBoard
        Its fields; each length reads back as it was.

    Source
    ------
    The workbook's own.

    >>> typed_board(Board("b", "cherry", 914.4, 178, 16), rule=Rule.inches()).length
    '36 in'
    """
    text = partial(length_text, rule=rule)
    return TypedBoard(
        name=board.name,
        species=board.species,
        length=text(board.length),
        width=text(board.width),
        thickness=text(board.thickness),
        defects=tuple(
            TypedDefect(
                each.kind,
                text(each.along_from),
                text(each.across_from),
                text(each.along_to),
                text(each.across_to),
            )
            for each in board.defects
        ),
        heart_line=tuple((text(along), text(across)) for along, across in board.heart_line),
    )


def _spoken(key: str) -> str:
    """A key as the fields are called: ``defect 2.from_along`` is ``defect 2, from along``."""
    return key.replace("heart_line ", "heart line, point ").replace(".", ", ").replace("_", " ")
