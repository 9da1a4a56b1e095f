"""The hours of a class: minutes at the bench, day after day, lunch and nights between them."""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil

from toolkit.files import Day

_TO = 5  # nobody keeps a plan to the minute


@dataclass(frozen=True, slots=True)
class Hours:
    """When the class works. Time is counted in minutes at the bench, days end to end."""

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

    def chopping_from(self, start: float, length: float) -> float:
        """The first time from then at which chopping keeps out of the ends of days. [min]"""
        for day in range(1, self.days):
            end = day * self.minutes
            if length and start < end and start + length > end - self.no_chopping + 1e-9:
                start = end
        return start

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


@dataclass(frozen=True, slots=True)
class TimeOfDay:
    """The clock of a class. ``day`` has its hours. [min]"""

    day: Day

    @property
    def _stretch(self) -> float:
        """Minutes by the clock for each at the bench, lunch aside."""
        return (self.day.minutes + self.day.breaks) / self.day.minutes

    @property
    def hours(self) -> Hours:
        """The same hours as a timetable counts them, at the bench. [min]"""
        return Hours(
            days=len(self.day.dates),
            minutes=float(self.day.minutes),
            lunch_at=(self.day.lunch - self.day.start) / self._stretch,
            lunch=float(self.day.lunch_minutes),
            no_chopping=float(self.day.no_chopping),
        )

    def shown(self, minute: float) -> str:
        """A time in words: ``day 1, 10:35``. What is after the last day goes on from its end."""
        hours = self.hours
        number = min(int(minute // hours.minutes), hours.days - 1)
        within = minute - hours.begins(number + 1)
        clock = self.day.start + within * self._stretch
        if within > hours.lunch_at or (within == hours.lunch_at and within):
            clock += self.day.lunch_minutes
        if within > hours.minutes:
            after = divmod(_TO * ceil((within - hours.minutes) / _TO), 60)
            return f"day {number + 1}, {after[0]}:{after[1]:02d} h after the end"
        rounded = _TO * round(clock / _TO)
        return f"day {number + 1}, {rounded // 60:02d}:{rounded % 60:02d}"
