"""Changes the text of a file of boards board by board, without touching the remarks in it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import astuple, replace
from difflib import SequenceMatcher
from typing import Any

import tomlkit
from tomlkit.exceptions import TOMLKitError

from toolkit.files.board_blocks import (
    BoardBlocks,
    HeadedBlock,
    Rows,
    blocks_of,
    put_after,
    take_out,
)
from toolkit.files.boards_file import TypedBoard, board_from_typed, boards_from_text, same_name
from toolkit.files.errors import BoardsFileError, Problem, plain, shown
from toolkit.files.records import file_keys
from toolkit.stock import Board, Defect

# Two lengths nearer than this are one, though each is written in its own unit. [mm]
_SAME = 1e-5


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

    Raises
    ------
    BoardsFileError
        The board or the text is not right, or the name belongs to another board.
    """
    boards = boards_from_text(text, name=name)
    wanted = board_from_typed(board)
    found = _found(boards, instead_of)
    at = len(boards) if found is None else found
    blocks = blocks_of(text, name=name)
    try:
        if found is None:
            rows = _rows("[[board]]", Board, board)
            own = put_after(blocks.boards[-1][-1], new=rows)
            blocks.boards.append([own])
        old = replace(wanted, defects=()) if found is None else boards[at]
        _change(blocks.boards[at], board, wanted=wanted, old=old)
    except TOMLKitError as problem:
        why = plain(str(problem), longest=80)
        said = f"it can't be changed in place ({why}); change it by hand"
        raise BoardsFileError(name, [Problem(f"board {at + 1}", said)]) from problem
    new = blocks.text
    now = boards_from_text(new, name=name)
    if not (
        [*now[:at], *now[at + 1 :]] == [*boards[:at], *boards[at + 1 :]] and _alike(now[at], wanted)
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

    Raises
    ------
    BoardsFileError
        The text is not right, there is no such board, or it is the only one.
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
    gone = blocks.boards.pop(at)
    take_out(gone, after=blocks.boards[at - 1][-1].below if at else blocks.top)
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


def _change(blocks: BoardBlocks, typed: TypedBoard, *, wanted: Board, old: Board) -> None:
    """Put what is wanted into a board's block, line by line where it differs."""
    changes = _changes(typed, wanted, old)
    before, after = _numbered(old.defects, wanted.defects)
    if before != after and len(before) != len(blocks) - 1:
        # The defects stand on the board's own lines; from now on each has its heading.
        changes["defect"] = None
        before = []
    _put(blocks[0], changes)
    if before != after:
        steps = SequenceMatcher(None, before, after, autojunk=False).get_opcodes()
        blocks[1:] = _changed_defects(blocks, steps, typed, wanted=wanted, old=old)


def _changed_defects(
    blocks: BoardBlocks,
    steps: Sequence[tuple[str, int, int, int, int]],
    typed: TypedBoard,
    *,
    wanted: Board,
    old: Board,
) -> list[HeadedBlock]:
    """Leave the defects that stay, change those that moved, take out and add the others."""
    kept: list[HeadedBlock] = [blocks[0]]
    for _, low, high, new_low, new_high in steps:
        both = min(high - low, new_high - new_low)
        for was, now in zip(range(low, low + both), range(new_low, new_low + both), strict=True):
            here = blocks[1 + was]
            _put(here, _changes(typed.defects[now], wanted.defects[now], old.defects[was]))
            kept.append(here)
        take_out(blocks[1 + low + both : 1 + high], after=kept[-1].below)
        for each in typed.defects[new_low + both : new_high]:
            kept.append(put_after(kept[-1], new=_rows("[[board.defect]]", Defect, each)))
    return kept[1:]


def _keys(record: type, values: Any) -> dict[str, Any]:
    """What a record, or one as typed, says under each key of the file but the tables below it."""
    return {
        key.name or name: (
            [getattr(values, part) for part in key.of] if key.of else _listed(getattr(values, name))
        )
        for name, key in file_keys(record).items()
        if key.kind != "list"
    }


def _listed(value: Any) -> Any:
    return [_listed(each) for each in value] if isinstance(value, tuple) else value


def _changes(typed: Any, wanted: Any, old: Any) -> dict[str, Any]:
    """The keys that are to say another thing than they do; None for one that goes."""
    record = type(wanted)
    now, before = _keys(record, wanted), _keys(record, old)
    return {
        key: value or None
        for key, value in _keys(record, typed).items()
        if not _alike(now[key], before[key])
    }


def _put(block: HeadedBlock, changes: dict[str, Any]) -> None:
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


def _rows(heading: str, record: type, typed: Any) -> Rows:
    """A heading and its keys, as typed."""
    said = {key: value for key, value in _keys(record, typed).items() if value != []}
    return [heading, *tomlkit.dumps(said).rstrip("\n").split("\n")]


def _numbered(*racks: Sequence[Defect]) -> tuple[list[int], ...]:
    """A number for each defect, the same for defects that are the same."""
    seen: list[Defect] = []

    def number(defect: Defect) -> int:
        seen.append(defect)
        return next(place for place, other in enumerate(seen) if _alike(other, defect))

    return tuple([number(defect) for defect in rack] for rack in racks)


def _alike(one: Any, other: Any) -> bool:
    """Whether two boards, or parts of them, are the same, whatever unit each was written in."""
    if isinstance(one, Board | Defect):
        one, other = astuple(one), astuple(other)
    if isinstance(one, list | tuple):
        return len(one) == len(other) and all(map(_alike, one, other))
    if isinstance(one, float | int) and isinstance(other, float | int):
        return abs(one - other) <= _SAME
    return bool(one == other)
