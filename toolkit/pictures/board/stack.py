"""Boards to buy, stacked by thickness: how many, and how much of the last is needed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil

from toolkit.pictures.kit.figure_of_wood import hatch
from toolkit.pictures.kit.lettering import Place
from toolkit.pictures.kit.notes import title
from toolkit.pictures.kit.picture import Picture
from toolkit.pictures.kit.sheet import WIDTH, Sheet
from toolkit.pictures.kit.view import rectangle

_LEFT, _TOP, _ABOVE, _GAP = 24.0, 40.0, 24.0, 5.0  # [pt]
_HIGH = 330.0


@dataclass(frozen=True, slots=True)
class Stack:
    """Boards of one thickness.

    Attributes
    ----------
    words : str
        What stands over them.
    boards : float
        How many are needed, the last in part.
    """

    words: str
    boards: float


def stack_picture(stacks: Sequence[Stack], *, board: tuple[float, float], sentence: str) -> Picture:
    """Draw the boards that a class needs.

    Parameters
    ----------
    stacks : sequence of Stack
        By thickness, one under another.
    board : tuple of float
        Length and width of each board. [mm]
    sentence : str
        What it comes to.

    Returns
    -------
    Picture
        Whole boards, and what is left of the last one hatched.
    """
    long, wide = board
    whole = [max(1, ceil(stack.boards - 1e-9)) for stack in stacks]
    room = _HIGH - _TOP - len(stacks) * (_ABOVE + 6.0) - sum(whole) * _GAP - 8.0
    scale = min((WIDTH - 2 * _LEFT) / long, room / (sum(whole) * wide))
    sheet = Sheet(scale=scale, height=_HIGH)
    title(sheet, "boards to buy", x=WIDTH / 2, y=_HIGH - 18.0)
    level = _HIGH - _TOP
    for stack, count in zip(stacks, whole, strict=True):
        level -= _ABOVE
        sheet.write(stack.words, [Place(_LEFT, level + 7.0)], rank=0)
        for number in range(count):
            share = min(1.0, max(0.0, stack.boards - number))
            _board(sheet, level - wide * scale, long * scale, wide * scale, share)
            level -= wide * scale + _GAP
        level -= 6.0
    return sheet.picture(sentence)


def _board(sheet: Sheet, low: float, long: float, wide: float, share: float) -> None:
    """One board from above, what is not needed of it hatched."""
    middle, up = _LEFT + long * share, (low, low + wide)
    sheet.line("face", rectangle((_LEFT, middle), up), closed=True)
    for i in range(1, 4):
        y = low + wide * i / 4
        bend = wide * 0.06 * (-1) ** i
        sheet.line("face grain", [(_LEFT, y), (_LEFT + long * share / 2, y + bend), (middle, y)])
    if share < 1:
        hatch(sheet, rectangle((middle, _LEFT + long), up))
        sheet.line("thin", [(middle, y) for y in up])
    sheet.line("visible", rectangle((_LEFT, _LEFT + long), up), closed=True)
