"""A panel month by month: the room and the hold it has, and what fitting it then would allow."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from toolkit.box.design import Design
from toolkit.box.window import limits, panel_of
from toolkit.measures import Rule
from toolkit.results import Table, above
from toolkit.wood import MONTHS, Climate, strain


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
