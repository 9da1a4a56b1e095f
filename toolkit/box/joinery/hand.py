"""How far a hand strays: the errors of one sawn cheek, and the cheek that they fall on.

David Pye called work of this kind *workmanship of risk*: nothing but the worker's care decides
how it turns out (The Nature and Art of Workmanship, 1968).
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from math import atan, cos, erfc, exp, hypot, isfinite, pi, radians, sqrt
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
        """A joint without a cheek has no gap to reckon."""
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
    def cheeks(self) -> int:
        """Two for each tail."""
        return 2 * self.tails

    @property
    def cheek_length(self) -> float:
        """From tip to baseline along the slope. [mm]"""
        return self.tail_length / cos(atan(1 / self.slope))


@dataclass(frozen=True, slots=True)
class Spread:
    """What each error adds to the wood missing at one face of a cheek, standard deviations [mm].

    ``lead`` and ``offset`` shift the whole of the cheek's edge, ``slope`` turns it about the tip.
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
    """How the errors of two cuts add up at one face of a cheek.

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
    turn = joint.cheek_length * radians(hand.slope)
    if copied:
        return Spread(hand.offset, pin_lead if face == "far" else tail_lead, turn)
    lead = hypot(pin_lead, tail_lead) if face == "far" else 0.0
    return Spread(sqrt(2) * hand.offset, lead, sqrt(2) * turn)


FAR_OUT = 8.0  # standard deviations: beyond lie fewer than one in 10^15
STRIPS = 96


def below(value: float, *, sd: float) -> float:
    """Chance that a normal error stays at or below a value, both in one unit; sd may be 0. [1]"""
    if sd == 0:
        return 1.0 if value >= 0 else 0.0
    return 0.5 * erfc(-value / sd / sqrt(2))


@cache
def _weights() -> tuple[float, ...]:
    return tuple(1 if i in (0, STRIPS) else 4 if i % 2 else 2 for i in range(STRIPS + 1))


def _integral(of: Callable[[float], float], low: float, high: float) -> float:
    if high <= low:
        return 0.0
    step = (high - low) / STRIPS
    return step / 3 * sum(w * of(low + i * step) for i, w in enumerate(_weights()))


def _density(x: float) -> float:
    return exp(-x * x / 2) / sqrt(2 * pi)


def both_below(gap: float, *, s: Spread) -> float:
    """Chance that tip and baseline of one cheek are both open by no more than a gap [mm]. [1]"""
    tip, turn = s.tip, s.slope
    if turn == 0:
        return below(gap, sd=tip)
    if turn <= tip:
        # Given how far the slope opens the baseline, the tip has to stay that much lower.
        opened = _integral(lambda x: _density(x) * below(gap - x * turn, sd=tip), 0, FAR_OUT)
        return 0.5 * below(gap, sd=tip) + opened
    if tip == 0:
        return below(gap, sd=turn) if gap >= 0 else 0.0
    top = min(gap / tip, FAR_OUT)
    return _integral(lambda x: _density(x) * below(gap - x * tip, sd=turn), -FAR_OUT, top)


def no_wood_over(s: Spread, *, crossed: bool, left_on: float = 0.0) -> float:
    """Chance that nowhere on one cheek is wood left over, so that it goes home unpared. [1]

    ``s`` is the spread at the far face; ``left_on`` the wood left on purpose [mm]; ``crossed``
    where a copied tail's own lead counts at the knifed face as the pin's does at the far one.
    """
    if not crossed and left_on == 0 and s.offset > 0 and s.lead > 0 and s.slope > 0:
        return _clear_of_all(s)

    def given_lead(x: float) -> float:
        def given_slope(y: float) -> float:
            return 2 * _density(y) * below(-(left_on + lead(x) + y * s.slope), sd=s.offset)

        closing = _integral(given_slope, 0, FAR_OUT) if s.slope else 0.0
        straight = below(-(left_on + lead(x)), sd=s.offset)
        return 0.5 * straight + 0.5 * (closing if s.slope else straight)

    def lead(x: float) -> float:
        return x * s.lead

    if s.lead == 0:
        return given_lead(0.0)
    if crossed:
        # The tail's lead closes one face, the pin's the other: the worse of the two counts.
        return _integral(
            lambda x: 2 * _density(x) * below(x, sd=1.0) * given_lead(x), -FAR_OUT, FAR_OUT
        )
    leaning = _integral(lambda x: 2 * _density(x) * given_lead(x), 0, FAR_OUT)
    return 0.5 * given_lead(0.0) + 0.5 * leaning


def _clear_of_all(s: Spread) -> float:
    """The same in closed form, by the solid angles of the corners of normal errors."""
    whole = s.baseline
    flat = 0.25 + (atan(s.offset / s.lead) + atan(s.offset / s.slope)) / (4 * pi)
    return flat - (_asin(s.lead / whole) + _asin(s.slope / whole)) / (4 * pi)


def _asin(x: float) -> float:
    return atan(x / sqrt(1 - x * x))
