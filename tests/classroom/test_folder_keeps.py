"""A class's folder keeps what people wrote, and a record of it can do no harm."""

import json
import os
import re
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.classroom.classes import HEAD, write
from toolkit.classroom import make_class
from toolkit.classroom.folder import FolderMade
from toolkit.classroom.folder_record import mark_of_bytes
from toolkit.classroom.jobs import Job
from toolkit.files import FileError, read_class

RUBRIC, ASIDE = "rubrics/student_01.html", "rubrics/student_01-set-aside-{}.html"
BOTH = {"index.html", RUBRIC}
Make = Callable[..., FolderMade]


@pytest.fixture
def make(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Make:
    """Makes a class of one page, and the first page, in ``out``."""
    path = write(tmp_path, HEAD + "\n[[student]]\nnumber = 1\n")
    monkeypatch.setattr("toolkit.classroom.folder.class_jobs", lambda *_, **__: [])

    def run(version: int = 1, said: list[str] | None = None) -> FolderMade:
        page = f"<html>version {version}</html>".encode()
        job = Job({RUBRIC: "Rubric"}, str(version), lambda: {RUBRIC: (page, "")}, 1)
        monkeypatch.setattr("toolkit.classroom.folder.student_jobs", lambda *_, **__: [job])
        notice = [].append if said is None else said.append
        return make_class(read_class(path), folder=tmp_path / "out", on_notice=notice)

    return run


def spoil_record(out: Path, **pages: str) -> None:
    """Put pages into the record that lie there as it says."""
    data = json.loads((out / "made.json").read_text(encoding="utf-8"))
    for name, content in pages.items():
        holds = mark_of_bytes(content.encode()) if content else ""
        data["pages"][name] = {"source": "1", "holds": holds, "said": "", "day": ""}
    (out / "made.json").write_text(json.dumps(data), encoding="utf-8")


def test_a_note_stays_until_the_page_changes_and_is_then_set_aside(
    tmp_path: Path, make: Make
) -> None:
    out = tmp_path / "out"
    make()
    page = out / RUBRIC
    for version in (1, 2):
        note = f"<html>version {version}, neat shoulders</html>\n"
        page.write_text(note, encoding="utf-8")
        said: list[str] = []
        assert set(make(version, said).kept) == BOTH
        assert said == [f"{RUBRIC}: somebody has changed this page; it stays as it is"]
        assert page.read_text(encoding="utf-8") == note
        said = []
        assert set(make(version + 1, said).made) == BOTH
        aside = ASIDE.format(version)
        assert said == [f"{RUBRIC}: this is not as the workbook made it, and is kept as {aside}"]
        assert page.read_text(encoding="utf-8") == f"<html>version {version + 1}</html>"
        assert (out / aside).read_text(encoding="utf-8") == note
    # A page as it was made is replaced without a word.
    assert set(make(4, said := []).made) == BOTH and said == []


def test_what_the_workbook_never_made_is_set_aside(tmp_path: Path, make: Make) -> None:
    out = tmp_path / "out"
    out.mkdir()
    (out / "index.html").write_text("<html>my own page</html>", encoding="utf-8")
    (out / "rubrics").write_text("a list", encoding="utf-8")
    said: list[str] = []
    assert set(make(1, said).made) == BOTH
    assert len(said) == 2 and "index-set-aside-1.html" in said[1]
    assert (out / "index-set-aside-1.html").read_text("utf-8") == "<html>my own page</html>"
    assert (out / "rubrics-set-aside-1").read_text("utf-8") == "a list"
    (out / RUBRIC).unlink()
    (out / RUBRIC).mkdir()
    assert RUBRIC in make(1).made and (out / ASIDE.format(1)).is_dir()


def test_a_page_fails_before_the_old_one_is_set_aside(tmp_path: Path, make: Make) -> None:
    make()
    (tmp_path / "out" / RUBRIC).write_text("my notes", encoding="utf-8")

    def fails() -> dict[str, tuple[bytes, str]]:
        raise ValueError("the ink has run out")

    real = Job.make  # of the rubric alone
    make_of = property(lambda job: fails if job.student else real.__get__(job), real.__set__)  # type: ignore[attr-defined]
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(Job, "make", make_of)
        assert make(2).faults == ((1, "the ink has run out"),)
    assert (tmp_path / "out" / RUBRIC).read_text(encoding="utf-8") == "my notes"


def test_only_what_was_made_in_the_folder_is_taken_away(tmp_path: Path, make: Make) -> None:
    out, outside = tmp_path / "out", tmp_path / "outside"
    make()
    outside.mkdir()
    (out / "away").symlink_to(outside)
    old = [out / "old.html", outside / "linked.html", outside / "up.html", outside / "whole.html"]
    for path in [*old, out / "written_in.html"]:
        path.write_text("old", encoding="utf-8")
    names = ("old.html", "away/linked.html", "../outside/up.html", str(outside / "whole.html"))
    spoil_record(out, **dict.fromkeys(names, "old"), **{"a\0b": "old", "": "", "no.html": ""})
    spoil_record(out, **{"written_in.html": "before it was written in"})
    said: list[str] = []
    found = make(1, said)
    assert found.gone == ("old.html",) and set(found.kept) == BOTH
    assert [path.exists() for path in old] == [False, True, True, True]
    assert (out / "written_in.html").exists() and len(said) == 1 and "it stays" in said[0]
    assert set(json.loads((out / "made.json").read_text("utf-8"))["pages"]) == BOTH


def test_a_damaged_record_is_set_aside_and_the_run_goes_on(
    tmp_path: Path, make: Make, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("toolkit.classroom.folder_record.LARGEST", 300_000)
    page = '{"format": 1, "pages": {"a.html": {"source": "", "holds": %s}}}'
    record = tmp_path / "out" / "made.json"
    make()
    contents: list[bytes | Callable[[Path], None]] = [
        b"",
        b"\0" * 40,
        b"[" * 200_000,
        b'{"format": 1, "pages": {}, "more": "' + b"x" * 300_000 + b'"}',
        '{"format": 1, "pages": {"Zwölf": {}}}'.encode("latin-1"),
        b"[]",
        b'{"format": 7, "pages": {}}',
        b'{"format": 1, "pages": [1]}',
        (page % "5").encode(),
        (page % r'"\ud800"').encode(),
        Path.mkdir,
        os.mkfifo,
        lambda path: path.symlink_to("nothing.json"),
    ]
    for number, content in enumerate(contents, 1):
        record.unlink()
        if isinstance(content, bytes):
            record.write_bytes(content)
        else:
            content(record)
        said: list[str] = []
        assert set(make(1, said).made) == BOTH, content
        aside = f"made-set-aside-{number}.json"
        # The pages are what they would be anew, so only the record moves.
        (line,) = said
        assert line.startswith("made.json: ") and f"it is now {aside}, and" in line
        assert os.path.lexists(record.with_name(aside))
        assert set(json.loads(record.read_text(encoding="utf-8"))["pages"]) == BOTH
    assert make(1).made == ()


def test_no_page_replaces_what_the_class_is_read_from(tmp_path: Path, make: Make) -> None:
    path, out = tmp_path / "class.toml", tmp_path / "out"
    (out / "rubrics").mkdir(parents=True)
    text = path.read_text(encoding="utf-8")
    cases: dict[str, Callable[[], object]] = {
        "index.html": lambda: os.link(path, out / "index.html"),
        RUBRIC: lambda: (out / RUBRIC).symlink_to(tmp_path / "box.toml"),
        "made.json": lambda: (out / "made.json").symlink_to(path),
        ".made.json.lock": lambda: os.link(path, out / ".made.json.lock"),
    }
    for name, link in cases.items():
        link()
        with pytest.raises(FileError, match=f"{re.escape(name)}: this file is read here"):
            make()
        assert path.read_text(encoding="utf-8") == text
        (out / name).unlink()
        assert [file for file in out.rglob("*") if not file.is_dir()] == []
    # The box of a student that is not there yet.
    path.write_text(text + 'box = "out/index.html"\n', encoding="utf-8")
    with pytest.raises(FileError, match="this file is read here"):
        make()
    assert [file for file in out.rglob("*") if not file.is_dir()] == []
