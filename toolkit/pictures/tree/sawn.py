"""A board's end where it was sawn from the log, with what became of it: what a drawing needs."""

from __future__ import annotations

from contextlib import suppress
from dataclasses import dataclass
from math import cos, radians, sin
from typing import Any

from toolkit.measures import Rule
from toolkit.pictures.kit.picture import Point
from toolkit.pictures.kit.view import rectangle
from toolkit.wood import Cup, PithInside, cup, species as find_species

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
            f"A {show(self.width, unit=False)} × {show(self.thickness)} board of {self.species}, "
            f"its middle {show(self.ring_radius)} from the pith, rings at {self.rings:.3g}° to "
            "its width"
        )
        if self.cup is None:
            return (
                f"{text}: the pith lies in it. It will split, and no cup can be foretold; saw it "
                "so that the pith stays out."
            )
        return f"{text}, {self.became}. {self.cup.sentence(show=show)}"
