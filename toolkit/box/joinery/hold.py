"""What holds a corner: its glue, its corners of short grain, and what a saw can reach of it."""

from __future__ import annotations

from dataclasses import dataclass
from math import atan, degrees, radians, tan

from toolkit.box.designing import Design
from toolkit.box.joinery.slopes import cheek_length
from toolkit.measures import Rule


def lead_error(thickness: float, *, lead: float) -> float:
    """How far a saw that leans has gone astray where it leaves the board.

    Parameters
    ----------
    thickness : float
        Of the board that is sawn through. [mm]
    lead : float
        How far the saw leans from square. [deg]

    Returns
    -------
    float
        Error on the far face. [mm]

    Raises
    ------
    ValueError
        The saw leans by 90 degrees or more.

    Source
    ------
    thickness · tan(lead): geometry.

    >>> [round(lead_error(12, lead=lead), 2) for lead in (0.5, 1, 2)]
    [0.1, 0.21, 0.42]
    """
    if not abs(lead) < 90:
        raise ValueError(f"a saw can't lean by {lead:g}°; give less than 90")
    return thickness * tan(radians(lead))


@dataclass(frozen=True, slots=True)
class SocketReach:
    """How much of a half-blind socket's cheek a tilted saw cuts before it meets a line.

    ``saw_angle`` is between the saw's line and the inside face [deg]; ``share`` of the cheek's
    area, from 0 to a half. ``best_angle`` reaches the half. [deg]
    """

    tail_length: float
    thickness: float
    saw_angle: float
    share: float
    best_angle: float

    def sentence(self, rule: Rule) -> str:
        """What is sawn and what is left to the chisel."""
        size = f"{rule.exact(self.tail_length)} × {rule.exact(self.thickness)}"
        return (
            f"Of a socket's cheek, {size}, a saw held at {self.saw_angle:.0f}° to the inside face "
            f"cuts {self.share * 100:.0f} % before it meets a line; at {self.best_angle:.1f}° it "
            "would cut half. The chisel does the rest."
        )


def socket_reach(tail_length: float, *, thickness: float, saw_angle: float = 45.0) -> SocketReach:
    """How much of a half-blind socket a saw can reach.

    Parameters
    ----------
    tail_length : float
        Depth of the socket from the inside face. [mm]
    thickness : float
        Of the tail board: how far the socket runs in from the end. [mm]
    saw_angle : float
        Between the saw's line and the inside face. [deg]

    Returns
    -------
    SocketReach
        The share of the cheek that is sawn, at this angle and at best.

    Raises
    ------
    ValueError
        A size is not above 0, or the angle not between 0 and 90.

    Source
    ------
    Geometry: a straight cut between the two lines leaves a triangle. At 45° its share is
    shorter / (2 · longer).

    >>> round(socket_reach(8, thickness=12).share, 3)
    0.333
    """
    if not (tail_length > 0 and thickness > 0):
        raise ValueError(f"a socket of {tail_length:g} × {thickness:g} mm is none; give both sizes")
    if not 0 < saw_angle < 90:
        raise ValueError(f"a saw held at {saw_angle:g}° cuts no corner; give 45, or 1 to 89")
    lean = tan(radians(saw_angle))
    along = min(thickness, tail_length / lean)
    share = along * along * lean / (2 * tail_length * thickness)
    best = degrees(atan(tail_length / thickness))
    return SocketReach(tail_length, thickness, saw_angle, share, best)


@dataclass(frozen=True, slots=True)
class Hold:
    """One corner of a box: what holds it. Lengths in mm, area in mm², angle in degrees."""

    corner: str
    tails: int
    tail_length: float
    overhang: float
    angle: float
    cheek: float
    thickness: float
    glue_area: float
    socket: SocketReach | None

    def sentence(self, rule: Rule) -> str:
        """Glue and corners as a maker would weigh them."""
        return (
            f"Each {self.corner} corner: {2 * self.tails} cheeks of {rule.exact(self.cheek)} × "
            f"{rule.exact(self.thickness)} are {rule.area(self.glue_area)} of long grain glued to "
            f"long grain; the corners of its tails stand out {rule.exact(self.overhang)}."
        )


def holds(d: Design) -> tuple[Hold, ...]:
    """What holds the back and front corners; one without tails is left out.

    Only cheeks count, for end grain holds little glue (common practice, no source).
    """
    found = []
    for corner, board in zip((d.back, d.front), d.tail_board_thickness, strict=True):
        if not corner.tails:
            continue
        blind = d.choices.corner.joint == "half-blind"
        found.append(
            Hold(
                corner=corner.name,
                tails=len(corner.tails),
                tail_length=corner.tail_length,
                overhang=corner.overhang,
                angle=corner.angle,
                cheek=cheek_length(corner.tail_length, slope=corner.slope),
                thickness=board,
                glue_area=corner.glue_area(board),
                socket=socket_reach(corner.tail_length, thickness=board) if blind else None,
            )
        )
    return tuple(found)
