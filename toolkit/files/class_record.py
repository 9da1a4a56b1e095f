"""A class as its file has it: when it meets, who comes, what it shares, what is on the rack."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, make_dataclass
from datetime import date
from pathlib import Path
from typing import Any, Literal

from toolkit.box import Choices, Handed, Rooms
from toolkit.files.kinds import MOST_STUDENTS
from toolkit.measures import Rule, Units, declared, key
from toolkit.stock import LONGEST_BOARD, MOST_TABLES, Board

Pace = Literal["practised", "novice", "slow"]
Words = Literal["us", "british"]
Paper = Literal["a4", "letter"]
PlayIs = Literal["total", "per side"]
# What is seen of a finished box, in the words of the rubric.
GrooveSeen = Literal["none", "plugged", "open"]
SurfaceSeen = Literal["clean", "small tear-out", "scallops", "tear-out"]
MarksSeen = Literal["yes", "mostly", "no"]

# What a class shares. Each is a key of [tools], its spaces written as underscores.
SHARED = (
    "crosscut saw",
    "rip saw",
    "stone station",
    "try plane",
    "shooting board",
    "plough plane",
    "plough plane left",
    "rebate plane",
    "set of cramps",
    "pair of winding sticks",
    "straightedge",
    "fine saw",
    "coping saw",
    "corner chisel",
    "moisture meter",
    "feeler gauge",
    "pair of diagonal sticks",
)
_AS_THE_CLASS, _AS_THE_BOX = "as the class", "as the box"


def _count(words: str, default: Any, most: int, example: int, **facts: Any) -> Any:
    facts = {"kind": "count", "least": 0, "most": most, "example": example, **facts}
    return key(words, default=default, **facts)


@dataclass(frozen=True, slots=True)
class Day:
    """When the class meets: its days, and the hours that are the same on each of them."""

    dates: tuple[date, ...] = field(metadata=declared(kind="dates"))
    start: int = field(metadata=declared(kind="time"))
    end: int = field(metadata=declared(kind="time"))
    lunch: int = key("When lunch begins.", kind="time", default=-1, rule="in the middle of the day")
    lunch_minutes: int = _count("", 45, 600, 45)
    breaks: int = _count(
        "All breaks of one day together, lunch aside.", 45, 600, 45, name="break_minutes"
    )
    no_chopping: int = _count(
        "The end of every day but the last.", 60, 600, 45, name="no_chopping_minutes"
    )

    def __post_init__(self) -> None:
        """Put lunch in the middle of the day unless it is said."""
        if self.lunch < 0:
            middle = (self.start + self.end - self.lunch_minutes) // 2
            object.__setattr__(self, "lunch", middle)

    @property
    def minutes(self) -> int:
        """At the bench on each day. [min]"""
        return self.end - self.start - self.lunch_minutes - self.breaks


@dataclass(frozen=True, slots=True)
class ClassRoom:
    """The room and who helps in it."""

    benches: int | None = _count("", None, 100, 6, rule="one for each student")
    helpers: int = _count("Beside whoever leads the class.", 0, 100, 6)


@dataclass(frozen=True, slots=True)
class Buying:
    """How the wood is bought."""

    spare: float = key(
        "Sets in reserve for each student, 0.25 being one for four.", kind="share", default=0.25
    )
    waste: float = key(
        "Share of a bought board that is lost to knots and checks.",
        kind="number",
        most=0.9,
        example=0.3,
        default=0.3,
    )
    delivery_days: int = _count("From the order until the wood is there.", 7, 365, 14)
    settling_days: int = _count("In stick where the class meets.", 14, 365, 14)
    practice: float = key("Wall blank to practise on, for each student.", least=0, default=300.0)
    longest: float = key("The longest board that is asked for.", most=LONGEST_BOARD, default=2400.0)


@dataclass(frozen=True, slots=True)
class Measured:
    """What was measured and seen on a student's finished box; leave out what was not."""

    gap: float | None = key("Widest joint gap at a face.", least=0)
    step: float | None = key("Baseline step.", least=0)
    rock: float | None = key("Rock on a flat plate.", least=0)
    spread: float | None = key("The thickest place of the walls less the thinnest.", least=0)
    diagonals: tuple[float, float] | None = key("Both diagonals of the box.", kind="diagonals")
    size: tuple[float, float] | None = key(
        "Over what the diagonals were taken.", kind="box size", rule="the box's outside"
    )
    lid_play: float | None = key("Side play of the lid, in the air it was made in.", least=0)
    play_is: PlayIs = key("Both sides together, or per side.", default="total")
    groove: GrooveSeen | None = key("What is seen of a groove from outside.")
    surface: SurfaceSeen | None = key("In raking light.")
    marks: MarksSeen | None = key("Reference marks on the parts, clean edges on the tools.")

    def __post_init__(self) -> None:
        """What cannot be measured is refused with its name."""
        for name in ("gap", "step", "rock", "spread", "lid_play"):
            value = getattr(self, name)
            if value is not None and value < 0:
                raise ValueError(f"{name} of {value:g} mm cannot be; type 0 mm or more")
        if self.diagonals is not None and self.size is None:
            raise ValueError("diagonals need the size of the box: give length and width too")
        if self.play_is not in ("total", "per side"):
            raise ValueError(f'read play_is {self.play_is!r}; type "total" or "per side"')


@dataclass(frozen=True, slots=True)
class Student:
    """One student, by number; a key left out is the class's."""

    number: int = field(metadata=declared(kind="count", least=1, most=999, example=1))
    choices: Choices | None = None
    fault: str = ""
    units: Units | None = key("What the student measures in.")
    words: Words = key(
        "American or British words of the trade.", default="british", rule=_AS_THE_CLASS
    )
    paper: Paper = key(default="a4", rule=_AS_THE_CLASS)
    hand: Handed = key("Turns the drawings of the handout.", default="right", rule=_AS_THE_BOX)
    plough_hand: Handed = key(
        "Of the plough that is used: it decides order and direction of the grooves.",
        default="right",
        rule=_AS_THE_BOX,
    )
    pace: Pace = key("How fast the student works.", default="novice")
    box: str | None = key("A box file of the student's own.", kind="file")
    changes: Mapping[str, Any] | None = key(
        "Sections of a box file: what this student has otherwise.", kind="changes"
    )
    measured: Mapping[str, Any] = field(
        default_factory=dict, metadata=declared(kind="section", record=Measured)
    )

    @property
    def own(self) -> bool:
        """Whether the box is another than the class's."""
        return bool(self.box or self.changes)

    @property
    def called(self) -> str:
        """How the student is spoken of."""
        return f"student {self.number}"


Shared = make_dataclass(
    "Shared",
    [
        (name.replace(" ", "_"), int, _count(f"How many: {name}.", None, 100, 4, least=1))
        for name in SHARED
    ],
    frozen=True,
)
Shared.__doc__ = "What is shared."


@dataclass(frozen=True, slots=True, kw_only=True)
class ClassFile:
    """A class for the hand-tool class workbook."""

    title: str = field(metadata=declared(kind="title", example="A box in a weekend"))
    box: str = field(
        metadata=declared("The box that everybody makes, from this file's folder.", kind="file")
    )
    inch_box: str | None = key(
        "The same box built in inches, for those who measure so.", kind="file"
    )
    boards: str | None = key("The boards on hand, instead of [[board]] below.", kind="file")
    words: Words | None = key(
        "Of the pages for the class, and of those who have none of their own.",
        rule="British, and American for those who measure in inches",
    )
    paper: Paper = key(default="a4")
    hours: Day = field(metadata=declared())
    room: ClassRoom = key(default=ClassRoom())
    rooms: Rooms = key("Where the boxes are made, and will live: for every box.", default=Rooms())
    tools: Mapping[str, int] = field(
        default_factory=dict, metadata=declared(kind="section", record=Shared)
    )
    buying: Buying = key(default=Buying())
    student: tuple[Student, ...] = field(metadata=declared(least=1, most=MOST_STUDENTS))
    board: tuple[Board, ...] = key(most=MOST_TABLES, default=())


@dataclass(frozen=True, slots=True)
class WeekendClass:
    """A class. ``box`` is the one that everybody makes who has none of their own. [mm]"""

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
