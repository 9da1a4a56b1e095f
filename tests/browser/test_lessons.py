"""Every lesson runs in JupyterLab, and every slider of it shows what Python computes."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from importlib import import_module
from pathlib import Path
from types import ModuleType
from typing import Any

import pytest
from playwright.sync_api import BrowserContext

from tests.browser import harness
from tests.browser.conftest import emptied
from tests.browser.harness import Server
from tests.browser.lesson_page import LessonPage, tracebacks
from toolkit.box import Choices
from toolkit.cli.serving import lesson_files
from toolkit.explore.controls import Control, value_of, with_values
from toolkit.files import read_box
from toolkit.study import example_path


@dataclass(slots=True)
class Lesson:
    """A lesson on a page, and beside it the same state in Python."""

    name: str
    module: ModuleType
    page: LessonPage
    kept: Choices
    values: dict[str, Any] = field(default_factory=dict)

    def moved(self, control: Control, keys: list[str]) -> None:
        """Press keys on a slider and wait for what Python makes of its new place."""
        steps = {"ArrowRight": 1, "ArrowLeft": -1}
        options = [value for _, value in control.options(self.kept.rule, self.value(control))]
        place = options.index(self.value(control))
        for key in keys:
            if key in steps:
                place = min(max(place + steps[key], 0), len(options) - 1)
            else:
                place = {"Home": 0, "End": len(options) - 1}[key]
        self.values |= dict.fromkeys(control.keys, options[place])
        self.page.press(control.label, *keys)
        view = self.module.view(with_values(self.kept, self.values), self.kept)
        self.page.shows(view, after=f"{control.label}: {' '.join(keys)}")

    def value(self, control: Control) -> Any:
        """What a slider is at."""
        return self.values.get(control.keys[0], value_of(self.kept, control.keys[0]))


@pytest.fixture(scope="module", params=lesson_files(), ids=lambda path: path.stem)
def lesson(
    request: pytest.FixtureRequest, server: Server, opened: BrowserContext
) -> Iterator[Lesson]:
    """A lesson, run from top to bottom for a student who has kept nothing yet."""
    path: Path = request.param
    emptied(server.folder)
    module = import_module(f"toolkit.explore.lesson{int(path.name[:2])}")
    with harness.watched(opened) as watched:
        page = LessonPage(watched)
        page.open(server.url, path.name)
        page.run_all()
        yield Lesson(path.stem, module, page, read_box(example_path()))
        page.shut_down()


def test_every_cell_runs(lesson: Lesson) -> None:
    assert [code for code, count, _ in lesson.page.cells() if count is None] == []


def test_it_begins_with_the_example(lesson: Lesson) -> None:
    assert lesson.page.labels() == [control.label for control in lesson.module.CONTROLS]
    lesson.page.shows(lesson.module.view(lesson.kept, lesson.kept), after="opening it")
    lesson.page.photograph(f"{lesson.name}-opened")
    whole = lesson.page.page.locator(".jp-NotebookPanel")
    lesson.page.photograph(f"{lesson.name}-page", what=whole)


def test_every_slider_shows_what_python_computes(lesson: Lesson) -> None:
    picture = lesson.page.explorer.locator("figure svg").first
    for control in lesson.module.CONTROLS:
        before = picture.evaluate("e => e.outerHTML")
        with lesson.page.steadily() as steady:
            lesson.moved(control, ["ArrowRight"])
            after = picture.evaluate("e => e.outerHTML")
            lesson.moved(control, ["ArrowRight"] * 3)
            lesson.moved(control, ["Home"])
            lesson.moved(control, ["End"])
            lesson.moved(control, ["ArrowLeft"])
        assert after != before, f"{control.label} changes nothing in the picture"
        assert steady.frames > 10
        assert steady.least > 100, f"the picture was away while {control.label} moved"
        assert steady.height <= 2, f"the picture changed its height while {control.label} moved"
        assert steady.travel <= 2, f"the picture jumped while {control.label} moved"
        lesson.page.photograph(f"{lesson.name}-{control.label.replace(' ', '-')}-most")
        lesson.values.clear()
        back = value_of(lesson.kept, control.keys[0])
        options = [value for _, value in control.options(lesson.kept.rule, back)]
        lesson.page.press(control.label, "Home", *["ArrowRight"] * options.index(back))
        view = lesson.module.view(lesson.kept, lesson.kept)
        lesson.page.shows(view, after=f"taking {control.label} back")


def test_nothing_only_a_programmer_should_see(lesson: Lesson) -> None:
    assert tracebacks(lesson.page.page) == []
    assert lesson.page.watched.errors == []
    assert lesson.page.page.locator(".jp-Dialog").count() == 0


def test_it_asks_nothing_of_other_machines(lesson: Lesson) -> None:
    assert lesson.page.watched.outside == []
