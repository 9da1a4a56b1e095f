"""Dimension lines as a draughtsman draws them.

Thin lines, extension lines that begin a small gap off the part, filled arrowheads, the figure
beside or above its line, never on it and never upside down. Where there is no room between two
extension lines the arrows stand outside and point in; in a row of short steps a dot parts them.

Source
------
ISO 129-1:2018, elements of dimensioning (from memory).
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Literal

from toolkit.pictures.kit.lettering import LEADING, Slot, extent
from toolkit.pictures.kit.picture import Point
from toolkit.pictures.kit.sheet import Sheet
from toolkit.pictures.kit.strokes import ARROW, HALF_ARROW, circle
from toolkit.pictures.kit.view import PartView

GAP = 1.8
OVERSHOOT = 2.2
DOT = 1.1
OUTSIDE = 7.0
BESIDE = 5.0
# The least room between two extension lines in which two arrowheads do not touch. [pt]
ROOM = 2 * ARROW + 2.0

Outer = tuple[float | None, float | None]  # how far out words must stand at either end [pt]


@dataclass(frozen=True, slots=True)
class Dimension:
    """One dimension of a row: its figure, how much it matters, whether it is wrong.

    Without a figure the step is passed over.
    """

    text: str | None
    rank: int = 3
    red: bool = False


def row(
    sheet: Sheet,
    stops: Sequence[float],
    steps: Sequence[Dimension],
    *,
    at: float,
    starts: float | Sequence[float],
    axis: Literal["up", "along"],
    side: int = 1,
) -> None:
    """A row of dimensions: ``stops`` along it, its line ``at`` across it. [pt]

    Extension lines come from ``starts``; 1 as ``side`` writes figures right of an upright row.

    Source: ISO 129-1:2018 (from memory).
    """
    begins = [starts] * len(stops) if isinstance(starts, (int, float)) else list(starts)

    def on(along: float, across: float) -> Point:
        return (across, along) if axis == "up" else (along, across)

    shown = [i for i, step in enumerate(steps) if step.text is not None]
    numbers = {i: sheet.next_label + count for count, i in enumerate(shown)}
    for i, stop in enumerate(stops):
        owners = [numbers[k] for k in (i - 1, i) if k in numbers]
        away = 1.0 if at > begins[i] else -1.0
        if owners and abs(at - begins[i]) > GAP:
            line = [on(stop, begins[i] + away * GAP), on(stop, at + away * OVERSHOOT)]
            sheet.line("dimension", line, owners=owners)
    for i in shown:
        step, (low, high) = steps[i], stops[i : i + 2]
        hand = _Hand(sheet, on, at, step.red, numbers[i])
        hand.line(low, high)
        # The room beyond either end: None where there is a next step, which shares the end.
        rooms = [stops[k + 1] - stops[k] if k in numbers else None for k in (i - 1, i + 1)]
        below = hand.end(low, 1.0, room=high - low, beyond=rooms[0])
        above = hand.end(high, -1.0, room=high - low, beyond=rooms[1])
        text, size = str(step.text), sheet.text
        places = (
            _beside(text, size, low, high, (below, above), at, side)
            if axis == "up"
            else _above(text, size, low, high, (below, above), at, side)
        )
        middle = on((low + high) / 2, at)
        sheet.write(text, places, rank=step.rank, red=step.red, at=middle, kind="size")


@dataclass(frozen=True, slots=True)
class _Hand:
    """Draws one dimension's own marks, which come and go with its figure."""

    sheet: Sheet
    on: Callable[[float, float], Point]
    at: float
    red: bool
    owner: int

    def _lay(self, pen: str, points: list[Point], *, closed: bool) -> None:
        name = f"wrong {pen}" if self.red else pen
        self.sheet.line(name, points, closed=closed, owners=(self.owner,))

    def line(self, a: float, b: float) -> None:
        self._lay("dimension", [self.on(a, self.at), self.on(b, self.at)], closed=False)

    def arrow(self, tip: float, way: float) -> None:
        back = tip + way * ARROW
        head = [(tip, 0.0), (back, -HALF_ARROW), (back, HALF_ARROW)]
        self._lay("arrow", [self.on(a, self.at + b) for a, b in head], closed=True)

    def end(self, stop: float, inward: float, *, room: float, beyond: float | None) -> float | None:
        """An arrow, or a dot that two short steps share; and how far out words must stand."""
        if room >= ROOM:
            self.arrow(stop, inward)
        elif beyond is None:
            past = stop - inward * (ARROW + OUTSIDE)
            self.arrow(stop, -inward)
            self.line(stop, past)
            return past
        elif beyond < ROOM:
            self._lay("arrow", circle(self.on(stop, self.at), DOT, count=16), closed=True)
        return stop if beyond is None else None


def single(
    sheet: Sheet,
    stops: tuple[float, float],
    text: str,
    *,
    at: float,
    starts: float | Sequence[float],
    axis: Literal["up", "along"],
    side: int = 1,
    rank: int = 3,
    red: bool = False,
) -> None:
    """One dimension between two stops; the rest as for `row`. [pt]"""
    row(sheet, stops, (Dimension(text, rank, red),), at=at, starts=starts, axis=axis, side=side)


def level(
    view: PartView,
    stops: Sequence[float],
    *steps: Dimension,
    start: float,
    off: float,
    side: int = 1,
) -> None:
    """A level row of dimensions between places of a view [mm], so far off its start. [pt]"""
    _from_view(view.sheet, [view.across(x) for x in stops], steps, start, off, "along", side)


def upright(
    view: PartView,
    stops: Sequence[float],
    *steps: Dimension,
    start: float,
    off: float,
    side: int = 1,
) -> None:
    """An upright row of dimensions between heights of a view [mm], so far off its start. [pt]"""
    _from_view(view.sheet, [view.up(z) for z in stops], steps, start, off, "up", side)


def _from_view(
    sheet: Sheet,
    stops: list[float],
    steps: Sequence[Dimension],
    start: float,
    off: float,
    axis: Literal["up", "along"],
    side: int,
) -> None:
    """A row whose stops may run either way. [pt]"""
    if stops[0] > stops[-1]:
        stops, steps = stops[::-1], steps[::-1]
    row(sheet, stops, steps, at=start + off, starts=start, axis=axis, side=side)


def _beside(
    text: str, size: float, low: float, high: float, outer: Outer, at: float, side: int
) -> list[Slot]:
    """Level with the middle of an upright dimension, on its own side first."""
    lines = text.split("\n")
    under, over = extent(lines[-1], size=size)[1], extent(lines[0], size=size)[2]
    drop = (len(lines) - 1) * LEADING * size
    middle = (low + high) / 2 - (under + over - drop) / 2
    anchor: Literal["left", "right"] = "left" if side > 0 else "right"
    other: Literal["left", "right"] = "right" if side > 0 else "left"
    # Where something stands level with its middle: farther up or down a long line; of a short
    # one on its other side, a little up or down, or past an end.
    along = [way * 1.5 * i for i in range(1, 9) for way in (1, -1)]
    shifts = [shift * size for shift in along]
    spots = [Slot(at + side * BESIDE, middle, anchor)]
    for shift in (shift for shift in shifts if abs(shift) < 0.4 * (high - low)):
        spots.append(Slot(at + side * BESIDE, middle + shift, anchor))
    spots.append(Slot(at - side * BESIDE, middle, other))
    for shift in (0.35, -0.35, 0.7, -0.7):
        spots.append(Slot(at + side * BESIDE, middle + shift * size, anchor))
    below, beyond = outer
    if beyond is not None:
        spots.append(Slot(at, beyond + 2.5 - under, "center"))
    if below is not None:
        spots.append(Slot(at, below - 2.5 - over, "center"))
    return spots


def _above(
    text: str, size: float, low: float, high: float, outer: Outer, at: float, side: int
) -> list[Slot]:
    """Above the middle of a level dimension, else beside its ends, else under it."""
    _, under, over = extent(text, size=size)
    middle, level = (low + high) / 2, at - (under + over) / 2
    spots = [Slot(middle, at + 2.4 - under, "center")]
    past: list[Slot] = []
    left, right = outer
    if left is not None:
        past.append(Slot(left - 3.0, level, "right"))
    if right is not None:
        past.append(Slot(right + 3.0, level))
    spots += past[::-1] if side > 0 else past
    spots.append(Slot(middle, at - OVERSHOOT - 2.4 - over, "center"))
    for way in (side, -side):
        spots.append(Slot(middle + way * 6.0, at + 2.4 - under, "left" if way > 0 else "right"))
    return spots
