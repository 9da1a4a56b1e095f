"""The sheets of a box: its pieces laid on pages, one after the other, and lettered."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from itertools import pairwise

import numpy as np

from toolkit.pictures.kit.lettering import LEADING, Label, Slot, extent, lines_of
from toolkit.pictures.kit.placing import Page
from toolkit.pictures.sheets.margins import LINE, check_bars, heading, meanings, page_sentence, room
from toolkit.pictures.sheets.marks import (
    SMALL,
    TEXT,
    CutOut,
    Extent,
    Mark,
    Word,
    wrapped,
)
from toolkit.pictures.sheets.page import PAPERS, Paper, SheetPage
from toolkit.pictures.sheets.sections import section_pieces
from toolkit.pictures.sheets.tiles import tiled
from toolkit.pictures.sheets.walls import wall_piece, walls_of
from toolkit.plan import Plan

_CAPTION = 124.0  # the least that a caption is wide: two pieces stand side by side [mm]
_ABOVE = 2.6  # between a caption and its piece, where folds run on [mm]
_BELOW = 2 * LEADING * SMALL + 1.0  # for the words under a piece [mm]
_BETWEEN = 6.0  # two pieces beside one another [mm]
_ROWS = 0.4  # two pieces one above the other [mm]
_CLEAR = 0.5  # round every word [mm]
_PAPER_EDGE = 5.0  # nothing is written nearer to it [mm]


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
    pieces = [wall_piece(wall, plan, day=on) for wall in walls_of(plan)]
    pages = _paged([*pieces, *section_pieces(plan, day=on)], room(sheet, works=plan.works))
    return tuple(
        _page(laid, plan, sheet, day=on, number=number, of=len(pages))
        for number, laid in enumerate(pages, 1)
    )


def _caption(piece: CutOut, room: float) -> list[str]:
    """A caption as wide as its piece, or as the page where nothing stands beside it. [mm]"""
    width = piece.caption_width or max(_CAPTION, piece.window.width)
    if width + _BETWEEN + _CAPTION > room:
        width = room
    texts = [*piece.caption, *([] if piece.has_room else [" · ".join(piece.stamp)])]
    return [line for text in texts for line in wrapped(text, width=width)]


def _paged(pieces: Sequence[CutOut], space: Extent) -> list[list[CutOut]]:
    """Pieces in rows, rows on pages, in their order. [mm]"""
    pages: list[list[CutOut]] = [[]]
    left, top, row = space.left, space.high, 0.0
    free = 0
    for whole in pieces:
        # A part of a piece has a line more to say how it is joined.
        lines = len(_caption(whole, space.width)) + 2
        most = space.height - lines * LINE - _ABOVE - _BELOW
        parts, free = tiled(whole, width=space.width, height=most, first=free)
        for piece in parts:
            said = _caption(piece, space.width)
            wide, tall = piece.window.width, piece.window.height
            width = max(wide, piece.caption_width, *(extent(line, size=TEXT)[0] for line in said))
            high = len(said) * LINE + _ABOVE + tall
            if left > space.left and left + width > space.right + 1e-6:
                left, top, row = space.left, top - row - _ROWS, 0.0
            if top - high - _BELOW < space.low - 1e-6 and pages[-1]:
                pages.append([])
                left, top, row = space.left, space.high, 0.0
            # A narrow piece under a wide caption stands in the middle of it.
            x, y = left + (width - wide) / 2 - piece.window.left, top - high - piece.window.low
            pages[-1].append(replace(piece, x=x, y=y, corner=(left, top)))
            left, row = left + width + _BETWEEN, max(row, high + _BELOW)
    return pages


def _page(
    laid: Sequence[CutOut], plan: Plan, paper: Paper, *, day: str, number: int, of: int
) -> SheetPage:
    page = f"{number} of {of}"
    marks: list[Mark] = []
    words, wishes = [*heading(plan, paper, day=day, page=f"page {page}")], []
    space = room(paper, works=plan.works)
    for piece in laid:
        for i, line in enumerate(_caption(piece, space.width)):
            words.append(Word(line, piece.corner[0], piece.corner[1] - 0.76 * TEXT - i * LINE))
        stamp = _stamp(piece, f"page {page}")
        drawn, asked = replace(piece, wishes=(*stamp, *piece.wishes)).on_page()
        marks += drawn
        wishes += asked
    bars, measures = check_bars(paper, units=plan.choices.rule.units)
    found, leaders, dropped = _lettered(wishes, [*marks, *bars], words, paper)
    samples, meant = meanings(used={mark.pen for mark in marks})
    return SheetPage(
        paper=paper,
        number=number,
        of=of,
        sentence=page_sentence([piece.name for piece in laid], plan, page=page),
        pieces=tuple(laid),
        marks=(*marks, *leaders, *bars, *samples),
        words=(*words, *found, *measures, *meant),
        dropped=tuple(dropped),
    )


def _stamp(piece: CutOut, page: str) -> list[Label]:
    """Name, issue and date, page inside what is cut out, as far as there is room. [mm]"""
    f = piece.free
    if not piece.has_room:
        return []
    lines = [*piece.stamp, page]
    tries = [(lines, TEXT), ([f"{lines[0]} · {lines[1]}", page], TEXT), (lines, SMALL)]
    tries += [([" · ".join(lines)], SMALL), (lines[:2], SMALL), (lines[:1], SMALL)]
    for rows, size in tries:
        wide = max(extent(line, size=size)[0] for line in rows)
        high = (len(rows) - 1) * LEADING * size + size
        if wide <= f.width - 4.0 and high <= f.height - 2.0:
            x, y = (f.left + f.right) / 2, (f.low + f.high) / 2 + high / 2 - 0.76 * size
            shifts = (0.0, 8.0, -8.0, 16.0, -16.0, 24.0, -24.0)
            places = tuple(Slot(x + shift, y, "center") for shift in shifts)
            return [Label("\n".join(rows), places, 0, size)]
    return []


def _lettered(
    wishes: Sequence[Label], marks: Sequence[Mark], fixed: Sequence[Word], paper: Paper
) -> tuple[list[Word], list[Mark], list[str]]:
    """Words that find a place clear of every line and of one another. [mm]"""
    segments = [(*a, *b) for mark in marks for a, b in pairwise(mark.points)]
    size, lines = (paper.width, paper.height), np.array(segments).reshape(-1, 4)
    page = Page(*size, lines, most=len(wishes), margin=_PAPER_EDGE, clear=_CLEAR)
    page.barred = [(0, word.box) for word in fixed]
    placed, dropped = page.settle(wishes)
    words = [
        Word(line, place.x, y, label.size, place.anchor)
        for label, place, _ in placed
        for line, y in lines_of(label, place)
    ]
    leaders = [Mark("leader", place.leader) for _, place, _ in placed if place.leader]
    return words, leaders, dropped
