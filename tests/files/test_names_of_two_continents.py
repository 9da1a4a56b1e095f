"""A wood that two continents have under one name is refused with both, by whichever door."""

from pathlib import Path

import pytest

from tests.classroom.classes import HEAD, THREE, write
from tests.files.test_reading import LESSON
from toolkit.files import FileError, TypedBoard, board_from_typed, box_from_text, read_class
from toolkit.measures import Rule
from toolkit.study import OwnBox

NAMES = {
    "oak": ("white oak", "European oak"),
    "ash": ("white ash", "European ash"),
    "cherry": ("black cherry", "European cherry"),
    "beech": ("American beech", "European beech"),
    "walnut": ("black walnut", "European walnut"),
    "lime": ("American basswood", "European lime"),
}
BOARD = '[[board]]\nname = "b"\nspecies = "{}"\n'
BOARD += 'length = "900 mm"\nwidth = "120 mm"\nthickness = "20 mm"\n'


def doors(name: str, folder: Path):
    """Each door that a wood's name comes in by, as something to try."""
    whole = LESSON.read_text(encoding="utf-8")
    yield (
        "box",
        lambda: box_from_text(whole.replace('panels = "black cherry"', f'panels = "{name}"')),
    )
    yield "own box", lambda: OwnBox().keep({"wood.walls": name})
    rack = write(folder, HEAD + THREE + BOARD.format(name))
    yield "class", lambda: read_class(rack)
    typed = TypedBoard("b", name, "900 mm", "120 mm", "20 mm")
    yield "form", lambda: board_from_typed(typed, rule=Rule.millimetres())


@pytest.mark.parametrize("name", NAMES)
def test_it_is_refused_with_the_woods_it_may_be(name: str, tmp_path: Path) -> None:
    OwnBox().load()
    for door, tried in doors(name, tmp_path):
        with pytest.raises((FileError, ValueError)) as caught:
            tried()
        for wood in NAMES[name]:
            assert f"'{wood}'" in str(caught.value), (door, str(caught.value))


def test_one_students_box_is_told_with_that_student(tmp_path: Path) -> None:
    changes = '[student.changes.wood]\npanels = "lime"\n'
    path = write(tmp_path, HEAD + "[[student]]\nnumber = 1\n" + changes)
    (student,) = read_class(path).students
    assert student.choices is None and "'European lime'" in student.fault
