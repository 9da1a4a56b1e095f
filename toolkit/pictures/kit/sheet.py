"""The sheet that a picture is drawn on: collects marks and labels, and hands the picture over."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from toolkit.pictures.kit.lettering import (
    PAPER,
    SCREEN,
    Box,
    Label,
    Placed,
    Slot,
    edition,
    lines_of,
    trimmed,
    wording,
)
from toolkit.pictures.kit.marks import Image, Ink, Marks, Words
from toolkit.pictures.kit.pens import INK, PENS, RED, Pen
from toolkit.pictures.kit.picture import (
    PX_PER_PT,
    Drawn,
    Kind,
    LabelBox,
    Outline,
    Picture,
    Point,
)
from toolkit.pictures.kit.placing import Page

WIDTH = 540.0  # 720 px on a screen [pt]
TEXT, PAPER_TEXT = SCREEN.text, PAPER.text  # [pt]
# Beyond so many no remark is added: two titles, the unit, and what an eye takes in besides.
MOST_LABELS = 20


@dataclass(frozen=True, slots=True)
class Stroke:
    """One line; with ``owners``, it is drawn only if one of these labels finds a place. [pt]"""

    points: Sequence[Point]
    closed: bool
    owners: frozenset[int] = frozenset()
    clip: int | None = None


class Sheet:
    """Collects what is to be drawn. Points on the page, origin lower left, y upwards. [pt]

    Its letters are never smaller than the edition wants. Labels keep so far off lines as ``clear``
    says; ``cap`` is how lines end.
    """

    def __init__(
        self,
        *,
        scale: float,
        width: float = WIDTH,
        height: float = 350.0,
        text: float = TEXT,
        clear: float = 1.3,
        cap: Literal["butt", "round"] = "butt",
    ) -> None:
        self.scale, self.width, self.height = scale, width, height
        self.text, self._clear, self._cap = max(text, edition().text), clear, cap
        self._low = 0.0
        self._strokes: dict[str | Pen, list[Stroke]] = {}
        self._clips: list[Sequence[Sequence[Point]]] = []
        self._images: list[Image] = []
        self._outlines: list[Outline] = []
        self._labels: list[Label] = []
        self._barred: list[tuple[int, Box]] = []
        self._placed: list[Placed] | None = None
        self._dropped: list[str] = []

    def line(
        self,
        pen: str | Pen,
        points: Sequence[Point],
        *,
        closed: bool = False,
        owners: Iterable[int] = (),
        clip: int | None = None,
    ) -> None:
        """A line, or an area for a pen that fills. [pt]

        Pens that have no name are laid down first, in the order of their first use.
        With ``owners`` it is drawn only if one of these labels is, with ``clip`` only inside
        those regions.
        """
        if len(points) > 1:
            stroke = Stroke(points, closed, frozenset(owners), clip)
            self._strokes.setdefault(pen, []).append(stroke)

    def within(self, *regions: Sequence[Point]) -> int:
        """Regions outside which lines may be kept from showing, and the number to ask by. [pt]"""
        self._clips.append(regions)
        return len(self._clips) - 1

    def image(self, png: bytes, *, x: float, y: float, width: float, height: float) -> None:
        """A shaded surface under all lines: a PNG, its lower left corner, its size. [pt]"""
        self._images.append(Image(png, x, y, width, height))

    def name(self, name: str, points: Sequence[Point]) -> None:
        """Remember a shape by its name, in the axes of its own view. [mm]"""
        self._outlines.append(Outline(name, tuple(points)))

    def keep_off(self, rank: int, *boxes: Box) -> None:
        """Rooms that words of such a rank or a higher one may not enter: x0, y0, x1, y1. [pt]"""
        self._barred += [(rank, box) for box in boxes]

    def write(
        self,
        text: str,
        places: Sequence[Slot],
        *,
        rank: int = 3,
        size: float | None = None,
        red: bool = False,
        at: Point | None = None,
        kind: Kind = "name",
    ) -> int:
        """Ask for a label at the first of some places that is free, and get its number. [pt]

        Where all are taken it goes on a leader as near to ``at`` as it can.
        """
        number = len(self._labels)
        size = size or self.text
        self._labels.append(Label(text, tuple(places), rank, size, red, number, at, kind))
        return number

    @property
    def next_label(self) -> int:
        """The number that the next label will have."""
        return len(self._labels)

    def settle(self, *, most: int = MOST_LABELS) -> Sequence[Placed]:
        """Find the labels their places; what is drawn afterwards may run through them."""
        if self._placed is None:
            lines = self._segments()
            page = Page(self.width, self.height, lines, most, clear=self._clear, grows=True)
            page.barred = self._barred
            self._placed, self._dropped = page.settle(self._labels)
            # A page that has grown keeps no more of it than its words stand on.
            ends = [y for _, _, (_, low, _, high) in self._placed for y in (low, high)]
            self._low = min([0.0, *(y - page.margin for y in ends)])
            self.height = max([self.height, *(y + page.margin for y in ends)])
        return self._placed

    def picture(self, sentence: str, *, most: int = MOST_LABELS) -> Picture:
        """Find the labels their places, lay everything down, and hand the picture over."""
        placed = self.settle(most=most)
        here = {label.number for label, _, _ in placed}
        for pen, strokes in self._strokes.items():
            # A dimension line without its figure says nothing.
            self._strokes[pen] = [
                stroke for stroke in strokes if not stroke.owners or stroke.owners & here
            ]
        for label, place, _ in placed:
            if place.leader:
                self.line("wrong dimension" if label.red else "dimension", place.leader)
        if not edition().still:
            placed, self._low, self.height = trimmed(
                placed, self._levels(), low=self._low, high=self.height
            )
        marks = Marks(
            width=self.width,
            low=self._low,
            high=self.height,
            inks=tuple(self._inks()),
            words=[
                Words(
                    wording(line), place.x, y, label.size, place.anchor, RED if label.red else INK
                )
                for label, place, _ in placed
                for line, y in lines_of(label, place)
            ],
            sentence=wording(sentence),
            images=self._images,
            cap=self._cap,
        )
        return Picture(sentence, self._drawn(placed), marks)

    def _inks(self) -> Iterator[Ink]:
        """One ink for each region that strokes of a pen are kept in, in the order of laying."""
        order: list[tuple[str | Pen, Pen, int]]
        order = [(pen, pen, 2) for pen in self._strokes if isinstance(pen, Pen)]
        order += [(name, pen, 1) for name, pen in PENS.items()]
        for name, pen, digits in order:
            parts: dict[int | None, list[tuple[Sequence[Point], bool]]] = {}
            for stroke in self._strokes.get(name, ()):
                parts.setdefault(stroke.clip, []).append((stroke.points, stroke.closed))
            for clip, lines in parts.items():
                yield Ink(pen, lines, () if clip is None else self._clips[clip], digits)

    def _drawn(self, placed: Sequence[Placed]) -> Drawn:
        low = self._low

        def shown(stroke: Stroke) -> Sequence[Point]:
            points = (*stroke.points, stroke.points[0]) if stroke.closed else stroke.points
            return points if low == 0 else tuple((x, y - low) for x, y in points)

        return Drawn(
            width=self.width * PX_PER_PT,
            height=(self.height - low) * PX_PER_PT,
            text=min((row.size for row in self._labels), default=self.text) * PX_PER_PT,
            scale=self.scale * PX_PER_PT,
            outlines=tuple(self._outlines),
            strokes=tuple(
                (pen, shown(stroke))
                for pen, strokes in self._strokes.items()
                if isinstance(pen, str)
                for stroke in strokes
            ),
            labels=tuple(
                LabelBox(
                    label.text,
                    *(edge * PX_PER_PT for edge in (x0, y0 - low, x1, y1 - low)),
                    kind=label.kind,
                )
                for label, _, (x0, y0, x1, y1) in placed
            ),
            dropped=tuple(self._dropped),
        )

    def _levels(self) -> list[float]:
        """How high on the page each corner of what is drawn lies. [pt]"""
        rows = [row for strokes in self._strokes.values() for row in strokes]
        levels = [y for row in rows for _, y in row.points]
        return levels + [y for row in self._images for y in (row.y, row.y + row.height)]

    def _segments(self) -> NDArray[np.float64]:
        """Every piece of line that a label must keep off."""
        rows = []
        for pen, strokes in self._strokes.items():
            if isinstance(pen, str) and PENS[pen].blocks:
                for stroke in strokes:
                    points = stroke.points
                    rows += [(*a, *b) for a, b in pairwise(points)]
                    if stroke.closed:
                        rows.append((*points[-1], *points[0]))
        return np.array(rows, dtype=np.float64).reshape(-1, 4)
