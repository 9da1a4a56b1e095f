"""A board's end after it dried, and a panel through the year: what their drawings need."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass
from math import cos, radians, sin
from typing import Any

from toolkit.box import Panel
from toolkit.measures import Rule
from toolkit.pictures.kit import Point, rectangle
from toolkit.results import above, below
from toolkit.wood import (
    MONTHS,
    Climate,
    Cup,
    PithInside,
    cup,
    species as find_species,
    widths_through_the_year,
)

# Nearer to quarter-sawn than this, neither face lies towards the bark.
_FACES_ALIKE = 80.0  # [degrees]


@dataclass(frozen=True, slots=True)
class Sawn:
    """A board's end in the log and after its change of moisture.

    Attributes
    ----------
    width, thickness : float
        Size of the section as sawn. [mm]
    ring_radius : float
        Distance from the pith to the middle of the section. [mm]
    rings : float
        Angle between the ring at the middle of the section and the width. [degrees]
    species : str
        The wood.
    moisture_from, moisture_to : float
        Moisture content as sawn and afterwards. [%]
    cup : Cup or None
        What became of it; None where the pith lies in the board and nothing can be foretold.
    """

    width: float
    thickness: float
    ring_radius: float
    rings: float
    species: str
    moisture_from: float
    moisture_to: float
    cup: Cup | None

    @classmethod
    def of(cls, width: float, *, species: str, rings: float = 0.0, **asked: Any) -> Sawn:
        """Saw a board and let it dry; what each argument means, and what is refused, as for
        ``toolkit.wood.cup``. [mm, degrees, %]"""
        name, found = find_species(species).name, None
        with suppress(PithInside):
            found = cup(width, rings=rings, species=species, **asked)
        return cls(width, rings=rings, species=name, cup=found, **asked)

    @property
    def pith(self) -> Point:
        """Where the pith lies, seen from the middle of the section, bark side up. [mm]"""
        turn = radians(self.rings)
        return -self.ring_radius * sin(turn), -self.ring_radius * cos(turn)

    @property
    def section(self) -> list[Point]:
        """The four corners as sawn, from the middle of the section. [mm]"""
        half, rise = self.width / 2, self.thickness / 2
        return rectangle((-half, half), (-rise, rise))

    @property
    def faces_differ(self) -> bool:
        """Whether one face lies towards the bark and the other towards the heart."""
        return self.rings < _FACES_ALIKE

    @property
    def became(self) -> str:
        """The change of moisture as a title: ``dried from 14 to 8 %``."""
        word = "dried" if self.moisture_to <= self.moisture_from else "swollen"
        return f"{word} from {self.moisture_from:.2g} to {self.moisture_to:.2g} %"

    def sentence(self, rule: Rule) -> str:
        """Where it was sawn and what became of it, on somebody's rule."""
        show = rule.exact
        text = (
            f"A {show(self.width, unit=False)} × {show(self.thickness)} board of "
            f"{self.species}{_known(self.species)}, "
            f"its middle {show(self.ring_radius)} from the pith, rings at {self.rings:.3g}° to "
            "its width"
        )
        if self.cup is None:
            return (
                f"{text}: the pith lies in it. It will split, and no cup can be foretold; saw it "
                "so that the pith stays out."
            )
        return f"{text}, {self.became}. {self.cup.sentence(show=show)}"


def _known(wood: str) -> str:
    """What is to be said behind a wood's name where its movement is from memory."""
    return " (its movement from memory)" if find_species(wood).from_memory else ""


@dataclass(frozen=True, slots=True)
class Year:
    """The width of a panel in each month at a place, as if it followed the air at once.

    Attributes
    ----------
    name, species : str
        What moves, and of what wood.
    rings : float
        Angle between its growth rings and its width. [degrees]
    place : Climate
        Where it lives.
    made, moisture_from : float
        Width when made [mm], and how wet its wood then is. [%]
    widths : tuple of float
        Width from January to December. [mm]
    widest, narrowest : float or None
        Width at which it touches both groove bottoms, and at which, pushed into one groove, it
        leaves the other; None for wood that lies in no groove. [mm]
    """

    name: str
    species: str
    rings: float
    place: Climate
    made: float
    moisture_from: float
    widths: tuple[float, ...]
    widest: float | None = None
    narrowest: float | None = None

    @classmethod
    def of(
        cls,
        width: float,
        *,
        place: Climate,
        species: str,
        rings: float,
        moisture_from: float,
        name: str = "board",
        widest: float | None = None,
        narrowest: float | None = None,
    ) -> Year:
        """Work a year out. [mm, %]"""
        widths = widths_through_the_year(
            width, place=place, species=species, rings=rings, moisture_from=moisture_from
        )
        wood = find_species(species).name
        return cls(name, wood, rings, place, width, moisture_from, widths, widest, narrowest)

    @classmethod
    def of_panel(cls, panel: Panel, **asked: Any) -> Year:
        """The year of a lid or a bottom in its grooves; the rest as for ``of``. [mm, %]"""
        wide, slim = panel.widest, panel.narrowest
        return cls.of(panel.moving, name=panel.name, widest=wide, narrowest=slim, **asked)

    @property
    def near(self) -> int:
        """The month whose air would bring it nearest to as it was made, the first of equals."""
        wet = self.place.moisture
        return min(range(len(wet)), key=lambda month: abs(wet[month] - self.moisture_from))

    @property
    def most(self) -> int:
        """The month in which it is widest, the first of equals."""
        return self.widths.index(max(self.widths))

    @property
    def least(self) -> int:
        """The month in which it is narrowest, the first of equals."""
        return self.widths.index(min(self.widths))

    @property
    def presses(self) -> bool:
        """Whether it grows wider than its grooves allow."""
        return self.widest is not None and above(max(self.widths), self.widest)

    @property
    def leaves(self) -> bool:
        """Whether it can leave a groove."""
        return self.narrowest is not None and below(min(self.widths), self.narrowest)

    @property
    def provisional(self) -> bool:
        """Whether the place's figures are from memory."""
        return self.place.seen == "memory"

    def sentence(self, rule: Rule) -> str:
        """How far it moves, and what its grooves say to that, on somebody's rule."""
        show = rule.exact
        where = f"{self.place.name} (provisional figures)" if self.provisional else self.place.name
        wide, slim = max(self.widths), min(self.widths)
        text = (
            f"A {self.name} of {self.species}{_known(self.species)}, {show(self.made)} wide when "
            f"made at {self.moisture_from:.1f} % moisture, at {where}: widest in "
            f"{MONTHS[self.most]}, {show(wide)}, narrowest in {MONTHS[self.least]}, {show(slim)}."
        )
        return f"{text} {' '.join(self._limits(rule))}".strip()

    def _limits(self, rule: Rule) -> Iterator[str]:
        """What the grooves say to the widest and to the narrowest, a sentence each."""
        show = rule.exact
        if self.widest is not None:
            room = show(abs(self.widest - max(self.widths)))
            yield (
                f"Not right: at its widest it presses on the groove bottoms by {room}."
                if self.presses
                else f"At its widest it has {room} left in its grooves."
            )
        if self.narrowest is not None:
            grip = show(abs(min(self.widths) - self.narrowest))
            yield (
                f"Not right: at its narrowest, pushed to one side, it is {grip} out of the other "
                "groove."
                if self.leaves
                else f"At its narrowest, pushed to one side, it is {grip} in the other groove."
            )
