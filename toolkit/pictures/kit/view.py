"""A view: a part's own millimetres laid on the sheet, at one scale in both directions."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from toolkit.pictures.kit.picture import Point
from toolkit.pictures.kit.sheet import Sheet

# Scales that a drawing may have, finest first, so that a drawing keeps its scale while a slider
# moves a little. [pt/mm]
_STEPS = (10.0, 8.0, 6.3, 5.0, 4.0, 3.15, 2.5, 2.0, 1.6, 1.25)
SCALES = tuple(step * 10.0**-decade for decade in range(4) for step in _STEPS)
_SPARE = 1.06


@dataclass(frozen=True, slots=True)
class PartView:
    """One view on a sheet. ``x`` and ``y`` are where its zero lies on the page [pt].

    ``turn`` is -1 where the view's own x runs to the left.
    """

    sheet: Sheet
    x: float
    y: float
    scale: float
    turn: int = 1

    def at(self, x: float, z: float) -> Point:
        """A point of the part on the page. [mm to pt]"""
        return self.x + self.turn * x * self.scale, self.y + z * self.scale

    def across(self, x: float) -> float:
        """The page's x of a point so far along the view. [mm to pt]"""
        return self.x + self.turn * x * self.scale

    def up(self, z: float) -> float:
        """The page's y of a height above the bottom edge. [mm to pt]"""
        return self.y + z * self.scale

    def points(self, points: Sequence[Point]) -> list[Point]:
        """Points of the part on the page. [mm to pt]"""
        return [self.at(x, z) for x, z in points]

    def area(
        self,
        name: str,
        points: Sequence[Point],
        *,
        fill: str | None = None,
        edge: str | None = None,
    ) -> list[Point]:
        """A named shape, filled and edged as asked, and its points on the page. [mm to pt]"""
        page = self.points(points)
        self.sheet.name(name, points)
        for pen in (fill, edge):
            if pen is not None:
                self.sheet.line(pen, page, closed=True)
        return page

    def line(self, pen: str, *points: Point) -> None:
        """A line through points of the part. [mm]"""
        self.sheet.line(pen, self.points(points))


def rectangle(across: tuple[float, float], up: tuple[float, float]) -> list[Point]:
    """The four corners of an upright rectangle between two limits each way."""
    (x0, x1), (z0, z1) = across, up
    return [(x0, z0), (x1, z0), (x1, z1), (x0, z1)]


def still_scale(*rooms: tuple[float, float], kept: float | None = None) -> float:
    """The scale at which everything fits, rounded down to a step so that it holds still.

    ``rooms`` are pairs of a size [mm] and the room for it on the page [pt]; the result, at least
    6 % smaller than they allow, is in pt/mm.
    Source: steps of a quarter are preferred numbers, ISO 3 (R10).

    >>> still_scale((64.0, 235.0)), still_scale((67.0, 235.0))
    (3.15, 3.15)
    >>> still_scale((72.0, 235.0)), still_scale((72.0, 235.0), kept=3.15)
    (2.5, 3.15)
    """
    sizes = [(max(size, 1e-3), room) for size, room in rooms]
    if kept is not None and all(size * kept <= room for size, room in sizes):
        return kept
    most = min(room / (size * _SPARE) for size, room in sizes)
    return next((scale for scale in SCALES if scale <= most), SCALES[-1])


def band(shape: Sequence[Point], *, low: float, high: float) -> list[Point]:
    """What of a convex shape lies between two heights. [mm]"""
    points = list(shape)
    for limit, sign in ((low, 1.0), (high, -1.0)):
        kept: list[Point] = []
        for (x0, z0), (x1, z1) in zip(points, [*points[1:], *points[:1]], strict=True):
            inside, next_inside = sign * (z0 - limit) >= 0, sign * (z1 - limit) >= 0
            if inside:
                kept.append((x0, z0))
            if inside != next_inside:
                share = (limit - z0) / (z1 - z0)
                kept.append((x0 + share * (x1 - x0), limit))
        points = kept
        if not points:
            return []
    return points


def upright_band(shape: Sequence[Point], *, left: float, right: float) -> list[Point]:
    """What of a convex shape lies between two uprights. [mm]"""
    return [(x, z) for z, x in band([(z, x) for x, z in shape], low=left, high=right)]
