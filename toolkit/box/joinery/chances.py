"""The sums under the gap of a sawn joint: normal errors, added up by Simpson's rule."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from math import atan, erfc, exp, pi, sqrt

from toolkit.box.joinery.hand import Spread

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
    """Chance that tip and baseline of one flank are both open by no more than a gap [mm]. [1]"""
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
    """Chance that nowhere on one flank is wood left over, so that it goes home unpared. [1]

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
