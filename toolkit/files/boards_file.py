"""Reads the boards on the rack, with their defects."""

from __future__ import annotations

from collections.abc import Iterator
from os import PathLike
from pathlib import Path as FilePath

from pydantic import Field

from toolkit.files import kinds
from toolkit.files.checking import Fault, checked, problems_at
from toolkit.files.errors import BoardsFileError, Path
from toolkit.files.kinds import Section
from toolkit.files.sections import left_out
from toolkit.files.syntax import file_text, values_of
from toolkit.results import above, below
from toolkit.stock.boards import Board, Defect


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
    boards = tuple(_board(section) for section in read.board)
    faults = list(_impossible(boards))
    if faults:
        raise BoardsFileError(name, problems_at(faults, text))
    return boards


def _board(section: BoardSection) -> Board:
    defects = []
    for defect in section.defect:
        (along_from, along_to), (across_from, across_to) = (
            sorted(pair) for pair in zip(defect.from_, defect.to, strict=True)
        )
        defects.append(Defect(defect.kind, along_from, across_from, along_to, across_to))
    return Board(
        name=section.name,
        species=section.species,
        length=section.length,
        width=section.width,
        thickness=section.thickness,
        defects=tuple(defects),
        heart_line=section.heart_line or (),
    )


def _impossible(boards: tuple[Board, ...]) -> Iterator[Fault]:
    """What no board can be, though each length by itself is right."""
    seen: dict[str, int] = {}
    for index, board in enumerate(boards):
        at: Path = ("board", index)
        name = " ".join(board.name.casefold().split())
        if name in seen:
            yield (
                (*at, "name"),
                f'read "{board.name}": board {seen[name] + 1} has this name already, and cuts are '
                'told by the name; type another, such as "'
                f'{board.name} 2"',
            )
        seen.setdefault(name, index)
        for number, defect in enumerate(board.defects):
            yield from _defect(board, defect, (*at, "defect", number))
        yield from _heart_line(board, (*at, "heart_line"))


def _defect(board: Board, defect: Defect, at: Path) -> Iterator[Fault]:
    if above(defect.along_to, board.length):
        yield (
            at,
            (
                f"the {defect.kind} reaches {defect.along_to:g} mm along a board of "
                f"{board.length:g} mm; measure from the lower left corner, at most "
                f'"{board.length:g} mm"'
            ),
        )
    if above(defect.across_to, board.width):
        yield (
            at,
            (
                f"the {defect.kind} reaches {defect.across_to:g} mm across a board of "
                f"{board.width:g} mm; type along first, then across, at most "
                f'"{board.width:g} mm"'
            ),
        )
    if defect.along_from == defect.along_to and defect.across_from == defect.across_to:
        yield (
            at,
            (
                f"the {defect.kind} begins and ends in one point; "
                'type two opposite corners, such as from = ["300 mm", "40 mm"] and '
                'to = ["335 mm", "70 mm"]'
            ),
        )


def _heart_line(board: Board, at: Path) -> Iterator[Fault]:
    before = None
    for number, (along, across) in enumerate(board.heart_line):
        if before is not None and not below(before, along):
            yield (
                at,
                (
                    f"point {number + 1} of the heart line, at {along:g} mm along, does not lie "
                    f"beyond point {number}, at {before:g} mm; list the points from left to right"
                ),
            )
        if above(along, board.length) or above(across, board.width):
            yield (
                at,
                (
                    f"point {number + 1} of the heart line, {along:g} mm along and {across:g} mm "
                    f"across, lies off the board of {board.length:g} × {board.width:g} mm; "
                    "type along first, then across"
                ),
            )
        before = along
