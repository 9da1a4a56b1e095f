"""The gap that sawing and marking leave: its spread over many joints, in closed form.

The joint is held in its nominal place, shoulders shut; wood left over is pared away or crushed.
Wood missing shows as a gap, square to the cheek. Not in it: a lean that is always the same, and
the 0.05 mm or so by which wood crushes.
"""

from __future__ import annotations

from dataclasses import dataclass

from toolkit.box.joinery.hand import (
    GapFace,
    Hand,
    SawnJoint,
    Spread,
    both_below,
    no_wood_over,
    spread,
)
from toolkit.measures import Rule

NAMES = {
    "offset": "how near the line the saw starts",
    "lead": "how square the saw goes across the board",
    "slope": "how well it keeps to the slope",
}
NEAR = 0.05  # shares this near each other are said in one breath


@dataclass(frozen=True, slots=True)
class Gaps:
    """The widest gap of a corner as a spread over many such corners.

    ``face`` is ``far`` (the inside, where a saw's lean has its full effect) or ``knifed`` (the
    outside). ``keep_off`` is how far cuts are meant to stay on the waste side of the line, wood
    that is pared afterwards. [mm]
    """

    joint: SawnJoint
    hand: Hand
    face: GapFace
    copied: bool
    squared: bool
    keep_off: float

    @property
    def spread(self) -> Spread:
        """What each error does at a cheek of this face. [mm]"""
        return self._spread(self.face)

    @property
    def left_on(self) -> float:
        """Wood left on purpose at a cheek. Copied pins follow the tails: theirs alone. [mm]"""
        return self.keep_off * (1 if self.copied else 2)

    def at_most(self, gap: float) -> float:
        """Share of corners in which no gap is wider than this [mm]. [1]"""
        if gap < 0:
            return 0.0
        return both_below(gap + self.left_on, s=self.spread) ** self.joint.cheeks

    def quantile(self, share: float) -> float:
        """The gap that this share of corners stays within. [mm]

        Raises
        ------
        ValueError
            The share is not between 0 and 1.
        """
        if not 0 < share < 1:
            raise ValueError(f"a share of {share:g} of corners has no gap; give 0.5 or 0.95")
        if self.at_most(0.0) >= share:
            return 0.0
        low, high = 0.0, 9 * self.spread.baseline
        while high - low > 1e-7:
            middle = (low + high) / 2
            low, high = (middle, high) if self.at_most(middle) < share else (low, middle)
        return high

    @property
    def median(self) -> float:
        """Half of all corners have no wider gap. [mm]"""
        return self.quantile(0.5)

    @property
    def late(self) -> float:
        """Of 100 corners 95 have no wider gap. [mm]"""
        return self.quantile(0.95)

    @property
    def unpared(self) -> float:
        """Chance that the whole corner goes home without any paring. [1]"""
        crossed = self.copied and not self.squared
        one = no_wood_over(self._spread("far"), crossed=crossed, left_on=self.left_on)
        return one**self.joint.cheeks

    def _spread(self, face: GapFace) -> Spread:
        return spread(
            self.joint, hand=self.hand, face=face, copied=self.copied, squared=self.squared
        )

    @property
    def shares(self) -> tuple[tuple[str, float], ...]:
        """Each error's share of the variance, the largest first. [1]"""
        rows = self.spread.shares.items()
        return tuple(sorted(rows, key=lambda row: -row[1]))

    def curve(self, *, points: int = 61) -> tuple[tuple[float, float], ...]:
        """For a drawing: gaps from 0 up [mm] and the share of corners within each. [1]"""
        most = max(self.quantile(0.999), 0.05)
        gaps = [most * i / (points - 1) for i in range(points)]
        return tuple((gap, self.at_most(gap)) for gap in gaps)

    def sentence(self, rule: Rule) -> str:
        """The spread in words, for 100 such corners."""
        face = "inside (the far face)" if self.face == "far" else "outside (the knifed face)"
        pins = "pins copied from the tails" if self.copied else "tails and pins set out apart"
        pins += ", the tails squared first" if self.squared else ""
        kept = f", every cut {rule.exact(self.keep_off)} off its line" if self.keep_off else ""
        return (
            f"{self.joint.tails} tails, {pins}{kept}: of 100 such corners, 50 have no gap wider "
            f"than {rule.exact(self.median)} at the {face} and 95 none wider than "
            f"{rule.exact(self.late)}; {_of_100(self.at_most(0.10))} stay within "
            f"{rule.exact(0.10)}, {_of_100(self.at_most(0.30))} within {rule.exact(0.30)}, and "
            f"{_of_100(self.unpared)} go home unpared. Errors assumed: {self.hand.source}."
        )

    def which_matters(self) -> str:
        """Which error matters most, in words."""
        (first, one), (second, two), (third, three) = self.shares
        if one == 0:
            return "A hand without errors leaves no gap."
        nearly = ", nearly as much as" if one - two <= NEAR else "; then"
        return (
            f"Most of it, {one * 100:.0f} %, comes of {NAMES[first]}{nearly} {NAMES[second]} "
            f"({two * 100:.0f} %); {NAMES[third]} makes {three * 100:.0f} %."
        )


def _of_100(share: float) -> str:
    count = share * 100
    return "fewer than 1" if 0 < count < 1 else f"{count:.0f}"


def gaps(
    joint: SawnJoint,
    *,
    hand: Hand,
    face: GapFace = "far",
    copied: bool = False,
    squared: bool = False,
    keep_off: float = 0.0,
) -> Gaps:
    """The widest gap that a corner is likely to show.

    Parameters
    ----------
    joint : SawnJoint
        The corner. [mm]
    hand : Hand
        Errors of one cut.
    face : str
        ``far`` for the inside, ``knifed`` for the outside.
    copied : bool
        Whether the pins are knifed from the real tails.
    squared : bool
        Whether the tails were tried with a square, and pared, before anything else.
    keep_off : float
        How far cuts are meant to stay on the waste side of the line. [mm]

    Returns
    -------
    Gaps
        Median, 95 % point, the share of corners within any gap.

    Raises
    ------
    ValueError
        ``keep_off`` is negative.

    Source
    ------
    Derived: a cheek's gap is the larger of its two ends, whose errors share the offset and the
    lead; the widest of n tails is that of 2n cheeks. Checked by trials of exact planes.
    Workmanship of risk: Pye, The Nature and Art of Workmanship, 1968.

    >>> round(gaps(SawnJoint(8, 12, 7, 3), hand=Hand()).median, 2)
    0.3
    """
    if keep_off < 0:
        raise ValueError(
            f"{keep_off:g} mm off the line is on its wrong side; give 0 for sawing to the line"
        )
    return Gaps(joint, hand, face, copied, squared, keep_off)
