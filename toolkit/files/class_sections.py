"""The sections of a class file, key by key."""

from __future__ import annotations

from functools import partial
from typing import Annotated, Any

from pydantic import Field, create_model

from toolkit.files import class_record, class_values, kinds, values
from toolkit.files.boards_file import BoardSection
from toolkit.files.kinds import Read, Section
from toolkit.files.sections import RoomsSection, left_out

# What a class shares. Each is a key of [tools], its spaces written as underscores.
SHARED = (
    "crosscut saw",
    "rip saw",
    "stone station",
    "try plane",
    "shooting board",
    "plough plane",
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
MOST_MINUTES = 600


def _whole(least: int, most: int, example: int) -> Any:
    reader = partial(class_values.read_whole, least=least, most=most, example=example)
    json = {"type": "integer", "minimum": least, "maximum": most, "examples": [example]}
    return Annotated[int, Read(reader, json)]


_TEXT: dict[str, Any] = {"type": "string", "minLength": 1}
Time = Annotated[
    int,
    Read(
        class_values.read_time,
        {**_TEXT, "pattern": r"^\s*([01]?\d|2[0-3])[:.][0-5]\d\s*$", "examples": ["09:00"]},
    ),
]
Dates = Annotated[
    Any,
    Read(
        class_values.read_dates,
        {
            "type": "array",
            "minItems": 1,
            "maxItems": class_values.MOST_DAYS,
            "items": {"type": "string", "pattern": r"^\d{4}-\d{2}-\d{2}$"},
            "examples": [["2027-06-05", "2027-06-06"]],
        },
    ),
]
File = Annotated[
    str,
    Read(
        class_values.read_file_name,
        {**_TEXT, "maxLength": 300, "examples": ["../lessons/box.toml"]},
    ),
]
ClassTitle = Annotated[
    str,
    Read(
        partial(values.read_name, what="the title", example="A box in a weekend"),
        {**_TEXT, "maxLength": values.LONGEST_TITLE, "examples": ["A box in a weekend"]},
    ),
]
Words = Annotated[class_record.Words, kinds.word(class_record.Words)]
Paper = Annotated[class_record.Paper, kinds.word(class_record.Paper)]
Hand = Annotated[class_record.Hand, kinds.word(class_record.Hand)]
Pace = Annotated[class_record.Pace, kinds.word(class_record.Pace)]
PlayIs = Annotated[class_record.PlayIs, kinds.word(class_record.PlayIs)]
GrooveSeen = Annotated[class_record.GrooveSeen, kinds.word(class_record.GrooveSeen)]
SurfaceSeen = Annotated[class_record.SurfaceSeen, kinds.word(class_record.SurfaceSeen)]
MarksSeen = Annotated[class_record.MarksSeen, kinds.word(class_record.MarksSeen)]
Changes = Annotated[Any, Read(class_values.read_changes, {"type": "object"})]
WasteShare = Annotated[
    float,
    Read(
        partial(values.read_number, least=0, most=0.9, example="0.3"),
        {"type": "number", "minimum": 0, "maximum": 0.9, "examples": [0.3]},
    ),
]
Minutes: Any = _whole(0, MOST_MINUTES, 45)
Days: Any = _whole(0, 365, 14)
StudentNumber: Any = _whole(1, 999, 1)
Count: Any = _whole(0, 100, 6)
ToolCount: Any = _whole(1, 100, 4)


class HoursSection(Section):
    """When the class meets: its days, and the hours that are the same on each of them."""

    dates: Dates
    start: Time
    end: Time
    lunch: Time = left_out("When lunch begins.")
    lunch_minutes: Minutes = left_out()
    break_minutes: Minutes = left_out("All breaks of one day together, lunch aside.")
    no_chopping_minutes: Minutes = left_out("The end of every day but the last.")


class RoomSection(Section):
    """The room and who helps in it."""

    benches: Count = left_out()
    helpers: Count = left_out("Beside whoever leads the class.")


class BuyingSection(Section):
    """How the wood is bought."""

    spare: kinds.Share = left_out("Sets in reserve for each student, 0.25 being one for four.")
    waste: WasteShare = left_out("Share of a bought board that is lost to knots and checks.")
    delivery_days: Days = left_out("From the order until the wood is there.")
    settling_days: Days = left_out("In stick where the class meets.")
    practice: kinds.LengthOrZero = left_out("Wall stick to practise on, for each student.")
    longest: kinds.BoardLength = left_out("The longest stick that is asked for.")


def _two(what: str, *example: str) -> Any:
    typed = "[" + ", ".join(f'"{length}"' for length in example) + "]"
    reader = partial(class_values.read_two_lengths, what=what, example=typed)
    json = {"type": "array", "items": {"type": "string"}, "minItems": 2, "maxItems": 2}
    return Annotated[tuple[float, float], Read(reader, {**json, "examples": [list(example)]})]


Diagonals: Any = _two("both diagonals are two lengths", "221 mm", "221.5 mm")
BoxSize: Any = _two("the size is two lengths, along and across", "176 mm", "134 mm")


class MeasuredSection(Section):
    """What was measured and seen on a student's finished box; leave out what was not."""

    gap: kinds.LengthOrZero = left_out("Widest joint gap at a face.")
    step: kinds.LengthOrZero = left_out("Baseline step.")
    rock: kinds.LengthOrZero = left_out("Rock on a flat plate.")
    spread: kinds.LengthOrZero = left_out("The thickest place of the walls less the thinnest.")
    diagonals: Diagonals = left_out("Both diagonals of the box.")
    size: BoxSize = left_out("Over what the diagonals were taken; the box's outside, unless given.")
    lid_play: kinds.LengthOrZero = left_out("Side play of the lid in the dry season; 0 binds.")
    play_is: PlayIs = left_out("Both sides together (total, unless given), or per side.")
    groove: GrooveSeen = left_out("What is seen of a groove from outside.")
    surface: SurfaceSeen = left_out("In raking light.")
    marks: MarksSeen = left_out("Reference marks on the parts, clean edges on the tools.")


class StudentSection(Section):
    """One student, by number; a key left out is the class's."""

    number: StudentNumber
    units: kinds.Units = left_out("What the student measures in.")
    words: Words = left_out("American or British words of the trade.")
    paper: Paper = left_out()
    hand: Hand = left_out()
    pace: Pace = left_out("How fast the student works.")
    box: File = left_out("A box file of the student's own.")
    changes: Changes = left_out("Sections of a box file: what this student has otherwise.")
    measured: MeasuredSection = left_out()


def _tools() -> type[Section]:
    keys: dict[str, Any] = {
        name.replace(" ", "_"): (ToolCount, left_out(f"How many: {name}.")) for name in SHARED
    }
    return create_model("ToolsSection", __base__=Section, __doc__="What is shared.", **keys)


ClassToolsSection = _tools()


class ClassFile(Section):
    """A class for the hand-tool class workbook."""

    format: kinds.Format = left_out()
    title: ClassTitle
    box: File = Field(description="The box that everybody makes, from this file's folder.")
    inch_box: File = left_out("The same box built in inches, for those who measure so.")
    boards: File = left_out("The boards on hand, instead of [[board]] below.")
    words: Words = left_out("Of the pages for the class, and of those who have none of their own.")
    paper: Paper = left_out()
    hours: HoursSection
    room: RoomSection = left_out()
    rooms: RoomsSection = left_out("Where the boxes are made, and will live: for every box.")
    tools: ClassToolsSection = left_out()  # type: ignore[valid-type]
    buying: BuyingSection = left_out()
    student: list[StudentSection] = Field(min_length=1, max_length=class_values.MOST_STUDENTS)
    board: list[BoardSection] = Field(default=[], max_length=200)
