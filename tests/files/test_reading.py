"""What a box file says becomes choices in millimetres."""

from dataclasses import fields, is_dataclass
from pathlib import Path

import pytest

from tests.files.written import as_toml
from toolkit.box.choices import (
    Allowance,
    Choices,
    CornerChoice,
    GrooveChoice,
    LidChoice,
    Made,
    Panels,
    Size,
    Thickness,
    Tools,
    Wood,
)
from toolkit.box.customs import Customs
from toolkit.box.rooms import Room, Rooms
from toolkit.files import BoxFileError, box_from_text, read_box
from toolkit.files.box_file import box_schema
from toolkit.measures import Rule, keys_of

LESSON = Path(__file__).parents[2] / "lessons" / "box.toml"

LEAST = """
[size]
inside_length = "152 mm"
inside_width = "110 mm"
inside_height = "38 mm"
[thickness]
side = "12 mm"
end = "12 mm"
bottom = "8 mm"
lid = "9 mm"
"""


def with_lines(lines):
    return box_from_text(f"{LEAST}\n{lines}")


def test_the_lessons_box_is_the_postcard_box():
    assert read_box(LESSON) == Choices(
        title="Postcard box",
        rule=Rule.millimetres(),
        size=Size(inside_length=152, inside_width=110, inside_height=38),
        thickness=Thickness(side=12, end=12, bottom=8, lid=9),
        corner=CornerChoice(
            joint="half-blind", tails_on="ends", lap=4, slope=7, half_pin=6, pin=6,
            tails_back=3, tails_front=2, proud=0.2,
        ),
        groove=GrooveChoice(width=6, depth=4, bottom_edge=8, top_edge=8),
        panels=Panels(bottom_across=2, lid_across=2, under_lid=0.6),
        tools=Tools(chisel=3, plough_irons=(6.0,)),
        wood=Wood(rings=0.0),
    )  # fmt: skip


def test_only_size_and_thickness_are_needed_and_the_rest_is_left_out():
    size = Size(inside_length=152, inside_width=110, inside_height=38)
    assert box_from_text(LEAST) == Choices(size=size, thickness=Thickness(12, 12, 8, 9))


@pytest.mark.parametrize(
    ("section", "lines", "expected"),
    [
        ("panels", 'across = "2 mm"', Panels(bottom_across=2, lid_across=2)),
        ("panels", 'lid_across = "3 mm"', Panels(lid_across=3)),
        (
            "panels",
            'bottom_across = "1 mm"\nlid_across = "0 mm"',
            Panels(bottom_across=1, lid_across=0),
        ),
        ("wood", 'walls = "teak"', Wood(sides="teak", ends="teak")),
        (
            "wood",
            'sides = "teak"\nends = "Cherry, black"',
            Wood(sides="teak", ends="Cherry, black"),
        ),
        ("wood", 'panels = "teak"', Wood(bottom="teak", lid="teak")),
        ("wood", 'rings = "rift"', Wood(rings=45)),
        ("wood", 'rings = "quarter-sawn"', Wood(rings=90)),
        ("wood", 'rings = "30 deg"', Wood(rings=30)),
        ("corner", "slope = 6.5", CornerChoice(slope=6.5)),
        ("corner", 'slope = "1:8"', CornerChoice(slope=8)),
        ("corner", "tails_back = 24", CornerChoice(tails_back=24)),
        (
            "corner",
            'tails_back = [["5 mm", "19 mm"], ["1 in", "1 1/2 in"]]',
            CornerChoice(tails_back=((5, 19), (25.4, 38.1))),
        ),
        ("corner", 'joint = "through"', CornerChoice(joint="through")),
        ("corner", 'tail_length = "8 mm"', CornerChoice(tail_length=8)),
        ("groove", 'ends = "stopped"', GrooveChoice(ends="stopped")),
        ("lid", 'kind = "lift-off"\nseat = "battens"', LidChoice("lift-off", "battens")),
        ("tools", 'plough_irons = ["1/4 in", "6 mm"]', Tools(plough_irons=(6.35, 6))),
        ("customs", 'lap_share_most = "1/4"', Customs(lap_share_most=0.25)),
        ("customs", 'lap_least = "2 mm"', Customs(lap_least=2)),
        ("customs", 'slope_most = "1:10"', Customs(slope_most=10)),
        ("made", 'tail_length = "7.6 mm"', Made(tail_length=7.6)),
        (
            "rooms",
            'dry = { humidity = "25 %" }\nmake = { temperature = "68 °F" }',
            Rooms(dry=Room(20, 25), make=Room(20, 50)),
        ),
        ("rule", 'units = "in"', Rule.inches()),
        ("rule", 'joints = "0.2 mm"', Rule("mm", 0.2, 0.5, 5)),
        ("rule", 'units = "in"\njoints = "1/32 in"', Rule("in", 25.4 / 32, 25.4 / 32, 25.4 / 8)),
    ],
)
def test_a_section_is_read(section, lines, expected):
    assert getattr(with_lines(f"[{section}]\n{lines}"), section) == expected


def test_a_slope_may_be_an_angle():
    # 1 across in 7 along is 8.1301 degrees: the definition, tan(angle) = 1/7.
    assert with_lines('[corner]\nslope = "8.1301 deg"').corner.slope == pytest.approx(7, abs=1e-4)


def test_a_part_may_have_its_own_allowance():
    allowances = with_lines(
        '[allowances]\nlength = "12 mm"\n[allowances.front]\nwidth = "0 mm"'
    ).allowances
    assert allowances.front == Allowance(width=0)
    assert allowances.back == Allowance()
    assert allowances.of("front") == (12, 0, 4)
    assert allowances.of("back") == (12, 6, 4)


def test_signs_and_letters_that_are_joined_are_a_title():
    family = "\N{MAN}\N{ZERO WIDTH JOINER}\N{WOMAN}\N{ZERO WIDTH JOINER}\N{GIRL} box"
    persian = "جعبه\N{ZERO WIDTH NON-JOINER}ها"
    for title in (family, persian):
        choices = box_from_text(f'title = "{title}"\n{LEAST}')
        assert choices.title == title
        assert f'title = "{title}"' in as_toml(choices)
    for nothing in ("\N{ZERO WIDTH JOINER}", "a\N{RIGHT-TO-LEFT OVERRIDE}b", "a\\u0007"):
        with pytest.raises(BoxFileError, match="printable characters"):
            box_from_text(f'title = "{nothing}"\n{LEAST}')


def test_contents_stand_for_the_inside_or_beside_it():
    without = LEAST.replace('inside_length = "152 mm"\ninside_width = "110 mm"\n', "")
    alone = box_from_text(without.replace("[size]", '[size]\ncontents = "a6 cards"\nease = "4 mm"'))
    assert alone.size == Size(inside_height=38, contents="A6 cards", ease=4)
    beside = box_from_text(LEAST.replace("[size]", '[size]\ncontents = "A6 cards"'))
    assert (beside.size.inside_length, beside.size.contents) == (152, "A6 cards")


@pytest.mark.parametrize("ends", ["\n", "\r\n"])
@pytest.mark.parametrize("mark", [b"", b"\xef\xbb\xbf"])
def test_line_ends_and_byte_order_marks_do_not_matter(tmp_path, ends, mark):
    path = tmp_path / "box.toml"
    path.write_bytes(mark + LESSON.read_text(encoding="utf-8").replace("\n", ends).encode())
    assert read_box(path) == read_box(LESSON)


def test_an_older_format_is_brought_up_when_read():
    old = f'{LEAST}\n[panels]\nfront_drop = "0.4 mm"\n'
    new = old.replace("front_drop", "under_lid")
    for text in (old, f"format = 1\n{old}", new, f"format = 1\n{new}", f"format = 2\n{new}"):
        assert box_from_text(text).panels.under_lid == 0.4
    with pytest.raises(BoxFileError, match="front_drop is no key here"):
        box_from_text(f"format = 2\n{old}")
    # A name of the older format is told by its present name, with its own line.
    line = old.count("\n")
    with pytest.raises(BoxFileError, match=rf"panels.under_lid \(line {line}\): "):
        box_from_text(old.replace("0.4 mm", "0.4"))


@pytest.mark.parametrize(
    ("customs", "proud"),
    [
        ('pins_proud = "0.3 mm"', 0.3),
        # What was left out of the two was 0.2 mm proud, and not shy at all.
        ('pins_shy = "0.2 mm"', 0.0),
        ('pins_proud = "0 mm"\npins_shy = "0.2 mm"', -0.2),
        ('pins_proud = "1/64 in"', 25.4 / 64),
    ],
)
def test_two_customs_of_older_files_are_one_key_of_the_corner(customs, proud):
    for head in ("", "format = 1\n", "format = 2\n"):
        read = box_from_text(f"{head}{LEAST}\n[customs]\n{customs}\n")
        assert read.corner.proud == pytest.approx(proud)


def test_a_mistake_in_them_is_told_under_the_present_name_with_its_own_line():
    text = f'{LEAST}\n[customs]\npins_proud = "0.3"'
    line = text.count("\n") + 1
    with pytest.raises(BoxFileError, match=rf"corner.proud \(line {line}\): "):
        box_from_text(text)
    with pytest.raises(BoxFileError, match="pins_proud is no key here"):
        box_from_text(f'{text}\n[corner]\nproud = "0.2 mm"')


def test_pins_are_only_so_proud_or_shy():
    for proud in ("3 mm", "-2 mm"):
        with pytest.raises(BoxFileError, match="goes from -1 mm to 2 mm"):
            with_lines(f'[corner]\nproud = "{proud}"')
    assert with_lines('[corner]\nproud = "-0.2 mm"').corner.proud == -0.2


def test_every_choice_has_its_key_and_every_section_its_words():
    for section in fields(Choices):
        schema = box_schema().model_fields[section.name].annotation
        record = getattr(box_from_text(LEAST), section.name)
        if is_dataclass(record):
            both = {name for name, key in keys_of(type(record)).items() if key.of}
            names = {spec.name for spec in fields(record) if spec.init}
            assert set(schema.model_fields) == names | both
            assert type(record).__doc__.startswith(schema.__doc__)
