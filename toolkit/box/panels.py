"""Lid and bottom: how wide, how long, how thick at the edge."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import ClassVar

from toolkit.box.bevels import rim_and_width
from toolkit.box.seasons import Season, season
from toolkit.box.settled import Settled
from toolkit.box.wall_ends import as_made
from toolkit.box.walls import Frame
from toolkit.results import Term, Working


@dataclass(frozen=True, slots=True)
class Panel:
    """A panel in its grooves: ``across`` and ``along`` are the clearances it really has, ``reach``
    how deep it can stand in a groove, ``low`` and ``high`` its faces above the bottom edge. [mm]
    """

    name: str
    length: Working
    width: Working
    thickness: Working
    profile: str
    tongue: float
    rebate_depth: float
    rebate_width: float
    across: float
    along: float
    reach: float
    low: float
    high: float
    season: Season
    grain_across: bool
    bevel_asked: float | None = None

    @property
    def bevel(self) -> tuple[float, float]:
        """Of a bevelled edge: its thickness at the rim, and how far in the bevel runs. [mm]"""
        return rim_and_width(
            self.thickness.value,
            tongue=self.tongue,
            reach=self.reach,
            most=min(self.length.value, self.width.value) / 3,
            asked=self.bevel_asked,
        )

    @property
    def moving(self) -> float:
        """The size that moves with the seasons, across the panel's own grain. [mm]"""
        return self.length.value if self.grain_across else self.width.value

    @property
    def swelling(self) -> float:
        """How much wider in its dampest room than on the bench. [mm]"""
        return self.moving * self.season.swelling

    @property
    def shrinking(self) -> float:
        """How much narrower in its driest room than on the bench. [mm]"""
        return -self.moving * self.season.shrinking

    @property
    def clearance(self) -> float:
        """Its clearance across its own grain, both sides together. [mm]"""
        return self.along if self.grain_across else self.across

    @property
    def widest(self) -> float:
        """The moving size at which it touches both groove bottoms. [mm]"""
        return self.moving + self.clearance

    @property
    def narrowest(self) -> float:
        """The moving size at which, pushed into one groove, it leaves the other. [mm]"""
        return self.widest - self.reach

    @property
    def worst_grip(self) -> float:
        """Left in the groove on one side when dry and pushed to the other. [mm]"""
        return self.reach - self.clearance - self.shrinking


@dataclass(frozen=True, slots=True)
class LiftOffLid:
    """A lid that lies on the rim, held by its own rebated centre or by two battens. [mm]"""

    name: ClassVar[str] = "lid"

    length: Working
    width: Working
    thickness: Working
    seat: str
    centre_length: Working
    centre_width: Working
    down: float
    rebate_width: float
    batten: tuple[Working, Working, Working] | None
    season: Season

    @property
    def moving(self) -> float:
        """The part of the lid that moves inside the walls. [mm]"""
        return self.centre_width.value


def _edge(c: Settled, profile: str, thickness: float, play: float) -> tuple[float, float, float]:
    """Tongue, rebate depth and rebate width of a panel's edge. [mm]"""
    g = c.groove
    if profile == "flat":
        return thickness, 0.0, 0.0
    tongue = min(thickness, g.width - play)
    # One millimetre beyond the groove keeps the shoulder clear of the wall.
    return tongue, thickness - tongue, g.depth + 1.0


def _size(c: Settled, part: str, axis: str, working: Working) -> Working:
    return as_made(working.name, value=getattr(c.made, f"{part}_{axis}")) or working


def bottom(c: Settled, f: Frame) -> Panel:
    """The captive bottom; one dab of glue at mid-end at most."""
    return _panel(c, f, "bottom")


def lids(c: Settled, f: Frame) -> tuple[Panel | LiftOffLid, ...]:
    """What closes a box, as its kind of closure asks."""
    return tuple(_LIDS[kind](c, f) for kind in c.lid.closure.lids)


def _panel(c: Settled, f: Frame, name: str) -> Panel:
    g, is_lid = c.groove, name == "lid"
    inside, depth = Term("inside length", f.inside_length.value), g.depth
    across = c.panels.lid_across if is_lid else c.panels.bottom_across
    if is_lid:
        length = Working(
            "lid length",
            (inside, Term("back groove", depth), Term("front thickness", f.front_thickness.value)),
        )
    else:
        length = Working(
            "bottom length",
            (inside, Term("groove depth", depth, 2), Term("clearance along", -c.panels.along)),
        )
    width = Working(
        f"{name} width",
        (
            Term("inside width", f.inside_width.value),
            Term("groove depth", depth, 2),
            Term("clearance across", -across),
        ),
    )
    chosen = c.thickness.lid if is_lid else c.thickness.bottom
    thickness = Working.of(f"{name} thickness", ("as chosen", chosen))
    length, width, thickness = (
        _size(c, name, axis, working)
        for axis, working in (("length", length), ("width", width), ("thickness", thickness))
    )
    profile = c.panels.lid_profile if is_lid else c.panels.bottom_profile
    play = c.panels.lid_tongue if is_lid else c.panels.bottom_tongue
    tongue, rebate, rebate_width = _edge(c, profile, thickness.value, play)
    span_along = f.inside_length.value + depth * 2
    if is_lid:
        low = f.lid_groove.low if f.lid_groove else 0.0
        high = low + thickness.value
        span_along = f.inside_length.value + depth + f.front_thickness.value
    else:
        high = f.bottom_groove.low + tongue
        low = high - thickness.value
    return Panel(
        name=name,
        length=length,
        width=width,
        thickness=thickness,
        profile=profile,
        tongue=tongue,
        rebate_depth=rebate,
        rebate_width=rebate_width,
        across=f.inside_width.value + 2 * depth - width.value,
        along=span_along - length.value,
        reach=depth,
        low=low,
        high=high,
        season=season(c, name),
        grain_across=c.panels.grain == "across",
        bevel_asked=c.panels.bevel_width,
    )


def _on_the_rim(c: Settled, f: Frame) -> LiftOffLid:
    """A lid for four full-height walls, rebated underneath or with two battens."""
    year, seat = season(c, "lid"), c.lid.seat
    room = year.room + 0.2
    inside = f.inside_width.value
    swelling = (inside - room) * year.swelling / (1 + year.swelling)
    # Only the rebated centre moves inside the walls; battens lie across and do not.
    gap = (
        (
            Term(f"swelling{', from memory' if year.caution else ''}", -swelling),
            Term("room to lift", -room),
        )
        if seat == "rebate"
        else (Term("room to lift", -1.0),)
    )
    centre_width = Working("centre width", (Term("inside width", inside), *gap))
    centre_length = Working.of(
        "centre length", ("inside length", f.inside_length.value), ("room to lift", -1.0)
    )
    length = Working.of("lid length", ("outside length", f.outside_length.value))
    width = Working.of(
        "lid width", ("outside width", f.outside_width.value), ("overhang", c.lid.overhang, 2)
    )
    thickness = Working.of("lid thickness", ("as chosen", c.thickness.lid))
    length, width, thickness = (
        _size(c, "lid", axis, working)
        for axis, working in (("length", length), ("width", width), ("thickness", thickness))
    )
    batten = None
    if seat == "battens":
        batten = (
            Working("batten length", centre_width.terms),
            Working.of("batten width", ("as chosen", c.lid.batten_width)),
            Working.of("batten thickness", ("as chosen", c.lid.batten_thickness)),
        )
    return LiftOffLid(
        length=length,
        width=width,
        thickness=thickness,
        seat=seat,
        centre_length=centre_length,
        centre_width=centre_width,
        down=c.lid.rebate_depth if seat == "rebate" else c.lid.batten_thickness,
        rebate_width=(width.value - centre_width.value) / 2,
        batten=batten,
        season=year,
    )


def _in_grooves(c: Settled, f: Frame) -> Panel:
    """The sliding lid: grooved on three edges, its front end flush with the low front."""
    return _panel(c, f, "lid")


_LIDS: dict[str, Callable[[Settled, Frame], Panel | LiftOffLid]] = {
    "in grooves": _in_grooves,
    "on the rim": _on_the_rim,
}
