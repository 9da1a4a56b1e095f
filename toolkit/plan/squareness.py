"""Parts out of square, as measured: what that does to joints, grooves, panels and diagonals.

A wall's length is read along its bottom edge, a panel's along its middle; from there an end that
is out of square runs off. Which way it runs is not asked: the worse way is reckoned with.
"""

from __future__ import annotations

from dataclasses import dataclass

from toolkit.box import Design, Panel
from toolkit.results import WALLS, Term, Working, below

GAPS = ("end_out", "end_lean", "edge_out")

KINDS = {
    "along": "clearance along the grain",
    "hold": "hold at an end, pushed to the other",
    "across": "clearance across the grain",
    "grip": "hold at a long edge, dry and pushed to the other",
    "tongue": "play of the tongue",
    "reach": "reach into the back groove",
}


@dataclass(frozen=True, slots=True)
class Room:
    """One thing that an end or an edge out of square takes room from: one of ``KINDS``.

    ``left`` is what remains of it at the worst corner, ``need`` the least that does. [mm]
    """

    panel: Panel
    kind: str
    left: Working
    need: float

    @property
    def name(self) -> str:
        """Which room of which panel."""
        return f"{self.panel.name}, {KINDS[self.kind]}"

    @property
    def fails(self) -> bool:
        """Whether it is enough no more, though it was with everything square."""
        return below(self.left.value, self.need) and not below(self.left.terms[0].value, self.need)


def measured(d: Design) -> dict[str, float]:
    """The gaps under a square that were measured, by key of the file's ``[made]``. [mm]"""
    keys = [f"{wall}_{gap}" for wall in WALLS for gap in GAPS]
    keys += ["bottom_end_out", "lid_end_out"]
    values = {key: getattr(d.choices.made, key) for key in keys}
    return {key: value for key, value in values.items() if value is not None}


def _at(d: Design, walls: tuple[str, ...], height: float) -> Term:
    """How much the worst of some walls is longer or shorter so far up than along its foot. [mm]"""
    worst = Term("walls", 0.0)
    for wall in walls:
        out = getattr(d.choices.made, f"{wall}_end_out") or 0.0
        tall = d.frame.front_height if wall == "front" else d.frame.wall_height
        share = min(height / tall.value, 1.0)
        if out * share > -worst.value:
            worst = Term(f"{wall}'s end out of square, so far up", -out * share)
    return worst


def lean(d: Design, wall: str) -> float:
    """How far a wall's grooves lean over their depth, ploughed from an edge that is out.

    Parameters
    ----------
    d : Design
        The box, with what was measured of it. [mm]
    wall : str
        ``"side"``, ``"back"`` or ``"front"``.

    Returns
    -------
    float
        What it takes from the play of a tongue. [mm]

    Source
    ------
    Geometry: the edge's gap over the wall's thickness, times the groove's depth.
    """
    out = getattr(d.choices.made, f"{wall}_edge_out") or 0.0
    thick, depth = getattr(d.frame, f"{wall}_thickness").value, d.choices.groove.depth
    return float(out * depth / thick)


def _leaning(d: Design) -> Term:
    most, wall = max((lean(d, wall), wall) for wall in WALLS)
    return Term(f"lean of the {wall}'s groove", -most)


def rooms(d: Design) -> tuple[Room, ...]:
    """What is left to the panels at their worst corner and edge, square or not.

    Parameters
    ----------
    d : Design
        The box, with what was measured of it. [mm]

    Returns
    -------
    tuple of Room
        For each panel in grooves its clearances, its hold and its tongue's play. [mm]

    Source
    ------
    Geometry: an end out by e over the width b lies e · y / b off at a distance y.
    """
    c, f, found = d.choices, d.frame, []
    for panel in d.grooved:
        is_lid = panel.name == "lid"
        span = (f.lid_groove if is_lid else None) or f.bottom_groove
        up = (span.low + span.high) / 2
        own = getattr(c.made, f"{panel.name}_end_out") or 0.0
        long, wide = _at(d, ("side",), up), _at(d, ("back", "front"), up)
        damp, grip = panel.swelling + c.customs.swelling_room, c.customs.grip_least
        play = c.panels.lid_tongue if is_lid else c.panels.bottom_tongue
        rows = [
            ("across", panel.across, damp, [wide]),
            ("grip", panel.worst_grip, grip, [wide]),
            ("tongue", play, 0.0, [_leaning(d)]),
        ]
        if is_lid:
            reach = panel.length.value - f.front_thickness.value - f.inside_length.value
            # Pushed home it stands on its longer corner, which goes no deeper than the groove.
            short = own / 2 + max(0.0, reach + own / 2 - panel.reach) if own else 0.0
            need = c.customs.lid_reach_share * panel.reach
            rows.append(("reach", reach, need, [long, Term("its shorter corner", -short)]))
        else:
            longer, shorter = (Term(f"its {way} corner", -own / 2) for way in ("longer", "shorter"))
            rows.append(("along", panel.along, 0.0, [long, longer]))
            rows.append(("hold", panel.reach - panel.along, grip, [long, shorter]))
        for kind, value, need, taken in rows:
            terms = (Term("with everything square", value), *(term for term in taken if term.value))
            found.append(Room(panel, kind, Working(KINDS[kind], terms), need))
    return tuple(found)
