"""Class files: what is read, what each student's box is, and what is said of what is wrong."""

import json
import tomllib
from datetime import date
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator

from tests.classroom.classes import BOX, DEMO, HEAD, THREE, write
from toolkit.classroom.steps import weekend
from toolkit.files import BoxFileError, ClassFileError, FileError, read_class
from toolkit.files.class_file import changed
from toolkit.files.class_record import SHARED
from toolkit.files.schemas import FOLDER
from toolkit.plan import plan, rubric

ONE = "\n[[student]]\nnumber = 1\n"


def schema_faults(text: str) -> list[object]:
    schema = json.loads((FOLDER / "class.schema.json").read_text(encoding="utf-8"))
    return list(Draft202012Validator(schema).iter_errors(tomllib.loads(text)))


def test_the_demonstration_class() -> None:
    taught = read_class(DEMO)
    assert [student.number for student in taught.students] == list(range(1, 13))
    assert not any(student.fault for student in taught.students)
    units = [student.choices.rule.units for student in taught.students if student.choices]
    assert 0 < units.count("in") < 12
    assert any(student.hand == "left" for student in taught.students)
    assert {student.pace for student in taught.students} == {"practised", "novice", "slow"}
    own = [student for student in taught.students if student.own]
    assert [row.choices.thickness.side for row in own if row.choices] == [13.0]
    assert taught.boards
    assert taught.day.minutes == 360


def test_what_is_left_out_has_its_default(tmp_path: Path) -> None:
    taught = read_class(write(tmp_path, HEAD + ONE))
    (student,) = taught.students
    assert (student.hand, student.pace, student.words, student.paper) == (
        "right", "novice", "british", "a4",
    )  # fmt: skip
    assert taught.benches == 1 and taught.helpers == 0 and taught.boards == ()
    assert taught.day.dates == (date(2027, 6, 5), date(2027, 6, 6))
    assert taught.buying.spare == 0.25


def test_the_class_speaks_for_those_who_say_nothing(tmp_path: Path) -> None:
    top = HEAD.replace('box = "box.toml"', 'box = "box.toml"\nwords = "us"\npaper = "letter"')
    taught = read_class(write(tmp_path, top + ONE + '\n[[student]]\nnumber = 2\npaper = "a4"\n'))
    assert [(row.words, row.paper) for row in taught.students] == [("us", "letter"), ("us", "a4")]


def test_an_older_class_file_is_read_with_its_students_changes(tmp_path: Path) -> None:
    text = (HEAD + THREE).replace("format = 2", "format = 1")
    changes = "\n[[student]]\nnumber = 9\n[student.changes.panels]\nfront_drop = "
    *_, last = read_class(write(tmp_path, f'{text}{changes}"0.4 mm"\n')).students
    assert last.number == 9 and last.choices is not None
    assert last.choices.panels.under_lid == 0.4
    *_, wrong = read_class(write(tmp_path, f'{text}{changes}"0.4"\n')).students
    line = (text + changes).count("\n") + 1
    assert f"student 9.changes.panels.under_lid (line {line}): " in wrong.fault


def test_an_older_students_proud_pins_are_read(tmp_path: Path) -> None:
    changes = '\n[[student]]\nnumber = 9\n[student.changes.customs]\npins_proud = "0.4 mm"\n'
    *_, last = read_class(write(tmp_path, HEAD + THREE + changes)).students
    assert last.choices is not None and last.choices.corner.proud == 0.4


def test_own_units_own_box_own_changes(tmp_path: Path) -> None:
    (tmp_path / "mine.toml").write_text(BOX.replace("152 mm", "200 mm"), encoding="utf-8")
    inches = BOX.replace("152 mm", "6 in") + '[rule]\nunits = "in"\n'
    (tmp_path / "inch.toml").write_text(inches, encoding="utf-8")
    rows = """
[[student]]
number = 4
box = "mine.toml"
units = "in"
changes = { corner = { tail_length = "9 mm" }, size = { outside_width = "140 mm" } }
"""
    top = HEAD.replace('box = "box.toml"', 'box = "box.toml"\ninch_box = "inch.toml"')
    taught = read_class(write(tmp_path, top + THREE + rows))
    one, two, three, four = (student.choices for student in taught.students)
    assert one and two and three and four
    assert (one.rule.units, one.size.inside_length, one.thickness.side) == ("mm", 152, 12)
    assert (two.rule.units, two.size.inside_length) == ("in", pytest.approx(6 * 25.4))
    assert three.thickness.side == 13 and three.thickness.end == 12
    assert four.rule.units == "in" and four.size.inside_length == 200
    # What was given instead takes the place of what it excludes.
    assert four.corner.tail_length == 9 and four.corner.lap is None
    assert four.size.outside_width == 140 and four.size.inside_width is None


def test_inches_without_a_box_of_their_own(tmp_path: Path) -> None:
    taught = read_class(write(tmp_path))
    two = taught.students[1].choices
    assert two and two.rule.units == "in" and two.size.inside_length == 152


def test_the_rooms_of_the_class_are_everybodys(tmp_path: Path) -> None:
    rooms = '[rooms]\ndamp = { temperature = "24 °C", humidity = "80 %" }\n'
    taught = read_class(write(tmp_path, HEAD + rooms + THREE))
    for choices in (taught.box, *(student.choices for student in taught.students)):
        assert choices and choices.rooms.damp.humidity == 80 and choices.rooms.dry.humidity == 30


@pytest.mark.parametrize(
    ("section", "change", "gone"),
    [
        ("corner", {"joint": "through"}, {"lap", "tail_length"}),
        ("panels", {"lid_across": "2 mm", "bottom_across": "2 mm"}, {"across"}),
        ("panels", {"across": "2 mm"}, {"lid_across", "bottom_across"}),
        ("wood", {"walls": "American beech"}, {"sides", "ends"}),
        ("size", {"contents": "A6 cards"}, {"inside_length", "outside_width"}),
    ],
)
def test_what_a_change_takes_the_place_of(
    section: str, change: dict[str, str], gone: set[str]
) -> None:
    old = {section: dict.fromkeys(gone, "x") | {"kept": "y"}}
    assert changed(old, by={section: change}) == {section: {"kept": "y", **change}}
    assert set(old[section]) == gone | {"kept"}


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ('[student.changes.thickness]\nside = "13"', ["9.changes.thickness.side (line", '"13"']),
        ('[student.changes.thickness]\nsides = "13 mm"', ["sides is no key here; type side"]),
        ('[student.changes.thicknes]\nside = "13 mm"', ["type [thickness]"]),
        ("changes = { size = 4 }", ["student 9.changes.size (line", "this is a section"]),
        ('box = "nobody.toml"', ["nobody.toml", "there is no such file"]),
    ],
)  # fmt: skip
def test_a_students_bad_box_is_the_students_alone(
    tmp_path: Path, changes: str, words: list[str]
) -> None:
    text = HEAD + THREE + f"\n[[student]]\nnumber = 9\n{changes}\n"
    taught = read_class(write(tmp_path, text))
    faults = {student.number: student.fault for student in taught.students if student.fault}
    assert set(faults) == {9} and taught.students[3].choices is None
    for word in words:
        assert word in faults[9]
    if "(line" in words[0]:
        line = int(faults[9].partition("(line ")[2].partition(")")[0])
        assert text.split("\n")[line - 1].strip()[:4] in changes


SIDE = 'side = "13 mm"'
MEASURED_SIDE = f"{SIDE}\n[student.measured]\n"
WRONG = [
    ('start = "09:00"', 'start = "9"', "hours.start", "time of day"),
    ('start = "09:00"', 'start = "25:00"', "hours.start", "time of day"),
    ('end = "16:30"', 'end = "08:30"', "hours.end", "later end"),
    ('end = "16:30"', 'end = "10:45"', "hours.end", "at the bench"),
    ('end = "16:30"', 'end = "16:30"\nlunch = "16:15"', "hours.lunch", "within the day"),
    ('"2027-06-06"', '"2027-06-05"', "hours.dates", "list each day once"),
    ('"2027-06-06"', '"06/06/2027"', "hours.dates", "year, month and day"),
    ('"2027-06-06"', '"2027-02-30"', "hours.dates", "no day of the calendar"),
    ("[hours]", "[hour]", "hour", "is no section; type [hours]"),
    ("start =", "begin =", "hours.begin", "known here"),
    ("number = 1", "numbr = 1", "student 1.numbr", "type number"),
    ("number = 1", "number = 1.5", "student 1.number", "whole number"),
    ("number = 1", 'number = "the tall one"', "student 1.number", "whole number"),
    ("number = 1", "number = 3", "student 3.number", "has this number already"),
    ('hand = "left"', 'hand = "lefty"', "student 2.hand", 'type "left"'),
    ('units = "in"', 'units = "inch"', "student 2.units", "no such choice"),
    ('pace = "slow"', 'pace = "fast"', "student 2.pace", "no such choice"),
    ('pace = "slow"', 'changes = "none"', "student 2.changes", "sections of a box file"),
    ('box = "box.toml"', 'boxes = "box.toml"', "boxes", "type box"),
    ('box = "box.toml"', "box = 4", "box", "the name of a file"),
    ('title = "Three at a lake"\n', "", "title", "it is missing; type title ="),
    ("[hours]", "[tools]\nplow_plane = 3\n\n[hours]", "tools.plow_plane", "type plough_plane"),
    ("[hours]", "[tools]\nplough_plane = 0\n\n[hours]", "tools.plough_plane", "from 1 to 100"),
    ("[hours]", "[buying]\nwaste = 1.0\n\n[hours]", "buying.waste", "from 0 to 0.9"),
    ("[hours]", "[room]\nbenches = -1\n\n[hours]", "room.benches", "from 0 to 100"),
    (SIDE, MEASURED_SIDE + 'gap = "0.2"', "student 3.measured.gap", 'type "0.2 mm"'),
    (SIDE, MEASURED_SIDE + 'gaps = "0.2 mm"', "student 3.measured.gaps", "type gap"),
    (SIDE, MEASURED_SIDE + 'step = "-1 mm"', "student 3.measured.step", "-1 mm"),
    (SIDE, MEASURED_SIDE + 'diagonals = "221 mm"', "student 3.measured.diagonals", "two lengths"),
    (SIDE, MEASURED_SIDE + 'surface = "smooth"', "student 3.measured.surface", 'type "clean"'),
    (SIDE, MEASURED_SIDE + 'play_is = "both"', "student 3.measured.play_is", 'type "total"'),
    ("format = 2", "format = 9", "format", "newer workbook"),
]
BEYOND = {'end = "08:30"', 'end = "10:45"', 'end = "16:30"\nlunch = "16:15"', '"2027-06-05"',
          '"2027-02-30"', "number = 3", MEASURED_SIDE + 'gap = "0.2"',
          MEASURED_SIDE + 'step = "-1 mm"'}  # fmt: skip


@pytest.mark.parametrize(("old", "new", "where", "words"), WRONG)
def test_a_wrong_class_is_refused_in_one_line(
    tmp_path: Path, old: str, new: str, where: str, words: str
) -> None:
    text = (HEAD + THREE).replace(old, new, 1)
    assert text != HEAD + THREE
    with pytest.raises(ClassFileError) as refusal:
        read_class(write(tmp_path, text))
    lines = refusal.value.lines
    (said,) = [line for line in lines if f"class.toml, {where}" in line and words in line]
    assert "\n" not in said
    if where != "title":
        key = where.rpartition(".")[2].partition(" ")[0]
        line = int(said.partition("(line ")[2].partition(")")[0])
        assert key in text.split("\n")[line - 1]
    assert schema_faults(text) or new in BEYOND


def test_boards_come_from_one_place(tmp_path: Path) -> None:
    top = HEAD.replace('box = "box.toml"', 'box = "box.toml"\nboards = "rack.toml"')
    with pytest.raises(FileError, match="there is no such file"):
        read_class(write(tmp_path, top + ONE))
    board = '[[board]]\nname = "a"\nspecies = "American beech"\nlength = "1 m"\nwidth = "9 cm"\n'
    board += 'thickness = "20 mm"\n'
    (tmp_path / "rack.toml").write_text(board, encoding="utf-8")
    assert [row.name for row in read_class(write(tmp_path, top + ONE)).boards] == ["a"]
    with pytest.raises(ClassFileError, match="keep one of the two"):
        read_class(write(tmp_path, top + ONE + board))
    with pytest.raises(ClassFileError, match="has this name already"):
        read_class(write(tmp_path, HEAD + ONE + board + board))


def test_the_class_needs_a_box_that_can_be_read(tmp_path: Path) -> None:
    with pytest.raises(BoxFileError, match=r"box\.toml, thickness\.lid"):
        read_class(write(tmp_path, box=BOX.replace('lid = "9 mm"', "lid = 9")))
    path = write(tmp_path)
    (tmp_path / "box.toml").unlink()
    with pytest.raises(BoxFileError, match="there is no such file"):
        read_class(path)


def test_every_tool_that_a_step_is_done_with_can_be_told() -> None:
    assert {step.tool for step in weekend() if step.tool} <= set(SHARED)


MEASURED = """
[student.measured]
gap = "0.2 mm"
step = "0 mm"
rock = "0.1 mm"
spread = '1/64 in'
diagonals = ["221 mm", "221.5 mm"]
size = ["176 mm", "134 mm"]
lid_play = "2 mm"
play_is = "per side"
groove = "none"
surface = "small tear-out"
marks = "mostly"
"""


def test_what_was_measured_on_a_finished_box(tmp_path: Path) -> None:
    first, *_, last = read_class(write(tmp_path, HEAD + THREE + MEASURED)).students
    assert first.measured == {}
    assert last.measured == {
        "gap": 0.2,
        "step": 0.0,
        "rock": 0.1,
        "spread": 25.4 / 64,
        "diagonals": (221.0, 221.5),
        "size": (176.0, 134.0),
        "lid_play": 2.0,
        "play_is": "per side",
        "groove": "none",
        "surface": "small tear-out",
        "marks": "mostly",
    }
    # A box of the class's own, whatever was measured on it.
    assert last.own and not first.own


def test_what_is_seen_is_said_in_the_words_of_the_rubric() -> None:
    schema = json.loads((FOLDER / "class.schema.json").read_text(encoding="utf-8"))
    keys = schema["$defs"]["MeasuredSection"]["properties"]
    for row in rubric(plan(read_class(DEMO).box)):
        if not row.words:
            continue
        assert keys[row.key]["enum"] == [word for word, _ in row.words]


@pytest.mark.parametrize(
    "text", [DEMO.read_text(encoding="utf-8"), HEAD + THREE, HEAD + ONE, HEAD + THREE + MEASURED]
)
def test_a_right_class_is_right_by_the_schema(text: str) -> None:
    assert schema_faults(text) == []
