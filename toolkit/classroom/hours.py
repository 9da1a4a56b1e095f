"""The hours of a class: minutes at the bench, day after day, lunch and nights between them."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Hours:
    """When the class works. Time is counted in minutes at the bench, days end to end.

    Attributes
    ----------
    days : int
        How many days.
    minutes : float
        At the bench on each day, breaks not counted. [min]
    lunch_at, lunch : float
        When lunch begins, in minutes at the bench of each day, and how long it lasts. [min]
    no_chopping : float
        The end of every day but the last in which nobody chops. [min]
    """

    days: int = 2
    minutes: float = 360.0
    lunch_at: float = 180.0
    lunch: float = 45.0
    no_chopping: float = 60.0

    def __post_init__(self) -> None:
        """Hours that no class can have are refused."""
        if self.days < 1 or self.minutes <= 0 or self.lunch < 0:
            raise ValueError("a class has at least one day, some minutes, and no lunch under 0 min")
        if not 0 <= self.no_chopping <= self.minutes or not 0 <= self.lunch_at <= self.minutes:
            raise ValueError("lunch and the hour without chopping lie within the day's minutes")

    @property
    def end(self) -> float:
        """The end of the last day. [min]"""
        return self.days * self.minutes

    def begins(self, day: int) -> float:
        """When a day begins. [min]"""
        return (day - 1) * self.minutes

    def may_chop(self, start: float, length: float) -> bool:
        """Whether chopping of a length, begun then, keeps out of the ends of days. [min]"""
        for day in range(1, self.days):
            end = day * self.minutes
            if start < end and start + length > end - self.no_chopping + 1e-9:
                return False
        return True

    def after_wait(self, start: float, wait: float) -> float:
        """When a wait is over that lunch and night shorten. [min]"""
        if wait <= 0:
            return start
        day = int(start // self.minutes)
        end = (day + 1) * self.minutes
        lunch_at = day * self.minutes + self.lunch_at
        over = start + wait
        if start <= lunch_at < over:
            over = max(lunch_at, over - self.lunch)
        # After the last day there is no night: the class goes on until it is done.
        return min(over, end) if day + 1 < self.days else over
