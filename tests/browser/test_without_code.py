"""The lessons without code: what a class sees on the wall, and what it sees of a mistake."""

from pathlib import Path

import nbformat
from playwright.sync_api import BrowserContext

from tests.browser import harness
from tests.browser.fonts import letters_came
from tests.browser.lesson_page import EXPLORER, LessonPage, corner_view, plain, tracebacks
from toolkit.files import read_box
from toolkit.lesson.controls import with_values
from toolkit.plan import plan
from toolkit.study import draw, example_path, lesson_file, lessons_folder

# The sizes of a drawing's letters as they are on the screen. [px]
LETTERS = """svg => [...svg.querySelectorAll("text")].map(
    word => parseFloat(getComputedStyle(word).fontSize) * word.getScreenCTM().a)"""


def test_a_lesson_from_the_list_without_its_code(opened: BrowserContext, tmp_path: Path) -> None:
    book = nbformat.read(lesson_file("4"), as_version=4)
    kept = read_box(example_path())
    with harness.shown(tmp_path, lessons_folder()) as server, harness.watched(opened) as watched:
        watched.page.goto(server.url)
        first = watched.page.get_by_role("main")
        assert "30 here, 35 at the bench" in plain(first.inner_text())
        assert first.get_by_text("Not begun yet.").count() == 5
        watched.page.get_by_role("link", name="4 · groove layout").click()
        watched.page.locator(EXPLORER).first.wait_for()
        lesson = LessonPage(watched)
        lesson.shows(corner_view(kept, kept), after="opening it")
        assert letters_came(watched.page)
        text = watched.page.locator("body").inner_text()
        for cell in book.cells:
            if cell.cell_type == "code":
                assert cell.source not in text
        assert plain(book.cells[0].source.splitlines()[0].lstrip("# ")) in plain(text)
        with lesson.steadily() as steady:
            lesson.press("groove depth", "ArrowRight")
            moved = with_values(kept, {"groove.depth": 4.1})
            lesson.shows(corner_view(moved, kept), after="moving the depth")
        assert steady.height <= 2
        lesson.click("Keep this")
        lesson.says("Kept: groove.depth 4.1 mm.")
        assert read_box(server.folder / "my_box.toml").groove.depth == 4.1
        asked = draw(plan(kept), lesson=4)
        question = asked[0]
        card = lesson.card(question.prompt)
        lesson.answer(card, question.written(question.answer), button="Check")
        lesson.says("Right.", within=card)
        lesson.photograph("04-without-code", what=watched.page.locator("body"))
        assert tracebacks(watched.page) == []
        watched.page.get_by_role("link", name="All lessons").first.click()
        first.get_by_text(f"1 of {len(asked)} questions answered.").wait_for()
        first.get_by_text("your own box, my_box.toml, kept on").wait_for()
        assert first.get_by_text("Not begun yet.").count() == 4
        lesson.photograph("lessons", what=watched.page.locator("body"))
        assert watched.errors == []
        assert watched.outside == []


def test_a_phone_gets_drawings_that_it_can_show(opened: BrowserContext, tmp_path: Path) -> None:
    assert opened.browser is not None
    phone = opened.browser.new_context(
        user_agent="Mozilla/5.0 (Linux; Android 14) Mobile", viewport={"width": 390, "height": 844}
    )
    with harness.shown(tmp_path, lesson_file("4")) as server, harness.watched(phone) as watched:
        watched.page.goto(server.url)
        watched.page.locator(EXPLORER).first.wait_for()
        drawn = watched.page.locator(f"{EXPLORER} svg").first
        drawn.wait_for()
        sizes = drawn.evaluate(LETTERS)
        assert len(sizes) > 10
        assert min(sizes) >= 11
        LessonPage(watched).photograph("04-phone", what=watched.page.locator("body"))
    phone.close()


def test_a_broken_notebook_says_so_at_once(opened: BrowserContext, tmp_path: Path) -> None:
    book = nbformat.read(lesson_file("4"), as_version=4)
    place = next(i for i, cell in enumerate(book.cells) if cell.source == "lesson.worked()")
    book.cells[place].source = "raise RuntimeError('the saw slipped')"
    broken = tmp_path / "broken.ipynb"
    nbformat.write(book, broken)
    with harness.shown(tmp_path, broken) as server, harness.watched(opened) as watched:
        watched.page.goto(server.url)
        watched.page.get_by_text("the saw slipped").first.wait_for()
        LessonPage(watched).photograph("broken-notebook", what=watched.page.locator("body"))
