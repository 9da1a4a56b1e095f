"""Whatever a file holds, it is read or refused in one line; nothing else comes out."""

import string

from hypothesis import given, strategies as st

from tests.files.calm import calm
from tests.files.test_reading import LESSON
from tests.files.written import quoted
from toolkit.files import FileError, boards_from_text, box_from_text, read_box
from toolkit.files.box_file import box_schema
from toolkit.files.errors import shown
from toolkit.files.lines import lines_of

ROWS = LESSON.read_text(encoding="utf-8").split("\n")
KEY_ROWS = [at for at, row in enumerate(ROWS) if "=" in row and row[0] not in "#["]

numbers = st.one_of(
    st.integers().map(str),
    st.floats(allow_nan=True).map(lambda x: repr(x).replace("e+", "e")),
    st.sampled_from(["nan", "-inf", "1e400", "1_000"]),
    st.sampled_from(["9", "0xf"]).map(lambda digits: digits + digits[-1] * 5000),
)
words = st.sampled_from(
    ["4 mm", "4", "", "-1 mm", "1 1/2 in", "1e400 mm", "9" * 300, "half-blind", "1:7", "1:0",
     "30 deg", "50 %", "20 °C", "-500 °C", "1/0", "１２ mm", "\u202e", "A6 cards", "maple"]
)  # fmt: skip
scalars = st.one_of(
    numbers,
    words.map(quoted),
    st.text(max_size=20).map(quoted),
    st.sampled_from(["true", "1979-05-27", "07:32:00", "1979-05-27T07:32:00Z", "''", '""""""']),
)
toml_values = st.recursive(
    scalars,
    lambda inner: st.one_of(
        st.lists(inner, max_size=4).map(lambda items: f"[{', '.join(items)}]"),
        st.lists(
            st.tuples(st.sampled_from(list(string.ascii_lowercase)), inner),
            max_size=3,
            unique_by=lambda pair: pair[0],
        ).map(lambda pairs: f"{{{', '.join(f'{key} = {value}' for key, value in pairs)}}}"),
    ),
    max_leaves=8,
)


def refused(reader, given):
    """The lines that refuse it; anything but a FileError comes out of here as it is."""
    try:
        reader(given)
    except FileError as error:
        assert_all_are_lines(error.lines)
        return error.lines
    return ()


def assert_all_are_lines(lines):
    assert lines
    for line in lines:
        assert line.startswith("bo")
        assert line.isprintable()
        assert len(line) < 600
        assert "pydantic" not in line


@calm()
@given(st.binary(max_size=200))
def test_bytes(tmp_path_factory, content):
    path = tmp_path_factory.getbasetemp() / "box.toml"
    path.write_bytes(content)
    refused(read_box, path)


@calm()
@given(st.text(max_size=200))
def test_text(text):
    refused(box_from_text, text)


@calm()
@given(st.text(alphabet="[]{}=\"'#., \n\tab1-", max_size=60))
def test_text_of_toml_signs(text):
    refused(box_from_text, text)
    lines_of(text)


@calm(120)
@given(st.data())
def test_the_lessons_box_with_any_value_for_any_key(data):
    at = data.draw(st.sampled_from(KEY_ROWS))
    key = ROWS[at].partition("=")[0]
    rows = [*ROWS[:at], f"{key} = {data.draw(toml_values)}", *ROWS[at + 1 :]]
    refused(box_from_text, "\n".join(rows))


@calm()
@given(st.data())
def test_any_section_with_any_value(data):
    section = data.draw(st.sampled_from(sorted(box_schema().model_fields)))
    value = data.draw(toml_values)
    refused(box_from_text, f"{section} = {value}")
    keys = [*ROWS, f'[extra."{data.draw(st.sampled_from(["a", " ", "ü"]))}"]', f"key = {value}"]
    refused(box_from_text, "\n".join(keys))


@calm()
@given(st.integers(0, len(ROWS)), st.text(max_size=30))
def test_the_lessons_box_with_a_line_of_anything(at, line):
    refused(box_from_text, "\n".join([*ROWS[:at], line, *ROWS[at:]]))


@calm(50)
@given(st.sampled_from(["board", "board.defect", "board.x"]), toml_values, toml_values)
def test_boards(heading, one, other):
    for key in ("name", "length", "heart_line", "defect", "from", "to"):
        text = f"[[board]]\nspecies = {other}\n[[{heading}]]\n{key} = {one}\n"
        refused(boards_from_text, text)


@calm()
@given(st.one_of(st.integers(), st.floats(), st.text(), st.lists(st.integers()), st.booleans()))
def test_a_value_is_shown_short_and_on_one_line(value):
    assert shown(value).isprintable()
    assert len(shown(value)) <= 45
