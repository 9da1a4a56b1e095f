"""What an experienced maker would say of ends and edges out of square, once they are measured."""

from __future__ import annotations

from math import atan2, degrees

from toolkit.box import Design
from toolkit.box.customs import cite
from toolkit.plan.diagonals import diagonal_difference
from toolkit.plan.squareness import Room, lean, measured, rooms
from toolkit.results import GEOMETRY, SQUARE, WALLS, About, Finding, Level, Place, above

_square = About("square")
_SOURCE = f"{GEOMETRY}; {cite('square_most')}"

# What runs out of room: the code, what happens then, and what helps.
_FAILS = {
    "along": (
        "panel-corner-tight",
        "one corner stands on the floor of its groove before the joint is home, and holds it open",
        "Shoot its end true, and plane it shorter where it touches.",
    ),
    "hold": (
        "panel-corner-drops-out",
        "pushed to the other end, one corner hardly stays in its groove",
        "Make it anew with square ends, or plough that end deeper.",
    ),
    "across": (
        "swells-tight-at-an-end",
        "at one end the walls stand too close for the damp: it will burst the joint there",
        "Shoot the wall's end true, or plane the panel narrower.",
    ),
    "grip": (
        "drops-out-at-an-end",
        "at one end the walls stand too far apart: dry, it drops out there",
        "Shoot the wall's end true, or plough deeper.",
    ),
    "tongue": (
        "tongue-binds",
        "the groove leans, and the tongue binds in it before it is home",
        "Shoot the edge true before ploughing; in a groove ploughed already, plane the tongue "
        "thinner.",
    ),
    "reach": (
        "lid-corner-short",
        "closed, one corner falls short of the back groove and tips",
        "Shoot its end true; too short then, it has to be made anew.",
    ),
}


def check_square(d: Design) -> list[Finding]:
    """What parts out of square do to the box; nothing while none was measured."""
    gaps = measured(d)
    if not gaps:
        return []
    most = d.choices.customs.square_most
    found = [_wall(d, key, gap) for key, gap in gaps.items() if _is_wall(key) and above(gap, most)]
    if d.lift_off_lid is not None and above(gaps.get("lid_end_out", 0.0), most):
        found.append(_overhang(gaps["lid_end_out"]))
    room = rooms(d)
    found += [_room(d, row) for row in room if row.fails]
    found += [
        _square_enough(key, most)
        for key, gap in gaps.items()
        if _is_wall(key) and not above(gap, most)
    ]
    for name in ("bottom", "lid"):
        own = [row for row in room if row.panel.name == name]
        if f"{name}_end_out" in gaps and own and not any(row.fails for row in own):
            found.append(_fits(d, name, gaps[f"{name}_end_out"], own))
    return found


def _is_wall(key: str) -> bool:
    return key.partition("_")[0] in WALLS


def _mm(gap: float) -> str:
    return f"{gap:.2g} mm"


def _wall(d: Design, key: str, gap: float) -> Finding:
    wall, _, kind = key.partition("_")
    if kind == "end_out":
        code, message, remedy = "end-out-of-square", _end(d, wall, gap), _shoot(d, gap)
    elif kind == "end_lean":
        code, message, remedy = "end-leans", _corner(d, wall, gap), _shoot(d, gap)
    else:
        code, message, remedy = (
            "edge-out-of-square",
            _edge(d, wall, gap),
            "Shoot the edge true, then plough.",
        )
        if d.choices.made.groove_depth is not None:
            remedy = "Ploughed already: ease the tongue to the groove as it is."
    return _square("care", code, Place(part=wall), message, remedy, _SOURCE)


def _end(d: Design, wall: str, gap: float) -> str:
    tall = d.frame.front_height if wall == "front" else d.frame.wall_height
    return (
        f"an end is {_mm(gap)} out of square over its {d.choices.rule.exact(tall.value)} of width. "
        f"A baseline gauged from it runs out as far: drawn up, the shoulder touches at one edge "
        f"and gaps {_mm(gap)} at the other."
    )


def _corner(d: Design, wall: str, gap: float) -> str:
    f = d.frame
    thick = getattr(f, f"{wall}_thickness").value
    sizes = f.outside_length.value, f.outside_width.value
    angle = degrees(atan2(gap, thick))
    differ = diagonal_difference(angle, length=sizes[0], width=sizes[1])
    held = gap / thick * d.bottom.width.value
    said = (
        f"an end is {_mm(gap)} out of square over its {d.choices.rule.exact(thick)} of thickness. "
        f"A corner that follows it misses square by {angle:.1f}°, and the diagonals then differ by "
        f"{_mm(differ)}; cramped square, the shoulder gaps {_mm(gap)} on one face."
    )
    if above(held, d.bottom.along):
        said += (
            f" The bottom, with {d.choices.rule.exact(d.bottom.along)} to move along the grain, "
            "keeps the box from leaning so far."
        )
    return said


def _shoot(d: Design, gap: float) -> str:
    if d.choices.made.tail_length is None:
        return f"Shoot the end true before gauging: it costs {_mm(gap)} of its length."
    return (
        "The baseline is gauged already: square a new line round with knife and square, from the "
        "lowest point of the old one, and pare to that."
    )


def _edge(d: Design, wall: str, gap: float) -> str:
    g = d.choices.groove
    return (
        f"its edge is {_mm(gap)} out of square over its thickness. The plough's fence follows it: "
        f"the groove leans {_mm(lean(d, wall))} over its depth of "
        f"{d.choices.rule.exact(g.depth)}, and the rims meet with a step of up to {_mm(gap)}."
    )


def _overhang(gap: float) -> Finding:
    return _square(
        "care",
        "lid-end-out",
        Place(part="lid"),
        f"an end is {_mm(gap)} out of square: the overhang runs out by as much, and shows.",
        "Shoot the end true.",
        _SOURCE,
    )


def _room(d: Design, row: Room) -> Finding:
    code, happens, helps = _FAILS[row.kind]
    level: Level = "care" if row.kind == "hold" and above(row.left.value, 0.0) else "wont_work"
    need = f", and {d.choices.rule.exact(row.need)} is needed" if row.need else ""
    message = f"{row.left.sentence(d.choices.rule)}{need}: {happens}."
    return _square(level, code, Place(part=row.panel.name), message, helps)


def _square_enough(key: str, most: float) -> Finding:
    """A gap measured that is small enough."""
    wall, _, kind = key.partition("_")
    return _square(
        "good", "good-square", f"{wall}, {SQUARE[kind]}", f"within {_mm(most)}.", "", _SOURCE
    )


def _fits(d: Design, name: str, gap: float, own: list[Room]) -> Finding:
    """A panel whose worst corner still has its room."""
    kinds = ("reach",) if name == "lid" else ("along", "hold")
    left = " and ".join(
        f"{row.left.name} {d.choices.rule.exact(round(row.left.value, 2))}"
        for row in own
        if row.kind in kinds
    )
    message = f"{_mm(gap)} out of square at an end; left at its worst corner: {left}."
    return _square("good", "good-panel-square", Place(part=name), message, "", GEOMETRY)
