"""The sheets of a box: its pieces laid on pages, one after the other, and lettered."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from itertools import pairwise

import numpy as np

from toolkit.pictures.kit.lettering import LEADING, Label, Place, extent, lines_of
from toolkit.pictures.kit.placing import Page
from toolkit.pictures.sheets.margins import LINE, Head, check_bars, heading, meanings, room
from toolkit.pictures.sheets.marks import (
    SMALL,
    TEXT,
    Mark,
    Piece,
    Window,
    Wish,
    Word,
    wrapped,
)
from toolkit.pictures.sheets.page import PAPERS, LaidPiece, Paper, SheetPage
from toolkit.pictures.sheets.sections import section_pieces
from toolkit.pictures.sheets.tiles import tiled
from toolkit.pictures.sheets.walls import wall_piece, walls
from toolkit.pictures.sheets.words import page_sentence
from toolkit.plan import Plan

_CAPTION = 124.0  # the least that a caption is wide: two pieces stand side by side [mm]
_ABOVE = 2.6  # between a caption and its piece, where folds run on [mm]
_BELOW = 2 * LEADING * SMALL + 1.0  # for the words under a piece [mm]
_BETWEEN = 6.0  # two pieces beside one another [mm]
_ROWS = 0.4  # two pieces one above the other [mm]
_CLEAR = 0.5  # round every word [mm]
_PAPER_EDGE = 5.0  # nothing is written nearer to it [mm]


@dataclass(frozen=True, slots=True)
class _Laid:
    """A piece on a page: its own zero, and the upper left corner of its caption. [mm]"""

    piece: Piece
    x: float
    y: float
    left: float
    top: float

    def at(self, x: float, y: float) -> tuple[float, float]:
        """A point of the piece on the page. [mm]"""
        return self.x + x, self.y + y


def sheet_pages(plan: Plan, *, paper: str = "a4", day: date | None = None) -> tuple[SheetPage, ...]:
    """Full-size sheets of a box: every wall opened out, and three sections.

    Walls are drawn from inside, with what folds over their arrises; left and right as seen from
    the front of the box. What is longer than the paper goes over several pages.

    Parameters
    ----------
    plan : Plan
        The box. [mm]
    paper : str
        ``a4`` or ``letter``.
    day : date, optional
        The date on every page; today's if left out.

    Returns
    -------
    tuple of SheetPage
        In the order of printing, each with its size and its lines in true millimetres.

    Raises
    ------
    ValueError
        No such paper, or there is no such box.

    Source
    ------
    The plan. Lines and hatching after ISO 128.
    """
    if paper not in PAPERS:
        raise ValueError(f'paper {paper!r} is not known; type "a4" or "letter"')
    if not plan.design.exists:
        raise ValueError("there is no such box to draw; its findings say why")
    sheet, on = PAPERS[paper], f"{day or date.today():%Y-%m-%d}"
    head = Head(plan.choices.title, on, plan.fingerprint, plan.works)
    space = room(sheet, works=plan.works)
    pieces = [wall_piece(wall, plan, day=on) for wall in walls(plan)]
    pages = _paged([*pieces, *section_pieces(plan, day=on)], space)
    return tuple(
        _page(laid, head, plan, sheet, number, len(pages)) for number, laid in enumerate(pages, 1)
    )


def _caption(piece: Piece, room: float) -> list[str]:
    """A caption as wide as its piece, or as the page where nothing stands beside it. [mm]"""
    width = piece.caption_width or max(_CAPTION, piece.window.width)
    if width + _BETWEEN + _CAPTION > room:
        width = room
    texts = [*piece.caption]
    if not _has_room(piece):
        texts.append(" · ".join(piece.stamp))
    return [line for text in texts for line in wrapped(text, width=width)]


def _has_room(piece: Piece) -> bool:
    """Whether there is any room inside a piece for its name."""
    return min(piece.free.width, piece.free.height) > 0


def _paged(pieces: Sequence[Piece], space: Window) -> list[list[_Laid]]:
    """Pieces in rows, rows on pages, in their order. [mm]"""
    pages: list[list[_Laid]] = [[]]
    left, top, row = space.left, space.high, 0.0
    free = 0
    for whole in pieces:
        # A part of a piece has a line more to say how it is joined.
        lines = len(_caption(whole, space.width)) + 2
        most = space.height - lines * LINE - _ABOVE - _BELOW
        parts, free = tiled(whole, width=space.width, height=most, first=free)
        for piece in parts:
            said = _caption(piece, space.width)
            width = max(piece.window.width, *(extent(line, size=TEXT)[0] for line in said))
            width = max(width, piece.caption_width)
            high = len(said) * LINE + _ABOVE + piece.window.height + _BELOW
            if left > space.left and left + width > space.right + 1e-6:
                left, top, row = space.left, top - row - _ROWS, 0.0
            if top - high < space.low - 1e-6 and pages[-1]:
                pages.append([])
                left, top, row = space.left, space.high, 0.0
            low = top - len(said) * LINE - _ABOVE - piece.window.height
            # A narrow piece under a wide caption stands in the middle of it.
            middle = left + (width - piece.window.width) / 2
            x, y = middle - piece.window.left, low - piece.window.low
            pages[-1].append(_Laid(piece, x, y, left, top))
            left, row = left + width + _BETWEEN, max(row, high)
    return pages


def _page(
    laid: Sequence[_Laid], head: Head, plan: Plan, paper: Paper, number: int, of: int
) -> SheetPage:
    marks: list[Mark] = []
    words = [*heading(head, paper, page=number, of=of)]
    wishes: list[tuple[Wish, _Laid]] = []
    space = room(paper, works=head.works)
    for one in laid:
        marks += [Mark(m.pen, tuple(one.at(*p) for p in m.points)) for m in one.piece.marks]
        for i, line in enumerate(_caption(one.piece, space.width)):
            words.append(Word(line, one.left, one.top - 0.76 * TEXT - i * LINE))
        stamp = _stamp(one.piece, f"page {number} of {of}")
        wishes += [(wish, one) for wish in (*stamp, *one.piece.wishes)]
    bars, measures = check_bars(paper, units=plan.choices.rule.units)
    found, leaders, dropped = _lettered(wishes, [*marks, *bars], words, paper)
    samples, meant = meanings(used={mark.pen for mark in marks})
    return SheetPage(
        paper=paper,
        number=number,
        of=of,
        sentence=page_sentence([one.piece.name for one in laid], plan, page=number, of=of),
        pieces=tuple(LaidPiece(one.piece.name, one.x, one.y, one.piece.window) for one in laid),
        marks=(*marks, *leaders, *bars, *samples),
        words=(*words, *found, *measures, *meant),
        dropped=tuple(dropped),
    )


def _stamp(piece: Piece, page: str) -> list[Wish]:
    """Name, date, fingerprint, page inside what is cut out, as far as there is room. [mm]"""
    f = piece.free
    if not _has_room(piece):
        return []
    lines = [*piece.stamp, page]
    tries = [(lines, TEXT), ([f"{lines[0]} · {lines[1]}", page], TEXT), (lines, SMALL)]
    tries += [([" · ".join(lines)], SMALL), (lines[:2], SMALL), (lines[:1], SMALL)]
    for rows, size in tries:
        wide = max(extent(line, size=size)[0] for line in rows)
        high = (len(rows) - 1) * LEADING * size + size
        if wide > f.width - 4.0 or high > f.height - 2.0:
            continue
        x, y = (f.left + f.right) / 2, (f.low + f.high) / 2 + high / 2 - 0.76 * size
        shifts = [0.0, *(way * off for off in (8.0, 16.0, 24.0) for way in (1, -1))]
        places = tuple(Place(x + shift, y, "center") for shift in shifts)
        return [Wish("\n".join(rows), places, 0, size)]
    return []


def _lettered(
    wishes: Sequence[tuple[Wish, _Laid]],
    marks: Sequence[Mark],
    fixed: Sequence[Word],
    paper: Paper,
) -> tuple[list[Word], list[Mark], list[str]]:
    """Words that find a place clear of every line and of one another. [mm]"""
    segments = [(*a, *b) for mark in marks for a, b in pairwise(mark.points)]
    for word in fixed:
        x0, y0, x1, y1 = word.box
        segments += [(x0, y0, x1, y1), (x0, y1, x1, y0), (x0, y0, x1, y0), (x0, y1, x1, y1)]
    page = Page(
        paper.width,
        paper.height,
        np.array(segments, dtype=np.float64).reshape(-1, 4),
        most=len(wishes),
        margin=_PAPER_EDGE,
        clear=_CLEAR,
    )
    labels = [
        Label(
            wish.text,
            tuple(Place(*one.at(p.x, p.y), p.anchor) for p in wish.places),
            wish.rank,
            wish.size,
        )
        for wish, one in wishes
    ]
    placed, dropped = page.settle(labels)
    words = [
        Word(line, place.x, y, label.size, place.anchor)
        for label, place, _ in placed
        for line, y in lines_of(label, place)
    ]
    leaders = [Mark("leader", place.leader) for _, place, _ in placed if place.leader]
    return words, leaders, dropped
