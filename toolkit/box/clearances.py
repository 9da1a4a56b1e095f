"""Two limits pulled against each other: room to swell in the damp, hold enough when dry."""

from __future__ import annotations

from dataclasses import dataclass

from toolkit.box.customs import Customs
from toolkit.box.designing import Design
from toolkit.box.panels import Panel
from toolkit.box.seasons import Season
from toolkit.measures import Rule
from toolkit.results import SizedText, TaggedSize, above, below


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

    def now(self, rule: Rule) -> TaggedSize:
        """The clearance as it is, on somebody's rule."""
        text = rule.exact(round(self.has, 2))
        return TaggedSize(text, self.panel, "clearance across", self.has)

    def sentence(self, rule: Rule) -> SizedText:
        """Both limits and where the panel stands, on somebody's rule."""
        low, high = rule.exact(round(self.least, 2)), rule.exact(round(self.most, 2))
        if not self.open:
            return SizedText(
                f"The damp asks the {self.panel} for {low} of clearance or more, the dry allows "
                f"{high if self.most > 0 else 'none'} at most: no clearance does for both."
            )
        stands = "too tight" if self.tight else "too loose" if self.loose else "between the two"
        return SizedText.of(
            f"The damp asks the {self.panel} for {low} of clearance or more, the dry allows "
            f"{high} at most; it has ",
            self.now(rule),
            f", {stands}.",
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


def most_clearance(row: Panel, year: Season, customs: Customs) -> float:
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
        has=row.clearance,
        least=row.season.clearance(row.widest),
        most=most_clearance(row, row.season, customs),
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
