"""What to buy when the stock falls short, and the last day to order it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Literal

from toolkit.measures import Rule
from toolkit.results import SizedText, below
from toolkit.stock.blanks import Blank, sawn_by
from toolkit.stock.losses import LOST
from toolkit.stock.sizes import LumberSize, size_to_ask_for
from toolkit.stock.volume import board_feet_of_sticks, cubic_metres
from toolkit.wood import species

THINNER = 2.0  # custom, no source: parts this much thinner still come from the same blank [mm]
NARROWER = 15.0  # custom, no source: and parts this much narrower [mm]
SETTLING_DAYS = 14  # custom, no source: in stick at the place of the class
DELIVERY_DAYS = 7  # custom, no source


@dataclass(frozen=True, slots=True)
class Purchase:
    """A clear length or board that gives some missing parts: sizes to ask for, as printed. [mm]"""

    wood: str
    length: float
    width: float
    thickness: float
    parts: tuple[Blank, ...]
    size: LumberSize | None

    @property
    def volume(self) -> float:
        """Its volume. [m³]"""
        return cubic_metres(self.length, width=self.width, thickness=self.thickness)

    @property
    def board_feet(self) -> float:
        """What a hardwood yard counts for it, under an inch as an inch. [board feet]"""
        return board_feet_of_sticks(self.length, width=self.width, thickness=self.thickness)

    def by(self, rule: Rule) -> SizedText:
        """Length × width × thickness on somebody's rule."""
        return sawn_by((self.length, self.width, self.thickness), rule=rule, of=self.name)

    @property
    def name(self) -> str:
        """The length by the first of its parts."""
        return f"blank for {self.parts[0].name}"

    def sentence(self, rule: Rule) -> str:
        """What to ask for in words, on somebody's rule."""
        names = ", ".join(part.name for part in self.parts)
        yard = ""
        if self.size is not None:
            state = "planed" if self.size.kind == "softwood" else "rough"
            yard = f" A yard's next thickness is {self.size.inches} {state}."
        return (
            f"For {names}: {self.wood or 'wood'} at least {self.by(rule)}, clear, allowances "
            f"included; {self.board_feet:.2g} board feet as a hardwood yard counts.{yard}"
        )


def to_buy(missing: Sequence[Blank], *, rule: Rule) -> tuple[Purchase, ...]:
    """The lengths that would supply missing parts, one part wide, parts end to end. [mm]

    Their sizes go up to a rough mark on the rule of whoever buys. Parts of much the same width and
    thickness come from one length. What is much the same, and what is lost at the ends, are
    customs: common practice, no source.
    """
    sticks: list[list[Blank]] = []
    for part in sorted(missing, key=lambda blank: (-blank.thickness, -blank.width)):
        for stick in sticks:
            first, width = stick[0], max(blank.width for blank in stick)
            if (
                first.wood.casefold() == part.wood.casefold()
                and not below(part.thickness, first.thickness - THINNER)
                and abs(width - part.width) <= NARROWER
            ):
                stick.append(part)
                break
        else:
            sticks.append([part])
    return tuple(_purchase(stick, rule) for stick in sticks)


def _purchase(parts: list[Blank], rule: Rule) -> Purchase:
    lost = LOST[rule.units]
    long = sum(part.length for part in parts) + lost["cut"] * (len(parts) - 1) + lost["ends"]
    length, width = rule.sawn(long), rule.sawn(max(part.width for part in parts))
    thickness = rule.sawn(max(part.thickness for part in parts), axis="thickness")
    wood = parts[0].wood
    size = size_to_ask_for(thickness, kind=_kind(wood)) if thickness > 0 else None
    return Purchase(wood, length, width, thickness, tuple(parts), size)


def _kind(wood: str) -> Literal["hardwood", "softwood"]:
    try:
        return "softwood" if species(wood).kind == "softwood" else "hardwood"
    except ValueError:
        return "hardwood"


@dataclass(frozen=True, slots=True)
class OrderBy:
    """The last day to order wood for a class, and why."""

    day: date
    class_day: date
    delivery_days: int
    settling_days: int

    @property
    def sentence(self) -> str:
        """The day in words."""
        return (
            f"Order by {self.day:%Y-%m-%d}: {self.delivery_days} days to come and "
            f"{self.settling_days} days in stick, before the class on {self.class_day:%Y-%m-%d}."
        )


def order_by(
    class_day: date,
    *,
    settling_days: int = SETTLING_DAYS,
    delivery_days: int = DELIVERY_DAYS,
) -> OrderBy:
    """The last day to order wood so that it has settled when the class begins. [days]

    >>> order_by(date(2031, 5, 24)).day
    datetime.date(2031, 5, 3)
    """
    if settling_days < 0 or delivery_days < 0:
        raise ValueError(
            f"read {settling_days} days of settling and {delivery_days} of delivery; give 0 or more"
        )
    day = class_day - timedelta(days=settling_days + delivery_days)
    return OrderBy(day, class_day, delivery_days, settling_days)
