"""The student's own box: made at the first change, kept, set aside when damaged, never lost."""

import re
import subprocess
import sys
from pathlib import Path

import pytest

from toolkit.files import BoxFileError, read_box
from toolkit.measures import MeasureError
from toolkit.study import OwnBox, boxes, choose_box, example_path
from toolkit.study.own_box import BoxNameError, current_name

EXAMPLE = example_path().read_text(encoding="utf-8")
ROOT = Path(__file__).resolve().parents[2]


def test_without_a_box_of_one_s_own_the_example_is_loaded_and_nothing_written(folder):
    loaded = OwnBox().load()
    assert (loaded.path, loaded.notice) == (None, "")
    assert loaded.choices == read_box(example_path())
    assert not list(folder.iterdir())


def test_the_first_change_makes_the_file_with_the_example_s_remarks(folder):
    kept = OwnBox().keep({"groove.depth": "5 mm"})
    assert kept.path == folder / "my_box.toml"
    assert kept.choices.groove.depth == 5.0
    new = kept.path.read_text(encoding="utf-8").splitlines()
    old = EXAMPLE.splitlines()
    changed = [(a, b) for a, b in zip(old, new, strict=True) if a != b]
    assert len(changed) == 1
    assert "a third of the wall" in changed[0][1] and '"5 mm"' in changed[0][1]
    assert example_path().read_text(encoding="utf-8") == EXAMPLE


def test_later_changes_are_kept_and_shared_by_every_lesson():
    OwnBox().keep({"groove.depth": "5 mm"})
    OwnBox().keep({"thickness.side": '1/2"', "title": "Seed box"})
    loaded = OwnBox().load()
    assert loaded.path is not None and loaded.notice == ""
    assert loaded.choices.groove.depth == 5.0
    assert loaded.choices.thickness.side == pytest.approx(12.7)
    assert loaded.choices.title == "Seed box"


def test_a_value_that_cannot_be_read_changes_nothing(folder):
    with pytest.raises(BoxFileError, match=r"my_box\.toml, groove\.depth .*no unit"):
        OwnBox().keep({"groove.depth": "5"})
    assert not (folder / "my_box.toml").exists()
    OwnBox().keep({"groove.depth": "5 mm"})
    before = (folder / "my_box.toml").read_bytes()
    with pytest.raises(BoxFileError):
        OwnBox().keep({"groove.depth": "-5 mm"})
    assert (folder / "my_box.toml").read_bytes() == before


def test_undo_goes_back_change_by_change_to_the_example():
    own = OwnBox()
    own.keep({"groove.depth": "5 mm"})
    own.keep({"groove.depth": "3 mm"})
    assert own.undo().choices.groove.depth == 5.0
    assert own.undo().choices == read_box(example_path())
    with pytest.raises(BoxFileError, match="nothing to take back"):
        own.undo()


def test_starting_again_gives_the_example_and_can_be_undone(folder):
    own = OwnBox()
    assert own.start_again().path is None
    assert not (folder / "my_box.toml").exists()
    own.keep({"groove.depth": "5 mm"})
    again = own.start_again()
    assert again.path is not None and again.choices == read_box(example_path())
    assert own.undo().choices.groove.depth == 5.0


DAMAGE = {
    "a typing slip": (EXAMPLE.replace('depth = "4 mm"', "depth = 4 mm").encode(), "groove|line"),
    "a wrong value": (EXAMPLE.replace('depth = "4 mm"', 'depth = "4"').encode(), "groove.depth"),
    "cut off in the middle": (EXAMPLE.partition('end = "12 mm"')[0].encode(), "thickness.*missing"),
    "empty": (b"", "missing"),
    "not text": (b"\xff\xfe\x00\x01" * 9, "my_box"),
}


@pytest.mark.parametrize("what", DAMAGE)
def test_a_damaged_file_is_set_aside_whole_and_the_example_used(folder, what):
    raw, said = DAMAGE[what]
    (folder / "my_box.toml").write_bytes(raw)
    loaded = OwnBox().load()
    assert loaded.path is None
    assert loaded.choices == read_box(example_path())
    asides = list(folder.glob("my_box.damaged-*.toml"))
    assert len(asides) == 1
    assert re.fullmatch(r"my_box\.damaged-\d{8}-\d{6}\.toml", asides[0].name)
    assert asides[0].read_bytes() == raw
    assert loaded.notice.startswith("my_box.toml")
    assert re.search(said, loaded.notice)
    assert asides[0].name in loaded.notice and str(folder) in loaded.notice
    assert "\n" not in loaded.notice
    # The next lesson still tells of it, until there is a box of one's own again.
    assert asides[0].name in OwnBox().load().notice
    OwnBox().keep({"groove.depth": "5 mm"})
    assert OwnBox().load().notice == ""
    assert boxes() == ("box",)


def test_two_damaged_files_are_both_kept(folder):
    for raw in (b"first = ", b"second = "):
        (folder / "my_box.toml").write_bytes(raw)
        OwnBox().load()
    kept = sorted(path.read_bytes() for path in folder.glob("my_box.damaged-*"))
    assert kept == [b"first = ", b"second = "]


def test_a_file_that_is_whole_again_a_moment_later_is_not_set_aside(folder, monkeypatch):
    path = folder / "my_box.toml"
    path.write_bytes(b"")
    monkeypatch.setattr("time.sleep", lambda _: path.write_text(EXAMPLE, encoding="utf-8"))
    assert OwnBox().load().path == path
    assert not list(folder.glob("*damaged*"))


def test_damage_in_a_folder_that_nobody_can_write_to_is_told(folder, monkeypatch):
    def refuse(self, timeout):
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr("filelock.FileLock.acquire", refuse)
    (folder / "my_box.toml").write_bytes(b"[thickness]\nside = 12 mm")
    loaded = OwnBox().load()
    assert loaded.path is None
    assert loaded.notice.startswith("my_box.toml (line 2, column ")
    assert 'type side = "12 mm"' in loaded.notice and "left where it is" in loaded.notice
    assert "written" not in loaded.notice


def test_a_folder_in_the_place_of_the_file_is_left_alone(folder):
    (folder / "my_box.toml").mkdir()
    loaded = OwnBox().load()
    assert (folder / "my_box.toml").is_dir()
    assert loaded.path is None and "left where it is" in loaded.notice


def test_a_change_to_a_damaged_file_is_refused_and_leaves_it(folder):
    (folder / "my_box.toml").write_bytes(b"depth = ")
    with pytest.raises(BoxFileError):
        OwnBox().keep({"groove.depth": "5 mm"})
    assert (folder / "my_box.toml").read_bytes() == b"depth = "


def test_undo_after_damage_brings_back_what_was_last_in_order(folder):
    OwnBox().keep({"groove.depth": "5 mm"})
    OwnBox().keep({"groove.depth": "3 mm"})
    (folder / "my_box.toml").write_bytes(b"\xff")
    assert OwnBox().undo().choices.groove.depth == 5.0
    assert [path.read_bytes() for path in folder.glob("my_box.damaged-*")] == [b"\xff"]


def test_units_are_switched_and_the_sizes_stay():
    own = OwnBox()
    before = own.load().choices
    inches = own.switch_units("in").choices
    assert inches.rule.units == "in"
    assert inches.rule.show(92.9, fineness="sizes") == "3 21/32 in"
    assert inches.having({"rule": before.rule}) == before
    assert own.switch_units("mm").choices == before
    with pytest.raises(MeasureError, match=r'type "mm" or "in"'):
        own.switch_units("cubits")


def test_switching_to_the_units_one_has_makes_no_file(folder):
    OwnBox().switch_units("mm")
    assert not (folder / "my_box.toml").exists()


def test_several_boxes_by_name(folder):
    OwnBox("gift-box").keep({"title": "Gift"})
    OwnBox("Schlüssel_2").keep({"title": "Keys"})
    OwnBox().keep({"title": "Mine"})
    assert boxes() == ("box", "gift-box", "Schlüssel_2")
    assert (folder / "my_gift-box.toml").is_file()
    assert [OwnBox(name).load().choices.title for name in boxes()] == ["Mine", "Gift", "Keys"]


def test_the_current_box_is_remembered():
    assert current_name() == "box"
    OwnBox("gift-box").keep({"title": "Gift"})
    assert OwnBox().load().choices.title == "Postcard box"
    assert choose_box("GIFT-box") == "gift-box"
    assert OwnBox().name == "gift-box"
    assert OwnBox().load().choices.title == "Gift"
    assert OwnBox("box").load().choices.title == "Postcard box"


@pytest.mark.parametrize("raw", [b"", b"../../etc\n", b"\xff", b"a b\n"])
def test_a_damaged_memory_of_the_current_box_means_the_first(folder, raw):
    (folder / ".current_box").write_bytes(raw)
    assert current_name() == "box"


@pytest.mark.parametrize(
    "name",
    ["", " ", "a b", "../x", "a/b", "a.b", "a\\b", "x" * 41, "boards", "Boards", "a\n", "né:"],
)
def test_a_name_that_is_no_file_name_is_refused(folder, name):
    if name == "a\n":
        assert OwnBox(name).name == "a"
        return
    with pytest.raises(BoxNameError, match="letters, digits, - and _"):
        OwnBox(name)
    assert not list(folder.iterdir())


WORKER = """
import sys
from toolkit.study import OwnBox
key, first = sys.argv[1], int(sys.argv[2])
for number in range(first, first + 30):
    OwnBox().keep({key: f"{number} mm"})
    choices = OwnBox().load()
    assert choices.path is not None and not choices.notice, choices.notice
    section, name = key.split(".")
    assert getattr(getattr(choices.choices, section), name) == number, "a change was lost"
"""


def test_two_lessons_at_once_lose_no_change_and_corrupt_nothing(folder):
    jobs = [("size.inside_length", "150"), ("size.inside_width", "100")]
    workers = [
        subprocess.Popen(
            [sys.executable, "-c", WORKER, *job], cwd=ROOT, stderr=subprocess.PIPE, text=True
        )
        for job in jobs
    ]
    said = [worker.communicate(timeout=60)[1] for worker in workers]
    assert [worker.returncode for worker in workers] == [0, 0], said
    size = OwnBox().load().choices.size
    assert (size.inside_length, size.inside_width) == (179.0, 129.0)
    assert "a third of the wall" in (folder / "my_box.toml").read_text(encoding="utf-8")
    assert not list(folder.glob("*damaged*"))
    assert not list(folder.glob("*.tmp"))
