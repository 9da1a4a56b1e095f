"""Where a command may write: never over what it reads, and only where a file can be."""

import os
from pathlib import Path

import pytest

from toolkit.files import FileError
from toolkit.files.writing import check_output, check_output_folder

HTML = (".html", ".htm")


@pytest.fixture
def box(tmp_path: Path) -> Path:
    path = tmp_path / "box.html"
    path.write_text("a box", encoding="utf-8")
    return path


def test_what_may_be_written(tmp_path: Path, box: Path) -> None:
    other = tmp_path / "other.html"
    other.write_text("an old page", encoding="utf-8")
    for place in ("new.html", "new.HTM", "other.html"):
        check_output(tmp_path / place, inputs=[box], endings=HTML)
    for place in (tmp_path, tmp_path / "new"):
        check_output_folder(place)


def test_an_input_by_any_other_name(
    tmp_path: Path, box: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "soft.html").symlink_to(box)
    os.link(box, tmp_path / "hard.html")
    (tmp_path / "here").symlink_to(tmp_path)
    monkeypatch.chdir(tmp_path)
    round_about = f"../{tmp_path.name}/box.html"
    for place in ("box.html", "soft.html", "hard.html", "here/box.html", round_about):
        with pytest.raises(FileError, match="is read here"):
            check_output(place, inputs=["nowhere.toml", box], endings=HTML)
    with pytest.raises(FileError, match="is read here"):
        check_output("here/nowhere.html", inputs=["nowhere.html"], endings=HTML)


def test_what_is_no_place_for_a_file(
    tmp_path: Path, box: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "folder.html").mkdir()
    os.mkfifo(tmp_path / "pipe.html")
    (tmp_path / "lost.html").symlink_to(tmp_path / "nothing.html")
    (tmp_path / "loop.html").symlink_to(tmp_path / "loop.html")
    for place, words in (
        ("folder.html", "this is a folder"),
        ("pipe.html", "not an ordinary file"),
        ("/dev/null", "not an ordinary file"),
        ("lost.html", "a link to no file"),
        ("loop.html", "a link to no file"),
        ("new", "type another name that ends in .html or .htm"),
        ("new.toml", "type another name that ends in .html"),
        ("nowhere/new.html", "there is no folder .*nowhere; make it first"),
        ("box.html/new.html", "there is no folder"),
    ):
        with pytest.raises(FileError, match=words):
            check_output(tmp_path / place, inputs=[], endings=HTML)
    for place, words in (
        ("box.html", "this is no folder"),
        ("lost.html", "this is no folder"),
        ("nowhere/new", "there is no folder"),
    ):
        with pytest.raises(FileError, match=words):
            check_output_folder(tmp_path / place)
    monkeypatch.setattr(os, "access", lambda path, mode: False)
    with pytest.raises(FileError, match="can't be written to"):
        check_output(tmp_path / "new.html", inputs=[], endings=HTML)
