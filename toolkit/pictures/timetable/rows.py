"""What a timetable is drawn from: rows of bars, and the days that they lie on."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Kind = Literal["bench", "shared tool", "chopping", "glue"]


@dataclass(frozen=True, slots=True)
class Bit:
    """One step of somebody, in minutes at the bench from the first morning. [min]

    ``queued`` is how long a tool was waited for before it; ``kind`` may be ``"glue"`` for waiting
    until it holds.
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
    """The days that the bars lie on, in minutes at the bench of each. [min]

    ``quiet`` is the end of every day but the last in which nobody chops; ``ticks`` are minutes,
    and the words that stand there.
    """

    days: int
    minutes: float
    lunch: float
    quiet: float
    ticks: tuple[tuple[float, str], ...]
