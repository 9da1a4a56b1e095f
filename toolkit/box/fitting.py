"""A panel month by month, and the clearance that it gets by the moisture of its wood."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import ceil, floor

from toolkit.box.clearances import most_clearance, panel_of
from toolkit.box.designing import Design
from toolkit.box.panel_defaults import across
from toolkit.box.panels import Panel
from toolkit.box.seasons import season
from toolkit.measures import Rule
from toolkit.results import Table, above, below
from toolkit.wood import MONTHS, Climate, strain


@dataclass(frozen=True, slots=True)
class MonthOfPanel:
    """One month of a panel in its grooves. Lengths in mm, moisture in percent.

    ``room`` is the clearance left, both sides together; ``grip`` what stays in the groove on the
    worst side.
    """

    month: str
    moisture: float
    width: float
    room: float
    grip: float


def months(design: Design, *, panel: str, place: Climate) -> tuple[MonthOfPanel, ...]:
    """The room and hold of a panel in each month at a place.

    The panel is as dry when made as the box's own, and follows the air at once.
    """
    row, c = panel_of(design, panel), design.choices
    found = []
    for name, moisture in zip(MONTHS, place.moisture, strict=True):
        moves = strain(
            getattr(c.wood, panel),
            rings=c.wood.rings,
            moisture_from=row.season.make,
            moisture_to=moisture,
        )
        width = row.moving * (1 + moves)
        grip = width - row.narrowest
        found.append(MonthOfPanel(name, moisture, width, room=row.widest - width, grip=grip))
    return tuple(found)


def month_table(rows: Sequence[MonthOfPanel], *, rule: Rule, panel: Panel) -> Table:
    """The year of a panel as rows."""

    def show(value: float) -> str:
        return rule.exact(round(value, 2))

    return Table(
        f"The {panel.name} month by month",
        ("month", "moisture", "room left", "in the groove, worst side"),
        tuple(
            (
                row.month,
                f"{row.moisture:.1f} %",
                show(row.room) if row.room > 0 else f"none: it presses by {show(-row.room)}",
                show(row.grip) if row.grip > 0 else "none: it drops out",
            )
            for row in rows
        ),
        note="As if the wood followed the air at once; it follows weeks later, and less far."
        + panel.season.told,
    )


@dataclass(frozen=True, slots=True)
class FittedAt:
    """What a panel gets if its wood is at some moisture as it is fitted. Lengths in mm.

    ``least`` is what the damp asks for, ``clearance`` what the rule of ``panels.…_across`` gives:
    the next mark of the student's own rule. ``most`` is the greatest that holds it when dry.
    """

    moisture: float
    least: float
    clearance: float
    most: float

    @property
    def open(self) -> bool:
        """Whether that clearance holds it, too."""
        return not above(self.clearance, self.most)

    def fits(self, has: float) -> str:
        """What a clearance is to it: too tight, too loose, or right."""
        if below(has, self.least):
            return "too tight"
        return "too loose" if above(has, self.most) else "right"


def fitted_at(design: Design, *, panel: str, moisture: float) -> FittedAt:
    """The clearance of a panel of this box whose wood is at a moisture as it is fitted. [%]"""
    row = panel_of(design, panel)
    there = design.choices.having({"rooms.make_moisture": moisture})
    year, span = season(there, panel), row.widest
    least, most = year.clearance(span), most_clearance(row, year, there.customs)
    return FittedAt(moisture, least, across(there, panel, span), most)


def fitting_tables(design: Design) -> tuple[Table, ...]:
    """What clearance to give at each reading of a meter, and what the box's own would be then.

    Lid before bottom; one table for both where it is the same.
    """
    alike: dict[tuple[str, tuple[tuple[str, ...], ...]], list[Panel]] = {}
    for panel in reversed(design.grooved):
        has = design.choices.rule.exact(round(panel.clearance, 2))
        alike.setdefault((has, tuple(_fitting_rows(design, panel))), []).append(panel)
    return tuple(_fitting_table(*found, panels) for found, panels in alike.items())


def _fitting_table(has: str, rows: tuple[tuple[str, ...], ...], panels: list[Panel]) -> Table:
    names = " and ".join(panel.name for panel in panels)
    told = "".join(dict.fromkeys(panel.season.told for panel in panels))
    return Table(
        f"Clearance of {names} by the moisture of the wood",
        ("wood's moisture", "clearance", "at most", f"{has}, as it is"),
        rows,
        note=f"Drier wood needs more room, damper wood less.{told}",
    )


def _fitting_rows(design: Design, panel: Panel) -> Iterator[tuple[str, ...]]:
    """Every whole percent between the box's rooms, and what it is reckoned with."""
    year, rule = panel.season, design.choices.rule
    low, high = min(year.dry, year.make), max(year.damp, year.make)
    whole = (float(percent) for percent in range(floor(low), ceil(high) + 1))
    others = (percent for percent in whole if f"{percent:.1f}" != f"{year.make:.1f}")
    for moisture in sorted((*others, year.make)):
        at = fitted_at(design, panel=panel.name, moisture=moisture)
        own = ", as reckoned here" if moisture == year.make else ""
        clear = rule.exact(at.clearance)
        yield (
            f"{round(moisture, 1):g} %{own}",
            clear,
            _at_most(at, rule),
            at.fits(panel.clearance),
        )


def fitting_sentence(design: Design, *, moisture: float) -> str:
    """What each grooved panel gets if its wood is at a moisture, and what it has. [%]"""
    show = design.choices.rule.exact
    said: dict[str, list[str]] = {}
    for panel in reversed(design.grooved):
        at, has = fitted_at(design, panel=panel.name, moisture=moisture), panel.clearance
        words = f"{show(at.clearance)} of clearance; {show(round(has, 2))}, as it is, is"
        said.setdefault(f"{words} {at.fits(has)}", []).append(panel.name)
    each = (
        f"the {names[0]} needs {words}" if len(names) == 1 else f"lid and bottom need {words}"
        for words, names in said.items()
    )
    told = "".join(dict.fromkeys(panel.season.told for panel in design.grooved))
    return f"With the wood at {moisture:.1f} % {', and '.join(each)}.{told}"


def _at_most(at: FittedAt, rule: Rule) -> str:
    """The greatest clearance, on a mark of the rule that is not beyond it."""
    if at.open:
        return rule.exact(rule.round(at.most, direction="down"))
    if not above(at.least, at.most):
        return f"a hair under {rule.exact(at.clearance)}"
    return "none does for damp and dry"
