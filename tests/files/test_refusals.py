"""What is said of a box file that cannot be read: one whole line each."""

import os
import sys

import pytest

from tests.files.test_reading import LEAST, LESSON
from toolkit.files import BoxFileError, FileError, box_from_text, formats, read_box

# What is put into the lesson's box instead of what, and the line that answers.
SLIPS = [
    ('depth = "4 mm"', 'depth = "4"',
     'groove.depth (line 42): read "4": it has no unit; type "4 mm" or "4 in"'),
    ('depth = "4 mm"', "depth = 4",
     'groove.depth (line 42): read 4: a length is text with its unit; type "4 mm" or "4 in"'),
    ('depth = "4 mm"', 'depth = "-4 mm"',
     'groove.depth (line 42): read "-4 mm": it is below zero; type "4 mm"'),
    ('depth = "4 mm"', 'depth = "400 m"',
     'groove.depth (line 42): read "400 m": lengths go up to 3 m; type one such as "12 mm"'),
    ('depth = "4 mm"', 'dept = "4 mm"',
     "groove.dept (line 42): dept is no key here; type depth"),
    ('depth = "4 mm"', 'depth = "4 mm"\nlap = "4 mm"',
     "groove.lap (line 43): lap is no key here; put it under [corner]"),
    ('depth = "4 mm"', 'depth = "4 mm"\ndepth = "5 mm"',
     "groove.depth (line 43): this is on line 42 already; keep one of the two"),
    ("[panels]", '[groove]\nends = "stopped"\n[panels]',
     "groove (line 46): this is on line 40 already; keep one of the two"),
    ("[panels]", "[cabriole]\n[panels]",
     "cabriole (line 46): [cabriole] is no section; known here: format, title, rule, size, "
     "thickness, corner, groove, panels, lid, tools, wood, rooms, allowances, customs, made"),
    ('inside_length = "152 mm"', 'length = "152 mm"',
     "size.length (line 19): length is no key here; type inside_length or outside_length"),
    ('inside_length = "152 mm"', 'inside_length = "152 mm"\noutside_length = "176 mm"',
     'size.outside_length (line 20): read "176 mm": inside_length is given too; '
     "keep one of the two"),
    ('inside_length = "152 mm"', "",
     "size.inside_length: it is missing, and so is outside_length; "
     'type one, inside_length = "152 mm"'),
    ('inside_height = "38 mm"', 'contents = "A6 cards"',
     "size.inside_height: it is missing, and so is outside_height; "
     'type one, inside_height = "38 mm"'),
    ('inside_length = "152 mm"', 'contents = "A6 card"',
     'size.contents (line 19): read "A6 card": it is not in the table of contents; '
     "type 'A6 cards', or give inside sizes instead"),
    ('inside_length = "152 mm"', 'inside_length = "152 mm"\nease = "4 mm"',
     'size.ease (line 20): read "4 mm": ease is room beside contents, and there are none; '
     'type contents = "A6 cards" too'),
    ('\nlid = "9 mm"', "", 'thickness.lid: it is missing; type lid = "12 mm"'),
    ('lap = "4 mm"', 'lap = "4 mm"\ntail_length = "8 mm"',
     'corner.tail_length (line 33): read "8 mm": lap is given too, and each follows from the '
     "other; keep one of the two"),
    ('joint = "half-blind"', 'joint = "through"',
     'corner.lap (line 32): read "4 mm": a through joint has no lap and its tails are as long as '
     'the wall is thick; take it out or type joint = "half-blind"'),
    ('joint = "half-blind"', 'joint = "half blind"',
     'corner.joint (line 30): read "half blind": no such choice; type "half-blind"'),
    ("tails_back = 3", "tails_back = 0",
     "corner.tails_back (line 36): read 0: an end has 1 to 24 tails; "
     'type a number from 1 to 24, or places such as [["5 mm", "19 mm"]]'),
    ("tails_back = 3", f"tails_back = 0x{'f' * 9000}",
     "corner.tails_back (line 36): read an enormous number: an end has 1 to 24 tails; "
     'type a number from 1 to 24, or places such as [["5 mm", "19 mm"]]'),
    ("tails_back = 3", "tails_back = 2.5",
     "corner.tails_back (line 36): read 2.5: tails are a count or a list of 1 to 24 places; "
     'type a number from 1 to 24, or places such as [["5 mm", "19 mm"]]'),
    ("tails_back = 3", 'tails_back = [["5 mm", "19 mm"], ["15 mm", "25 mm"]]',
     "corner.tails_back (line 36): read a list of 2: tail 2 begins inside tail 1; "
     "list them upwards"),
    ("tails_back = 3", 'tails_back = [["19 mm", "5 mm"]]',
     "corner.tails_back (line 36): read a list of 1: tail 1 does not end above its beginning; "
     "put the lower first"),
    ("tails_back = 3", 'tails_back = [["5 mm", "19"]]',
     'corner.tails_back (line 36): read a list of 1: in tail 1, "19" has no unit; '
     'type "19 mm" or "19 in"'),
    ("tails_back = 3", 'tails_back = ["5 mm", "19 mm"]',
     "corner.tails_back (line 36): read a list of 2: tail 1 needs two lengths, its lower and "
     'upper edge; type a number from 1 to 24, or places such as [["5 mm", "19 mm"]]'),
    ("slope = 7", "slope = inf",
     'corner.slope (line 33): read inf: a slope is 1 in some number; type 7, "1:7" or "8.1 deg"'),
    ('title = "Postcard box"', 'title = "a\\u0007b"',
     'title (line 10): read "a�b": the title is 1 to 80 printable characters; retype it'),
    ('title = "Postcard box"', f'title = "{"x" * 81}"',
     f'title (line 10): read "{"x" * 39}…": the title is 1 to 80 printable characters; retype it'),
    ('across = "2 mm"', 'across = "2 mm"\nlid_across = "1 mm"',
     'panels.lid_across (line 48): read "1 mm": across is given too and stands for bottom_across '
     "and lid_across; keep across or these two"),
    ('walls = "black cherry"', 'sides = "black cherry"',
     'wood.sides (line 65): read "black cherry": ends is missing beside it; '
     'type ends = "…" too, or one wood for both'),
    ('panels = "black cherry"', 'panels = "black cherry"\nbottom = "teak"\nlid = "teak"',
     'wood.bottom (line 67): read "teak": panels is given too and stands for bottom and lid; '
     "keep panels or these two"),
    ('walls = "black cherry"', 'walls = "black chery"',
     'wood.walls (line 65): read "black chery": it is not a wood in the workbook\'s table: '
     "did you mean 'black cherry', 'common alder' or 'European cherry'?"),
    ('walls = "black cherry"', 'walls = "cherry"',
     'wood.walls (line 65): read "cherry": it may be any of several woods: '
     "type 'black cherry' or 'European cherry'"),
    ('rings = "flat-sawn"', 'rings = "91 deg"',
     'wood.rings (line 67): read "91 deg": rings lie between 0 and 90 degrees to the face; '
     'type "flat-sawn", "rift", "quarter-sawn" or an angle such as "30 deg"'),
    ('temperature = "20 °C", humidity = "50 %"', 'temperature = "200 °C"',
     'rooms.make.temperature (line 70): read "200 °C": a room lies between -40 and 60 °C; '
     'type such as "20 °C"'),
    ('plough_irons = ["6 mm"]', "plough_irons = []",
     "tools.plough_irons (line 60): read an empty list: irons are a list of 1 to 24 widths; "
     'type ["6 mm"]'),
    ("\n[made]", '\n[made]\nside_thicknes = "11 mm"',
     "made.side_thicknes (line 82): side_thicknes is no key here; type side_thickness"),
    ("\n[made]", "lap_share_most = 33\n[made]",
     'customs.lap_share_most (line 80): read 33: it goes from 0 to 2; type such as 0.25 or "1/4"'),
    ('joints = "0.1 mm"', 'joints = "0.3 mm"',
     'rule.joints (line 14): read "0.3 mm": it is not a distance between the marks of millimetre '
     'rules; type "0.25 mm" or "0.5 mm", or leave the key out'),
    ("format = 2", "format = 3",
     "format (line 9): read 3: a newer workbook wrote this file and this one reads format 2; "
     "open it with the newer workbook"),
    ("format = 2", "format = 0",
     "format (line 9): read 0: there was never such a format; type format = 2"),
    ("[groove]", "[[groove]]",
     "groove (line 40): read a list of 1: this is a section; type [groove] above its keys"),
]  # fmt: skip

# Lines that are not TOML, in the place of the lesson's groove depth, and what answers.
NOT_TOML = [
    ("depth = 4 mm",
     '(line 42, column 11): read "depth = 4 mm": text stands between quotes; '
     'type depth = "4 mm"'),
    ("depth = 1/4 in",
     '(line 42, column 10): read "depth = 1/4 in": text stands between quotes; '
     'type depth = "1/4 in"'),
    ("depth = 7,5",
     '(line 42, column 10): read "depth = 7,5": a number has a decimal point; type depth = 7.5'),
    ('depth = "1/4""',
     '(line 42, column 14): read “depth = "1/4""”: an inch mark ends the text; '
     'type depth = "1/4 in"'),
    ("depth = “4 mm”",
     '(line 42, column 9): read "depth = “4 mm”": curly quotes are not TOML; '
     'type straight ones, such as depth = "4 mm"'),
    ('depth "4 mm"',
     '(line 42, column 7): read “depth "4 mm"”: there is no "=" in it; '
     'type a key, "=" and a value, such as depth = "4 mm"'),
    ("[grooves",
     '(line 42, column 25): read "[grooves": this is not TOML (expected \']\' at the end of a '
     'table declaration); type such as depth = "4 mm" or [groove]'),
]  # fmt: skip


def refusal(text):
    with pytest.raises(BoxFileError) as caught:
        box_from_text(text)
    return caught.value


def lesson_with(old, new):
    text = LESSON.read_text(encoding="utf-8")
    assert old in text
    return text.replace(old, new, 1)


@pytest.mark.parametrize(("old", "new", "line"), SLIPS)
def test_a_slip_is_answered_by_one_line(old, new, line):
    error = refusal(lesson_with(old, new))
    assert str(error) == f"box.toml, {line}"
    assert "\n" not in str(error)


@pytest.mark.parametrize(("new", "line"), NOT_TOML)
def test_a_line_that_is_not_toml_is_explained(new, line):
    assert str(refusal(lesson_with('depth = "4 mm"', new))) == f"box.toml {line}"


@pytest.mark.parametrize(
    ("text", "line"),
    [
        ("", "box.toml, size: the section is missing; "
             "type [size] with inside_length, inside_width, inside_height below it"),
        ('side = "12 mm"',
         "box.toml, side (line 1): side is no key here; put it under [thickness] or [allowances]"),
        ("groove = 4",
         "box.toml, groove (line 1): read 4: this is a section; type [groove] above its keys"),
        ('depth = "4 mm',
         "box.toml (line 1): the file ends in the middle of something (unterminated string); "
         "complete this line"),
        ("a.b = 1\na = 2", "box.toml, a (line 2): this is on line 1 already; keep one of the two"),
        *((text, "box.toml (line 2): keys or brackets nested 20 deep and more belong in no file; "
                 "take them out")
          for text in ("# v1.0\na = " + "[" * 5000, "\na = " + "{b=" * 5000,
                       "\n" + "a." * 20_000 + "a = 1", "\n[" + "a ." * 20_000 + "a]",
                       "\na = {" + "'a'." * 20_000 + "a = 1}")),
        ("a = " + "9" * 5000,
         "box.toml: it holds a number or a date that can't be read; lengths are text"),
        ("#" * 256_001, "box.toml: it is larger than 256 kB; this can't be such a file"),
    ],
)  # fmt: skip
def test_a_whole_text_is_refused(text, line):
    assert str(refusal(text)) == line


def test_dots_and_brackets_in_text_and_remarks_are_not_deep():
    dots, brackets = "." * 30 + "a.b" * 30, "[{" * 30
    title = f'title = "{brackets}" # {brackets}{dots}\n'
    assert box_from_text(title + LEAST).title == brackets
    assert "put it under [corner]" in str(refusal("lap = [" + "5.5, " * 30 + "]"))


def test_every_problem_is_told_in_the_order_of_the_file():
    error = refusal(
        '[groove]\nwidth = "6"\ndeep = "4 mm"\n[size]\ninside_length = 152\n[thickness]\nlid = ""'
    )
    assert [(problem.key, problem.line) for problem in error.problems] == [
        ("groove.width", 2),
        ("groove.deep", 3),
        ("size.inside_length", 5),
        ("thickness.lid", 7),
        ("size.inside_width", None),
        ("size.inside_height", None),
        ("thickness.side", None),
        ("thickness.end", None),
        ("thickness.bottom", None),
    ]
    assert str(error) == error.lines[0]
    assert all(line.startswith("box.toml, ") and "\n" not in line for line in error.lines)


def test_a_file_of_nothing_but_mistakes_is_answered_in_moderation():
    error = refusal("\n".join(f"key_{number} = 1" for number in range(10_000)))
    assert len(error.problems) == 50


def test_an_older_format_without_a_way_up_is_refused(monkeypatch):
    monkeypatch.delitem(formats.MIGRATIONS, ("box", 1))
    assert "there was never such a format" in str(refusal(f"format = 1\n{LEAST}"))


def disk_refusal(path):
    with pytest.raises(BoxFileError) as caught:
        read_box(path)
    return str(caught.value)


def test_a_missing_file_is_named_with_its_folder(tmp_path):
    assert disk_refusal(tmp_path / "my_box.toml") == (
        f"my_box.toml: there is no such file in {tmp_path}; check its name"
    )


def test_a_folder_is_not_a_file(tmp_path):
    (tmp_path / "box.toml").mkdir()
    line = f"{tmp_path / 'box.toml'}: this is a folder; name the file in it"
    assert disk_refusal(tmp_path / "box.toml") == line


def test_a_file_that_is_not_text_is_refused_with_the_line(tmp_path):
    path = tmp_path / "box.toml"
    path.write_bytes('format = 1\ntitle = "Schönes"\n'.encode("latin-1"))
    assert disk_refusal(path) == (
        "box.toml (line 2): the file is not in UTF-8; save it again with the encoding UTF-8"
    )
    path.write_bytes("format = 1".encode("utf-16"))
    assert "not in UTF-8" in disk_refusal(path)


def test_a_large_file_is_not_read_to_its_end(tmp_path):
    path = tmp_path / "box.toml"
    with path.open("wb") as stream:
        stream.truncate(10**10)
    line = "box.toml: it is larger than 256 kB; this can't be such a file"
    assert disk_refusal(path) == line


@pytest.mark.skipif(sys.platform == "win32", reason="pipes have no names there")
def test_a_pipe_is_not_waited_for(tmp_path):
    os.mkfifo(tmp_path / "box.toml")
    line = "box.toml: this is not an ordinary file; name a TOML file"
    assert disk_refusal(tmp_path / "box.toml") == line


@pytest.mark.parametrize("name", ["bo\0x.toml", "box\ud800.toml"])
def test_an_impossible_name_is_a_missing_file(name, tmp_path):
    line = f"bo{'�x' if chr(0) in name else 'x�'}.toml: there is no such file in {tmp_path}; "
    assert disk_refusal(tmp_path / name) == f"{line}check its name"


def test_the_error_can_be_pickled_and_is_a_value_error():
    import pickle

    error = refusal("groove = 4")
    again = pickle.loads(pickle.dumps(error))
    assert str(again) == str(error)
    assert again.problems == error.problems
    assert isinstance(error, FileError)
    assert isinstance(error, ValueError)
