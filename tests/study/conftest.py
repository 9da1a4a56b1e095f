"""Each of these tests has a student's folder to itself."""

from pathlib import Path

import pytest


@pytest.fixture(autouse=True)
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The student's folder, empty."""
    own = tmp_path / "student"
    monkeypatch.setenv("WORKBOOK_FOLDER", str(own))
    own.mkdir()
    return own
