"""What the tests of the lessons' scenes share: an empty folder, and boxes of every kind."""

from pathlib import Path

import pytest

from tests.boxes import ears, inch_postcard, lift_off, postcard
from toolkit.box import Choices

BOXES = {"mm": postcard, "in": inch_postcard, "ears": ears, "lift-off": lift_off}


@pytest.fixture(autouse=True)
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The student's folder, empty."""
    monkeypatch.setenv("WORKBOOK_FOLDER", str(tmp_path))
    return tmp_path


@pytest.fixture(params=BOXES)
def choices(request: pytest.FixtureRequest) -> Choices:
    """A box in millimetres, one in inches, one with ears, one with a lid that lifts off."""
    return BOXES[request.param]()
