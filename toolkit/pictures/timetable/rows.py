"""What a timetable is drawn from: rows of bars, and the days that they lie on."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Kind = Literal["bench", "shared tool", "chopping", "glue"]


@dataclass(frozen=True, slots=True)
class Bit:
    """One step of somebody, counted in minutes at the bench from the first morning.

    Attributes
    ----------
    number : int
        The step's number.
    start, end : float
        When it is begun and done. [min]
    queued : float
        How long a tool was waited for before it. [min]
    kind : str
        ``"bench"``, ``"shared tool"``, ``"chopping"``, or ``"glue"`` for waiting until it holds.
    """

    number: int
    start: float
    end: float
    queued: float = 0.0
    kind: Kind = "bench"


@dataclass(frozen=True, slots=True)
class Row:
    """One student: the words before the bars, the bars, and the words for running over."""

    label: str
    bits: tuple[Bit, ...]
    over: str = ""


@dataclass(frozen=True, slots=True)
class Weekend:
    """The days that the bars lie on.

    Attributes
    ----------
    days : int
        How many.
    minutes : float
        At the bench on each. [min]
    lunch : float
        When lunch is, in minutes at the bench of each day. [min]
    quiet : float
        The end of every day but the last in which nobody chops. [min]
    ticks : tuple
        Minutes at the bench of a day, and the words that stand there. [min]
    """

    days: int
    minutes: float
    lunch: float
    quiet: float
    ticks: tuple[tuple[float, str], ...]
