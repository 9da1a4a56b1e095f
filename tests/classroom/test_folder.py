"""A class's folder: all of it, only what is new, nobody's bad box in the others' way."""

import re
import shutil
from itertools import pairwise
from pathlib import Path

import pytest

from tests.boxes import inch_postcard, postcard
from tests.classroom.classes import BOARDS, BOX, HEAD, THREE, write
from tests.letters import not_carried
from tests.reading_pages import Page
from toolkit.classroom import folder as folder_room, make_class, wood
from toolkit.classroom.contents import timed
from toolkit.classroom.folder_record import RECORD
from toolkit.classroom.index import index_page
from toolkit.classroom.jobs import class_jobs, student_jobs
from toolkit.classroom.steps import TimeOfDay
from toolkit.classroom.tools_plan import (
    bench_table,
    groups,
    honing_table,
    most_at_once,
    setting_tables,
    shared_table,
    spans,
)
from toolkit.files import FileError, read_class, writing
from toolkit.plan import plan

MEASURED = """
[student.measured]
gap = "0.6 mm"
diagonals = ["221 mm", "221.8 mm"]
lid_play = "0 mm"
surface = "clean"
"""
BAD = """
[[student]]
number = 8
[student.changes.groove]
depth = "12 mm"
"""
ALIKE = "".join(f"\n[[student]]\nnumber = {n}\n" for n in (2, 5, 9))
SHARED = {
    f"{name}.html"
    for name in ("shopping", "kits", "boards", "timetable", "tools", "hands", "wall", "marks")
}


def pages(numbers) -> set[str]:  # type: ignore[no-untyped-def]
    own = {f"{kind}/student_{n:02d}.html" for n in numbers for kind in ("handouts", "rubrics")}
    return {"index.html"} | SHARED | own


@pytest.fixture(autouse=True)
def _no_long_search(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(wood, "TIME_LIMIT", 0.3)
    monkeypatch.setitem(wood.class_wood.__kwdefaults__, "seconds", 0.3)


def make(path: Path, **more):  # type: ignore[no-untyped-def]
    return make_class(read_class(path), folder=path.parent / "out", lessons=(), **more)


def files_in(folder: Path) -> set[str]:
    found = {str(path.relative_to(folder)) for path in folder.rglob("*") if path.is_file()}
    return found - {"made.json", ".made.json.lock"}


@pytest.fixture(scope="module")
def whole(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = write(tmp_path_factory.mktemp("class"))
    make(path)
    return path.parent / "out"


@pytest.fixture(scope="module")
def three(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = write(tmp_path_factory.mktemp("three"), HEAD + THREE)
    assert set(make(path).made) == pages((1, 2, 3))
    return path.parent


@pytest.fixture
def made(three: Path, tmp_path: Path) -> Path:
    """The file of a class whose folder has been made."""
    shutil.copytree(three, tmp_path, dirs_exist_ok=True)
    return tmp_path / "class.toml"


def test_everything_is_there_and_linked(whole: Path) -> None:
    assert files_in(whole) == pages((1, 2, 3))
    page = Page((whole / "index.html").read_text(encoding="utf-8"))
    links = [given["href"] or "" for given in page.all("a")]
    assert set(links) == pages((1, 2, 3)) - {"index.html"}
    assert all((whole / link).is_file() for link in links)


@pytest.mark.parametrize("name", sorted(pages((2,))))
def test_pages_are_for_every_reader_and_need_no_network(whole: Path, name: str) -> None:
    text = (whole / name).read_text(encoding="utf-8")
    page = Page(text)
    assert page.levels[0] == 1 and page.levels.count(1) == 1
    assert all(after <= before + 1 for before, after in pairwise(page.levels))
    assert {given.get("scope") for given in page.all("th")} <= {"col", "row"}
    ids = [given["id"] or "" for _, given in page.tags if given.get("id")]
    assert len(set(ids)) == len(ids) and not any(" " in one for one in ids)
    places = [given.get(way) or "" for _, given in page.tags for way in ("src", "href")]
    assert not any(place.startswith(("http", "//")) for place in places)
    assert "<title>" in text
    assert "url(" not in text.partition("</style>")[0].replace("url(data:", "")
    assert not_carried(text) == []
    assert page.all("html")[0]["lang"] == ("en-US" if "student_02" in name else "en-GB")
    assert re.search(r"Issue [0-9a-f]{8} of 20\d\d-\d\d-\d\d\.", text)
    assert "size: " + ("letter" if "student_02" in name else "A4") in text
    assert not page.all("script") or name.startswith("handouts")


def test_each_has_their_own_units_and_words(whole: Path) -> None:
    kits = (whole / "kits.html").read_text(encoding="utf-8")
    for number, unit, other in ((1, "mm", " in<"), (2, " in", "mm<")):
        table = kits.partition(f"<h3>Student {number}</h3>")[2].partition("</tbody>")[0]
        assert unit in table and other not in table
    handout = (whole / "handouts" / "student_02.html").read_text(encoding="utf-8")
    assert "Student 2" in handout and "half-blind" in handout
    rubric = (whole / "rubrics" / "student_02.html").read_text(encoding="utf-8")
    assert "0.004 in" in rubric and "0.1 mm" not in rubric
    assert "0.1 mm" in (whole / "rubrics" / "student_01.html").read_text(encoding="utf-8")


def test_the_layouts_of_the_class_are_drawn_with_their_proof(whole: Path) -> None:
    text = (whole / "boards.html").read_text(encoding="utf-8")
    assert "uses less" in text or "not proved" in text
    assert "<figcaption>walls: " in text and "<figcaption>panels: " in text


def test_a_second_run_finds_nothing_to_do(made: Path, tmp_path: Path) -> None:
    before = {name: (tmp_path / "out" / name).stat().st_mtime_ns for name in pages((1, 2, 3))}
    told: list[str] = []
    again = make(made, on_progress=lambda done, of, what: told.append(what))
    assert again.made == () and again.gone == () and told == []
    assert set(again.kept) == pages((1, 2, 3)) and "Nothing has changed" in again.sentence
    for name, stamp in before.items():
        assert (tmp_path / "out" / name).stat().st_mtime_ns == stamp


def test_only_what_is_missing_or_changed_is_made(made: Path, tmp_path: Path) -> None:
    path, out = made, tmp_path / "out"
    (out / "handouts" / "student_02.html").unlink()
    assert make(path).made == ("handouts/student_02.html",)
    # A page that was cut short by a copy or a full disk is made anew.
    half = out / "rubrics" / "student_01.html"
    half.write_text(half.read_text(encoding="utf-8")[:500], encoding="utf-8")
    assert make(path).made == ("rubrics/student_01.html",)
    # One change of one student's box: theirs, and what the whole class hangs on.
    write(tmp_path, HEAD + THREE.replace('side = "13 mm"', 'side = "12.5 mm"'))
    wood_pages = {"shopping.html", "kits.html", "boards.html"}
    third = {"handouts/student_03.html", "rubrics/student_03.html"}
    assert set(make(path).made) == third | wood_pages | {"wall.html", "marks.html", "index.html"}
    # Pages that are reckoned from one layout stay together.
    (out / "kits.html").unlink()
    assert wood_pages <= set(make(path).made)
    # The pace changes the timetable and no handout.
    write(tmp_path, HEAD + THREE.replace("slow", "novice").replace("13 mm", "12.5 mm"))
    assert "timetable.html" in (renewed := make(path).made)
    assert not any(name.startswith("handouts") for name in renewed)


def test_what_was_measured_fills_the_sheets_and_nothing_else_is_made(
    made: Path, tmp_path: Path
) -> None:
    path, out = made, tmp_path / "out"
    blank = (out / "marks.html").read_text(encoding="utf-8")
    assert "0 of 3 boxes measured" in blank and "student 3" in blank
    table = blank.partition("<tbody>")[2].partition("</tbody>")[0]
    assert re.findall(r"<td[^>]*>([^<]+)</td>", table) == []
    write(tmp_path, HEAD + THREE + MEASURED)
    assert set(make(path).made) == {"rubrics/student_03.html", "marks.html", "index.html"}
    sheet = (out / "rubrics" / "student_03.html").read_text(encoding="utf-8")
    assert "0.6 mm" in sheet and "Rework" in sheet and "0.8 mm" in sheet
    assert "plane the shiny edge" in sheet and "≤ 0.1 mm" in sheet
    filled = (out / "marks.html").read_text(encoding="utf-8")
    row = filled.partition(">student 3<")[2].partition("</tr>")[0]
    # Gap, step, diagonals, rock, spread, lid, groove, surface, reference marks.
    assert re.findall(r"<td[^>]*>(\w?)</td>", row) == ["R", "", "P", "", "", "R", "", "E", ""]
    assert "1 of 3 boxes measured" in (out / "index.html").read_text(encoding="utf-8")


def test_diagonals_of_no_box_are_told_on_both_sheets(made: Path, tmp_path: Path) -> None:
    wrong = MEASURED.replace("221.8 mm", "2218 mm")
    path, out = write(tmp_path, HEAD + THREE + wrong), tmp_path / "out"
    assert make(path).faults == ()
    for name in ("rubrics/student_03.html", "marks.html", "index.html"):
        assert "measure them again" in (out / name).read_text(encoding="utf-8"), name


def test_a_changed_workbook_makes_everything_anew(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = write(tmp_path, HEAD + "\n[[student]]\nnumber = 1\n")
    make(path)
    monkeypatch.setattr("toolkit.classroom.jobs.workbook_mark", lambda: "another")
    assert set(make(path).made) == pages((1,))


def test_a_run_that_is_broken_off_is_gone_on_with(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path, out = write(tmp_path, HEAD + THREE), tmp_path / "out"

    def stops(done: int, of: int, what: str) -> None:
        if done == 3:
            raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        make(path, on_progress=stops)
    was = files_in(out)
    assert len(was) == 3 and not list(out.rglob("*.tmp"))
    again = make(path)
    assert set(again.kept) == was and set(again.made) == pages((1, 2, 3)) - was


def test_a_page_that_fails_half_way_leaves_nothing_behind(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path, out = write(tmp_path, HEAD + THREE), tmp_path / "out"
    real = __import__("toolkit.handout", fromlist=["handout"]).handout

    def sometimes(made, *, name, **more):  # type: ignore[no-untyped-def]
        if name == "Student 2":
            raise ValueError("lesson 4, cell 9: the ink has run out")
        return real(made, name=name, **more)

    monkeypatch.setattr("toolkit.handout.handout", sometimes)
    found = make(path)
    assert found.faults == ((2, "lesson 4, cell 9: the ink has run out"),)
    assert files_in(out) == pages((1, 2, 3)) - {"handouts/student_02.html"}
    assert "the ink has run out" in (out / "index.html").read_text(encoding="utf-8")
    monkeypatch.setattr("toolkit.handout.handout", real)
    assert set(make(path).made) == {"handouts/student_02.html", "index.html"}


def test_a_box_that_wont_work_is_told_by_number_and_the_others_are_made(
    made: Path, tmp_path: Path
) -> None:
    path, out = write(tmp_path, HEAD + THREE + BAD), tmp_path / "out"
    found = make(path)
    ((number, said),) = found.faults
    assert number == 8 and "won't work" in said and "groove" in said
    assert files_in(out) == pages((1, 2, 3))
    index = (out / "index.html").read_text(encoding="utf-8")
    assert "Student 8" in index and "Look at these first" in index and "not made" in index
    assert "student 8" not in (out / "kits.html").read_text(encoding="utf-8").casefold()
    # The student still comes, and queues for tools.
    assert "student 8" in (out / "timetable.html").read_text(encoding="utf-8")


def test_a_tray_among_the_boxes_gets_its_pages(tmp_path: Path) -> None:
    tray = '[[student]]\nnumber = 4\n[student.changes.lid]\nkind = "none"\n'
    path, out = write(tmp_path, HEAD + tray), tmp_path / "out"
    assert not make(path).faults
    assert files_in(out) == pages((4,))
    own, rubric = (
        (out / kind / "student_04.html").read_text(encoding="utf-8")
        for kind in ("handouts", "rubrics")
    )
    assert "it is a tray" in own and "Fit the lid" not in own
    assert not re.search(r"\blid\b", rubric)


def test_what_people_typed_keeps_its_spelling(tmp_path: Path) -> None:
    """The class's title, a box's title, the boards' names, and the file of a box not read."""
    head = HEAD.replace("Three at a lake", "Gray Lake center")
    text = head + THREE + BOARDS.replace('"walls"', '"plow wood"') + "[[student]]\nnumber = 4\n"
    path = write(
        tmp_path,
        text + 'box = "gray vise.toml"\n',
        box=BOX.replace("Postcard box", "Clamp & vise box"),
    )
    taught = read_class(path)
    plans, faults = folder_room.boxes(taught)
    page = index_page(taught, titles={}, made={}, faults=faults).decode()
    assert "gray vise.toml: there is no such file" in page
    assert "<title>A class, ready to be taught: Gray Lake center</title>" in page
    jobs = [*class_jobs(taught, plans, spare=plans[1]), *student_jobs(taught, plans, lessons=())]
    made: dict[str, tuple[bytes, str]] = {}
    for job in jobs:
        if {"boards.html", "rubrics/student_01.html"} & set(job.pages):
            made |= job.make()
    rubric, boards, shopping = (
        made[name][0].decode()
        for name in ("rubrics/student_01.html", "boards.html", "shopping.html")
    )
    assert "Clamp &amp; vise box, outside" in rubric and "Gray Lake center" in rubric
    assert "Saw cuts, plow wood" in boards and "plow wood</text>" in boards
    assert ">plow wood</th>" in shopping
    for text in (page, rubric, boards, shopping):
        assert "plough wood" not in text and "\ufdd0" not in text


def test_a_handout_whose_box_won_t_work_any_more_goes(tmp_path: Path) -> None:
    good = HEAD + THREE + BAD.partition("[student.changes")[0]
    path, out = write(tmp_path, good), tmp_path / "out"
    make(path)
    assert (out / "handouts" / "student_08.html").exists()
    notes = out / "rubrics" / "student_08.html"
    notes.write_text("my own notes", encoding="utf-8")
    write(tmp_path, HEAD + THREE + BAD)
    found = make(path)
    assert found.gone == ("handouts/student_08.html",)
    assert not (out / "handouts" / "student_08.html").exists()
    assert notes.read_text(encoding="utf-8") == "my own notes"
    assert "1 taken away" in found.sentence


def test_nobodys_box_works(tmp_path: Path) -> None:
    path, out = write(tmp_path, HEAD + BAD), tmp_path / "out"
    assert [number for number, _ in make(path).faults] == [8]
    assert files_in(out) == {"index.html", "timetable.html", "tools.html", "hands.html"}


def test_what_is_refused_at_once(tmp_path: Path) -> None:
    path = write(tmp_path, HEAD + THREE)
    with pytest.raises(ValueError, match="there is no lesson 9"):
        make_class(read_class(path), folder=tmp_path / "out", lessons=(9,))
    assert not (tmp_path / "out").exists()
    bad = BOX.replace('lap = "4 mm"', 'lap = "4 mm"\n[groove]\ndepth = "12 mm"')
    with pytest.raises(ValueError, match="own box won't work"):
        make(write(tmp_path, HEAD + THREE, box=bad))


def test_two_runs_in_one_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(writing, "PATIENCE", 0.1)
    path = write(tmp_path, HEAD + "\n[[student]]\nnumber = 1\n")
    (tmp_path / "out").mkdir()
    with (
        writing.locked(tmp_path / "out" / RECORD, error=FileError),
        pytest.raises(FileError, match="another program"),
    ):
        make(path)


def test_settings_alike_stand_in_one_column() -> None:
    same, inch = plan(postcard()), plan(inch_postcard())
    thick = plan(postcard().having({"thickness.side": 13.0}))
    found = groups({1: same, 2: inch, 3: same, 4: thick, 5: same})
    assert [(g.letter, g.students) for g in found] == [("A", (1, 3, 5)), ("B", (2,)), ("C", (4,))]
    (table,) = setting_tables(found)
    for column, made in enumerate((same, inch, thick), 1):
        shown = {row[0]: row[column] for row in table.rows}
        assert {row.tool: row.value for row in made.settings}.items() <= shown.items()
    many = [plan(postcard().having({"thickness.side": 11.0 + n / 2})) for n in range(9)]
    tables = setting_tables(groups(dict(enumerate(many, 1))))
    assert [len(one.columns) - 1 for one in tables] == [4, 4, 1]


@pytest.mark.parametrize(
    ("numbers", "words"),
    [([], ""), ([4], "4"), ([2, 1], "1 and 2"), ([1, 3, 4, 5], "1 and 3 to 5")],
)
def test_numbers_in_words(numbers: list[int], words: str) -> None:
    assert spans(numbers) == words


def test_times_of_day(tmp_path: Path) -> None:
    clock = TimeOfDay(read_class(write(tmp_path)).day)
    hours = clock.hours
    assert hours.minutes == 450 - 45 - 45 and hours.days == 2
    assert clock.shown(0) == "day 1, 09:00"
    assert clock.shown(hours.minutes - 1e-9) == "day 1, 16:30"
    assert clock.shown(hours.minutes) == "day 2, 09:00"
    assert clock.shown(hours.end) == "day 2, 16:30"
    assert clock.shown(hours.end + 100) == "day 2, 18:10"
    times = [clock.shown(minute) for minute in range(0, 361, 5)]
    assert times == sorted(times)
    # Lunch is nobody's: 12:22 to 13:07 when the file does not say.
    assert not any("12:25" <= time[-5:] <= "13:00" for time in times)


def test_tools_and_edges(tmp_path: Path) -> None:
    tools = "[tools]\nplough_plane = 1\nfine_saw = 2\n"
    taught = read_class(write(tmp_path, HEAD + tools + ALIKE))
    plan_ = timed(taught)
    rows = {row[0]: row for row in shared_table(plan_, on_hand=taught.tools).rows}
    assert rows["plough plane"][1:3] == ("1", "1") and rows["fine saw"][1] == "2"
    assert rows["stone station"][1] == "not told"
    assert rows["plough plane"][4] == "1" and rows["plough plane"][6] == "9"
    waited = sum(bar.queued for bar in plan_.bars if bar.step == 8)
    assert rows["plough plane"][5] == f"{waited:.0f} min" and waited > 0
    assert most_at_once(plan_, steps={1}) == 3
    honing = honing_table(plan_, clock=TimeOfDay(taught.day), students=taught.students)
    assert [row[0] for row in honing.rows] == ["student 2", "student 5", "student 9"]
    begins = next(bar.start for bar in plan_.bars if bar.student == 2 and bar.step == 11)
    assert TimeOfDay(taught.day).shown(begins) == honing.rows[1][4]
    assert [row[0] for row in plan_.who().rows] == [row[0] for row in honing.rows]
    table = bench_table(benches=2, students=3)
    totals = {row[0]: row[2] for row in table.rows}
    assert totals["mallet"] == "2" and totals["dividers"] == "3"
