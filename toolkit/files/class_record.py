"""A class as its file has it: when it meets, who comes, what it shares, what is on the rack."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from pathlib import Path
from typing import Any, Literal

from toolkit.box.choices import Choices
from toolkit.measures import Rule
from toolkit.stock import Board

Pace = Literal["practised", "novice", "slow"]
Words = Literal["us", "british"]
Paper = Literal["a4", "letter"]
Hand = Literal["right", "left"]
PlayIs = Literal["total", "per side"]
# What is seen of a finished box, in the words of the rubric.
GrooveSeen = Literal["none", "plugged", "open"]
SurfaceSeen = Literal["clean", "small tear-out", "tear-out", "scallops"]
MarksSeen = Literal["yes", "mostly", "no"]


@dataclass(frozen=True, slots=True)
class Day:
    """The days of a class and the hours of each of them, in minutes after midnight. [min]

    ``breaks`` are those of one day together, lunch aside; ``no_chopping`` is the end of every day
    but the last in which nobody chops.
    """

    dates: tuple[date, ...]
    start: int
    end: int
    lunch: int
    lunch_minutes: int
    breaks: int
    no_chopping: int

    @property
    def minutes(self) -> int:
        """At the bench on each day. [min]"""
        return self.end - self.start - self.lunch_minutes - self.breaks


@dataclass(frozen=True, slots=True)
class Buying:
    """How wood is bought: shares of spare sets and of waste, days, and a practice stick. [mm]

    ``longest`` is the longest stick that is asked for. [mm]
    """

    spare: float = 0.25
    waste: float = 0.3
    delivery_days: int = 7
    settling_days: int = 14
    practice: float = 300.0
    longest: float = 2400.0


@dataclass(frozen=True, slots=True)
class Student:
    """One student, by number. Without a box, ``fault`` says why there is none.

    ``measured`` is what was measured on the finished box, by the keys of the class file; empty
    until then. [mm]
    """

    number: int
    choices: Choices | None
    fault: str = ""
    own: bool = False
    hand: Hand = "right"
    pace: Pace = "novice"
    words: Words = "british"
    paper: Paper = "a4"
    measured: Mapping[str, Any] = field(default_factory=dict)

    @property
    def called(self) -> str:
        """How the student is spoken of."""
        return f"student {self.number}"


@dataclass(frozen=True, slots=True)
class WeekendClass:
    """A class. ``box`` is the one that everybody makes who has none of their own. [mm]

    ``files`` are the class file and those that it names; where they lie changes no page.
    """

    title: str
    box: Choices
    day: Day
    students: tuple[Student, ...]
    boards: tuple[Board, ...]
    tools: Mapping[str, int]
    benches: int
    helpers: int
    buying: Buying
    words: Words
    paper: Paper
    files: tuple[Path, ...] = field(default=(), repr=False, compare=False)

    @property
    def rule(self) -> Rule:
        """The rule on which what concerns everybody is written."""
        return self.box.rule
