"""What planing the joints flush does to the design: walls grow thinner and the lap pays for it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from toolkit.plan.box_plan import Plan, plan
from toolkit.results import (
    AXES,
    WALLS,
    Finding,
    Table,
    Working,
    capital,
    sorted_findings,
)
from toolkit.smoothing import check_flushing, check_lid_play, well_flushed


@dataclass(frozen=True, slots=True)
class FlushedBox:
    """A box before and after its outside faces were planed flush by a skim. Lengths in mm.

    ``after`` has thinner walls round the same joints, and no end grain that stands proud.
    ``workings`` are the lap, the strip above the lid groove, the wall behind the groove, the length
    of walls that were cut proud, and play and length of the lid, each as a sum.
    """

    before: Plan
    after: Plan
    skim: float
    workings: tuple[Working, ...]
    findings: tuple[Finding, ...]

    @property
    def sentence(self) -> str:
        """Every sum in words, on the student's rule."""
        rule = self.before.choices.rule
        return "; ".join(row.sentence(rule) for row in self.workings) + "."


def flushed(made: Plan, *, skim: float | None = None, rim_planed: float = 0.0) -> FlushedBox:
    """Plane a skim (None: the box's own custom) off every outside face, and look again. [mm]

    Tails and sockets are cut already, so that the lap loses what the wall loses. ``rim_planed``
    comes off the top edges of the walls.
    """
    if not made.design.exists:
        raise ValueError(made.findings[0].sentence if made.findings else "there is no such box")
    f, d = made.design.frame, made.design
    skim = d.choices.customs.flushing if skim is None else skim
    walls = {
        "side": f.side_thickness.value,
        "back": f.back_thickness.value,
        "front": f.front_thickness.value,
    }
    thinnest = min(walls.values())
    if not 0 <= skim < thinnest:
        raise ValueError(
            f"{skim:g} mm off each face leaves nothing of a wall of {thinnest:g} mm; "
            "plane less, such as 0.2 mm"
        )
    height = f.wall_height.value
    rim = None if f.lid_groove is None else height - f.lid_groove.high
    most = height if rim is None else rim
    if not 0 <= rim_planed < most:
        raise ValueError(
            f"{rim_planed:g} mm off the rim leaves nothing of the {most:.3g} mm that stand there; "
            "plane less, such as 0.2 mm"
        )
    half_blind = d.choices.corner.joint == "half-blind"
    thinner: dict[str, Any] = {f"made.{name}_thickness": t - skim for name, t in walls.items()}
    thinner |= {"made.tail_length": f.tail_back.value if half_blind else None}
    after = plan(d.choices.having(thinner | _levelled(made) | _lower(made, rim_planed)))
    face, wall = "planed off the face", min(walls.values()) - (d.choices.groove.depth or 0.0)
    left = [_less("wall behind the groove", wall, skim, face)]
    if rim is not None:
        left.insert(0, _less("rim strip", rim, rim_planed, "planed off the rim"))
    if half_blind:
        left.insert(0, _less("lap", f.lap_back.value, skim, face))
    rule = made.choices.rule
    shy = max(0.0, -d.choices.corner.proud)
    found = check_flushing(left, skim=skim, rim_planed=rim_planed, shy=shy, rule=rule)
    workings = (*left, *_shortened(made, skim, face))
    if rim is not None:
        play = d.choices.panels.lid_tongue
        workings += (Working.of("play of the lid", ("as made", play)),)
        found += check_lid_play(play, rule=rule)
    found = found or [well_flushed(workings, skim=skim, rule=rule)]
    if rim is not None:
        length = ("as planned", d.upper_panel.length.value)
        workings += (Working.of("lid length", length, ("planed off with the front", -skim)),)
    said = {(row.code, row.where) for row in (*found, *after.about("marking out"))}
    found += [row for row in after.findings if (row.code, row.where) not in said]
    return FlushedBox(made, after, skim, workings, sorted_findings(found))


def _less(name: str, size: float, planed: float, why: str) -> Working:
    if planed == 0:
        return Working.of(name, ("as made", size))
    return Working.of(name, ("as made", size), (why, -planed))


def _levelled(made: Plan) -> dict[str, Any]:
    """What planing the outside changes of a box beside its walls: the space inside stays. [mm]"""
    f, changes = made.design.frame, dict.fromkeys(f"made.{wall}_length" for wall in WALLS)
    for axis, inside in (("length", f.inside_length), ("width", f.inside_width)):
        changes |= {f"size.inside_{axis}": inside.value, f"size.outside_{axis}": None}
    return {**changes, "corner.proud": 0.0}


def _shortened(made: Plan, skim: float, why: str) -> Iterator[Working]:
    """The length of walls whose end grain stands proud, or ends shy, until it is planed. [mm]"""
    f, proud = made.design.frame, made.design.choices.corner.proud
    for name, length, cut in (
        ("side length", f.side_length, f.side_cut),
        ("end length", f.back_length, f.back_cut),
    ):
        if cut.value != length.value:
            yield Working.of(
                name,
                ("as cut", cut.value),
                ("proud" if proud > 0 else "shy", -proud, 2),
                *([(why, -skim, 2)] if skim else []),
            )


def _lower(made: Plan, rim_planed: float) -> dict[str, Any]:
    """What planing the top edges changes of a box. [mm]"""
    if not rim_planed:
        return {}
    d, f = made.design, made.design.frame
    height, groove = f.wall_height.value, f.lid_groove
    lower = WALLS if groove is None else ("side", "back")
    changes: dict[str, Any] = {f"made.{name}_width": height - rim_planed for name in lower}
    # The tails are cut: what the top edge loses, the uppermost pin loses.
    for place, corner in (("back", d.back), ("front", d.front)):
        changes[f"corner.tails_{place}"] = tuple((t.low, t.high) for t in corner.tails)
    if groove is not None:
        changes["made.top_edge"] = height - groove.high - rim_planed
    return changes


def panel_stages(plan: Plan) -> Table:
    """What lid and bottom measure now, and what they are fitted to when the walls stand."""
    rule, d = plan.choices.rule, plan.design
    rows = []
    for panel in d.panels:
        part = plan.part(panel.name)
        now, fitted = part.sizes("rough", rule), part.sizes("finished", rule)
        sums = (size.reckoned(rule) for size in part.finished)
        named = (f"{panel.name} {axis}" for axis in AXES)
        rows += list(zip(named, now, fitted, sums, strict=True))
    on_ends = d.choices.corner.tails_on == "ends"
    tails, pins = ("end", "side") if on_ends else ("side", "end")
    between = {tails: f"{tails} between its shoulders", pins: f"{pins} between its baselines"}
    note = (
        "Saw the blanks now; fit the panels last, from the box as it stands dry, half home: "
        f"inside width is an {between['end']}, inside length a {between['side']}."
    )
    if any(panel.width.given for panel in d.grooved):
        note += " A panel that is made already keeps its size."
    return Table(
        f"{capital(d.panel_words)} by stage",
        ("size", "blank now", "fitted to", "from the box as it is"),
        tuple(rows),
        note=note,
        numeric=(1, 2),
    )
