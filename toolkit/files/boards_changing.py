"""Changes a file of boards in place, board by board, keeping its author's remarks and order."""

from __future__ import annotations

from os import PathLike
from pathlib import Path as FilePath

from toolkit.files.boards_editing import with_board, without_board
from toolkit.files.boards_file import boards_from_text
from toolkit.files.errors import BoardsFileError
from toolkit.files.keeping import KindOfFile
from toolkit.files.typed_boards import TypedBoard
from toolkit.stock import Board

BOARDS = KindOfFile(BoardsFileError, boards_from_text)


def keep_board(
    path: str | PathLike[str],
    board: TypedBoard,
    *,
    instead_of: str | None = None,
    start: str | PathLike[str] | None = None,
) -> tuple[Board, ...]:
    """Put a board in a file, in the place of another one or at the end.

    The rest of the file stays as it is, and so does every line of the board itself that says the
    same as before. The file as it was is kept, so that ``undo_boards`` can bring it back.

    Parameters
    ----------
    path : path-like
        The file.
    board : TypedBoard
        The board, each length as text with its unit.
    instead_of : str, optional
        Name of the board whose place it takes. Without one, or where there is no such board any
        more, it is put at the end.
    start : path-like, optional
        The file to begin with where there is none yet.

    Returns
    -------
    tuple of Board
        All boards that the file has now. [mm]

    Raises
    ------
    BoardsFileError
        The board is not right, or its name is another board's, or the file cannot be read or
        written; it is then as it was.

    Source
    ------
    The workbook's own.
    """
    name = FilePath(path).name
    return BOARDS.change(
        path, lambda text: with_board(text, board, name=name, instead_of=instead_of), start=start
    )


def remove_board(
    path: str | PathLike[str], board: str, *, start: str | PathLike[str] | None = None
) -> tuple[Board, ...]:
    """Take a board out of a file, with what is remarked about it.

    Parameters
    ----------
    path : path-like
        The file; as it was it is kept, so that ``undo_boards`` can bring it back.
    board : str
        Name of the board.
    start : path-like, optional
        The file to begin with where there is none yet.

    Returns
    -------
    tuple of Board
        The boards that are left. [mm]

    Raises
    ------
    BoardsFileError
        There is no such board, or it is the only one, or the file cannot be read or written; it
        is then as it was.

    Source
    ------
    The workbook's own.
    """
    name = FilePath(path).name
    return BOARDS.change(path, lambda text: without_board(text, board, name=name), start=start)


def undo_boards(path: str | PathLike[str]) -> tuple[Board, ...]:
    """Bring a file of boards back to what it was before the last change; again goes further back.

    Parameters
    ----------
    path : path-like
        The file.

    Returns
    -------
    tuple of Board
        The boards that the file has now. [mm]

    Raises
    ------
    BoardsFileError
        No change is left to take back, or the file could not be written.

    Source
    ------
    The workbook's own.
    """
    return BOARDS.undo(path)
