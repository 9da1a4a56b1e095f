"""What planing the joints flush does to the design: walls grow thinner and the lap pays for it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from toolkit.plan.plan import Plan, plan
from toolkit.results import WALLS, Finding, Working, sorted_findings
from toolkit.smoothing import after_flushing


@dataclass(frozen=True, slots=True)
class FlushedBox:
    """A box before and after its outside faces were planed flush by a skim. Lengths in mm.

    ``after`` has thinner walls round the same joints. ``workings`` are the lap, the strip above the
    lid groove, the wall behind the groove, and play and length of the lid, each as a sum.
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


def flushed(
    made: Plan, *, skim: float | None = None, rim_planed: float = 0.0, tongue_planed: float = 0.0
) -> FlushedBox:
    """Plane a skim (None: the box's own custom) off every outside face, and look again. [mm]

    Tails and sockets are cut already, so that the lap loses what the wall loses. ``rim_planed``
    comes off the top edges of the walls, ``tongue_planed`` off the lid's tongue.
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
    thinner: dict[str, Any] = {
        f"made.{name}_thickness": thick - skim for name, thick in walls.items()
    }
    half_blind = d.choices.corner.joint == "half-blind"
    if half_blind:
        thinner["made.tail_length"] = f.tail_back.value
    height = f.wall_height.value
    rim = None if f.lid_groove is None else height - f.lid_groove.high
    most = height if rim is None else rim
    if not 0 <= rim_planed < most:
        raise ValueError(
            f"{rim_planed:g} mm off the rim leaves nothing of the {most:.3g} mm that stand there; "
            "plane less, such as 0.2 mm"
        )
    if rim_planed:
        lower = ("side", "back") if rim is not None else WALLS
        thinner |= {f"made.{name}_width": height - rim_planed for name in lower}
        # The tails are cut: what the top edge loses, the uppermost pin loses.
        for place, corner in (("back", d.back), ("front", d.front)):
            thinner[f"corner.tails_{place}"] = tuple((t.low, t.high) for t in corner.tails)
        if rim is not None:
            thinner["made.top_edge"] = rim - rim_planed
    after = plan(d.choices.having(thinner))
    left = after_flushing(
        skim,
        lap=f.lap_back.value if half_blind else None,
        rim=rim,
        groove_wall=min(walls.values()) - (d.choices.groove.depth or 0.0),
        lid_play=d.choices.panels.lid_tongue if rim is not None else None,
        rim_planed=rim_planed,
        tongue_planed=tongue_planed,
    )
    lid = Working.of(
        "lid length",
        ("as planned", d.lid.length.value),
        ("planed off with the front", -skim),
    )
    workings = (*left.workings, lid) if rim is not None else left.workings
    said = {(row.code, row.where) for row in left.findings(rule=made.choices.rule)}
    said |= {(row.code, row.where) for row in after.about("marking out")}
    more = [row for row in after.findings if (row.code, row.where) not in said]
    findings = sorted_findings([*left.findings(rule=made.choices.rule), *more])
    return FlushedBox(made, after, skim, workings, findings)
