"""How far a hand strays: the errors of one sawn flank, and the flank that they fall on.

David Pye called work of this kind *workmanship of risk*: nothing but the worker's care decides
how it turns out (The Nature and Art of Workmanship, 1968).
"""

from __future__ import annotations

from dataclasses import dataclass
from math import atan, cos, hypot, isfinite, radians, sqrt
from typing import Literal

from toolkit.box.corner import Corner
from toolkit.box.customs import Customs
from toolkit.results import CUSTOM

GapFace = Literal["far", "knifed"]


@dataclass(frozen=True, slots=True)
class Hand:
    """Standard deviations of one cut: the line missed by ``offset`` [mm], the saw leaning across
    the board by ``lead`` [deg] and straying from the slope by ``slope`` [deg].

    The defaults are custom, no measurement: compare them with your own joints.
    """

    lead: float = 0.5
    slope: float = 0.5
    offset: float = 0.1
    source: str = CUSTOM

    def __post_init__(self) -> None:
        """A spread is a size: it can't be below nothing."""
        for name, unit in (("lead", "°"), ("slope", "°"), ("offset", " mm")):
            value = getattr(self, name)
            if not (isfinite(value) and value >= 0):
                raise ValueError(
                    f"{name} {value:g}{unit} is no spread of saw cuts; give 0{unit} or more"
                )

    @classmethod
    def of(cls, customs: Customs) -> Hand:
        """The hand that a box's customs describe."""
        source = f"{CUSTOM}; edit customs.saw_lead, customs.saw_slope, customs.saw_offset"
        return cls(customs.saw_lead, customs.saw_slope, customs.saw_offset, source)

    def times(self, share: float) -> Hand:
        """All three errors so many times as large: half the errors, half the gap. [1]"""
        return Hand(self.lead * share, self.slope * share, self.offset * share, self.source)


@dataclass(frozen=True, slots=True)
class SawnJoint:
    """What a gap depends on in a corner. Lengths in mm, slope 1 in so many.

    ``thickness`` is the tail board's: how deep a cut runs from the knifed face to the far one.
    """

    tail_length: float
    thickness: float
    slope: float
    tails: int

    def __post_init__(self) -> None:
        """A joint without a flank has no gap to reckon."""
        if not (self.tail_length > 0 and self.thickness > 0 and self.slope > 0 and self.tails > 0):
            raise ValueError(
                "a sawn joint needs a tail length, a thickness, a slope and at least one tail, "
                f"all above 0; got {self.tail_length:g} mm, {self.thickness:g} mm, "
                f"1 in {self.slope:g}, {self.tails} tails"
            )

    @classmethod
    def of(cls, corner: Corner, *, tail_board_thickness: float) -> SawnJoint:
        """A corner that is set out, with the thickness of its tail board. [mm]"""
        return cls(corner.tail_length, tail_board_thickness, corner.slope, len(corner.tails))

    @property
    def flanks(self) -> int:
        """Two for each tail."""
        return 2 * self.tails

    @property
    def flank_length(self) -> float:
        """From tip to baseline along the slope. [mm]"""
        return self.tail_length / cos(atan(1 / self.slope))


@dataclass(frozen=True, slots=True)
class Spread:
    """What each error adds to the wood missing at one face of a flank, standard deviations [mm].

    ``lead`` and ``offset`` shift the whole of the flank's edge, ``slope`` turns it about the tip.
    """

    offset: float
    lead: float
    slope: float

    @property
    def tip(self) -> float:
        """At the tail's tip. [mm]"""
        return hypot(self.offset, self.lead)

    @property
    def baseline(self) -> float:
        """At the baseline, where all three meet. [mm]"""
        return hypot(self.offset, self.lead, self.slope)

    @property
    def shares(self) -> dict[str, float]:
        """Share of each in the variance at the baseline, adding up to 1."""
        whole = self.baseline**2
        parts = {"offset": self.offset, "lead": self.lead, "slope": self.slope}
        return {name: (sd**2 / whole if whole else 0.0) for name, sd in parts.items()}


def spread(
    joint: SawnJoint,
    *,
    hand: Hand,
    face: GapFace = "far",
    copied: bool = False,
    squared: bool = False,
) -> Spread:
    """How the errors of two cuts add up at one face of a flank.

    Parameters
    ----------
    joint : SawnJoint
        The corner. [mm]
    hand : Hand
        Errors of one cut.
    face : str
        ``knifed``: where the lines were cut, the tail board's outside. ``far``: the other end of
        the saw cut, the inside.
    copied : bool
        Whether the pins are knifed from the real tails instead of being set out by measure.
    squared : bool
        Whether the tails were tried with a square, and pared, before anything else.

    Returns
    -------
    Spread
        Standard deviations of the wood missing from the two boards together. [mm]

    Source
    ------
    Derived. One cut leaves c(l, z) = offset + l · tan(slope error) + z · tan(lead) · cos(angle)
    missing, l from the tail's tip, z from the knifed face. Set out apart, two such cuts add up.
    Copied, the knife follows the tail at its inside face and puts that outline on the pin board's
    end, which ends up at the tail's *outside*: there the tail's own lead is left over as an
    error; at the inside, tail and line agree, and only the errors of the pin's cut remain.
    """
    pin_lead = joint.thickness * cos(atan(1 / joint.slope)) * radians(hand.lead)
    tail_lead = 0.0 if squared else pin_lead
    turn = joint.flank_length * radians(hand.slope)
    if copied:
        return Spread(hand.offset, pin_lead if face == "far" else tail_lead, turn)
    lead = hypot(pin_lead, tail_lead) if face == "far" else 0.0
    return Spread(sqrt(2) * hand.offset, lead, sqrt(2) * turn)
