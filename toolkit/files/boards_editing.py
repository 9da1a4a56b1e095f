"""Changes the text of a file of boards board by board, without touching the remarks in it."""

from __future__ import annotations

from collections.abc import Sequence
from difflib import SequenceMatcher
from typing import Any

import tomlkit
from tomlkit.exceptions import TOMLKitError

from toolkit.files.board_blocks import Block, BoardBlock, Rows, blocks_of, put_after, take_out
from toolkit.files.boards_file import boards_from_text, same_name
from toolkit.files.errors import BoardsFileError, Problem, plain, shown
from toolkit.files.likeness import LENGTHS, alike, all_near, defect_keys, heart_line, near, sides
from toolkit.files.toml_out import quoted
from toolkit.files.typed_boards import TypedBoard, TypedDefect, board_from_typed
from toolkit.stock import Board, Defect


def with_board(text: str, board: TypedBoard, *, name: str, instead_of: str | None = None) -> str:
    """The text of a file of boards with one of them changed, or another one added.

    What stays the same stays as it is written, in its own unit and with its remarks.

    Parameters
    ----------
    text : str
        The text, with line feeds alone at its line ends.
    board : TypedBoard
        The board, each length as text with its unit.
    name : str
        Name of the file in messages.
    instead_of : str, optional
        Name of the board whose place it takes. Without one, or where there is no such board any
        more, it is put at the end.

    Returns
    -------
    str
        The new text.

    Raises
    ------
    BoardsFileError
        The board or the text is not right, or the name belongs to another board.

    Source
    ------
    The workbook's own.
    """
    boards = boards_from_text(text, name=name)
    wanted = board_from_typed(board)
    found = _found(boards, instead_of)
    at = len(boards) if found is None else found
    blocks = blocks_of(text, name=name)
    try:
        if found is None:
            own = put_after(blocks.boards[-1].blocks[-1], new=_board_rows(board))
            blocks.boards.append(BoardBlock(own))
            old = Board(wanted.name, wanted.species, *(getattr(wanted, key) for key in LENGTHS))
        else:
            old = boards[at]
        _change(blocks.boards[at], board, wanted=wanted, old=old)
    except TOMLKitError as problem:
        why = plain(str(problem), longest=80)
        said = f"it can't be changed in place ({why}); change it by hand"
        raise BoardsFileError(name, [Problem(f"board {at + 1}", said)]) from problem
    new = blocks.text
    now = boards_from_text(new, name=name)
    if not (
        [*now[:at], *now[at + 1 :]] == [*boards[:at], *boards[at + 1 :]] and alike(now[at], wanted)
    ):
        said = "this change would disturb another line; make it by hand"
        raise BoardsFileError(name, [Problem(f"board {at + 1}", said)])
    return new


def without_board(text: str, board: str, *, name: str) -> str:
    """The text of a file of boards without one of them; what is said about it goes with it.

    Parameters
    ----------
    text : str
        The text, with line feeds alone at its line ends.
    board : str
        Name of the board.
    name : str
        Name of the file in messages.

    Returns
    -------
    str
        The new text.

    Raises
    ------
    BoardsFileError
        The text is not right, there is no such board, or it is the only one.

    Source
    ------
    The workbook's own.
    """
    boards = boards_from_text(text, name=name)
    at = _found(boards, board)
    if at is None:
        there = ", ".join(shown(each.name) for each in boards[:8])
        said = f"there is no board {shown(board)} on the rack; type one of {there}"
        raise BoardsFileError(name, [Problem("", said)])
    if len(boards) == 1:
        said = f"{shown(board)} is the only board on the rack; put another on it first"
        raise BoardsFileError(name, [Problem("", said)])
    blocks = blocks_of(text, name=name)
    gone = blocks.boards.pop(at).blocks
    take_out(gone, after=blocks.boards[at - 1].blocks[-1].below if at else blocks.top)
    new = blocks.text
    if boards_from_text(new, name=name) != (*boards[:at], *boards[at + 1 :]):
        said = "taking it out would disturb another line; do it by hand"
        raise BoardsFileError(name, [Problem(f"board {at + 1}", said)])
    return new


def _found(boards: Sequence[Board], name: str | None) -> int | None:
    """Which board has a name."""
    if name is None:
        return None
    names = [same_name(board.name) for board in boards]
    return names.index(same_name(name)) if same_name(name) in names else None


def _change(block: BoardBlock, typed: TypedBoard, *, wanted: Board, old: Board) -> None:
    """Put what is wanted into a board's block, line by line where it differs."""
    changes: dict[str, Any] = {
        key: getattr(typed, key)
        for key in ("name", "species")
        if getattr(old, key) != getattr(wanted, key)
    }
    changes |= {
        key: getattr(typed, key)
        for key in LENGTHS
        if not near(getattr(old, key), getattr(wanted, key))
    }
    if not all_near(heart_line(old), heart_line(wanted)):
        changes["heart_line"] = [list(point) for point in typed.heart_line] or None
    before, after = defect_keys(old.defects, wanted.defects)
    if before != after and len(before) != len(block.defects):
        # The defects stand on the board's own lines; from now on each has its heading.
        changes["defect"] = None
        before = []
    _put(block.own, changes)
    if before != after:
        steps = SequenceMatcher(None, before, after, autojunk=False).get_opcodes()
        block.defects = _changed_defects(block, steps, typed, wanted=wanted, old=old)


def _changed_defects(
    block: BoardBlock,
    steps: Sequence[tuple[str, int, int, int, int]],
    typed: TypedBoard,
    *,
    wanted: Board,
    old: Board,
) -> list[Block]:
    """Leave the defects that stay, change those that moved, take out and add the others."""
    kept: list[Block] = [block.own]
    for _, low, high, new_low, new_high in steps:
        both = min(high - low, new_high - new_low)
        for was, now in zip(range(low, low + both), range(new_low, new_low + both), strict=True):
            here = block.defects[was]
            _put(here, _defect_changes(typed.defects[now], wanted.defects[now], old.defects[was]))
            kept.append(here)
        take_out(block.defects[low + both : high], after=kept[-1].below)
        for each in typed.defects[new_low + both : new_high]:
            kept.append(put_after(kept[-1], new=_defect_rows(each)))
    return kept[1:]


def _defect_changes(typed: TypedDefect, wanted: Defect, old: Defect) -> dict[str, Any]:
    changes: dict[str, Any] = {} if wanted.kind == old.kind else {"kind": typed.kind}
    if not all_near(sides(wanted), sides(old)):
        changes["from"] = [typed.from_along, typed.from_across]
        changes["to"] = [typed.to_along, typed.to_across]
    return changes


def _put(block: Block, changes: dict[str, Any]) -> None:
    """Change keys below a heading; None takes one out."""
    if not changes:
        return
    document = tomlkit.parse("\n".join(block.rows[1:]))
    for key, value in changes.items():
        if value is None:
            document.remove(key)
        else:
            document[key] = value
    rows = tomlkit.dumps(document).rstrip("\n")
    block.rows = [block.rows[0], *(rows.split("\n") if rows else [])]


def _board_rows(typed: TypedBoard) -> Rows:
    """A board's heading and keys; defects and heart line are put in afterwards."""
    keys = ("name", "species", *LENGTHS)
    return ["[[board]]", *(f"{key} = {quoted(getattr(typed, key))}" for key in keys)]


def _defect_rows(typed: TypedDefect) -> Rows:
    return [
        "[[board.defect]]",
        f"kind = {quoted(typed.kind)}",
        f"from = [{quoted(typed.from_along)}, {quoted(typed.from_across)}]",
        f"to = [{quoted(typed.to_along)}, {quoted(typed.to_across)}]",
    ]
