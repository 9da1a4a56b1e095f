"""Feeler gauges in the joint: what readings say of a hand."""

from __future__ import annotations

from dataclasses import dataclass, replace

from toolkit.box.joinery.gap import Gaps
from toolkit.measures import Rule

BLADES = (0.05, 0.10, 0.15, 0.20, 0.30, 0.50)  # common gauges: common practice, no source [mm]
MOST_TIMES = 16.0  # a hand so many times as rough as assumed is as far as the search goes


@dataclass(frozen=True, slots=True)
class HandReading:
    """Widest gaps measured at some corners beside what was foreseen. Gaps in mm.

    ``places`` is the share of corners foreseen to do as well or better, for each reading.
    ``times`` is how rough the hand is beside the one assumed: 1 as assumed, 0.5 half its errors.
    ``low`` and ``high`` bracket it, and ``sure`` is the chance that such a bracket holds.
    """

    readings: tuple[float, ...]
    foreseen: float
    places: tuple[float, ...]
    times: float
    low: float
    high: float
    sure: float

    def sentence(self, rule: Rule) -> str:
        """What the readings say, and how little few of them prove."""
        middle = rule.exact(_middle(self.readings))
        if len(self.readings) == 1:
            proof = "One corner proves little: measure more."
        else:
            proof = (
                f"From {len(self.readings)} corners anything from {self.low:.1f} to "
                f"{self.high:.1f} times is likely ({self.sure * 100:.0f} %)."
            )
        return (
            f"Your middle gap is {middle} where {rule.exact(self.foreseen)} was foreseen: your "
            f"errors are about {self.times:.1f} times those assumed. {proof}"
        )


def _middle(readings: tuple[float, ...]) -> float:
    ordered, half = sorted(readings), len(readings) // 2
    return ordered[half] if len(ordered) % 2 else (ordered[half - 1] + ordered[half]) / 2


def _times(gaps: Gaps, gap: float) -> float:
    """How many times the errors assumed would make a gap the middle one."""
    low, high = 0.0, MOST_TIMES
    while high - low > 1e-4:
        middle = (low + high) / 2
        within = replace(gaps, hand=gaps.hand.times(middle)).at_most(gap)
        low, high = (middle, high) if within > 0.5 else (low, middle)
    return low


def compare_readings(gaps: Gaps, *, readings: tuple[float, ...]) -> HandReading:
    """Where feeler readings [mm] stand among the gaps foreseen, and how rough the hand is.

    The smallest to the largest of n readings holds the true middle with a chance of 1 − 2^(1 − n),
    whatever the spread: order statistics.
    """
    if not readings or min(readings) < 0:
        raise ValueError(
            "give the widest gap of at least one corner in mm, 0 where no blade enters"
        )
    return HandReading(
        readings=readings,
        foreseen=gaps.median,
        places=tuple(gaps.at_most(reading) for reading in readings),
        times=_times(gaps, _middle(readings)),
        low=_times(gaps, min(readings)),
        high=_times(gaps, max(readings)),
        sure=1 - 2.0 ** (1 - len(readings)),
    )
