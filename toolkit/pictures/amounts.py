"""How much to buy: boards stacked by thickness, and a measuring jar for each finish."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil

from toolkit.pictures.kit import WIDTH, Picture, Sheet, Slot, rectangle
from toolkit.pictures.kit.notes import title
from toolkit.pictures.kit.strokes import hatch

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
        sheet.write(stack.words, [Slot(_LEFT, level + 7.0)], rank=0)
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


SIZES = (2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0, 2000.0, 5000.0)
HEIGHT = 296.0
_LOW, _TALL, _WIDE = 66.0, 168.0, 84.0  # of a jar [pt]
_MARKS = 5


@dataclass(frozen=True, slots=True)
class Jar:
    """What stands in one jar.

    Attributes
    ----------
    words : str
        Which finish, and for what.
    amount : float
        How much. [mL or g]
    unit : str
        ``mL`` or ``g``.
    before : float, optional
        How much it was before. [mL or g]
    """

    words: str
    amount: float
    unit: str
    before: float | None = None


def jars_picture(jars: Sequence[Jar], *, sentence: str) -> Picture:
    """Draw measuring jars side by side.

    Parameters
    ----------
    jars : sequence of Jar
        What is in them. [mL or g]
    sentence : str
        What they come to.

    Returns
    -------
    Picture
        Each jar of a size that holds its amount, its marks written beside it.
    """
    sheet = Sheet(scale=1.0, height=HEIGHT)
    title(sheet, "to make up or buy", x=WIDTH / 2, y=HEIGHT - 18.0)
    step = WIDTH / max(len(jars), 1)
    for number, jar in enumerate(jars):
        # A little to the left: the figures stand on the right of each.
        _jar(sheet, jar, x=step * (number + 0.5) - 12.0)
    return sheet.picture(sentence, most=8 * len(jars) + 4)


def _jar(sheet: Sheet, jar: Jar, *, x: float) -> None:
    size = next((one for one in SIZES if one >= max(jar.amount, jar.before or 0.0)), SIZES[-1])
    left, right, top = x - _WIDE / 2, x + _WIDE / 2, _LOW + _TALL

    def level(amount: float) -> float:
        return _LOW + 0.88 * _TALL * min(amount / size, 1.0)

    full = rectangle((left, right), (_LOW, level(jar.amount)))
    sheet.line("floor", full, closed=True)
    sheet.line("thin", full[2:])
    sheet.name(jar.words, full)
    if jar.before is not None:
        sheet.line("ghost", [(left, level(jar.before)), (right, level(jar.before))])
    lip = [(left - 5.0, top + 4.0), (left, top), (left, _LOW), (right, _LOW), (right, top)]
    sheet.line("visible", [*lip, (right + 5.0, top + 4.0)])
    for mark in range(1, _MARKS + 1):
        y = level(size * mark / _MARKS)
        sheet.line("thin", [(right - 12.0, y), (right, y)])
        last = f" {jar.unit}" if mark == _MARKS else ""
        sheet.write(f"{size * mark / _MARKS:g}{last}", [Slot(right + 4.0, y - 3.0)], rank=2)
    amount = f"{jar.amount:.{0 if jar.amount >= 10 else 1}f}"
    said = "\n".join([jar.words.replace(", ", ",\n"), f"{amount} {jar.unit}"])
    sheet.write(said, [Slot(x, _LOW - 16.0, "center")], rank=0)
