"""Reads the boards on the rack, with their defects."""

from __future__ import annotations

from collections.abc import Iterator
from os import PathLike
from pathlib import Path as FilePath

from pydantic import Field

from toolkit.files import kinds
from toolkit.files.checking import Fault, checked, problems_at
from toolkit.files.errors import BoardsFileError, Path, shown
from toolkit.files.kinds import Section
from toolkit.files.sections import left_out
from toolkit.files.syntax import file_text, values_of
from toolkit.measures import Rule
from toolkit.results import above, below
from toolkit.stock import Board, Defect, DefectKind

_MILLIMETRES = Rule.millimetres()


class DefectSection(Section):
    """The rectangle that a defect spoils, by two opposite corners."""

    kind: kinds.DefectKind
    from_: kinds.Point = Field(alias="from")
    to: kinds.Point


class BoardSection(Section):
    """One board, as it lies: length with the grain, width across it."""

    name: kinds.BoardName
    species: kinds.Species
    length: kinds.BoardLength
    width: kinds.Length
    thickness: kinds.Length
    defect: list[DefectSection] = Field(default=[], max_length=200)
    heart_line: kinds.HeartLine = left_out("Heartwood below it, sapwood above.")


class BoardsFile(Section):
    """The boards on the rack for the hand-tool class workbook."""

    format: kinds.Format = left_out()
    board: list[BoardSection] = Field(min_length=1, max_length=200)


def read_boards(path: str | PathLike[str]) -> tuple[Board, ...]:
    """The boards of a file, in its order.

    Parameters
    ----------
    path : path-like
        The file.

    Returns
    -------
    tuple of Board
        The boards; a defect given backwards is turned round.

    Raises
    ------
    BoardsFileError
        The file cannot be read, or a board is impossible; one line, and all in ``problems``.

    Source
    ------
    The workbook's own.
    """
    return boards_from_text(file_text(path, error=BoardsFileError), name=FilePath(path).name)


def boards_from_text(text: str, *, name: str = "boards.toml") -> tuple[Board, ...]:
    """Boards from the text of a file of boards.

    Parameters
    ----------
    text : str
        The text.
    name : str
        Name of the file in messages.

    Returns
    -------
    tuple of Board
        The boards.

    Raises
    ------
    BoardsFileError
        As for a file.

    Source
    ------
    The workbook's own.

    >>> text = "[[board]]\\nname = 'a'\\nspecies = 'cherry'\\nthickness = '1 in'\\n"
    >>> text += "length = '1 m'\\nwidth = '90 mm'"
    >>> boards_from_text(text)[0].thickness
    25.4
    """
    text = text.replace("\r\n", "\n")
    values = values_of(text, name=name, error=BoardsFileError)
    read = checked(BoardsFile, values, text=text, name=name, error=BoardsFileError)
    boards = tuple(board_of(section) for section in read.board)
    faults = list(impossible(boards))
    if faults:
        raise BoardsFileError(name, problems_at(faults, text))
    return boards


def board_of(section: BoardSection) -> Board:
    """A board as its section of a file has it. [mm]"""
    defects = [defect_between(each.kind, each.from_, each.to) for each in section.defect]
    return Board(
        name=section.name,
        species=section.species,
        length=section.length,
        width=section.width,
        thickness=section.thickness,
        defects=tuple(defects),
        heart_line=section.heart_line or (),
    )


def defect_between(
    kind: DefectKind, corner: tuple[float, float], opposite: tuple[float, float]
) -> Defect:
    """The defect between any two opposite corners, each along and then across. [mm]"""
    (along_from, along_to), (across_from, across_to) = (
        sorted(pair) for pair in zip(corner, opposite, strict=True)
    )
    return Defect(kind, along_from, across_from, along_to, across_to)


def same_name(name: str) -> str:
    """A board's name as it is compared: whatever its capitals and its spaces."""
    return " ".join(name.casefold().split())


def impossible(boards: tuple[Board, ...], *, rule: Rule = _MILLIMETRES) -> Iterator[Fault]:
    """What no board can be, though each length by itself is right.

    Parameters
    ----------
    boards : tuple of Board
        All boards of the rack. [mm]
    rule : Rule
        Whose units the sentences have.

    Returns
    -------
    iterator of (path, str)
        Where in the file, and the sentence.

    Source
    ------
    The workbook's own.
    """
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
        ("along", defect.along_to, board.length, "measure from the lower left corner"),
        ("across", defect.across_to, board.width, "type along first, then across"),
    ):
        if above(reach, end):
            most = rule.exact(end)
            yield (
                at,
                f"the {defect.kind} reaches {rule.exact(reach)} {way} a board of {most}; "
                f"{remedy}, at most {shown(most)}",
            )
    if defect.along_from == defect.along_to and defect.across_from == defect.across_to:
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
