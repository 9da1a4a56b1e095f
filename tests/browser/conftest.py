"""What the tests in a browser share: one browser, one JupyterLab, an empty folder for each."""

from __future__ import annotations

import os
import shutil
import signal
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from tests.browser import harness
from tests.browser.harness import NoBrowserError, Server, Watched
from tests.browser.lesson_page import LessonPage

# Both end with this folder's last test: a browser that is driven from here keeps an event loop
# going in this thread, and the tests that run notebooks want their own.


@pytest.fixture(scope="package", autouse=True)
def ended_in_order() -> Iterator[None]:
    """Being ended by another program counts as Ctrl-C, so that no server is left behind."""
    usual = signal.signal(signal.SIGTERM, signal.default_int_handler)
    yield
    signal.signal(signal.SIGTERM, usual)


@pytest.fixture(scope="package")
def opened() -> Iterator[Browser]:
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
def server(opened: Browser, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Server]:
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


@pytest.fixture
def watched(opened: Browser) -> Iterator[Watched]:
    """A page, with what went wrong on it and what it asked of other machines."""
    with harness.watched(opened) as page:
        yield page


@pytest.fixture
def page(folder: Path, watched: Watched) -> Iterator[LessonPage]:
    """A page on which no lesson has been opened yet, for a student who has kept nothing yet."""
    fresh = LessonPage(watched.page)
    yield fresh
    fresh.shut_down()


@pytest.fixture
def lesson(server: Server, page: LessonPage) -> LessonPage:
    """Lesson 4, run from top to bottom."""
    page.begin(server.url, "04_groove_layout.ipynb")
    return page
