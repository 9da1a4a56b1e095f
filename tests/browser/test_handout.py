"""The handout in a real browser: with no network, by keyboard, by a checker, and printed."""

import re
import shutil
import subprocess
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from xml.etree import ElementTree

import numpy as np
import pytest
from axe_playwright_python.sync_playwright import Axe
from PIL import Image
from playwright.sync_api import BrowserContext, Page

from tests.boxes import inch_postcard, postcard
from tests.browser.fonts import print_page
from toolkit.files import read_boards
from toolkit.handout import handout
from toolkit.plan import plan
from toolkit.study import lessons_folder


@pytest.fixture(scope="module")
def written(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The whole handout of the example, on a memory stick."""
    path = tmp_path_factory.mktemp("stick") / "handout.html"
    boards = read_boards(lessons_folder() / "boards.toml")
    page = handout(plan(postcard()), lessons=None, boards=boards, name="7")
    path.write_text(page, encoding="utf-8")
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


@pytest.fixture(scope="module", params=["a4", "letter"])
def printed(
    request: pytest.FixtureRequest,
    written: Path,
    printer: BrowserContext,
    tmp_path_factory: pytest.TempPathFactory,
) -> Path:
    """The whole handout as a PDF: the example on A4, the same in inches on Letter."""
    path = tmp_path_factory.mktemp("printed") / f"{request.param}.html"
    if request.param == "a4":
        shutil.copy(written, path)
    else:
        boards = read_boards(lessons_folder() / "boards.toml")
        inches = plan(inch_postcard())
        page = handout(inches, lessons=None, boards=boards, paper="letter", name="7")
        path.write_text(page, encoding="utf-8")
    print_page(printer, path, path.with_suffix(".pdf"))
    return path.with_suffix(".pdf")


def test_it_prints_whole(printed: Path) -> None:
    size = {"a4": (595, 842), "letter": (612, 792)}[printed.stem]
    boxes = _page_boxes(printed.read_bytes())
    upright = [box for box in boxes if box[0] < box[1]]
    lying = [box for box in boxes if box[0] > box[1]]
    assert 25 <= len(upright) <= 45
    assert len(lying) >= 2, "the full-size sheets lie on their long side"
    assert all(abs(a - b) <= 1 for box in upright for a, b in zip(box, size, strict=True))
    assert all(abs(a - b) <= 1 for box in lying for a, b in zip(box, size[::-1], strict=True))


def _page_boxes(pdf: bytes) -> list[tuple[float, float]]:
    found = re.findall(rb"/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)\s*\]", pdf)
    return [(float(width), float(height)) for width, height in found]


@pytest.mark.skipif(shutil.which("pdftoppm") is None, reason="poppler's pdftoppm is not here")
def test_check_bars_are_printed_true(printed: Path, tmp_path: Path) -> None:
    boxes = _page_boxes(printed.read_bytes())
    first = next(place for place, (wide, tall) in enumerate(boxes, start=1) if wide > tall)
    # Ten dots to a millimetre.
    command = ["pdftoppm", "-r", "254", "-f", str(first), "-gray", str(printed), "page"]
    subprocess.run(command, cwd=tmp_path, check=True)
    lying = 0
    for picture in sorted(tmp_path.glob("page*.pgm")):
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


@dataclass(frozen=True)
class Line:
    """A line of words as printed: its page, where it stands [pt], its letters."""

    page: int
    top: float
    size: float
    font: str
    text: str


@cache
def _lines(pdf: Path) -> tuple[Line, ...]:
    # Three dots to a point, the most that it takes: sizes are told to a third of a point.
    command = ["pdftohtml", "-xml", "-i", "-zoom", "3", "-fontfullname", "-stdout", str(pdf)]
    told = subprocess.run(command, capture_output=True, check=True).stdout
    fonts: dict[str, tuple[float, str]] = {}
    lines = []
    for number, page in enumerate(ElementTree.fromstring(told).iter("page"), start=1):
        for font in page.iter("fontspec"):
            fonts[font.attrib["id"]] = (int(font.attrib["size"]) / 3, font.attrib["family"])
        for row in page.iter("text"):
            size, family = fonts[row.attrib["font"]]
            words = "".join(row.itertext())
            lines.append(Line(number, int(row.attrib["top"]) / 3, size, family, words))
    return tuple(lines)


needs_poppler = pytest.mark.skipif(
    shutil.which("pdftohtml") is None, reason="poppler's pdftohtml is not here"
)


@needs_poppler
def test_letters_are_large_enough_for_a_bench(printed: Path) -> None:
    """Text in 12 pt; drawings, full-size sheets, indices and the foot of a page in 11 pt."""
    lines = _lines(printed)
    assert len(lines) > 500
    small = [line for line in lines if line.size < 11]
    assert small == []
    # Words of the text are set in a face with feet, words of a drawing in one without.
    text = [line for line in lines if "WorkbookText" in line.font]
    assert len(text) > 300
    smaller = re.compile(r"[12]|page \d+ of \d+|.* · issue \w+ of \d{4}-\d\d-\d\d")
    assert [line for line in text if line.size < 12 and not smaller.fullmatch(line.text)] == []


@needs_poppler
def test_every_letter_is_one_that_the_page_brings(printed: Path) -> None:
    fonts = {line.font.partition("+")[2] or line.font for line in _lines(printed)}
    assert {re.sub(r"(normal|bold|italic)$", "", font) for font in fonts} == {
        "WorkbookText",
        "WorkbookDrawings",
        "WorkbookFormulas",
    }


@needs_poppler
def test_fonts_of_the_machine_change_no_page(printed: Path, opened: BrowserContext) -> None:
    again = printed.with_name("machine.pdf")
    print_page(opened, printed.with_suffix(".html"), again)
    assert _pages(again) == _pages(printed)
    assert len(_pages(printed)) > 30


def _pages(pdf: Path) -> list[str]:
    """The words of each page, as they stand in lines."""
    command = ["pdftotext", "-layout", str(pdf), "-"]
    told = subprocess.run(command, capture_output=True, check=True, text=True).stdout
    return told.removesuffix("\f").split("\f")


@needs_poppler
def test_no_heading_stands_alone_at_the_foot_of_a_page(printed: Path) -> None:
    lines = _lines(printed)
    seen = 0
    for number in {line.page for line in lines}:
        body = [row for row in lines if row.page == number and row.size >= 12]
        if not body or "WorkbookText" not in "".join(row.font for row in body):
            continue
        last = max(body, key=lambda row: row.top)
        seen += 1
        assert not (last.size > 12 and "Bold" in last.font), last
    assert seen > 20


@needs_poppler
def test_safety_and_contents_are_the_first_page(printed: Path) -> None:
    pages: dict[int, str] = {}
    for line in _lines(printed):
        pages[line.page] = pages.get(line.page, "") + line.text + " "
    assert "Before you touch a tool" in pages[1]
    assert "What is in here" in pages[1]
    assert "Full-size sheets" in pages[1]
    assert "What a maker would say" in pages[2]


@needs_poppler
def test_pages_are_not_half_empty(printed: Path) -> None:
    """A drawing that does not fit goes over to the next page, but that has to be seldom."""
    command = ["pdftoppm", "-r", "30", "-gray", str(printed), str(printed.parent / "thumb")]
    subprocess.run(command, check=True)
    filled = []
    for picture in sorted(printed.parent.glob("thumb*.pgm")):
        dots = np.asarray(Image.open(picture).convert("L")) < 200
        if dots.shape[0] < dots.shape[1]:
            continue
        body = dots[: int(0.94 * dots.shape[0])]
        filled.append(np.flatnonzero(body.any(axis=1)).max() / len(body))
    assert 25 <= len(filled) <= 45
    assert np.median(filled) >= 0.85
    assert sum(share < 0.6 for share in filled) <= len(filled) / 6


@needs_poppler
def test_paper_is_white(printed: Path) -> None:
    """Nobody pays for ink on ground that stands for paper."""
    command = ["pdftoppm", "-r", "20", "-f", "3", "-l", "8", str(printed)]
    subprocess.run([*command, str(printed.parent / "ground")], check=True)
    for picture in printed.parent.glob("ground*.ppm"):
        dots = np.asarray(Image.open(picture).convert("RGB"))
        assert (dots == 255).all(axis=2).mean() > 0.5
        assert not (dots == (252, 250, 244)).all(axis=2).mean() > 0.001
