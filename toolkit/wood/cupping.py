"""How a board cups as it dries or swells, and how its section changes shape.

Think of the board's end as drawn on the end of the log, each point at a distance ``r`` from the
pith and an angle round it. Wood moves by one strain along ``r`` and by a larger one round the
ring. So each point goes to ``r (1 + radial)``, and its angle is multiplied by
``(1 + tangential) / (1 + radial)``: the log closes or opens like a fan. The outline of the board
after that is its new shape, with no approximation as long as the rings are circles.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

from toolkit.results import above_zero
from toolkit.wood._checks import rings_in_range
from toolkit.wood.law import strain
from toolkit.wood.woods import Species

Point = tuple[float, float]

# Heights under this are rounding noise, or a hollow that no plane or eye could find. [mm]
NO_CUP = 1e-6
EDGE_POINTS = 9  # points of the outline up each edge, between the corners


class PithInside(ValueError):  # noqa: N818 - its name is what went wrong
    """The pith lies in the board: as it dries it splits there, and no cup can be foretold."""


@dataclass(frozen=True, slots=True)
class Cup:
    """A board's end before and after the change of moisture. [mm]

    Outlines run round the section from the lower left corner, x along the width and y through the
    thickness, bark side up; the middle of the board is (0, 0) and its middle line lies level.
    Widths are between the middles of the edges; hollows are of the face from the line between its
    corners, negative for round.
    """

    width_before: float
    width_after: float
    bark_hollow: float
    heart_hollow: float
    outline_before: tuple[Point, ...]
    outline_after: tuple[Point, ...]

    @property
    def hollow_side(self) -> str:
        """Which face goes hollow: ``bark``, ``heart`` or ``neither``."""
        if max(self.bark_hollow, self.heart_hollow) < NO_CUP:
            return "neither"
        # A section may also turn lens-shaped, both faces hollow: the deeper one is named.
        difference = self.bark_hollow - self.heart_hollow
        return "neither" if abs(difference) < NO_CUP else "bark" if difference > 0 else "heart"

    @property
    def width_change(self) -> float:
        """Change of width, positive when the board swells. [mm]"""
        return self.width_after - self.width_before

    def sentence(self, *, show: Callable[[float], str] = "{:.2f} mm".format) -> str:
        """Say the cup and the change of width, lengths written by ``show``."""
        change = "wider" if self.width_change >= 0 else "narrower"
        width = f"the board gets {show(abs(self.width_change))} {change}"
        if self.hollow_side == "neither":
            return f"The faces stay alike and {width}."
        depth = self.bark_hollow if self.hollow_side == "bark" else self.heart_hollow
        return f"The {self.hollow_side} side goes hollow by {show(depth)} and {width}."


def cup(
    width: float,
    *,
    thickness: float,
    ring_radius: float,
    species: Species | str,
    moisture_from: float,
    moisture_to: float,
    rings: float = 0.0,
    points: int = 41,
) -> Cup:
    """Shape of a board's end after a change of moisture, by the exact map of the log's end.

    Parameters
    ----------
    width, thickness : float
        Size of the section at ``moisture_from``. [mm]
    ring_radius : float
        Distance from the pith to the middle of the section. [mm]
    species : Species or str
        The wood, or a name that finds it.
    moisture_from, moisture_to : float
        Moisture content at the start and at the end. [%]
    rings : float
        Angle between the ring at the middle of the section and the width: 0 for a board sawn
        flat over the pith, 90 for one with the pith beyond its edge. [degrees]
    points : int
        Points along each face, at least 3; an odd number has one at the middle. [1]

    Returns
    -------
    Cup
        Hollows, widths and outlines. [mm]

    Raises
    ------
    PithInside
        The pith lies in the section: the board splits.
    ValueError
        A size, an angle or a moisture is impossible.

    Source
    ------
    Strains by the handbook (FPL-GTR-190), Eq. 13-3; the map is plane geometry, derived here.

    >>> cup(116, thickness=9, ring_radius=80, species="black cherry",
    ...     moisture_from=10, moisture_to=6).hollow_side
    'bark'
    """
    return cup_from_strains(
        width,
        thickness=thickness,
        ring_radius=ring_radius,
        tangential=strain(species, rings=0, moisture_from=moisture_from, moisture_to=moisture_to),
        radial=strain(species, rings=90, moisture_from=moisture_from, moisture_to=moisture_to),
        rings=rings,
        points=points,
    )


def cup_from_strains(
    width: float,
    *,
    thickness: float,
    ring_radius: float,
    tangential: float,
    radial: float,
    rings: float = 0.0,
    points: int = 41,
) -> Cup:
    """The same as ``cup`` for strains one has already, positive when the wood swells. [mm, mm/mm]

    Plane geometry, derived here; exact for rings that are circles round the pith.
    """
    above_zero(width, name="width", unit="mm", example="116")
    above_zero(thickness, name="thickness", unit="mm", example="9")
    above_zero(ring_radius, name="ring_radius", unit="mm", example="80")
    rings_in_range(rings)
    if points < 3:
        raise ValueError(f"points was given as {points}: a face needs at least 3 to show a hollow.")
    turn = math.radians(rings)
    # From the pith to the middle of the section, in the section's own directions.
    over, up = ring_radius * math.sin(turn), ring_radius * math.cos(turn)
    if over <= width / 2 and up <= thickness / 2:
        raise PithInside(
            f"With the pith {ring_radius:g} mm from the middle at {rings:g} degrees it lies in a "
            f"{width:g} x {thickness:g} mm section: the board splits as it dries. Saw it to leave "
            "the pith out, or give a larger ring radius."
        )
    closing = (1 + tangential) / (1 + radial)

    def moved(x: float, y: float) -> Point:
        # Angles are measured from the line through the middle of the section, so that the jump
        # of a full turn lies on the far side of the pith, where there is no board.
        angle = math.atan2(y + up, x + over) - math.atan2(up, over)
        angle = math.remainder(angle, 2 * math.pi) * closing + math.atan2(up, over)
        distance = math.hypot(x + over, y + up) * (1 + radial)
        return distance * math.cos(angle), distance * math.sin(angle)

    across = [width * (i / (points - 1) - 0.5) for i in range(points)]
    half = thickness / 2
    heart = [moved(x, -half) for x in across]
    bark = [moved(x, half) for x in across]
    rise = [thickness * (i / (EDGE_POINTS + 1) - 0.5) for i in range(1, EDGE_POINTS + 1)]
    left, right = moved(-width / 2, 0), moved(width / 2, 0)
    middle = moved(0, 0)
    lean = math.atan2(right[1] - left[1], right[0] - left[0])
    cosine, sine = math.cos(lean), math.sin(lean)

    def level(point: Point) -> Point:
        x, y = point[0] - middle[0], point[1] - middle[1]
        return x * cosine + y * sine, y * cosine - x * sine

    before = [(x, -half) for x in across] + [(width / 2, y) for y in rise]
    # The second half of the way round is the first, seen from the other end of the board.
    before += [(-x, -y) for x, y in before]
    after = [level(moved(x, y)) for x, y in before]
    return Cup(
        width_before=width,
        width_after=math.dist(left, right),
        bark_hollow=_hollow(bark),
        heart_hollow=-_hollow(heart),
        outline_before=tuple(before),
        outline_after=tuple(after),
    )


def _hollow(face: list[Point]) -> float:
    """Greatest distance of a face below the line from its first point to its last."""
    (x0, y0), (x1, y1) = face[0], face[-1]
    length = math.hypot(x1 - x0, y1 - y0)
    depths = (((x - x0) * (y1 - y0) - (y - y0) * (x1 - x0)) / length for x, y in face)
    return max(depths, key=abs)
