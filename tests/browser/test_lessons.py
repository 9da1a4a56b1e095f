"""Every lesson runs in JupyterLab, and sliders of each kind in it show what Python computes."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, field
from importlib import import_module
from pathlib import Path
from typing import Any

import pytest

from tests.browser import harness
from tests.browser.conftest import emptied
from tests.browser.fonts import letters_came
from tests.browser.harness import Server
from tests.browser.lesson_page import LessonPage, tracebacks
from toolkit import explore
from toolkit.box import Choices
from toolkit.files import read_box
from toolkit.lesson.controls import ChoiceControl, Control
from toolkit.lesson.scene import Scene
from toolkit.study import example_path


@dataclass(slots=True)
class Lesson:
    """A lesson on a page, and beside it the same state in Python."""

    name: str
    own_scenes: tuple[Scene, ...]
    page: LessonPage
    kept: Choices

    @property
    def scenes(self) -> Iterator["Sliders"]:
        """Each scene in turn, on the page and in Python."""
        for scene in self.own_scenes:
            self.page.look_at(scene.name)
            yield Sliders(scene, self.page, self.kept)


@dataclass(slots=True)
class Sliders:
    """One scene: where its sliders are by now, on the page and in Python."""

    scene: Scene
    page: LessonPage
    kept: Choices
    values: dict[str, Any] = field(default_factory=dict)

    def shows(self, *, after: str) -> None:
        """Wait until the page shows what Python computes for this state."""
        self.page.shows(self.scene.view(self.kept, self.values), after=after)

    def options(self, control: Control) -> list[Any]:
        """What a slider can be moved to, from where it is."""
        return [value for _, value in control.options(self.kept.rule, self.value(control))]

    def moved(self, control: Control, keys: list[str]) -> None:
        """Press keys on a slider and wait for what Python makes of its new place."""
        steps = {"ArrowRight": 1, "ArrowLeft": -1}
        options = self.options(control)
        place = options.index(self.value(control))
        for key in keys:
            if key in steps:
                place = min(max(place + steps[key], 0), len(options) - 1)
            else:
                place = {"Home": 0, "End": len(options) - 1}[key]
        self.values |= dict.fromkeys(control.keys, options[place])
        self.page.press(control.label, *keys)
        self.shows(after=f"{control.label}: {' '.join(keys)}")

    def taken_back(self, control: Control) -> None:
        """Move a slider back to where it was at first."""
        self.values.clear()
        place = self.options(control).index(self.value(control))
        self.page.press(control.label, "Home", *["ArrowRight"] * place)
        self.shows(after=f"taking {control.label} back")

    def value(self, control: Control) -> Any:
        """What a slider is at."""
        return self.values.get(control.keys[0], control.first(self.kept))


@pytest.fixture(scope="module", params=harness.teaching_files(), ids=lambda path: path.stem)
def lesson(
    request: pytest.FixtureRequest, server: Server, turned_to: Callable[[str], LessonPage]
) -> Lesson:
    """A lesson, run from top to bottom for a student who has kept nothing yet."""
    path: Path = request.param
    emptied(server.folder)
    number = path.name[:2]
    if number.isdigit():
        scenes = getattr(explore, f"lesson{int(number)}").scenes.values()
    else:
        scenes = import_module(f"toolkit.classroom.{path.stem}").SCENES
    page = turned_to(path.name)
    page.run_all()
    return Lesson(path.stem, tuple(scenes), page, read_box(example_path()))


def test_every_cell_runs(lesson: Lesson) -> None:
    assert [code for code, count, _ in lesson.page.cells() if count is None] == []
    # What a cell shows is its value; anything beside it was printed by mistake.
    assert [code for code, _, outputs in lesson.page.cells() if len(outputs) > 1] == []


def test_it_begins_with_the_example(lesson: Lesson) -> None:
    for sliders in lesson.scenes:
        labels = [row.label for row in sliders.scene.controls if on_a_slider(row)]
        assert lesson.page.labels() == labels
        sliders.shows(after="opening it")
        lesson.page.photograph(f"{lesson.name}-{sliders.scene.name}-opened")
    assert letters_came(lesson.page.page)
    whole = lesson.page.page.locator(".jp-NotebookPanel")
    lesson.page.photograph(f"{lesson.name}-page", what=whole)


def on_a_slider(control: Control) -> bool:
    """Whether a control is a slider; the others are rows of buttons."""
    return not isinstance(control, ChoiceControl) or control.slider


def kinds(controls: Iterable[Control]) -> list[Control]:
    """The first control of each kind."""
    return list({type(control): control for control in reversed([*controls])}.values())


def test_a_slider_of_each_kind_shows_what_python_computes(lesson: Lesson) -> None:
    """What every single slider shows is told without a browser: tests/explore/test_engine.py."""
    for sliders in lesson.scenes:
        picture = lesson.page.explorer.locator("figure svg").first
        for control in kinds(filter(on_a_slider, sliders.scene.controls)):
            before = picture.evaluate("e => e.outerHTML")
            with lesson.page.steadily() as steady:
                sliders.moved(control, ["ArrowRight"] * 3)
                after = picture.evaluate("e => e.outerHTML")
                for keys in (["End", "ArrowLeft"], ["Home"]):
                    lesson.page.drawn()
                    sliders.moved(control, keys)
                lesson.page.drawn()
            name = control.label
            assert after != before, f"{name} changes nothing in the picture"
            assert steady.frames >= 3, "nobody was looking"
            assert steady.least > 100, f"the picture was away while {name} moved"
            assert steady.height <= 2, f"the picture changed its height while {name} moved"
            assert steady.travel <= 2, f"the picture jumped while {name} moved"
            words = f"{lesson.name}-{sliders.scene.name}-{name.replace(' ', '-')}-most"
            lesson.page.photograph(words)
            sliders.taken_back(control)


def test_a_row_of_buttons_shows_what_python_computes(lesson: Lesson) -> None:
    for sliders in lesson.scenes:
        for control in kinds(row for row in sliders.scene.controls if not on_a_slider(row)):
            for words, value in control.options(sliders.kept.rule, None):
                lesson.page.explorer.get_by_role("button", name=words, exact=True).click()
                sliders.values |= dict.fromkeys(control.keys, value)
                sliders.shows(after=f"{control.label}: {words}")
            words = next(
                text
                for text, value in control.options(sliders.kept.rule, None)
                if value == control.first(sliders.kept)
            )
            lesson.page.explorer.get_by_role("button", name=words, exact=True).click()
            sliders.values.clear()
            sliders.shows(after=f"taking {control.label} back")


def test_nothing_only_a_programmer_should_see(lesson: Lesson) -> None:
    assert tracebacks(lesson.page.page) == []
    assert lesson.page.watched.errors == []
    assert lesson.page.page.locator(".jp-Dialog").count() == 0


def test_it_asks_nothing_of_other_machines(lesson: Lesson) -> None:
    assert lesson.page.watched.outside == []
