"""Estimates, kept apart from what is counted: the heap of shavings, and the time."""

from __future__ import annotations

from dataclasses import dataclass

from toolkit.results import above_zero, between, not_negative

SECONDS = 2.0  # custom, no source: one stroke of a small board [s]
LEARNER = 8.0  # custom, no source: novices take 6 to 10 times that, with testing and resetting
LOOSE = 8.0  # custom, no source: how much room shavings take, beside the wood they were


@dataclass(frozen=True, slots=True)
class Shavings:
    """Wood planed away: its volume, and an estimate of the heap of shavings. [mm³]"""

    solid: float
    loose: float

    @property
    def sentence(self) -> str:
        """The heap in words."""
        return (
            f"{self.solid / 1e6:.2g} litres of wood, as an estimate {self.loose / 1e6:.2g} litres "
            "of loose shavings: curl and crush decide, so take the second number as a guess."
        )


def shavings(volume: float) -> Shavings:
    """The heap of shavings that some wood makes.

    Parameters
    ----------
    volume : float
        Of the wood planed away. [mm³]

    Returns
    -------
    Shavings
        Both volumes; the second is an estimate. [mm³]

    Raises
    ------
    ValueError
        The volume is below 0.

    Source
    ------
    A custom: common practice, no source.

    >>> shavings(42_560).loose
    340480.0
    """
    not_negative(volume, name="volume", unit="mm³", example="42000")
    return Shavings(float(volume), volume * LOOSE)


@dataclass(frozen=True, slots=True)
class BenchTime:
    """An estimate of the time that counted strokes take."""

    strokes: int
    seconds: float  # a stroke, for a practised hand
    learner: float  # times as long with testing, resetting and rest

    @property
    def practised(self) -> float:
        """Minutes of nothing but strokes. [min]"""
        return self.strokes * self.seconds / 60

    @property
    def minutes(self) -> float:
        """Minutes as a learner may expect. [min]"""
        return self.practised * self.learner

    @property
    def sentence(self) -> str:
        """The estimate in words, apart from the count."""
        return (
            f"{self.strokes} strokes. As an estimate {_minutes(self.practised)} of planing at "
            f"{self.seconds:g} s a stroke, and {_minutes(self.minutes)} for a learner who tests, "
            "resets and rests."
        )


def _minutes(value: float) -> str:
    return f"about {value:.0f} min" if value >= 1 else "less than 1 min"


def bench_time(strokes: int, *, seconds: float = SECONDS, learner: float = LEARNER) -> BenchTime:
    """The time that strokes may take, practised and as a learner. [min]

    An estimate kept apart from their number. Customs: 2 s a stroke, 6 to 10 times as long for
    novices; common practice, no source.
    """
    not_negative(strokes, name="strokes", unit="", example="45")
    above_zero(seconds, name="seconds", unit="s", example="2")
    between(learner, low=1, high=1000, name="learner", unit="times", example=f"{LEARNER:g}")
    return BenchTime(strokes, float(seconds), float(learner))
