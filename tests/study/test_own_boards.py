"""The student's own rack: made at the first change, kept, set aside when damaged, never lost."""

import re
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest

from tests.files.written import typed_board
from toolkit.files import BoardsFileError, TypedBoard, TypedDefect, board_from_typed
from toolkit.study import OwnBoards, OwnBox, boxes, lessons_folder

EXAMPLE = (lessons_folder() / "boards.toml").read_text(encoding="utf-8")
ROOT = Path(__file__).resolve().parents[2]
NEW = TypedBoard(
    "oak offcut",
    "white oak",
    "35 in",
    "165 mm",
    "7/8 in",
    (TypedDefect("knot", "250 mm", "50 mm", "280 mm", "80 mm"),),
)


def names(loaded):
    return [board.name for board in loaded.boards]


def test_without_a_rack_of_one_s_own_the_example_is_loaded_and_nothing_written(folder):
    loaded = OwnBoards().load()
    assert (loaded.path, loaded.notice) == (None, "")
    assert names(loaded) == ["long cherry", "short cherry", "panel cherry"]
    assert not list(folder.iterdir())


def test_the_first_change_makes_the_file_with_the_example_s_remarks(folder):
    kept = OwnBoards().keep(NEW)
    assert kept.path == folder / "my_boards.toml"
    assert kept.boards[-1] == board_from_typed(NEW)
    assert kept.path.read_text(encoding="utf-8").startswith(EXAMPLE)
    assert (lessons_folder() / "boards.toml").read_text(encoding="utf-8") == EXAMPLE
    assert OwnBoards().load() == kept


def test_a_board_is_changed_renamed_and_removed():
    own = OwnBoards()
    short = typed_board(own.load().boards[1])
    own.keep(replace(short, name="birch", species="yellow birch"), instead_of="short cherry")
    assert names(own.load()) == ["long cherry", "birch", "panel cherry"]
    assert own.load().boards[1].species == "yellow birch"
    assert names(own.remove("birch")) == ["long cherry", "panel cherry"]
    assert names(OwnBoards().load()) == ["long cherry", "panel cherry"]


def test_a_board_that_cannot_be_changes_nothing(folder):
    wrong = replace(NEW, defects=(replace(NEW.defects[0], to_along="35"),))
    with pytest.raises(BoardsFileError, match=r"^This board, defect 1, to along: .*no unit"):
        OwnBoards().keep(wrong)
    with pytest.raises(BoardsFileError, match=r"^my_boards\.toml, board 4\.name .*already"):
        OwnBoards().keep(replace(NEW, name="long cherry"))
    with pytest.raises(BoardsFileError, match=r'^my_boards\.toml: there is no board "elm"'):
        OwnBoards().remove("elm")
    assert not list(folder.glob("*.toml"))
    before = OwnBoards().keep(NEW)
    with pytest.raises(BoardsFileError):
        OwnBoards().keep(wrong, instead_of=NEW.name)
    assert OwnBoards().load() == before


DAMAGE = {
    "a typing slip": (EXAMPLE.replace('"180 mm"', "180 mm").encode(), r"line 58"),
    "a wrong value": (EXAMPLE.replace('"180 mm"', '"180"').encode(), r"board 2\.width \(line 58\)"),
    "a knot off the board": (EXAMPLE.replace('"622 mm"', '"1622 mm"').encode(), "the knot reaches"),
    "empty": (b"", "missing"),
    "not text": (b"\xff\xfe\x00\x01" * 9, "my_boards"),
}


@pytest.mark.parametrize("what", DAMAGE)
def test_a_damaged_file_is_set_aside_whole_and_the_example_used(folder, what):
    raw, said = DAMAGE[what]
    (folder / "my_boards.toml").write_bytes(raw)
    loaded = OwnBoards().load()
    assert loaded.path is None
    assert names(loaded) == ["long cherry", "short cherry", "panel cherry"]
    asides = list(folder.glob("my_boards.damaged-*.toml"))
    assert len(asides) == 1
    assert re.fullmatch(r"my_boards\.damaged-\d{8}-\d{6}\.toml", asides[0].name)
    assert asides[0].read_bytes() == raw
    assert loaded.notice.startswith("my_boards.toml")
    assert re.search(said, loaded.notice)
    assert asides[0].name in loaded.notice and "\n" not in loaded.notice
    # The next lesson still tells of it, until there is a rack of one's own again.
    assert asides[0].name in OwnBoards().load().notice
    OwnBoards().keep(NEW)
    assert OwnBoards().load().notice == ""


def test_the_rack_is_no_box_and_the_box_no_rack(folder):
    OwnBoards().keep(NEW)
    assert boxes() == ()
    OwnBox().keep({"groove.depth": "5 mm"})
    OwnBoards().undo()
    assert OwnBox().load().choices.groove.depth == 5.0
    assert names(OwnBoards().load())[-1] == "panel cherry"


def test_what_a_student_keeps_never_goes_into_the_project():
    """Their rack, its lock, its backups and what was set aside, where the lessons are."""
    lessons = [
        f"lessons/{name}"
        for name in (
            "my_boards.toml",
            "my_boards.damaged-20250131-101500.toml",
            ".my_boards.toml.lock",
            ".backup/my_boards-000001-20250131T101500.toml",
        )
    ]
    asked = subprocess.run(
        ["git", "check-ignore", *lessons, "lessons/boards.toml"],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
    )
    assert asked.stdout.split() == lessons


WORKER = """
import sys
from dataclasses import replace
from toolkit.files import TypedBoard
from toolkit.study import OwnBoards
mine = TypedBoard(sys.argv[1], "white oak", "1 m", "150 mm", "20 mm")
for number in range(1, 16):
    OwnBoards().keep(replace(mine, width=f"{number} mm"), instead_of=mine.name)
    loaded = OwnBoards().load()
    assert loaded.path is not None and not loaded.notice, loaded.notice
    assert [b.width for b in loaded.boards if b.name == mine.name] == [number], "a change was lost"
"""


def test_two_lessons_at_once_lose_no_change_and_corrupt_nothing(folder):
    workers = [
        subprocess.Popen(
            [sys.executable, "-c", WORKER, name], cwd=ROOT, stderr=subprocess.PIPE, text=True
        )
        for name in ("first", "second")
    ]
    said = [worker.communicate(timeout=60)[1] for worker in workers]
    assert [worker.returncode for worker in workers] == [0, 0], said
    loaded = OwnBoards().load()
    assert sorted(names(loaded)[3:]) == ["first", "second"]
    assert [board.width for board in loaded.boards[3:]] == [15.0, 15.0]
    assert (folder / "my_boards.toml").read_text(encoding="utf-8").startswith(EXAMPLE)
    assert not list(folder.glob("*damaged*")) and not list(folder.glob("*.tmp"))
