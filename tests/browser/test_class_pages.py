"""A class's pages in a browser without network: nothing asked for, nothing to say for a checker."""

from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import BrowserContext

from tests.browser.fonts import print_page
from tests.classroom.classes import write
from toolkit.classroom import make_class
from toolkit.files import read_class

PAGES = ("index", "shopping", "kits", "boards", "timetable", "tools", "wall", "rubrics/student_02")


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = write(tmp_path_factory.mktemp("class"))
    return make_class(read_class(path), folder=path.parent / "out", lessons=()).folder


@pytest.mark.parametrize("name", PAGES)
def test_a_checker_finds_nothing_to_say(opened: BrowserContext, folder: Path, name: str) -> None:
    page = opened.new_page()
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.goto((folder / f"{name}.html").as_uri())
    found = Axe().run(page)
    assert found.violations_count == 0, found.generate_report()
    assert [url for url in asked if not url.startswith(("file:", "data:"))] == []
    page.close()


def test_from_the_first_page_to_a_handout(opened: BrowserContext, folder: Path) -> None:
    page = opened.new_page()
    page.goto((folder / "index.html").as_uri())
    page.get_by_role("link", name="handout, student 2").click()
    assert page.get_by_text("Student 2", exact=True).first.is_visible()
    page.close()


def test_a_rubric_is_one_sheet(printer: BrowserContext, folder: Path, tmp_path: Path) -> None:
    for number in (1, 2):
        page = folder / "rubrics" / f"student_{number:02d}.html"
        pdf = print_page(printer, page, tmp_path / "rubric.pdf")
        assert pdf.count(b"/Type /Page\n") == 1
