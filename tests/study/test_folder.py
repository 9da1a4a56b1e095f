"""Where a student's work lies."""

from pathlib import Path

import pytest

from toolkit.files import FileError
from toolkit.study import example_path, folder as places, lessons_folder, own_file, student_folder
from toolkit.study.folder import NoLessonsError


def test_the_example_is_the_workbook_s_own_whatever_folder_is_named(folder):
    assert student_folder() == folder
    assert example_path().read_text(encoding="utf-8").startswith("# The postcard box")
    assert example_path().parent.parent.joinpath("toolkit").is_dir()


def test_without_the_variable_the_folder_is_the_lessons(monkeypatch):
    for empty in (None, "", "  "):
        if empty is None:
            monkeypatch.delenv("WORKBOOK_FOLDER")
        else:
            monkeypatch.setenv("WORKBOOK_FOLDER", empty)
        assert student_folder() == lessons_folder() == example_path().parent


def test_a_folder_that_is_not_there_is_made(monkeypatch, tmp_path):
    monkeypatch.setenv("WORKBOOK_FOLDER", str(tmp_path / "new" / "er"))
    assert student_folder().is_dir()


def test_a_folder_that_is_a_file_is_refused_by_its_variable(monkeypatch, tmp_path):
    (tmp_path / "file").write_text("x")
    monkeypatch.setenv("WORKBOOK_FOLDER", str(tmp_path / "file"))
    with pytest.raises(FileError, match="WORKBOOK_FOLDER names no folder that can be used"):
        student_folder()


def test_a_toolkit_without_its_lessons_says_how_to_get_them(monkeypatch):
    monkeypatch.setattr(places, "_LESSONS", Path("/nowhere/lessons"))
    with pytest.raises(NoLessonsError, match="used from a clone"):
        example_path()


def test_what_is_set_aside_never_replaces_anything(tmp_path):
    names = []
    for text in "abc":
        (tmp_path / "my_box.toml").write_text(text)
        names.append(own_file.set_aside(tmp_path / "my_box.toml"))
    assert [name.read_text() for name in names] == ["a", "b", "c"]
    assert not (tmp_path / "my_box.toml").exists()
    assert own_file.last_set_aside(tmp_path / "my_box.toml") in names
