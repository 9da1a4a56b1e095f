"""Where the keys of a text are, for messages."""

import tomllib

from hypothesis import given, strategies as st

from tests.files.calm import calm
from toolkit.files.lines import lines_of

TEXT = '''\
# a remark with [brackets] and a = sign
title = "a # that is no remark"   # a remark

[groove]  # [no section]
depth = "4 mm"
"bottom edge" = \'7 mm\'
long = """
[no section]
depth = "5 mm\\""""
raw = \'\'\'
# no remark\'\'\'
after = 1

[[board]]
name = "one"
[[board.defect]]
from = ["1 mm",
        # a remark, with ]
        "2 mm"]
[[board.defect]]
kind = "knot"
[[board]]
name = "two"
[[board.defect]]
to = [["3 mm"], ["4 mm",
"5 mm"]]
[rooms]
make = { temperature = "20 °C", humidity = "50 %" }
dry.humidity = "30 %"
when = 1979-05-27 07:32:00
[allowances.front]
length = "1 mm"
'''


def test_a_text_of_everything():
    tomllib.loads(TEXT)
    lines = lines_of(TEXT)
    expected = {
        ("title",): 2,
        ("groove",): 4,
        ("groove", "depth"): 5,
        ("groove", "bottom edge"): 6,
        ("groove", "long"): 7,
        ("groove", "raw"): 10,
        ("groove", "after"): 12,
        ("board",): 14,
        ("board", 0, "name"): 15,
        ("board", 0, "defect", 0): 16,
        ("board", 0, "defect", 0, "from"): 17,
        ("board", 0, "defect", 0, "from", 1): 19,
        ("board", 0, "defect", 1, "kind"): 21,
        ("board", 1): 22,
        ("board", 1, "name"): 23,
        ("board", 1, "defect", 0, "to"): 25,
        ("board", 1, "defect", 0, "to", 1, 0): 25,
        ("board", 1, "defect", 0, "to", 1, 1): 26,
        ("rooms", "make", "humidity"): 28,
        ("rooms", "dry"): 29,
        ("rooms", "dry", "humidity"): 29,
        ("rooms", "when"): 30,
        ("allowances",): 31,
        ("allowances", "front", "length"): 32,
    }
    assert {path: lines.get(path) for path in expected} == expected


def paths_of(value, path=()):
    """Every path in plain values."""
    if path:
        yield path
    if isinstance(value, dict):
        for key, inner in value.items():
            yield from paths_of(inner, (*path, key))
    if isinstance(value, list):
        for index, inner in enumerate(value):
            yield from paths_of(inner, (*path, index))


def test_every_path_has_a_line():
    assert set(paths_of(tomllib.loads(TEXT))) == set(lines_of(TEXT))


def test_a_broken_text_has_lines_up_to_the_break():
    assert lines_of('[a]\nb = 1\nc = "\nd = 2') == {("a",): 1, ("a", "b"): 2, ("a", "c"): 3}


@calm()
@given(st.dictionaries(st.text("abc_-1", min_size=1, max_size=4), st.integers(), max_size=8))
def test_each_key_is_on_its_line(values):
    text = "\n".join(f"{key} = {value}" for key, value in values.items())
    assert lines_of(text) == {(key,): at for at, key in enumerate(values, start=1)}
