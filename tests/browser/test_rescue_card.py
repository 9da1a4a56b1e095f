"""What went wrong, told on the page: ways out are shown, one is kept, and taken back."""

from pathlib import Path

import pytest

from tests.browser.lesson_page import LessonPage
from toolkit.files import read_box


def test_a_way_out_is_shown_kept_and_taken_back(lesson: LessonPage, folder: Path) -> None:
    card = lesson.page.locator(".jp-OutputArea-output").filter(
        has=lesson.page.get_by_role("button", name="What can be done?")
    )
    card.get_by_label("what happened").select_option("front: wrong length")
    lesson.says("126 mm was meant", within=card)
    card.locator("input[type=text]").fill("125.2 mm")
    lesson.click("What can be done?", within=card)
    lesson.says("0.8 mm under", within=card)
    lesson.says("Make a new front", within=card)
    lesson.photograph("04-rescue-ways", what=card)
    # Looking writes nothing.
    assert not (folder / "my_box.toml").exists()
    lesson.click("Keep this, no. 1", within=card)
    lesson.says("Kept:", within=card)
    assert read_box(folder / "my_box.toml").made.front_length == pytest.approx(125.2)
    lesson.photograph("04-rescue-kept", what=card)
    lesson.click("Undo", within=card)
    lesson.says("Taken back.", within=card)
    assert read_box(folder / "my_box.toml").made.front_length is None
