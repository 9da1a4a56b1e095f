"""The edition of a drawing: for a screen, or for paper, where letters have to be larger.

Whoever prepares a page for paper says so once, round everything that draws for it, instead of
handing a flag through every function between the page and the drawing.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Set
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import replace
from functools import wraps
from inspect import signature
from typing import Any, ParamSpec, cast

from toolkit.pictures.kit.picture import PX_PER_PT, Picture

_P = ParamSpec("_P")

AIR = 6.0  # left above and below what is drawn, and between it and words beyond it [pt]
_PAGE = re.compile(r'viewBox="0 0 ([\d.]+) ([\d.]+)" width="([\d.]+)" height="[\d.]+"')
_HIDDEN = re.compile(r"<clipPath.*?</clipPath>", re.DOTALL)
_WAY = re.compile(r' d="([^"]*)"')
_POINT = re.compile(r"-?[\d.]+ (-?[\d.]+)")
Line = tuple[float, float]  # a line of words: its level and its size [pt]
_BELOW = 0.3  # of the size of letters, under their line
_LETTERS = re.compile(r'<g font-size="([\d.]+)"[^>]*>(.*?)</g>', re.DOTALL)
_LINE = re.compile(r'(<text x="[^"]*" y=")(-?[\d.]+)"')
_ROUND = re.compile(r'<circle cx="[^"]*" cy="(-?[\d.]+)" r="([\d.]+)"')
_IMAGE = re.compile(r'<image x="[^"]*" y="(-?[\d.]+)" width="[^"]*" height="([\d.]+)"')

_FOR_PAPER: ContextVar[bool] = ContextVar("for_paper", default=False)


@contextmanager
def for_paper() -> Iterator[None]:
    """Every drawing made inside is lettered for paper.

    Source
    ------
    The workbook's own.
    """
    before = _FOR_PAPER.set(True)
    try:
        yield
    finally:
        _FOR_PAPER.reset(before)


def in_editions(draw: Callable[_P, Picture]) -> Callable[_P, Picture]:
    """A drawing function that heeds `for_paper`, unless it is told its edition."""
    asked = "paper" in signature(draw).parameters

    @wraps(draw)
    def drawn(*args: _P.args, **named: _P.kwargs) -> Picture:
        if not _FOR_PAPER.get():
            return draw(*args, **named)
        if asked:
            cast("dict[str, Any]", named).setdefault("paper", True)
        return trimmed(draw(*args, **named))

    return drawn


def trimmed(picture: Picture) -> Picture:
    """A picture without the empty room that a screen's frame has so that it stands still.

    Above and below it is cut off; titles and notes that stand alone over or under the drawing
    come nearer to it. ``drawn`` goes on telling of the picture as it was.
    """
    page = _PAGE.search(picture.svg)
    if page is None:
        return picture
    body = _HIDDEN.sub("", picture.svg)
    marks = [float(y) for way in _WAY.findall(body) for y in _POINT.findall(way)]
    for y, radius in _ROUND.findall(body):
        marks += [float(y) - float(radius), float(y) + float(radius)]
    for y, height in _IMAGE.findall(body):
        marks += [float(y), float(y) + float(height)]
    lines = {
        (float(y), float(size))
        for size, group in _LETTERS.findall(body)
        for _, y in _LINE.findall(group)
    }
    if not marks:
        return picture
    moved = _nearer(lines, top=min(marks), foot=max(marks))
    tops = [min(marks), *(y - size for (_, size), y in moved.items())]
    feet = [max(marks), *(y + _BELOW * size for (_, size), y in moved.items())]
    wide, tall = float(page[1]), float(page[2])
    top = max(min(tops) - AIR, 0.0)
    height = min(max(feet) + AIR, tall) - top
    frame = (
        f'viewBox="0 {top:g} {wide:g} {height:g}" width="{page[3]}" height="{height * PX_PER_PT:g}"'
    )

    def set_anew(group: re.Match[str]) -> str:
        size = float(group[1])
        return _LINE.sub(lambda row: f'{row[1]}{moved[float(row[2]), size]:g}"', group[0])

    return replace(picture, svg=_LETTERS.sub(set_anew, picture.svg).replace(page[0], frame, 1))


def _nearer(lines: Set[Line], *, top: float, foot: float) -> dict[Line, float]:
    """Where each line of words goes: those beyond all marks come no farther off than need be."""
    under = {line for line in lines if line[0] - line[1] > foot}
    over = {line for line in lines if line[0] + _BELOW * line[1] < top}
    among = lines - under - over
    moved = {line: line[0] for line in lines}
    edge, less = max([foot, *(y + _BELOW * size for y, size in among)]), 0.0
    for y, size in sorted(under):
        less += max(y - size - edge - AIR, 0.0)
        moved[y, size] = y - less
        edge = max(edge, y + _BELOW * size)
    edge, less = min([top, *(y - size for y, size in among)]), 0.0
    for y, size in sorted(over, reverse=True):
        less += max(edge - y - _BELOW * size - AIR, 0.0)
        moved[y, size] = y + less
        edge = min(edge, y - size)
    return moved
