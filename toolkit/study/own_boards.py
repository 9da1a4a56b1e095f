"""The student's own rack of boards, with what is wrong with each of them."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from toolkit.files import BOARDS, TypedBoard, with_board, without_board
from toolkit.stock import Board
from toolkit.study.folder import lessons_folder, student_folder
from toolkit.study.own_file import OwnFile


@dataclass(frozen=True, slots=True)
class LoadedBoards:
    """A rack of boards as the lessons use it. [mm]

    ``path`` is the student's own file, or None while it is the workbook's example; ``notice``
    is a sentence to show above the lesson, or empty.
    """

    boards: tuple[Board, ...]
    path: Path | None
    notice: str = ""


class OwnBoards(OwnFile[tuple[Board, ...], LoadedBoards]):
    """The boards that the student has entered, or the workbook's example of a rack."""

    kind = BOARDS

    @property
    def path(self) -> Path:
        """The student's own file, whether or not it exists yet."""
        return student_folder() / "my_boards.toml"

    @property
    def example(self) -> Path:
        """The workbook's example of a rack."""
        return lessons_folder() / "boards.toml"

    def _given(self, what: tuple[Board, ...], path: Path | None, notice: str = "") -> LoadedBoards:
        return LoadedBoards(what, path, notice)

    def keep(self, board: TypedBoard, *, instead_of: str | None = None) -> LoadedBoards:
        """Keep a board in the student's own file, which the first change makes.

        Parameters
        ----------
        board : TypedBoard
            The board, each length as text with its unit.
        instead_of : str, optional
            Name of the board whose place it takes. Without one, or where there is no such board
            any more, it is put at the end of the rack.

        Raises
        ------
        BoardsFileError
            Something about the board can't be read, or no board can be like that, or its name is
            another board's; the file is then as it was.
        """
        return self._change(
            lambda text: with_board(text, board, name=self.path.name, instead_of=instead_of)
        )

    def remove(self, name: str) -> LoadedBoards:
        """Take a board off the rack, unless it is the only one; undoing brings it back."""
        return self._change(lambda text: without_board(text, name, name=self.path.name))
