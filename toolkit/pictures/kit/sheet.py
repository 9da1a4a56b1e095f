"""The sheet that a picture is drawn on: collects marks and labels, and hands the picture over."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from toolkit.pictures.kit.ink import Image, Stroke, written
from toolkit.pictures.kit.lettering import Box, Label, Place
from toolkit.pictures.kit.pens import PENS
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
TEXT = 9.5  # [pt]
PAPER_TEXT = 11.7  # 11 pt when a picture is printed 508 pt (179 mm) wide [pt]
# Beyond so many no remark is added: two titles, the unit, and what an eye takes in besides.
MOST_LABELS = 20


class Sheet:
    """Collects what is to be drawn. Points on the page, origin lower left, y upwards. [pt]"""

    def __init__(
        self, *, scale: float, width: float = WIDTH, height: float = 350.0, text: float = TEXT
    ) -> None:
        self.scale, self.width, self.height, self.text = scale, width, height, text
        self._strokes: dict[str, list[Stroke]] = {}
        self._clips: list[Sequence[Sequence[Point]]] = []
        self._images: list[Image] = []
        self._outlines: list[Outline] = []
        self._labels: list[Label] = []

    def line(
        self,
        pen: str,
        points: Sequence[Point],
        *,
        closed: bool = False,
        owners: Iterable[int] = (),
        clip: int | None = None,
    ) -> None:
        """A line, or an area for a pen that fills. [pt]

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

    def write(
        self,
        text: str,
        places: Sequence[Place],
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

    def picture(self, sentence: str, *, most: int = MOST_LABELS) -> Picture:
        """Find the labels their places, lay everything down, and hand the picture over."""
        page = Page(self.width, self.height, self._segments(), most, grows=True)
        placed, dropped = page.settle(self._labels)
        self.height = page.height
        if page.floor < 0:
            placed = self._raised(placed, by=-page.floor)
        here = {label.number for label, _, _ in placed}
        for pen, strokes in self._strokes.items():
            # A dimension line without its figure says nothing.
            self._strokes[pen] = [
                stroke for stroke in strokes if not stroke.owners or stroke.owners & here
            ]
        for label, place, _ in placed:
            if place.leader:
                self.line("wrong dimension" if label.red else "dimension", place.leader)
        drawn = Drawn(
            width=self.width * PX_PER_PT,
            height=self.height * PX_PER_PT,
            text=min((row.size for row in self._labels), default=self.text) * PX_PER_PT,
            scale=self.scale * PX_PER_PT,
            outlines=tuple(self._outlines),
            strokes=tuple(
                (pen, (*stroke.points, stroke.points[0]) if stroke.closed else stroke.points)
                for pen, strokes in self._strokes.items()
                for stroke in strokes
            ),
            labels=tuple(
                LabelBox(label.text, *(edge * PX_PER_PT for edge in box), kind=label.kind)
                for label, _, box in placed
            ),
            dropped=tuple(dropped),
        )
        svg, mark = written(
            self._strokes,
            clips=self._clips,
            images=self._images,
            words=[(label, place) for label, place, _ in placed],
            sentence=sentence,
            width=self.width,
            height=self.height,
        )
        return Picture(svg, sentence, drawn, mark)

    def _raised(
        self, placed: Sequence[tuple[Label, Place, Box]], *, by: float
    ) -> list[tuple[Label, Place, Box]]:
        """Everything moved up the page, for what has been written below its old foot. [pt]"""

        def up(points: Iterable[Point]) -> tuple[Point, ...]:
            return tuple((x, y + by) for x, y in points)

        self.height += by
        for pen, strokes in self._strokes.items():
            self._strokes[pen] = [replace(row, points=up(row.points)) for row in strokes]
        self._clips = [[up(region) for region in regions] for regions in self._clips]
        self._images = [replace(image, y=image.y + by) for image in self._images]
        return [
            (label, replace(place, y=place.y + by, leader=up(place.leader)), moved)
            for label, place, (x0, y0, x1, y1) in placed
            for moved in [(x0, y0 + by, x1, y1 + by)]
        ]

    def _segments(self) -> NDArray[np.float64]:
        """Every piece of line that a label must keep off."""
        rows = []
        for pen, strokes in self._strokes.items():
            if PENS[pen].blocks:
                for stroke in strokes:
                    points = stroke.points
                    rows += [(*a, *b) for a, b in pairwise(points)]
                    if stroke.closed:
                        rows.append((*points[-1], *points[0]))
        return np.array(rows, dtype=np.float64).reshape(-1, 4)
