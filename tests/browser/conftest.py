"""What the tests in a browser share: one browser, one JupyterLab, an empty folder for each."""

import os
import shutil
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext

from tests.browser import fonts, harness
from tests.browser.harness import NoBrowserError, Server
from tests.browser.lesson_page import LessonPage
from toolkit.study import lesson_files

# Both end with this folder's last test: a browser that is driven from here keeps an event loop
# going in this thread, and the tests that run notebooks want their own.


@pytest.fixture(scope="package")
def opened() -> Iterator[BrowserContext]:
    """The system's browser."""
    try:
        harness.browser_path()
    except NoBrowserError as missing:
        if os.environ.get("CI", "").lower() in ("1", "true", "yes"):
            raise
        pytest.skip(str(missing))
    with harness.browser() as browser:
        yield browser


@pytest.fixture(scope="package")
def printer(
    opened: BrowserContext, tmp_path_factory: pytest.TempPathFactory
) -> Iterator[BrowserContext]:
    """A browser to print with, for which the machine has no letters."""
    with fonts.without_fonts(opened, tmp_path_factory.mktemp("printer")) as browser:
        yield browser


@pytest.fixture(scope="package")
def server(opened: BrowserContext, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Server]:
    """JupyterLab on a copy of the lessons."""
    with harness.lab(tmp_path_factory.mktemp("lab")) as running:
        yield running


def emptied(folder: Path) -> Path:
    """A folder with nothing in it."""
    shutil.rmtree(folder, ignore_errors=True)
    folder.mkdir(parents=True)
    return folder


@pytest.fixture
def folder(server: Server, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The student's folder of that server, empty, and this process's own as well."""
    monkeypatch.setenv("WORKBOOK_FOLDER", str(server.folder))
    return emptied(server.folder)


@pytest.fixture(scope="package")
def turned_to(server: Server, opened: BrowserContext) -> Iterator[Callable[[str], LessonPage]]:
    """JupyterLab with the notebook that is asked for, and no other: it is opened once for all."""
    with harness.watched(opened) as watched:
        page, here = LessonPage(watched), ""

        def turn_to(notebook: str) -> LessonPage:
            nonlocal here
            if not here:
                page.open(server.url, notebook)
            elif here != notebook:
                page.turn_to(notebook)
            here = notebook
            page.look_at(None)
            watched.errors.clear()
            return page

        yield turn_to
        page.shut_down()


@pytest.fixture
def page(turned_to: Callable[[str], LessonPage], folder: Path) -> LessonPage:
    """Lesson 4, for a student who has kept nothing yet."""
    page = turned_to(lesson_files()[3].name)
    if page.just_opened:
        page.run_all()
    return page


@pytest.fixture
def lesson(page: LessonPage) -> LessonPage:
    """Lesson 4, with what is driven in it begun again."""
    page.run_cell("lesson.explore()")
    page.run_cell("lesson.rescue()")
    return page
