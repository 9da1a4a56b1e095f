"""Changing a file: remarks stay, nothing is half written, nobody's change is lost."""

import os
import subprocess
import sys
import threading
import time
import tomllib
from pathlib import Path

import pytest
from hypothesis import given, strategies as st

from tests.files.calm import calm
from tests.files.keeping import change_box, migrate_box
from tests.files.test_reading import LEAST, LESSON
from tests.files.written import as_toml
from toolkit.files import BOX, BoxFileError, editing, read_box, writing
from toolkit.files.writing import BACKUPS_KEPT, backups, locked

ROOT = Path(__file__).parents[2]


@pytest.fixture
def box(tmp_path):
    path = tmp_path / "my_box.toml"
    path.write_bytes(LESSON.read_bytes())
    return path


def text_of(path):
    return path.read_bytes().decode("utf-8")


def refusal(call, *arguments, **options):
    with pytest.raises(BoxFileError) as caught:
        call(*arguments, **options)
    return str(caught.value)


def left_beside(path):
    """Names of what lies beside a file, but for its lock and the backups."""
    return {each.name for each in path.parent.iterdir()} - {f".{path.name}.lock", ".backup"}


# --- what a change does to the text


def test_a_change_touches_its_own_line_only(box):
    before = text_of(box).split("\n")
    choices = change_box(box, {"groove.depth": "5 mm"})
    after = text_of(box).split("\n")
    assert len(before) == len(after)
    changed = [(old, new) for old, new in zip(before, after, strict=True) if old != new]
    assert len(changed) == 1
    old, new = changed[0]
    assert new == old.replace('"4 mm"', '"5 mm"')
    assert "#" in new
    assert choices.groove.depth == 5
    assert read_box(box) == choices


def test_new_keys_stand_below_the_last_of_their_section(box):
    change_box(
        box,
        {
            "groove.ends": "stopped",
            "customs.lap_least": "2 mm",
            "made.side_thickness": "11.4 mm",
            "rooms.make.humidity": "45 %",
            "corner.tails_back": [["5 mm", "19 mm"], ["25 mm", "39 mm"]],
            "allowances.front.length": "20 mm",
        },
    )
    before, after = text_of(LESSON).split("\n"), text_of(box).split("\n")
    for row in before:
        # Every remark is still there, though the value before it may be another.
        if "#" in row:
            assert sum(new.endswith(row[row.index("#") :]) for new in after) >= 1
    assert after[after.index('ends = "stopped"') - 1].startswith("top_edge")
    assert after[after.index('ends = "stopped"') + 1] == ""
    box_now = read_box(box)
    assert box_now.made.side_thickness == 11.4
    assert box_now.customs.lap_least == 2
    assert box_now.rooms.make.humidity == 45
    assert box_now.corner.tails_back == ((5, 19), (25, 39))
    assert box_now.allowances.of("front") == (20, 6, 4)


def test_a_remark_above_the_next_section_stays_there():
    text = '[groove]\ndepth = "4 mm"\n# on depth\n\n# on panels\n[panels]\n'
    assert editing.edited(text, {"groove.width": "6 mm"}, name="b") == (
        '[groove]\ndepth = "4 mm"\n# on depth\nwidth = "6 mm"\n\n# on panels\n[panels]\n'
    )


def test_a_remark_above_a_part_of_a_section_stays_there():
    text = '[allowances]\nlength = "9 mm"\n\n# on the front\n[allowances.front]\nwidth = "1 mm"\n'
    new = editing.edited(text, {"allowances.width": "6 mm"}, name="b")
    assert new.startswith('[allowances]\nlength = "9 mm"\nwidth = "6 mm"\n\n# on the front\n')


def test_none_takes_a_key_out_and_with_it_its_rule(box):
    assert change_box(box, {"corner.lap": None, "corner.tail_length": "8 mm"}).corner.lap is None
    assert not any(row.startswith("lap = ") for row in text_of(box).split("\n"))
    choices = change_box(box, {"rooms.make": None, "lid": None, "made.lid_width": None})
    assert choices == read_box(box)
    assert "[lid]" not in text_of(box)


def test_a_key_takes_the_place_of_what_it_excludes(box):
    assert change_box(box, {"corner.tail_length": "8 mm"}).corner.lap is None
    panels = change_box(box, {"panels.lid_across": "3 mm"}).panels
    # What stood for both still stands for the other one.
    assert (panels.bottom_across, panels.lid_across) == (2.0, 3.0)
    wood = change_box(box, {"wood.ends": "American beech"}).wood
    assert (wood.sides, wood.ends) == ("black cherry", "American beech")
    choices = change_box(box, {"panels.across": "1 mm", "corner.joint": "through"})
    assert choices.value("panels.across") == 1.0 and choices.corner.tail_length is None
    said = "lap is given too, and each follows from the other; keep one of the two"
    both = {"corner.joint": "half-blind", "corner.lap": "4 mm", "corner.tail_length": "8 mm"}
    assert said in refusal(change_box, box, both)


def test_missing_sections_are_made_and_changes_pile_up_no_blank_lines(tmp_path):
    path = tmp_path / "b.toml"
    path.write_text(LEAST, encoding="utf-8")
    for _ in range(3):
        change_box(path, {"groove.depth": "5 mm", "rooms.dry.humidity": "25 %", "title": "B"})
        change_box(path, {"groove": None, "rooms": None, "title": None})
    assert len(text_of(path)) < len(LEAST) + 8
    assert change_box(path, {"groove.depth": "5 mm"}).groove.depth == 5


def test_line_ends_of_the_file_are_kept(box):
    box.write_bytes(text_of(box).replace("\n", "\r\n").encode())
    change_box(box, {"groove.depth": "5 mm", "groove.ends": "stopped"})
    raw = box.read_bytes()
    assert raw.count(b"\n") == raw.count(b"\r\n")
    assert b'depth = "5 mm"' in raw


@pytest.mark.parametrize(
    ("changes", "line"),
    [
        ({"groove.depth": "5"},
         'my_box.toml, groove.depth (line 42): read "5": it has no unit; type "5 mm" or "5 in"'),
        ({"groove.depth": 5.0},
         "my_box.toml, groove.depth (line 42): read 5: a length is text with its unit; "
         'type "5 mm" or "5 in"'),
        ({"groove.dept": "5 mm"},
         "my_box.toml, groove.dept (line 45): dept is no key here; type depth"),
        ({"groov.depth": "5 mm"},
         "my_box.toml, groov (line 83): [groov] is no section; type [groove]"),
        ({"size.inside_length": None},
         "my_box.toml, size.inside_length: it is missing, and so is outside_length; "
         'type one, inside_length = "152 mm"'),
        ({"title.depth": "5 mm"},
         "my_box.toml, title.depth: title is not a section, so nothing can be put in it"),
        ({"groove.depth": object},
         "my_box.toml, groove.depth: read <class 'object'>: a file can't hold this; "
         "give text, a number or a list of them"),
    ],
)  # fmt: skip
def test_a_change_that_would_not_be_right_changes_nothing(box, changes, line):
    before = box.read_bytes()
    assert refusal(change_box, box, {"title": "Other", **changes}) == line
    assert box.read_bytes() == before
    assert not backups(box)
    assert left_beside(box) == {"my_box.toml"}


words = st.text(st.characters(exclude_characters="#", exclude_categories=["Cs"]), max_size=5)
values = st.one_of(words, st.integers(), st.booleans(), st.lists(words))
keys = st.sampled_from(["a", "b", "c", "a.b", "a.c", "a.b.c", "d.e", "b.a", "ü", "x y", ""])


@calm(60)
@given(st.dictionaries(keys, values, max_size=6), st.dictionaries(keys, st.none() | values))
def test_editing_says_what_was_asked_or_refuses(first, second):
    text = "# start\n[a]\nb = 1 # one\n\n# two\n[a.x]\n[d]\ne = { f = 1 }\n# end"
    for changes in (first, second):
        try:
            new = editing.edited(text, changes, name="b")
        except BoxFileError:
            continue
        said = tomllib.loads(new)
        for key, value in changes.items():
            if any(other.startswith(f"{key}.") or key.startswith(f"{other}.") for other in changes):
                continue
            inner = said
            *above, last = key.split(".")
            for step in above:
                inner = inner.get(step, {})
            assert inner.get(last) == value
        # What is put in the place of a whole section, or taken out, takes its remarks away.
        if "a" not in changes and None not in changes.values():
            assert new.count("#") == text.count("#")
        text = new


# --- writing


def test_nothing_is_written_when_nothing_changes(box):
    before = box.stat().st_mtime_ns
    change_box(box, {"groove.depth": "4 mm"})
    assert box.stat().st_mtime_ns == before
    assert not backups(box)


@pytest.mark.parametrize(("broken", "for_the_backup"), [("replace", 1), ("fsync", 2)])
def test_a_write_that_breaks_off_leaves_the_old_file(box, monkeypatch, broken, for_the_backup):
    before, whole, done = box.read_bytes(), getattr(os, broken), []

    def fail(*arguments):
        done.append(arguments)
        if len(done) > for_the_backup:
            raise OSError(28, "No space left on device")
        whole(*arguments)

    monkeypatch.setattr(writing.os, broken, fail)
    assert refusal(change_box, box, {"groove.depth": "5 mm"}) == (
        "my_box.toml: it could not be written (No space left on device) and is as it was; "
        "check its folder and try again"
    )
    assert box.read_bytes() == before
    assert left_beside(box) == {"my_box.toml"}
    monkeypatch.undo()
    assert change_box(box, {"groove.depth": "5 mm"}).groove.depth == 5


def test_a_full_disk_is_told_of_the_file_that_the_student_knows(box, monkeypatch):
    change_box(box, {"groove.depth": "5 mm"})
    before = box.read_bytes()

    def fail(*_):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(writing.os, "fsync", fail)
    line = (
        "my_box.toml: its backup could not be written (No space left on device), so it is as it "
        "was; check its folder"
    )
    assert refusal(change_box, box, {"groove.depth": "6 mm"}) == line
    assert refusal(BOX.undo, box) == line
    assert box.read_bytes() == before


def test_no_change_is_made_when_no_backup_can_be(box):
    (box.parent / ".backup").write_text("in the way", encoding="utf-8")
    before = box.read_bytes()
    assert "its backup could not be written" in refusal(change_box, box, {"groove.depth": "5 mm"})
    assert box.read_bytes() == before


def test_what_a_killed_writer_left_is_cleared(box):
    (box.parent / ".my_box.toml.0123456789ab.tmp").write_text("half", encoding="utf-8")
    (box.parent / ".other.toml.0123456789ab.tmp").write_text("not ours", encoding="utf-8")
    kept = box.parent / ".backup"
    kept.mkdir()
    for name in ("my_box-000003-20260101T101500.toml", "my_box-undone.toml", "other-undone.toml"):
        (kept / f".{name}.0123456789ab.tmp").write_text("half", encoding="utf-8")
    change_box(box, {"groove.depth": "5 mm"})
    assert left_beside(box) == {"my_box.toml", ".other.toml.0123456789ab.tmp"}
    assert [path.name for path in kept.glob("*.tmp")] == [".other-undone.toml.0123456789ab.tmp"]


def test_what_another_writer_writes_just_now_is_left_alone(tmp_path):
    """A page to print has no lock: what is half written may be another's, unless it is old."""
    page = tmp_path / "page.html"
    fresh, old = (tmp_path / f".page.html.{digit * 12}.tmp" for digit in "ab")
    for path in (fresh, old):
        path.write_text("half", encoding="utf-8")
    os.utime(old, (time.time() - 7200,) * 2)
    writing.write_file(page, b"whole", error=BoxFileError)
    assert left_beside(page) == {page.name, fresh.name}


@pytest.mark.skipif(sys.platform == "win32", reason="rights are otherwise there")
def test_rights_are_kept_and_new_files_have_the_usual_ones(box):
    box.chmod(0o640)
    change_box(box, {"groove.depth": "5 mm"})
    assert box.stat().st_mode & 0o777 == 0o640
    other = box.with_name("other.toml")
    plain = box.with_name("plain.txt")
    plain.touch()
    change_box(other, {}, start=box)
    assert other.stat().st_mode == plain.stat().st_mode


@pytest.mark.skipif(sys.platform == "win32", reason="links need rights there")
def test_a_link_stays_a_link(box):
    link = box.with_name("link.toml")
    link.symlink_to(box)
    change_box(link, {"groove.depth": "5 mm"})
    assert link.is_symlink()
    assert read_box(box).groove.depth == 5


def test_a_file_of_ones_own_is_made_from_the_lessons_at_the_first_change(tmp_path):
    mine = tmp_path / "my_box.toml"
    lesson_before = LESSON.read_bytes()
    change_box(mine, {"groove.depth": "5 mm"}, start=LESSON)
    change_box(mine, {"groove.width": "5 mm"}, start=LESSON)
    assert (read_box(mine).groove.depth, read_box(mine).groove.width) == (5, 5)
    assert LESSON.read_bytes() == lesson_before


def test_no_file_and_no_folder(tmp_path):
    assert refusal(change_box, tmp_path / "b.toml", {}).startswith("b.toml: there is no such file")
    lost = tmp_path / "lost" / "b.toml"
    assert refusal(change_box, lost, {}, start=LESSON) == (
        f"b.toml: there is no folder {lost.parent}; make it first or check its name"
    )
    assert list(tmp_path.iterdir()) == []


def test_a_whole_file_is_written_only_when_it_is_right(box):
    before = read_box(box)
    assert refusal(BOX.write, box, "format = 1").startswith("my_box.toml, size: ")
    assert read_box(box) == before
    BOX.write(box, as_toml(before.having({"title": "Other"})))
    assert read_box(box).title == "Other"
    assert BOX.undo(box) == before


# --- backups


def test_undo_goes_back_change_by_change(box):
    original = box.read_bytes()
    for depth in ("5 mm", "6 mm", "7 mm"):
        change_box(box, {"groove.depth": depth})
    assert BOX.undo(box).groove.depth == 6
    assert b'depth = "7 mm"' in (box.parent / ".backup" / "my_box-undone.toml").read_bytes()
    assert BOX.undo(box).groove.depth == 5
    BOX.undo(box)
    assert box.read_bytes() == original
    assert refusal(BOX.undo, box) == (
        "my_box.toml: no earlier state of it is kept, so there is nothing to take back"
    )


def test_the_last_backups_are_kept_and_no_others_touched(box):
    folder = box.parent / ".backup"
    folder.mkdir()
    others = folder / "my_box-other-000001-20250101T000000.toml"
    others.write_text("x", encoding="utf-8")
    for depth in range(1, BACKUPS_KEPT + 6):
        change_box(box, {"groove.depth": f"{depth / 10} mm"})
    kept = backups(box)
    assert len(kept) == BACKUPS_KEPT == 20
    assert read_box(kept[-1]).groove.depth == (BACKUPS_KEPT + 4) / 10
    assert read_box(kept[0]).groove.depth == 0.5
    assert others.exists()


def test_two_customs_of_an_older_file_become_one_key_in_its_text(box):
    now = text_of(box)
    proud = next(line for line in now.splitlines(keepends=True) if line.startswith("proud ="))
    old = now.replace(proud, "").replace("[customs] ", '[customs]\npins_shy = "0.1 mm"\n#')
    box.write_text(old, encoding="utf-8")
    change_box(box, {"title": "Mine"})
    assert text_of(box) == old.replace('title = "Postcard box"', 'title = "Mine"').replace(
        'pins_shy = "0.1 mm"\n', ""
    ).replace("slide out over it\n", 'slide out over it\nproud = "0.1 mm"\n')
    assert read_box(box).corner.proud == pytest.approx(0.1)


def test_backups_are_in_order_though_the_clock_is_set_back(box, monkeypatch):
    class Clock:
        year = 2030

        @classmethod
        def now(cls):
            cls.year -= 1
            return writing_datetime(cls.year, 1, 1)

    writing_datetime = writing.datetime
    monkeypatch.setattr(writing, "datetime", Clock)
    for depth in ("5 mm", "6 mm"):
        change_box(box, {"groove.depth": depth})
    assert BOX.undo(box).groove.depth == 5
    assert BOX.undo(box).groove.depth == 4


def test_an_older_format_is_brought_up_with_a_backup(box):
    now = text_of(box)
    old = now.replace("under_lid =", "front_drop =").replace("format = 2", "format = 1")
    box.write_text(old, encoding="utf-8")

    assert read_box(box).panels.under_lid == read_box(LESSON).panels.under_lid
    assert text_of(box) == old
    assert migrate_box(box) is True
    # Every remark and the order stay.
    assert text_of(box) == now
    assert text_of(backups(box)[-1]) == old
    assert migrate_box(box) is False

    BOX.undo(box)
    assert text_of(box) == old


# --- several at once


def test_who_waits_too_long_is_told(box, monkeypatch):
    monkeypatch.setattr(writing, "PATIENCE", 0.1)
    with locked(box, error=BoxFileError):
        assert refusal(change_box, box, {"groove.depth": "5 mm"}) == (
            "my_box.toml: another program is changing it just now; close that or try again "
            "in a moment"
        )
    assert change_box(box, {"groove.depth": "5 mm"}).groove.depth == 5


WORKER = """
import sys
from tests.files.keeping import change_box
from toolkit.files import read_box
path, section, key = sys.argv[1:]
for turn in range(1, 51):
    change_box(path, {f"{section}.{key}": f"{turn} mm"})
    # Nobody else writes this key, so the change must still be there.
    assert getattr(getattr(read_box(path), section), key) == turn
"""


def test_two_programs_lose_no_change_and_never_see_half_a_file(box):
    box.write_text(f'title = "Postcard box"\n{LEAST}', encoding="utf-8")
    keys = [("made", "side_length"), ("groove", "depth")]
    workers = [
        subprocess.Popen([sys.executable, "-c", WORKER, str(box), *key], cwd=ROOT) for key in keys
    ]
    seen = 0
    while any(worker.poll() is None for worker in workers):
        assert read_box(box).title == "Postcard box"
        seen += 1
        time.sleep(0.01)
    assert [worker.returncode for worker in workers] == [0, 0]
    assert seen > 10
    both = read_box(box)
    assert (both.made.side_length, both.groove.depth) == (50, 50)
    # The backups count the changes: none was made from a state that lacked another.
    assert backups(box)[-1].name.startswith("my_box-000100-")
    assert left_beside(box) == {"my_box.toml"}


def test_threads_of_one_program_wait_for_one_another(box):
    keys = ["side_length", "side_width", "lid_length", "lid_width"]

    def work(key):
        for turn in range(1, 6):
            change_box(box, {f"made.{key}": f"{turn} mm"})

    threads = [threading.Thread(target=work, args=(key,)) for key in keys]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    made = read_box(box).made
    assert [getattr(made, key) for key in keys] == [5, 5, 5, 5]
    assert os.listdir(box.parent / ".backup")
