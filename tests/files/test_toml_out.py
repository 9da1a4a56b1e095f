"""Choices written out as a file come back as they were."""

import math
from dataclasses import fields, is_dataclass

import pytest
from hypothesis import given, strategies as st

from tests.files.calm import calm
from tests.files.test_reading import LESSON
from tests.files.written import as_toml, quoted
from toolkit.box import Customs, written
from toolkit.box.choices import (
    Allowance,
    Allowances,
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
from toolkit.box.rooms import Room, Rooms
from toolkit.files import box_from_text, edited, read_box
from toolkit.files.values import MOST_SHARE
from toolkit.measures import Rule, keys_of, length
from toolkit.measures.rule import length_text

# 1e-6 mm is what the file promises: far below what any tool on the bench can do.
CLOSE = 1e-6

sixty_fourths = st.integers(1, 64 * 100).map(lambda parts: parts / 64 * 25.4)
lengths = st.one_of(
    st.floats(0.001, 3000), sixty_fourths, st.integers(1, 3000), st.sampled_from([0.1, 3000.0])
)
lengths_or_zero = st.one_of(st.just(0.0), lengths)
maybe = {
    "length": st.one_of(st.none(), lengths),
    "edge": st.one_of(st.none(), lengths_or_zero),
}
woods = st.sampled_from(["black cherry", "American beech", "sugar maple"])
profiles = st.sampled_from(["flat", "rebated", "bevelled"])
rooms = st.builds(Room, st.floats(-40, 60), st.floats(0, 100))


@st.composite
def sizes(draw):
    named = draw(st.booleans())
    values = {"contents": "A6 cards", "ease": draw(maybe["edge"])} if named else {}
    for axis in ("length", "width", "height"):
        sides = ["inside", "outside", *(["neither"] if named and axis != "height" else [])]
        side = draw(st.sampled_from(sides))
        if side != "neither":
            values[f"{side}_{axis}"] = draw(lengths)
    return Size(**values)


@st.composite
def tail_places(draw):
    edges = sorted(draw(st.lists(st.integers(0, 3000), min_size=2, max_size=12, unique=True)))
    places = tuple((edges[at], edges[at + 1]) for at in range(0, len(edges) - 1, 2))
    return draw(st.sampled_from([None, len(places), places]))


@st.composite
def corners(draw):
    joint = draw(st.sampled_from(["half-blind", "through"]))
    known = draw(st.sampled_from(["lap", "tail_length"]))
    lap = {known: draw(maybe["length"])} if joint == "half-blind" else {}
    return CornerChoice(
        joint=joint,
        tails_on=draw(st.sampled_from(["ends", "sides"])),
        slope=draw(st.one_of(st.none(), st.floats(1, 100))),
        half_pin=draw(maybe["length"]),
        pin=draw(maybe["length"]),
        tails_back=draw(tail_places()),
        tails_front=draw(tail_places()),
        **lap,
    )


@st.composite
def customs(draw):
    kinds = {
        "length": lengths_or_zero,
        "share": st.floats(0, MOST_SHARE),
        "slope": st.floats(1, 100),
        "number": st.floats(0, 1e6),
    }
    names = draw(st.lists(st.sampled_from([spec.name for spec in fields(Customs)]), max_size=5))
    return Customs(**{name: draw(kinds[keys_of(Customs)[name].kind]) for name in names})


@st.composite
def made(draw):
    names = draw(st.lists(st.sampled_from([spec.name for spec in fields(Made)]), max_size=6))
    return Made(**{name: draw(lengths) for name in names})


allowances = st.builds(
    Allowances,
    lengths_or_zero,
    lengths_or_zero,
    lengths_or_zero,
    *[st.builds(Allowance, *[maybe["edge"]] * 3)] * 6,
)
all_choices = st.builds(
    Choices,
    size=sizes(),
    thickness=st.builds(Thickness, lengths, lengths, lengths, lengths),
    title=st.text(min_size=1, max_size=80).filter(lambda s: s.isprintable() and s.strip()),
    rule=st.sampled_from([Rule.millimetres(), Rule.inches(), Rule("in", 0.79375, 1.5875, 25.4)]),
    corner=corners(),
    groove=st.builds(
        GrooveChoice, maybe["length"], maybe["length"], maybe["edge"], maybe["edge"],
        st.sampled_from(["through", "stopped", "plugged"]),
    ),
    panels=st.builds(
        Panels, maybe["edge"], maybe["edge"], lengths_or_zero, lengths_or_zero, lengths_or_zero,
        profiles, profiles, maybe["length"], lengths_or_zero, st.sampled_from(["along", "across"]),
    ),
    lid=st.builds(
        LidChoice, st.sampled_from(["sliding", "lift-off"]), st.sampled_from(["rebate", "battens"]),
        lengths_or_zero, lengths, lengths, lengths,
    ),
    tools=st.builds(
        Tools, maybe["length"],
        st.one_of(st.none(), st.lists(lengths, min_size=1, max_size=4).map(tuple)),
    ),
    wood=st.builds(Wood, woods, woods, woods, woods, st.one_of(st.floats(0, 90), st.just(45.0))),
    rooms=st.builds(Rooms, rooms, st.none() | st.floats(3, 30), rooms, rooms),
    allowances=allowances,
    customs=customs(),
    made=made(),
)  # fmt: skip


def assert_same(one, other, where="box"):
    if is_dataclass(one):
        assert type(one) is type(other), where
        for spec in fields(one):
            if spec.init:
                key = spec.name
                assert_same(getattr(one, key), getattr(other, key), f"{where}.{key}")
    elif isinstance(one, tuple):
        assert len(one) == len(other), where
        for a, b in zip(one, other, strict=True):
            assert_same(a, b, where)
    elif isinstance(one, float | int):
        assert math.isclose(one, other, rel_tol=0, abs_tol=CLOSE), where
    else:
        assert one == other, where


@calm(50)
@given(all_choices)
def test_what_is_written_reads_back(choices):
    assert_same(choices, box_from_text(as_toml(choices)))


def test_the_lessons_box_comes_back_exactly():
    box = read_box(LESSON)
    assert box_from_text(as_toml(box)) == box


def test_the_file_is_written_on_its_rule_and_off_its_marks_in_millimetres():
    box = read_box(LESSON)
    assert 'side = "12 mm"' in as_toml(box)
    inches = box.having({"rule": Rule.inches(), "thickness.side": 12.7, "thickness.end": 12.0})
    rows = as_toml(inches).split("\n")
    assert 'side = "1/2 in"' in rows
    assert 'end = "12 mm"' in rows
    assert 'joints = "1/64 in"' in rows


def test_what_is_one_for_both_is_written_as_one():
    box = read_box(LESSON)
    assert 'across = "2 mm"' in as_toml(box)
    assert 'walls = "black cherry"' in as_toml(box)
    differing = as_toml(box.having({"panels.lid_across": 3.0, "wood.ends": "American beech"}))
    assert 'bottom_across = "2 mm"\nlid_across = "3 mm"' in differing
    assert 'sides = "black cherry"\nends = "American beech"' in differing


def test_a_change_is_written_as_each_key_is():
    change = {
        "panels.across": 2.0,
        "corner.slope": 8.0,
        "corner.tails_back": ((5.0, 19.0), (25.0, 39.0)),
        "wood.rings": 45.0,
        "rooms.make": Room(20.0, 50.0),
        "rooms.make_moisture": 9.5,
        "rooms.dry.humidity": 30.0,
        "customs.lap_least": 2.0,
        "customs.lap_share_least": 0.25,
        "tools.plough_irons": (6.0,),
        "groove.depth": None,
    }
    said = written(change, rule=Rule.millimetres())
    assert said == {
        "panels.across": "2 mm",
        "corner.slope": 8.0,
        "corner.tails_back": [["5 mm", "19 mm"], ["25 mm", "39 mm"]],
        "wood.rings": "rift",
        "rooms.make": {"temperature": "20 °C", "humidity": "50 %"},
        "rooms.make_moisture": "9.5 %",
        "rooms.dry.humidity": "30 %",
        "customs.lap_least": "2 mm",
        "customs.lap_share_least": 0.25,
        "tools.plough_irons": ["6 mm"],
        "groove.depth": None,
    }
    box = read_box(LESSON)
    del change["rooms.dry.humidity"], said["rooms.dry.humidity"]
    new = edited(LESSON.read_text(encoding="utf-8"), said, name="b")
    assert box_from_text(new) == box.having(change)


def test_what_was_left_out_is_left_out_again():
    text = as_toml(read_box(LESSON).having({"corner.lap": None, "groove.depth": None}))
    assert "lap" not in text
    assert "depth" not in text


@pytest.mark.parametrize(
    ("mm", "units", "text"),
    [
        (38.1, "in", "1 1/2 in"),
        (25.4, "in", "1 in"),
        (25.4 / 64, "in", "1/64 in"),
        (0.0, "in", "0 in"),
        (4.0, "in", "4 mm"),
        (25.4 / 64 + 2e-7, "in", "0.396875 mm"),
        (4.0, "mm", "4 mm"),
        (11.4, "mm", "11.4 mm"),
        (0.1 + 0.2, "mm", "0.3 mm"),
        (3000.0, "mm", "3000 mm"),
        (0.0000004, "mm", "0 mm"),
    ],
)
def test_a_length_is_written_plainly(mm, units, text):
    rule = Rule.inches() if units == "in" else Rule.millimetres()
    assert length_text(mm, rule=rule) == text


@calm()
@given(st.floats(0, 3000), st.sampled_from([Rule.millimetres(), Rule.inches()]))
def test_any_length_reads_back(mm, rule):
    assert abs(length(length_text(mm, rule=rule), allow="zero") - mm) <= CLOSE


@calm()
@given(st.text())
def test_any_text_can_be_quoted(text):
    import tomllib

    assert tomllib.loads(f"a = {quoted(text)}")["a"] == text
