"""The text of a file of boards as blocks: one for each heading, with the remarks that belong to it.

A remark right above a heading belongs to that heading; one that stands by itself, between blank
lines, belongs to nobody and stays where it is, whatever goes from beside it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import chain

from toolkit.files.errors import BoardsFileError, Problem
from toolkit.files.lines import lines_of

Rows = list[str]


@dataclass(slots=True)
class HeadedBlock:
    """A heading with its keys; ``above`` are its remarks, ``below`` what stands apart from it."""

    above: Rows
    rows: Rows
    below: Rows


# A board: a block of its own keys, and one for each of its defects that has a heading.
BoardBlocks = list[HeadedBlock]


@dataclass(slots=True)
class Blocks:
    """A whole file: what comes before the first board, the boards, the blank lines at the end."""

    top: Rows
    boards: list[BoardBlocks]
    end: Rows

    @property
    def text(self) -> str:
        """The text of the file."""
        rows = [*self.top]
        for block in chain(*self.boards):
            rows += [*block.above, *block.rows, *block.below]
        return "\n".join([*_without_blank_end(rows), *self.end])


def blocks_of(text: str, *, name: str) -> Blocks:
    """The blocks of a file of boards that is in order; each board must have its own heading."""
    lines = lines_of(text)
    all_rows = text.split("\n")
    rows = _without_blank_end(all_rows)
    starts: list[tuple[int, bool]] = []
    index = 0
    while (line := lines.get(("board", index))) is not None:
        if not _is_heading(rows[line - 1]):
            said = "this board has no heading of its own; put each board under a line [[board]]"
            raise BoardsFileError(name, [Problem(f"board {index + 1}", said, line)])
        starts.append((line - 1, True))
        number = 0
        while (line := lines.get(("board", index, "defect", number))) is not None:
            # Defects on one line, between brackets, belong to the board's own keys.
            if _is_heading(rows[line - 1]):
                starts.append((line - 1, False))
            number += 1
        index += 1
    top = rows[: starts[0][0]] if starts else rows
    whole = Blocks(top, [], all_rows[len(rows) :] or [""])
    ends = [start for start, _ in starts[1:]] + [len(rows)]
    above: Rows = []
    for (start, is_board), end in zip(starts, ends, strict=True):
        block, rest = _block(rows[start:end], above, last=end == len(rows))
        if is_board:
            whole.boards.append([])
        whole.boards[-1].append(block)
        above = rest
    return whole


def put_after(block: HeadedBlock, *, new: Rows) -> HeadedBlock:
    """A new block after another one, with a blank line between; gives the new one."""
    added = HeadedBlock([], new, block.below)
    block.below = [""]
    return added


def take_out(gone: Sequence[HeadedBlock], *, after: Rows) -> None:
    """Leave only those remarks of some blocks that stand by themselves, after other lines."""
    kept = [row for block in gone if any(map(_is_remark, block.below)) for row in block.below]
    while kept and after and not after[-1].strip() and not kept[0].strip():
        kept.pop(0)
    after += kept


def _block(rows: Rows, above: Rows, *, last: bool) -> tuple[HeadedBlock, Rows]:
    """A heading's lines as a block, and the remarks at their end that the next heading has."""
    end = len(rows)
    while end > 1 and (not rows[end - 1].strip() or _is_remark(rows[end - 1])):
        end -= 1
    # Remarks right below the keys are about the keys.
    while end < len(rows) and _is_remark(rows[end]):
        end += 1
    next_one = len(rows)
    while not last and next_one > 1 and _is_remark(rows[next_one - 1]):
        next_one -= 1
    end = min(end, next_one)
    return HeadedBlock(above, rows[:end], rows[end:next_one]), rows[next_one:]


def _without_blank_end(rows: Rows) -> Rows:
    end = len(rows)
    while end and not rows[end - 1].strip():
        end -= 1
    return rows[:end]


def _is_heading(row: str) -> bool:
    return row.lstrip().startswith("[[")


def _is_remark(row: str) -> bool:
    return row.lstrip().startswith("#")
