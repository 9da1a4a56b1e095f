"""Two limits pulled against each other: room to swell in the damp, hold enough when dry."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from toolkit.box.customs import Customs
from toolkit.box.designing import Design
from toolkit.box.panels import Panel
from toolkit.measures import Rule
from toolkit.results import Table, above, below
from toolkit.wood import MONTHS, Climate, strain


def panel_of(d: Design, name: str) -> Panel:
    """A grooved panel of a box by its name."""
    for panel in d.grooved:
        if panel.name == name:
            return panel
    raise ValueError(
        f'"{name}" lies in no groove of this box: type "bottom", or "lid" where the lid slides'
    )


@dataclass(frozen=True, slots=True)
class Window:
    """The clearances that a panel may have: from ``least`` in the damp to ``most`` when dry. [mm]

    ``span`` is from groove bottom to groove bottom; ``has`` the clearance as it is. A panel cut
    to its greatest clearance is a little narrower, and so moves a little less: both ends allow
    for that.
    """

    panel: str
    span: float
    reach: float
    has: float
    least: float
    most: float
    swelling: float
    shrinking: float
    grip: float

    @property
    def open(self) -> bool:
        """Whether any clearance suits both the damp and the dry."""
        return not above(self.least, self.most)

    @property
    def tight(self) -> bool:
        """Whether it has less clearance than the damp asks for."""
        return below(self.has, self.least)

    @property
    def loose(self) -> bool:
        """Whether it has more clearance than the dry allows."""
        return above(self.has, self.most)

    def sentence(self, rule: Rule) -> str:
        """Both limits and where the panel stands, on somebody's rule."""
        low, high = rule.exact(round(self.least, 2)), rule.exact(round(self.most, 2))
        has = rule.exact(round(self.has, 2))
        if not self.open:
            return (
                f"The damp asks the {self.panel} for {low} of clearance or more, the dry allows "
                f"{high if self.most > 0 else 'none'} at most: no clearance does for both."
            )
        stands = "too tight" if self.tight else "too loose" if self.loose else "between the two"
        return (
            f"The damp asks the {self.panel} for {low} of clearance or more, the dry allows "
            f"{high} at most; it has {has}, {stands}."
        )

    def cause(self) -> str:
        """Why it fails or holds, in one sentence to remember."""
        if not self.open:
            return (
                "The wood moves more in a year than the groove is deep enough to hide: "
                "no clearance helps."
            )
        if self.tight:
            return "Made on a dry day it grows in the damp, and the walls don't: it pushes them."
        if self.loose:
            return "In the dry it shrinks away from both grooves, and slides over into one."
        return "It has room to grow, and groove enough to shrink in."


def limits(row: Panel, *, grow: float, shrink: float, customs: Customs) -> tuple[float, float]:
    """Least and greatest clearance of a panel that grows and shrinks so far. [mm]

    A narrower panel moves a little less, which both ends allow for.
    """
    span = row.widest
    least = (span * grow + row.season.room) / (1 + grow)
    return least, (row.reach - customs.grip_least - span * shrink) / (1 - shrink)


def window(design: Design, *, panel: str) -> Window:
    """The clearances that a panel may have through the seasons of its rooms.

    Parameters
    ----------
    design : Design
        The box. [mm]
    panel : str
        ``"bottom"``, or ``"lid"`` where it slides.

    Returns
    -------
    Window
        Least and greatest clearance, and the one it has. [mm]

    Raises
    ------
    ValueError
        No panel of that name lies in grooves.

    Source
    ------
    Movement by GTR-190 Eq. 13-3 (form from memory) at moistures of Eq. 4-5; room over and least
    hold are customs.
    """
    row, customs = panel_of(design, panel), design.choices.customs
    span, grow = row.widest, row.season.swelling
    least, most = limits(row, grow=grow, shrink=-row.season.shrinking, customs=customs)
    return Window(
        panel=panel,
        span=span,
        reach=row.reach,
        has=row.along if row.grain_across else row.across,
        least=least,
        most=most,
        swelling=row.swelling,
        shrinking=row.shrinking,
        grip=row.worst_grip,
    )


def widest_span(design: Design, *, panel: str, reach: float, spare: float = 0.0) -> float:
    """The widest from groove bottom to groove bottom for which some clearance suits both. [mm]

    Both limits of ``window``, set equal and solved; negative where the groove is too shallow.
    """
    row, customs = panel_of(design, panel), design.choices.customs
    grow, shrink = row.season.swelling, -row.season.shrinking
    hold = (reach - customs.grip_least) * (1 + grow) - row.season.room * (1 - shrink)
    hold -= spare * (1 + grow) * (1 - shrink)
    return hold / (grow * (1 - shrink) + shrink * (1 + grow))


@dataclass(frozen=True, slots=True)
class MonthOfPanel:
    """One month of a panel in its grooves. Lengths in mm, moisture in percent.

    ``room`` is the clearance left, both sides together; ``grip`` what stays in the groove on the
    worst side. ``least`` and ``most`` are the clearances that it may get if it is fitted in this
    month and then lives through the whole year.
    """

    month: str
    moisture: float
    width: float
    room: float
    grip: float
    least: float
    most: float

    @property
    def open(self) -> bool:
        """Whether any clearance does, fitted in this month."""
        return not above(self.least, self.most)


def months(design: Design, *, panel: str, place: Climate) -> tuple[MonthOfPanel, ...]:
    """The room and hold of a panel in each month at a place, and its limits if fitted then.

    The panel is as dry when made as the box's own bench, and follows the air at once.
    """
    row, c = panel_of(design, panel), design.choices
    wood, rings = getattr(c.wood, panel), c.wood.rings
    wet, dry = max(place.moisture), min(place.moisture)

    def moves(start: float, end: float) -> float:
        return strain(species=wood, rings=rings, moisture_from=start, moisture_to=end)

    found = []
    for name, moisture in zip(MONTHS, place.moisture, strict=True):
        width = row.moving * (1 + moves(row.season.make, moisture))
        least, most = limits(
            row, grow=moves(moisture, wet), shrink=-moves(moisture, dry), customs=c.customs
        )
        found.append(
            MonthOfPanel(
                name,
                moisture,
                width,
                room=row.widest - width,
                grip=width - row.narrowest,
                least=least,
                most=most,
            )
        )
    return tuple(found)


def month_table(rows: Sequence[MonthOfPanel], *, rule: Rule, panel: str) -> Table:
    """The year as rows: what the panel has, and what it may have if it is fitted then."""

    def show(value: float) -> str:
        return rule.exact(round(value, 2))

    return Table(
        f"The {panel} month by month",
        ("month", "moisture", "room left", "in the groove, worst side", "fitted now, clearance"),
        tuple(
            (
                row.month,
                f"{row.moisture:.1f} %",
                show(row.room) if row.room > 0 else f"none: it presses by {show(-row.room)}",
                show(row.grip) if row.grip > 0 else "none: it drops out",
                f"{show(row.least)} to {show(row.most)}" if row.open else "none does for both",
            )
            for row in rows
        ),
        note="A panel that is fitted in a dry month needs more room, in a damp one less.",
    )
