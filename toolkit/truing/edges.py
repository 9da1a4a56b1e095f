"""Edges and gauge lines: how far out of square, how much remains, from which end, what hollow."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import atan2, degrees, isfinite, radians, tan
from typing import TYPE_CHECKING

import numpy as np

from toolkit.truing._arrays import arrays
from toolkit.truing._checks import above_zero, not_negative

if TYPE_CHECKING:
    from toolkit.measures import Rule

# A taper or a spread of less than this is not worth a stroke. [mm]
EVEN = 0.05  # custom, no source


def out_of_square(thickness: float, *, angle: float) -> float:
    """How far an edge that is out of square leans over the thickness of the board.

    Parameters
    ----------
    thickness : float
        Of the board. [mm]
    angle : float
        Between the edge and square. [degrees]

    Returns
    -------
    float
        The gap under the square's blade at the far face. [mm]

    Raises
    ------
    ValueError
        The thickness is not above 0, or the angle is 45 degrees or more.

    Source
    ------
    Geometry.

    >>> round(out_of_square(12, angle=0.5), 2)
    0.1
    """
    above_zero(thickness, name="thickness", example="12")
    if not (isfinite(angle) and abs(angle) < 45):
        raise ValueError(
            f"angle was given as {angle:g} degrees; give how far the edge is out of square, less "
            "than 45, such as 0.5"
        )
    return thickness * tan(radians(angle))


def angle_of_edge(gap: float, *, thickness: float) -> float:
    """How far an edge is out of square, from the gap under the blade of a square.

    Parameters
    ----------
    gap : float
        Between blade and edge, at the face away from the stock. [mm]
    thickness : float
        Of the board. [mm]

    Returns
    -------
    float
        The angle. [degrees]

    Raises
    ------
    ValueError
        The thickness is not above 0, or the gap is below 0.

    Source
    ------
    Geometry.

    >>> round(angle_of_edge(0.1, thickness=12), 2)
    0.48
    """
    not_negative(gap, name="gap", example="0.1")
    return degrees(atan2(gap, above_zero(thickness, name="thickness", example="12")))


@dataclass(frozen=True, slots=True)
class Remaining:
    """How much is left to plane along a board, down to a gauge line.

    Attributes
    ----------
    places : tuple of float
        Where it was measured, from the left end. [mm]
    left : tuple of float
        What is left above the line at each place, negative below it. [mm]
    line : float
        The thickness or width wanted. [mm]
    taper : float
        How much more is left at the last place than at the first, along the straight line that
        fits them best. [mm]
    """

    places: tuple[float, ...]
    left: tuple[float, ...]
    line: float
    taper: float

    @property
    def most(self) -> float:
        """The most that is left anywhere. [mm]"""
        return max(self.left)

    @property
    def spread(self) -> float:
        """Between the most and the least that is left. [mm]"""
        return max(self.left) - min(self.left)

    @property
    def undersize(self) -> bool:
        """Whether some place lies below the line already."""
        return min(self.left) < -1e-9

    def sentence(self, rule: Rule) -> str:
        """How much to plane, and from which end, in words."""
        if self.undersize:
            low = min(range(len(self.left)), key=self.left.__getitem__)
            return (
                f"At {rule.exact(self.places[low])} from the left end it is "
                f"{rule.exact(-self.left[low])} below {rule.exact(self.line)} already: gauge "
                f"{rule.exact(self.line + self.left[low])} all round instead, and plane to that."
            )
        if self.most < EVEN:
            return f"It is {rule.exact(self.line)} all along: leave it."
        if self.spread < EVEN:
            return f"Plane {rule.exact(self.most)} off all along."
        high = max(range(len(self.left)), key=self.left.__getitem__)
        said = (
            f"{rule.exact(self.most)} is left at {rule.exact(self.places[high])} from the left "
            f"end, {rule.exact(min(self.left))} where least is left."
        )
        if abs(self.taper) < self.spread / 2:
            hump = 0 < high < len(self.left) - 1
            first = "It does not taper: plane " + ("the middle" if hump else "the ends") + " first"
        else:
            end = "right" if self.taper > 0 else "left"
            first = (
                f"It tapers by {rule.exact(abs(self.taper))}: start at the {end} end, with strokes "
                "that reach a little further each time"
            )
        return f"{said} {first}; even it out, then take it down to the line in full strokes."


def to_gauge_line(readings: Sequence[tuple[float, float]], *, line: float) -> Remaining:
    """What is left to plane down to a gauge line, and from which end to begin.

    Parameters
    ----------
    readings : sequence of (place, size)
        From the left end, and the thickness or width read there. [mm]
    line : float
        The thickness or width wanted. [mm]

    Returns
    -------
    Remaining
        What is left at each place, in order from the left. [mm]

    Raises
    ------
    ValueError
        There are fewer than two readings or all lie at one place, one is no number or no size,
        or the line is not above 0.

    Source
    ------
    Geometry; the taper by least squares.

    >>> left = to_gauge_line([(0, 12.2), (93, 12.5), (186, 12.8)], line=12)
    >>> round(left.most, 2), round(left.taper, 2)
    (0.8, 0.6)
    """
    above_zero(line, name="line", example="12")
    rows = sorted((place, size) for place, size in readings)
    if len({place for place, _ in rows}) < 2:
        raise ValueError(
            "one place cannot tell a taper: measure near both ends at least, better in the middle "
            "too"
        )
    places, sizes = arrays(place=[row[0] for row in rows], size=[row[1] for row in rows])
    if sizes.min() <= 0:
        at = int(np.argmin(sizes))
        raise ValueError(
            f"the size read at {places[at]:g} mm is {sizes[at]:g} mm; no board is, measure it again"
        )
    slope = float(np.polyfit(places, sizes, 1)[0])
    return Remaining(
        places=tuple(places.tolist()),
        left=tuple((sizes - line).tolist()),
        line=float(line),
        taper=slope * float(np.ptp(places)),
    )
