"""Two limits pulled against each other: room to swell in the damp, hold enough when dry."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import ceil, floor

from toolkit.box.customs import Customs
from toolkit.box.designing import Design
from toolkit.box.panel_defaults import across
from toolkit.box.panels import Panel
from toolkit.box.seasons import Season, season
from toolkit.measures import Rule
from toolkit.results import Table, above, below, capital
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


def _has(row: Panel) -> float:
    """The clearance that it has across its own grain. [mm]"""
    return row.along if row.grain_across else row.across


def _most(row: Panel, year: Season, customs: Customs) -> float:
    """The greatest clearance of a panel that shrinks so far, and less as it is narrower. [mm]"""
    shrink = -year.shrinking
    return (row.reach - customs.grip_least - row.widest * shrink) / (1 - shrink)


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
    return Window(
        panel=panel,
        span=row.widest,
        reach=row.reach,
        has=_has(row),
        least=row.season.clearance(row.widest),
        most=_most(row, row.season, customs),
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


def month_table(rows: Sequence[MonthOfPanel], *, rule: Rule, panel: str) -> Table:
    """The year of a panel as rows."""

    def show(value: float) -> str:
        return rule.exact(round(value, 2))

    return Table(
        f"The {panel} month by month",
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
        note="As if the wood followed the air at once; it follows weeks later, and less far.",
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
    least, most = year.clearance(span), _most(row, year, there.customs)
    return FittedAt(moisture, least, across(there, panel, span), most)


def fitting_tables(design: Design) -> tuple[Table, ...]:
    """What clearance to give at each reading of a meter, and what the box's own would be then.

    Lid before bottom; one table for both where it is the same.
    """
    alike: dict[tuple[tuple[str, ...], ...], list[Panel]] = {}
    for panel in reversed(design.grooved):
        alike.setdefault(tuple(_fitting_rows(design, panel)), []).append(panel)
    return tuple(_fitting_table(design, rows, panels) for rows, panels in alike.items())


def _fitting_table(design: Design, rows: tuple[tuple[str, ...], ...], panels: list[Panel]) -> Table:
    names, rule = " and ".join(panel.name for panel in panels), design.choices.rule
    has = rule.exact(round(_has(panels[0]), 2))
    return Table(
        f"Clearance of {names} by the moisture of the wood",
        ("wood's moisture", "clearance", "at most", f"{has}, as it is"),
        rows,
        note=f"Drier wood needs more room, damper wood less.{panels[0].season.told}",
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
        yield f"{round(moisture, 1):g} %{own}", clear, _at_most(at, rule), at.fits(_has(panel))


def fitting_sentence(design: Design, *, moisture: float) -> str:
    """What each grooved panel gets if its wood is at a moisture, and what it has. [%]"""
    show = design.choices.rule.exact
    said: dict[str, list[str]] = {}
    for panel in reversed(design.grooved):
        at, has = fitted_at(design, panel=panel.name, moisture=moisture), _has(panel)
        words = f"{show(at.clearance)} across; {show(round(has, 2))}, as it is, is {at.fits(has)}"
        said.setdefault(words, []).append(panel.name)
    each = (f"clearance of {' and '.join(names)} {words}" for words, names in said.items())
    return f"With the wood at {moisture:.1f} %: {'. '.join(map(capital, each))}."


def _at_most(at: FittedAt, rule: Rule) -> str:
    """The greatest clearance, on a mark of the rule that is not beyond it."""
    if at.open:
        return rule.exact(rule.round(at.most, direction="down"))
    return "none does for damp and dry"
