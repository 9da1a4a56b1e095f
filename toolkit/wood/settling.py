"""Whether wood has settled to the room, told from weighing it now and then.

Wood comes to its room ever more slowly: what is still to go shrinks by the same share each day.
Enough readings show the bend of that curve, and so where it will end and when. Too few, or too
coarse a scale, do not, and then the answer is None with the reason.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from toolkit.results import above, below
from toolkit.wood._checks import above_zero

# Customs, no source. Boards of the box's thickness, in stick with air all round, take between
# these times for what is still to go to fall to 37 %. [days]
SLOWEST = 30.0
FASTEST = 2.0
NEAR_ENOUGH = 0.5  # custom: wood whose weight will change by no more than this is settled [%]

_FEWEST = 4  # three numbers are fitted; one more reading is the least that can contradict them


@dataclass(frozen=True, slots=True)
class Settling:
    """What a log of weights says.

    Attributes
    ----------
    last_change : float or None
        Change between the last two readings; None with one reading. [%]
    final_weight : float or None
        Weight that the readings tend to; None when they do not allow to say. [g]
    days_left : float or None
        Time from the last reading until the weight is within 0.5 % of that. [days]
    settled : bool or None
        Whether it is within 0.5 % already; None when the readings do not allow to say.
    reason : str
        Why that is the answer.
    """

    last_change: float | None
    final_weight: float | None
    days_left: float | None
    settled: bool | None
    reason: str

    def sentence(self) -> str:
        """Say whether the wood is settled, and why one can tell or cannot."""
        verdict = {True: "Settled", False: "Not settled yet", None: "Too early to say"}
        return f"{verdict[self.settled]}: {self.reason}."


def settling(readings: Sequence[tuple[float, float]], *, scale_step: float = 1.0) -> Settling:
    """Judge from a log of weights whether a piece, or a bundle, has settled to its room.

    Parameters
    ----------
    readings : sequence of (day, weight)
        Days in order, counted from any day, and weights. [days, g]
    scale_step : float
        The least difference that the scale shows. [g]

    Returns
    -------
    Settling
        The verdict, and where the weight will end if the readings allow it. [g, days]

    Raises
    ------
    ValueError
        There are no readings, days do not increase, or a number is not above 0.

    Source
    ------
    Approach at a rate in proportion to what is left: a first-order model, no source. The limits
    of 0.5 %, 2 and 30 days are customs.

    >>> log = [(0, 2300), (3, 2239), (6, 2200), (9, 2176), (12, 2161), (15, 2151), (20, 2143)]
    >>> verdict = settling(log)
    >>> verdict.settled, round(verdict.final_weight, -1)
    (True, 2140.0)
    """
    _check(readings, scale_step)
    if len(readings) == 1:
        return Settling(None, None, None, None, "one reading shows no change; weigh it again")
    last_day, last_weight = readings[-1]
    last_change = 100 * (last_weight / readings[-2][1] - 1)
    fit = _fit(readings, scale_step)
    if fit is not None:
        final, gap, rate = fit
        gap_now = 100 * abs(gap) * math.exp(-rate * (last_day - readings[0][0])) / final
        days_left = max(math.log(gap_now / NEAR_ENOUGH) / rate, 0.0) if gap_now > 0 else 0.0
        settled = not above(gap_now, NEAR_ENOUGH)
        reason = f"the readings tend to {final:.0f} g, {gap_now:.1f} % from the last"
        if not settled:
            reason += f"; about {math.ceil(days_left)} more days"
        return Settling(last_change, final, days_left, settled, reason)
    return _without_fit(readings, scale_step, last_change)


def _check(readings: Sequence[tuple[float, float]], scale_step: float) -> None:
    """Refuse a log that cannot be one."""
    if not readings:
        raise ValueError("The log has no readings: weigh the wood and note the day and the weight.")
    above_zero(scale_step, name="scale_step", unit="g", example="1 for a kitchen scale")
    for day, weight in readings:
        above_zero(weight, name=f"the weight on day {day:g}", unit="g", example="440")
    for (before, _), (after, _) in pairwise(readings):
        if not before < after < math.inf:
            raise ValueError(
                f"Day {after:g} follows day {before:g} in the log: put the readings in order, "
                "one for each day."
            )


def _without_fit(
    readings: Sequence[tuple[float, float]], scale_step: float, last_change: float
) -> Settling:
    """Judge by how much may be left at the slowest approach, and must be at the fastest."""
    last_day, last_weight = readings[-1]
    most_left, least_left = math.inf, 0.0
    for day, weight in readings[:-1]:
        moved = abs(weight - last_weight)
        time = last_day - day
        # What changes by c while a share 1 - exp(-time/constant) goes leaves c/(exp(...) - 1).
        most = max(moved, scale_step) / last_weight / math.expm1(time / SLOWEST)
        least = max(moved - scale_step, 0.0) / last_weight / math.expm1(time / FASTEST)
        most_left, least_left = min(most_left, 100 * most), max(least_left, 100 * least)
    if not above(most_left, NEAR_ENOUGH):
        reason = f"at most {most_left:.1f} % is still to go, even if it goes slowly"
        return Settling(last_change, None, 0.0, True, reason)
    if above(least_left, NEAR_ENOUGH):
        reason = f"at least {least_left:.1f} % is still to go, even if it goes fast"
        return Settling(last_change, None, None, False, reason)
    days = last_day - readings[0][0]
    if below(100 * scale_step / last_weight / math.expm1(days / SLOWEST), NEAR_ENOUGH):
        reason = "the readings do not bend enough yet to show where they end; go on weighing"
    else:
        reason = (
            f"a step of {scale_step:g} g is coarse for {last_weight:.0f} g in {days:g} days; "
            "weigh several pieces together, or go on for longer"
        )
    return Settling(last_change, None, None, None, reason)


def _fit(
    readings: Sequence[tuple[float, float]], scale_step: float
) -> tuple[float, float, float] | None:
    """Least squares of ``final + gap exp(-rate t)``, or None where it is not sure of ``final``."""
    if len(readings) < _FEWEST:
        return None
    times = [day - readings[0][0] for day, _ in readings]
    weights = [weight for _, weight in readings]
    # For a given rate the rest is a straight line; so only the rate is searched, from a curve
    # that hardly bends over the log to one that is over by the second reading.
    slow, fast = 0.1 / times[-1], 5 / times[1]
    grid = [slow * (fast / slow) ** (i / 80) for i in range(81)]
    best = min(range(81), key=lambda i: _line(times, weights, grid[i])[2])
    if best in (0, 80):
        return None
    low, high = grid[best - 1], grid[best + 1]
    for _ in range(60):
        third = (high - low) / 3
        if _line(times, weights, low + third)[2] < _line(times, weights, high - third)[2]:
            high -= third
        else:
            low += third
    rate = (low + high) / 2
    final, gap, squares = _line(times, weights, rate)
    noise = max(squares / (len(times) - 3), scale_step**2 / 12)  # rounding alone gives step²/12
    error = _error_of_final(times, gap, rate, noise)
    sure = final > 0 and 2 * error <= NEAR_ENOUGH / 100 * final
    return (final, gap, rate) if sure else None


def _line(times: list[float], weights: list[float], rate: float) -> tuple[float, float, float]:
    """Straight line of weight over exp(-rate t): its end, its slope, its sum of squares."""
    decays = [math.exp(-rate * time) for time in times]
    mean_decay, mean_weight = sum(decays) / len(decays), sum(weights) / len(weights)
    spread = sum((decay - mean_decay) ** 2 for decay in decays)
    pairs = list(zip(decays, weights, strict=True))
    slope = sum((d - mean_decay) * (w - mean_weight) for d, w in pairs) / spread
    end = mean_weight - slope * mean_decay
    return end, slope, sum((w - end - slope * d) ** 2 for d, w in pairs)


def _error_of_final(times: list[float], gap: float, rate: float, noise: float) -> float:
    """Standard error of the final weight when all three numbers are uncertain together."""
    if gap == 0:
        return math.inf
    # How each reading answers to gap and rate, with what they share with a constant taken out,
    # then with what they share with each other.
    decays = [math.exp(-rate * time) for time in times]
    steep = [-gap * time * decay for time, decay in zip(times, decays, strict=True)]

    def dot(one: list[float], other: list[float]) -> float:
        return sum(a * b for a, b in zip(one, other, strict=True))

    dd, ds, ss = dot(decays, decays), dot(decays, steep), dot(steep, steep)
    sum_d, sum_s = sum(decays), sum(steep)
    determinant = dd * ss - ds * ds
    if determinant <= 0:
        return math.inf
    shared = (sum_d * sum_d * ss - 2 * sum_d * sum_s * ds + sum_s * sum_s * dd) / determinant
    free = len(times) - shared
    return math.sqrt(noise / free) if free > 0 else math.inf
