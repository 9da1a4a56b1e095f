"""What the tests in a browser share: one browser, one JupyterLab, an empty folder for each."""

from __future__ import annotations

import os
import shutil
from collections.abc import Callable, Iterator
from contextlib import ExitStack
from functools import cache
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
def tabs(server: Server, opened: BrowserContext) -> Iterator[Callable[[str], LessonPage]]:
    """Every notebook in a tab, opened once: that takes longer than running it again."""
    with ExitStack() as until_the_end:

        @cache
        def tab(notebook: str) -> LessonPage:
            page = LessonPage(until_the_end.enter_context(harness.watched(opened)))
            page.open(server.url, notebook)
            until_the_end.callback(page.shut_down)
            return page

        yield tab


@pytest.fixture
def page(tabs: Callable[[str], LessonPage], folder: Path) -> LessonPage:
    """Lesson 4, still to be run, for a student who has kept nothing yet."""
    page = tabs(lesson_files()[3].name)
    page.look_at(None)
    page.watched.errors.clear()
    return page


@pytest.fixture
def lesson(page: LessonPage) -> LessonPage:
    """Lesson 4, run from top to bottom."""
    page.run_all()
    return page
