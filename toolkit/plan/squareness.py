"""Parts out of square, as measured: what that does to the box, and what a maker would say of it.

A wall's length is read along its bottom edge, a panel's along its middle; from there an end that
is out of square runs off. Which way it runs is not asked: the worse way is reckoned with.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import atan2, degrees
from typing import Any

from toolkit.box import Change, Design, Panel, cite
from toolkit.plan.diagonals import diagonal_difference
from toolkit.results import SQUARE, WALLS, Finding, Findings, Term, Working, above, below

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
class Slack:
    """One thing that an end or an edge out of square takes room from: one of ``KINDS``.

    ``left`` is what remains of it at the worst corner, ``need`` the least that does by custom, and
    with less than ``least`` it fails for certain. [mm]
    """

    panel: Panel
    kind: str
    left: Working
    need: float
    least: float

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
    """How far a wall's grooves lean over their depth, ploughed from an edge that is out. [mm]

    The edge's gap over the wall's thickness, times the groove's depth.
    """
    out = getattr(d.choices.made, f"{wall}_edge_out") or 0.0
    thick, depth = getattr(d.frame, f"{wall}_thickness").value, d.choices.groove.depth
    return float(out * depth / thick)


def _leaning(d: Design) -> Term:
    most, wall = max((lean(d, wall), wall) for wall in WALLS)
    return Term(f"lean of the {wall}'s groove", -most)


def rooms(d: Design) -> tuple[Slack, ...]:
    """What is left to the panels at their worst corner and edge, square or not. [mm]

    An end out by e over the width b lies e · y / b off at a distance y.
    """
    c, f, found = d.choices, d.frame, []
    for panel in d.grooved:
        is_lid = panel.name == "lid"
        span = (f.lid_groove if is_lid else None) or f.bottom_groove
        up = (span.low + span.high) / 2
        own = getattr(c.made, f"{panel.name}_end_out") or 0.0
        long, wide = _at(d, ("side",), up), _at(d, ("back", "front"), up)
        damp, grip = panel.swelling + panel.season.room, c.customs.grip_least
        play = c.panels.lid_tongue if is_lid else c.panels.bottom_tongue
        rows = [
            ("across", panel.across, damp, panel.swelling, [wide]),
            ("grip", panel.worst_grip, grip, 0.0, [wide]),
            ("tongue", play, 0.0, 0.0, [_leaning(d)]),
        ]
        if is_lid:
            reach = panel.length.value - f.front_thickness.value - f.inside_length.value
            # Pushed home it stands on its longer corner, which goes no deeper than the groove.
            short = own / 2 + max(0.0, reach + own / 2 - panel.reach) if own else 0.0
            need = c.customs.lid_reach_share * panel.reach
            rows.append(("reach", reach, need, 0.0, [long, Term("its shorter corner", -short)]))
        else:
            longer, shorter = (Term(f"its {way} corner", -own / 2) for way in ("longer", "shorter"))
            rows.append(("along", panel.along, 0.0, 0.0, [long, longer]))
            rows.append(("hold", panel.reach - panel.along, grip, 0.0, [long, shorter]))
        for kind, value, need, least, taken in rows:
            terms = (Term("with everything square", value), *(term for term in taken if term.value))
            found.append(Slack(panel, kind, Working(KINDS[kind], terms), need, least))
    return tuple(found)


# What is said where one kind of room runs out, and where less is left than is customary.
_FAILS = {
    "along": ("panel-corner-tight", ""),
    "hold": ("panel-corner-drops-out", "panel-corner-drops-out, a little"),
    "across": ("swells-tight-at-an-end", "swells-tight-at-an-end, a little"),
    "grip": ("drops-out-at-an-end", "drops-out-at-an-end, a little"),
    "tongue": ("tongue-binds", ""),
    "reach": ("lid-corner-short", "lid-corner-short, a little"),
}


def said(d: Design) -> Findings:
    """Findings of a box where rooms meet, to be said in their order."""
    rule, customs = d.choices.rule, d.choices.customs
    return Findings("plan/findings.csv", write=rule.exact, cite=cite, customs=customs)


def check_square(d: Design) -> list[Finding]:
    """What parts out of square do to the box; nothing while none was measured."""
    gaps, found = measured(d), said(d)
    if not gaps:
        return []
    most = d.choices.customs.square_most
    walls = {key: gap for key, gap in gaps.items() if key.partition("_")[0] in WALLS}
    for key, gap in walls.items():
        if above(gap, most):
            _wall(found, d, key, gap)
    lid_end = gaps.get("lid_end_out", 0.0)
    if d.lift_off_lid is not None and above(lid_end, most):
        found.say("lid-end-out", gap=lid_end, cures=({"made.lid_end_out": 0.0},))
    room = rooms(d)
    for row in room:
        _room(found, d, row)
    for key, gap in walls.items():
        if not above(gap, most):
            wall, _, kind = key.partition("_")
            found.say("good-square", where=f"{wall}, {SQUARE[kind]}", most=most)
    for name in ("bottom", "lid"):
        own = [row for row in room if row.panel.name == name]
        if f"{name}_end_out" in gaps:
            _fits(found, d, name, gaps[f"{name}_end_out"], own)
    return found


def _wall(found: Findings, d: Design, key: str, gap: float) -> None:
    """An end or an edge of a wall that is out by so much."""
    wall, _, kind = key.partition("_")
    f, made, show = d.frame, d.choices.made, d.choices.rule.exact
    thick = getattr(f, f"{wall}_thickness").value
    angle = degrees(atan2(gap, thick))
    length, width = f.outside_length.value, f.outside_width.value
    values: dict[str, Any] = {
        "gap": gap,
        "thick": thick,
        "tall": (f.front_height if wall == "front" else f.wall_height).value,
        "angle": angle,
        "differ": diagonal_difference(angle, length=length, width=width),
        "lean": lean(d, wall),
        "groove": d.choices.groove,
        "kept": "",
        "shoot": f"Shoot the end true before gauging: it costs {show(gap)} of its length.",
    }
    if above(gap / thick * d.bottom.width.value, d.bottom.along):
        values["kept"] = (
            f" The bottom, with {show(d.bottom.along)} to move along the grain, "
            "keeps the box from leaning so far."
        )
    if made.tail_length is not None:
        values["shoot"] = (
            "The baseline is gauged already: square a new line round with knife and square, from "
            "the lowest point of the old one, and pare to that."
        )
    names = {
        "end_out": "end-out-of-square",
        "end_lean": "end-leans",
        "edge_out": "edge-out-of-square, ploughed"
        if made.groove_depth is not None
        else "edge-out-of-square",
    }
    true = {f"made.{key}": 0.0}
    length = getattr(made, f"{wall}_length")
    if kind != "edge_out" and length is not None:
        true[f"made.{wall}_length"] = length - gap
    past = made.groove_depth if kind == "edge_out" else made.tail_length
    found.say(names[kind], part=wall, cures=(true,) if past is None else (), **values)


def _room(found: Findings, d: Design, row: Slack) -> None:
    """What is said where a panel runs out of one kind of room; nothing where it does not."""
    if not row.fails:
        return
    show = d.choices.rule.exact
    name = _FAILS[row.kind][not below(row.left.value, row.least)]
    need = f", and {show(row.need)} is needed" if row.need else ""
    left = row.left.sentence(d.choices.rule)
    found.say(name, part=row.panel.name, left=left, need=need, cures=_trued(d, row.kind))


def _trued(d: Design, kind: str) -> Iterator[Change]:
    """What was measured out of square shot true: one part alone, then all of them."""
    gap = "edge_out" if kind == "tongue" else "end_out"
    true = {f"made.{key}": 0.0 for key, out in measured(d).items() if key.endswith(gap) and out}
    yield from ({key: value} for key, value in true.items())
    yield true


def _fits(found: Findings, d: Design, name: str, gap: float, own: list[Slack]) -> None:
    """A panel whose worst corner still has its room."""
    if not own or any(row.fails for row in own):
        return
    kinds = ("reach",) if name == "lid" else ("along", "hold")
    left = " and ".join(
        f"{row.left.name} {d.choices.rule.exact(round(row.left.value, 2))}"
        for row in own
        if row.kind in kinds
    )
    found.say("good-panel-square", part=name, gap=gap, left=left)
