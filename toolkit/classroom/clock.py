"""Minutes at the bench as times of day, breaks spread evenly over them."""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil

from toolkit.classroom.hours import Hours
from toolkit.files import Day

_TO = 5  # nobody keeps a plan to the minute


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
        """A time in words: ``day 1, 10:35``. What is after the last day goes on from its end.

        Parameters
        ----------
        minute : float
            At the bench, days end to end. [min]

        Source
        ------
        Arithmetic; breaks are spread evenly.
        """
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
