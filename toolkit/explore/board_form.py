"""A form for the student's own boards: choose one, say what it is and what is wrong with it, keep.

What is typed reaches the rack only with a press of "Keep this board", and only when it can be
read; until then everything else goes on with the board as it was last kept.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from html import escape
from typing import Any

import ipywidgets as widgets

from toolkit.document import SHEET
from toolkit.explore.board_fields import FIELD, LABEL, ROW_SHEET, BoardFields
from toolkit.explore.controls import Card, button
from toolkit.explore.engine import follows, refresh
from toolkit.files import FileError, board_from_typed
from toolkit.measures import Rule
from toolkit.stock import Board
from toolkit.study import LoadedBoards, OwnBoards, OwnBox

ANOTHER = "another board…"
_MOST_TOLD = 5


class BoardForm(Card):
    """The student's rack, board by board, in boxes to type into. Display it in a cell."""

    def __init__(self, changed: Callable[[], object] | None = None) -> None:
        super().__init__()
        self._changed = changed
        self._own = OwnBoards()
        self._quiet = False
        self._rule = Rule.millimetres()
        self._boards: tuple[Board, ...] = ()
        self._fields = BoardFields()
        self._which = widgets.Dropdown(description="board", layout=FIELD, style=LABEL)
        self._remove = button(
            "Remove this board", self._removed, tip="takes it off the rack; undo works"
        )
        self._which.observe(self._chose, names="index")
        buttons = [
            button("Keep this board", self._kept, tip="writes it into your own file of boards"),
            self._remove,
            button(
                "Undo",
                lambda: self._try(self._own.undo, "Taken back."),
                tip="takes the last kept change of the rack back",
            ),
            button(
                "Start again",
                lambda: self._try(self._own.start_again, "Begun again from the workbook's rack."),
                tip="begins from the workbook's rack; undo works",
            ),
        ]
        flow = {"flex_flow": "row wrap", "align_items": "center"}
        row = widgets.Box(buttons, layout=flow)
        self.lay(self._which, self._fields.widget, row, self.said, sheet=SHEET + ROW_SHEET)
        self.widget.add_class("board-form")
        self._begin()
        follows(self)

    @property
    def board(self) -> Board | None:
        """The chosen board as it was last kept; None while another one is being entered. [mm]"""
        at = self._which.index
        return self._boards[at] if at is not None and at < len(self._boards) else None

    def follow(self) -> None:
        """Begin from what is on the disk now, the student's rack and the rule they read."""
        rule = OwnBox().load().choices.rule
        if self._fields.touched:
            self._rule = rule
        elif rule != self._rule or self._own.load().boards != self._boards:
            self._begin()

    def _begin(self) -> None:
        loaded = self._own.load()
        self._show(loaded, choose=self._chosen)
        self.say(loaded.notice or self._whose(loaded))

    @property
    def _chosen(self) -> str | None:
        return self.board.name if self.board else None

    def _show(self, loaded: LoadedBoards, *, choose: str | None) -> None:
        """Offer the boards of a rack, with one of them in the boxes."""
        self._rule = OwnBox().load().choices.rule
        self._boards = loaded.boards
        names = [board.name for board in loaded.boards]
        self._quiet = True
        self._which.options = [*names, ANOTHER]
        self._which.index = names.index(choose) if choose in names else 0
        self._quiet = False
        self._fill()

    def _fill(self) -> None:
        self._fields.fill(self.board, rule=self._rule)
        self._remove.disabled = self.board is None

    def _kept(self) -> None:
        self._fields.drop_empty()
        typed, board = self._fields.typed, self.board
        if board and not self._fields.touched:
            self.say(f"Nothing to keep: {board.name} is as it was.")
            return

        def keep() -> LoadedBoards:
            board_from_typed(typed, rule=self._rule)
            return self._own.keep(typed, instead_of=self._chosen)

        self._try(keep, f"Kept {typed.name}.", choose=typed.name, otherwise="Not kept.")

    def _removed(self) -> None:
        gone = self.board
        if gone is None:
            return
        at = self._boards.index(gone)
        beside = [*self._boards[at + 1 :], *self._boards[:at][::-1], gone][0]
        self._try(lambda: self._own.remove(gone.name), f"Removed {gone.name}.", choose=beside.name)

    def _try(
        self,
        change: Callable[[], LoadedBoards],
        done: str,
        *,
        choose: str | None = None,
        otherwise: str = "",
    ) -> None:
        """Do something to the rack; a refusal is a sentence, and everything stays as it was."""
        try:
            loaded = change()
        except (ValueError, OSError) as error:
            lines = error.lines if isinstance(error, FileError) else [str(error)]
            self._refuse(lines, otherwise)
            return
        self._show(loaded, choose=choose or self._chosen)
        self.say(" ".join([done, loaded.notice or self._whose(loaded)]))
        if self._changed is not None:
            self._changed()

    def _chose(self, _: Any) -> None:
        if self._quiet:
            return
        name = self._fields.typed.name or "another board"
        lost = f"What you typed for {name} was not kept." if self._fields.touched else ""
        self._fill()
        new = "" if self.board else "Say what the board is like, then keep it."
        self.say(f"{lost} {new}".strip())

    def _whose(self, loaded: LoadedBoards) -> str:
        if loaded.path is None:
            return "This is the workbook's rack. Keep a board and it becomes your own."
        return f"This is your own rack, {loaded.path.name}."

    def _refuse(self, lines: Sequence[str], otherwise: str) -> None:
        """What is wrong, and beside it what was last in order."""
        told = [escape(line if line.endswith("?") else f"{line}.") for line in lines[:_MOST_TOLD]]
        if len(lines) > _MOST_TOLD:
            told.append(f"{len(lines) - _MOST_TOLD} more are told when these are right.")
        if otherwise:
            told.insert(0, f"<b>{escape(otherwise)}</b>")
        board = self.board
        still = (
            f"The rack still has {self._described(board)}." if board else "The rack is as it was."
        )
        words = "<br>".join([*told, escape(still)])
        hint = f'<p class="bench-hint" role="status">{words}</p>'
        self.said.value = f'<div class="bench-view">{hint}</div>'

    def _described(self, board: Board) -> str:
        rule, count = self._rule, len(board.defects)
        size = f"{rule.exact(board.length, unit=False)} × {rule.exact(board.width, unit=False)}"
        flaws = f"{count or 'no'} defect{'' if count == 1 else 's'}"
        return f"{board.name}: {board.species}, {size} × {rule.exact(board.thickness)}, {flaws}"


def own_board() -> BoardForm:
    """A form for the student's own boards; what is kept is on the rack of the scene above."""
    return BoardForm(changed=lambda: refresh("board", forget=("try.board", "try.knot")))
