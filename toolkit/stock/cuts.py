"""The saw cuts of a layout, in the order in which a person makes them.

All crosscuts come first, measured from the board's left end; then each section is ripped,
measured from its lower edge; then a strip longer than its part is cut to length. A line lies in
the middle of the gap between two parts, so that saw and plane have half of it on either side.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Literal

from toolkit.measures import Rule
from toolkit.results import SizedText, TaggedSize
from toolkit.stock.laid import Laid, LaidSection, Strip

Span = tuple[float, float]

_NOISE = 1e-6


@dataclass(frozen=True, slots=True)
class SawCut:
    """One saw cut, numbered as it is made.

    ``at`` is the dimension to mark, from ``edge``; ``start`` and ``end`` are the ends of the line
    on the board, along and across from its lower left corner. [mm]
    """

    number: int
    kind: Literal["crosscut", "rip"]
    of: str
    at: float
    edge: str
    frees: str
    leaves: str
    start: tuple[float, float]
    end: tuple[float, float]
    board: str = ""

    def on(self, rule: Rule) -> TaggedSize:
        """Where it is marked, on somebody's rule and without its unit."""
        text = rule.show(self.at, fineness="sizes", unit=False)
        return TaggedSize(text, f"cut {self.number}, {self.board}", "position", self.at)

    def sentence(self, rule: Rule) -> SizedText:
        """The cut in words, on somebody's rule."""
        what = "Crosscut" if self.kind == "crosscut" else "Rip"
        rest = f"; what is left is {self.leaves}" if self.leaves else ""
        return SizedText.of(
            f"{what} {self.of} ",
            self.on(rule),
            f" {rule.units} from its {self.edge}; what comes off is {self.frees}{rest}.",
        )


def section_name(index: int) -> str:
    """A letter for a section: A, B, … Z, A2, B2, …"""
    letter = chr(ord("A") + index % 26)
    return f"section {letter}{index // 26 + 1 if index >= 26 else ''}"


def saw_lines(spans: Sequence[Span], *, whole: Span, gap: float) -> tuple[float, ...]:
    """Where to saw so that each span comes away by itself. [mm]

    One line between two spans, or two where the waste between them is a piece of its own; waste
    narrower than a gap is left on its part.

    >>> saw_lines([(0, 186), (191, 377)], whole=(0, 900), gap=5)
    (188.5, 379.5)
    """
    if not spans:
        return ()
    least, lines = max(gap, _NOISE) - _NOISE, []
    if spans[0][0] - whole[0] >= least:
        lines.append(spans[0][0] - gap / 2)
    for before, after in pairwise(spans):
        space = after[0] - before[1]
        if space < 2 * gap or (gap == 0 and space < _NOISE):
            lines.append((before[1] + after[0]) / 2)
        else:
            lines += [before[1] + gap / 2, after[0] - gap / 2]
    if whole[1] - spans[-1][1] >= least:
        lines.append(spans[-1][1] + gap / 2)
    return tuple(line for line in lines if whole[0] + _NOISE < line < whole[1] - _NOISE)


def saw_cuts(laid: Laid) -> tuple[SawCut, ...]:
    """The saw cuts that free every part of a layout, in order.

    Mark all crosscuts before the first, for the end that they are measured from goes with it.
    """
    board, made = laid.board, list[SawCut]()
    spans = [(section.start, section.end) for section in laid.sections]
    names = [section_name(index) for index in range(len(spans))]
    lines = saw_lines(spans, whole=(0.0, board.length), gap=laid.gap)
    for line, frees, leaves in _told(lines, spans, names, rest=""):
        ends = ((line, 0.0), (line, board.width))
        made.append(SawCut(0, "crosscut", "the board", line, "left end", frees, leaves, *ends))
    for section, name, (left, right) in zip(
        laid.sections, names, _stretches(lines, spans, (0.0, board.length)), strict=True
    ):
        made += _ripped(laid, section, name, left, right)
    return tuple(replace(cut, number=n, board=board.name) for n, cut in enumerate(made, 1))


def _ripped(
    laid: Laid, section: LaidSection, name: str, left: float, right: float
) -> Iterator[SawCut]:
    spans = [(strip.low, strip.high) for strip in section.strips]
    names = [_strip_name(strip) for strip in section.strips]
    whole = (0.0, laid.board.width)
    lines = saw_lines(spans, whole=whole, gap=laid.gap)
    for line, frees, leaves in _told(lines, spans, names, rest=""):
        ends = ((left, line), (right, line))
        yield SawCut(0, "rip", name, line, "lower edge", frees, leaves, *ends)
    for strip, of, (low, high) in zip(
        section.strips, names, _stretches(lines, spans, whole), strict=True
    ):
        parts = [(piece.x, piece.x + piece.length) for piece in strip.pieces]
        to_length = saw_lines(parts, whole=(left, right), gap=laid.gap)
        pieces = [piece.part for piece in strip.pieces]
        for line, frees, leaves in _told(to_length, parts, pieces, rest="spare"):
            ends = ((line, low), (line, high))
            strip_of = of if len(pieces) > 1 else f"the strip of {of}"
            yield SawCut(0, "crosscut", strip_of, line - left, "left end", frees, leaves, *ends)


def _strip_name(strip: Strip) -> str:
    names = [piece.part for piece in strip.pieces]
    return names[0] if len(names) == 1 else f"the run {' – '.join(names)}"


def _stretches(lines: Sequence[float], spans: Sequence[Span], whole: Span) -> list[Span]:
    """What each span really comes away in: from the line before it to the line after."""
    edges = [whole[0], *lines, whole[1]]
    return [
        (
            max(edge for edge in edges if edge <= span[0] + _NOISE),
            min(edge for edge in edges if edge >= span[1] - _NOISE),
        )
        for span in spans
    ]


def _told(
    lines: Sequence[float], spans: Sequence[Span], names: Sequence[str], *, rest: str
) -> Iterator[tuple[float, str, str]]:
    """Each line with what it frees on its lower side and, for the last, what it leaves."""
    before = float("-inf")
    for number, line in enumerate(lines):
        frees = _inside(before, line, spans, names) or "waste"
        leaves = ""
        if number == len(lines) - 1:
            leaves = _inside(line, float("inf"), spans, names) or rest
        yield line, frees, leaves
        before = line


def _inside(low: float, high: float, spans: Sequence[Span], names: Sequence[str]) -> str:
    for span, name in zip(spans, names, strict=True):
        if low - _NOISE <= span[0] and span[1] <= high + _NOISE:
            return name
    return ""
