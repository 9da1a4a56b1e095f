"""How a sliding lid goes: its play, and whether it still passes over the front in the damp."""

from __future__ import annotations

from dataclasses import dataclass

from toolkit.box.clearances import panel_of
from toolkit.box.designing import Design
from toolkit.box.seasons import season
from toolkit.measures import Rule
from toolkit.results import Table, below
from toolkit.wood import strain


@dataclass(frozen=True, slots=True)
class Sliding:
    """Play of the lid in its grooves, and the gap over the front as made and in the damp. [mm]

    ``up`` is play in thickness; ``across`` the room left from side to side on the bench, in the
    damp and in the dry. ``gap_damp`` reckons with a flat-sawn front that rises beside
    quarter-sawn sides, the worst that can be; below nought the lid rides on the front, which its
    play still allows as far as ``up``.
    """

    up: float
    across: float
    across_damp: float
    across_dry: float
    gap: float
    gap_damp: float
    front_rise: float
    floor_rise: float

    @property
    def passes(self) -> bool:
        """Whether the lid still goes over the front in the damp."""
        return not below(self.gap_damp + self.up, 0.0)

    @property
    def slides(self) -> bool:
        """Whether it is free in its grooves from side to side, thickness and over the front."""
        return self.up > 0 and self.across_damp > 0 and self.passes

    def sentence(self, rule: Rule) -> str:
        """What the damp does to the lid's way out, on somebody's rule."""
        show = rule.exact
        rise = (
            f"In the damp the front rises {show(round(self.front_rise, 2))} and the floor of the "
            f"lid groove {show(round(self.floor_rise, 2))}"
        )
        if not below(self.gap_damp, 0.0):
            return f"{rise}: {show(round(self.gap_damp, 2))} is left under the lid, and it passes."
        over = show(round(-self.gap_damp, 2))
        if self.passes:
            return (
                f"{rise}: the front lifts the lid {over}, within its play of "
                f"{show(round(self.up, 2))}, and it passes."
            )
        return (
            f"{rise}: the front stands {over} over the floor, more than the lid's play of "
            f"{show(round(self.up, 2))}: it jams. Plane the front lower."
        )

    def table(self, rule: Rule) -> Table:
        """The same as rows: what, how much, and where it comes from."""

        def show(value: float) -> str:
            return rule.exact(round(value, 2))

        rows = (
            ("play in thickness", show(self.up), "groove width less the lid's tongue"),
            ("play across, on the bench", show(self.across), "clearance as it is"),
            ("play across, in the damp", show(self.across_damp), "less what the lid swells"),
            ("play across, in the dry", show(self.across_dry), "and what it shrinks"),
            ("front under the groove floor", show(self.gap), "on the bench"),
            ("the same in the damp", show(self.gap_damp), "flat-sawn front, quartered sides"),
        )
        return Table(
            "How the lid slides", ("what", "how much", "where it comes from"), rows, numeric=(1,)
        )


def sliding(design: Design) -> Sliding:
    """How the lid of a box slides, on the bench and through its seasons.

    Movement by GTR-190 Eq. 13-3 (form from memory) at moistures of Eq. 4-5.
    """
    lid, c, f = panel_of(design, "lid"), design.choices, design.frame
    # Home, the lid lies on the floor of its groove.
    year, floor, front = season(c, "sides"), lid.low, f.front_height.value
    quartered = strain(
        species=c.wood.sides, rings=90.0, moisture_from=year.make, moisture_to=year.damp
    )
    # Of two ways of moving, the floor rises by the lesser when the sides are quarter-sawn.
    floor_rise = floor * min(quartered, year.swelling)
    front_rise = front * season(c, "ends").swelling
    swell, shrink = (0.0, 0.0) if lid.grain_across else (lid.swelling, lid.shrinking)
    return Sliding(
        up=c.groove.width - lid.tongue,
        across=lid.across,
        across_damp=lid.across - swell,
        across_dry=lid.across + shrink,
        gap=floor - front,
        gap_damp=floor + floor_rise - front - front_rise,
        front_rise=front_rise,
        floor_rise=floor_rise,
    )


def held(design: Design, *, out: float) -> float:
    """What of a lid still lies in the grooves of the sides, which end at the front face. [mm]"""
    return max(design.lid.length.value - out, 0.0)


def droop(design: Design, *, out: float) -> float | None:
    """How far a stiff lid's front end hangs by its play alone; None when it is out. [mm]"""
    lid, width = design.sliding_lid, design.choices.groove.width
    inside = held(design, out=out)
    if lid is None or inside <= 0:
        return None
    return max(width - lid.tongue, 0.0) * out / inside
