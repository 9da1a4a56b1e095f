"""The JSON Schemas beside the code are those of the code, and they agree with the readers."""

import json
import tomllib

import pytest
from jsonschema import Draft202012Validator

from tests.files.test_boards import BOARD, DEFECT, LESSON as BOARDS
from tests.files.test_reading import LEAST, LESSON
from tests.files.test_refusals import SLIPS
from tests.files.written import as_toml
from toolkit.files import BoxFileError, box_from_text, read_box
from toolkit.files.schemas import FOLDER, SCHEMAS, schema_text


def kept(name):
    return json.loads((FOLDER / name).read_text(encoding="utf-8"))


def faults(name, text):
    return list(Draft202012Validator(kept(name)).iter_errors(tomllib.loads(text)))


@pytest.mark.parametrize("name", SCHEMAS)
def test_the_kept_schema_is_fresh(name):
    kept_text = (FOLDER / name).read_text(encoding="utf-8")
    # If this fails: python -m toolkit.files.schemas
    assert kept_text == schema_text(SCHEMAS[name]())


@pytest.mark.parametrize("name", SCHEMAS)
def test_the_kept_schema_is_a_schema(name):
    Draft202012Validator.check_schema(kept(name))


@pytest.mark.parametrize(
    "text", [LESSON.read_text(encoding="utf-8"), LEAST, as_toml(read_box(LESSON))]
)
def test_a_right_box_is_right_by_the_schema(text):
    assert faults("box.schema.json", text) == []


@pytest.mark.parametrize("text", [BOARDS.read_text(encoding="utf-8"), BOARD, BOARD + DEFECT])
def test_right_boards_are_right_by_the_schema(text):
    assert faults("boards.schema.json", text) == []


# What needs a reader's knowledge: units within a text, names in tables, the marks of rules.
BEYOND = ('"4"', '"-4', '"400 m"', '"A6 card"', "chery", "sideways", '"91', '"50"', "200 °C",
          '"15 mm"', '"19 mm", "5 mm"', '"19"', '"8"', '"1/0"', '"0.3', "\\u0007", '"  "',
          "nan", "inf", '= "cherry"')  # fmt: skip


# The validator can't print numbers of thousands of digits.
PRINTABLE = [slip[:2] for slip in SLIPS if "fff" not in slip[1]]


@pytest.mark.parametrize(("old", "new"), PRINTABLE)
def test_a_wrong_box_is_wrong_by_the_schema(old, new):
    text = LESSON.read_text(encoding="utf-8").replace(old, new, 1)
    try:
        wrong = faults("box.schema.json", text)
    except tomllib.TOMLDecodeError:
        pytest.skip("not TOML, so no schema is asked")
    assert wrong or any(mark in new for mark in BEYOND)


@pytest.mark.parametrize(
    "lines",
    [
        '[corner]\nlap = "4 mm"\ntail_length = "8 mm"',
        '[corner]\njoint = "through"\nlap = "4 mm"',
        '[panels]\nacross = "2 mm"\nlid_across = "2 mm"',
        '[wood]\nwalls = "American beech"\nsides = "American beech"\nends = "American beech"',
        '[wood]\nlid = "American beech"',
    ],
)
def test_keys_that_exclude_or_need_one_another(lines):
    text = f"{LEAST}\n{lines}"
    with pytest.raises(BoxFileError):
        box_from_text(text)
    assert faults("box.schema.json", text)
