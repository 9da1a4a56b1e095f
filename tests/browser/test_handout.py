"""The handout in a real browser: with no network, by keyboard, by a checker, and printed."""

from __future__ import annotations

import shutil
import subprocess
from pathlib import Path

import numpy as np
import pytest
from axe_playwright_python.sync_playwright import Axe
from PIL import Image
from playwright.sync_api import BrowserContext, Page

from tests.boxes import inch_postcard, postcard
from toolkit.files import read_boards
from toolkit.handout import write_handout
from toolkit.plan import plan
from toolkit.study import lessons_folder


@pytest.fixture(scope="module")
def written(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The whole handout of the example, on a memory stick."""
    path = tmp_path_factory.mktemp("stick") / "handout.html"
    boards = read_boards(lessons_folder() / "boards.toml")
    write_handout(plan(postcard()), path, lessons=None, boards=boards, name="7")
    return path


@pytest.fixture
def page(opened: BrowserContext, written: Path):  # type: ignore[no-untyped-def]
    """The handout, open in a shop without network."""
    page: Page = opened.new_page()
    said: list[str] = []
    asked: list[str] = []
    page.on("console", lambda message: said.append(message.text))
    page.on("pageerror", lambda error: said.append(str(error)))
    page.on("request", lambda request: asked.append(request.url))
    page.goto(written.as_uri())
    yield page
    assert said == []
    assert [url for url in asked if not url.startswith(("file:", "data:"))] == []
    page.close()


def test_the_slider_works_with_no_python(page: Page) -> None:
    slider = page.get_by_label("What if the lid's rings stood at")
    figure = page.locator("figure.what-if")
    before = figure.locator("svg").evaluate("e => e.outerHTML")
    caption = figure.locator("figcaption").text_content()
    slider.focus()
    page.keyboard.press("End")
    assert slider.get_attribute("aria-valuetext") == "90°, quarter-sawn"
    assert figure.locator("output").text_content() == "90°, quarter-sawn"
    turned = figure.locator("svg").evaluate("e => e.outerHTML")
    assert turned != before
    assert figure.locator("figcaption").text_content() != caption
    page.keyboard.press("Home")
    assert figure.locator("svg").evaluate("e => e.outerHTML") == before
    assert figure.locator("figcaption").text_content() == caption


def test_a_checker_finds_nothing_to_say(page: Page) -> None:
    found = Axe().run(page)
    assert found.violations_count == 0, found.generate_report()


@pytest.mark.parametrize(("paper", "size"), [("a4", (595, 842)), ("letter", (612, 792))])
def test_it_prints_whole(
    opened: BrowserContext, tmp_path: Path, paper: str, size: tuple[int, int]
) -> None:
    path = tmp_path / "handout.html"
    write_handout(plan(inch_postcard()), path, paper=paper)
    page = opened.new_page()
    page.goto(path.as_uri())
    pdf = page.pdf(prefer_css_page_size=True, print_background=True)
    page.close()
    boxes = _page_boxes(pdf)
    upright = [box for box in boxes if box[0] < box[1]]
    lying = [box for box in boxes if box[0] > box[1]]
    assert 12 <= len(upright) <= 40
    assert len(lying) >= 2, "the full-size sheets lie on their long side"
    assert all(abs(a - b) <= 1 for box in upright for a, b in zip(box, size, strict=True))
    assert all(abs(a - b) <= 1 for box in lying for a, b in zip(box, size[::-1], strict=True))


def _page_boxes(pdf: bytes) -> list[tuple[float, float]]:
    import re

    found = re.findall(rb"/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)\s*\]", pdf)
    return [(float(width), float(height)) for width, height in found]


@pytest.mark.skipif(shutil.which("pdftoppm") is None, reason="poppler's pdftoppm is not here")
@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_check_bars_are_printed_true(opened: BrowserContext, tmp_path: Path, paper: str) -> None:
    path = tmp_path / "handout.html"
    write_handout(plan(postcard()), path, paper=paper)
    page = opened.new_page()
    page.goto(path.as_uri())
    pdf = page.pdf(path=tmp_path / "handout.pdf", prefer_css_page_size=True)
    page.close()
    boxes = _page_boxes(pdf)
    first = next(place for place, (wide, tall) in enumerate(boxes, start=1) if wide > tall)
    # Ten dots to a millimetre.
    command = ["pdftoppm", "-r", "254", "-f", str(first), "-gray", "-png", "handout.pdf", "page"]
    subprocess.run(command, cwd=tmp_path, check=True)
    lying = 0
    for picture in sorted(tmp_path.glob("page*.png")):
        dots = np.asarray(Image.open(picture).convert("L")) < 140
        if dots.shape[1] < dots.shape[0]:
            continue
        lying += 1
        runs = _runs(dots)
        assert any(abs(run - 1000) <= 2 for run in runs), f"100 mm bar of {picture.name}: {runs}"
        assert any(abs(run - 1016) <= 2 for run in runs), f"4 in bar of {picture.name}: {runs}"
    assert lying >= 2


def _runs(dots: np.ndarray) -> set[int]:
    """Lengths of level dark lines between 90 and 110 mm. [tenths of a millimetre]"""
    found = set()
    for row in dots:
        edges = np.flatnonzero(np.diff(np.concatenate(([0], row.astype(np.int8), [0]))))
        lengths = edges[1::2] - edges[::2]
        found |= {int(run) for run in lengths if 900 < run < 1100}
    return found
