"""A student's own box: kept, taken back, begun again, read by the next lesson, in either unit."""

from pathlib import Path

from playwright.sync_api import BrowserContext

from tests.browser import harness
from tests.browser.harness import Server
from tests.browser.lesson_page import LessonPage, corner_view
from toolkit.box import Choices
from toolkit.files import read_box
from toolkit.lesson.controls import with_values
from toolkit.plan import plan
from toolkit.study import example_path

DEPTH = "groove depth"


def own(folder: Path) -> Choices:
    return read_box(folder / "my_box.toml")


def shows(lesson: LessonPage, choices: Choices, *, after: str) -> None:
    lesson.shows(corner_view(choices, choices), after=after)


def test_keep_undo_and_start_again(lesson: LessonPage, folder: Path) -> None:
    assert list(folder.glob("*.toml")) == []
    lesson.click("Keep this")
    lesson.says("Nothing to keep: no slider has moved.")
    assert list(folder.glob("*.toml")) == []

    lesson.press(DEPTH, "ArrowRight", "ArrowRight")
    moved = with_values(read_box(example_path()), {"groove.depth": 4.2})
    lesson.says(plan(moved).design.lid.width.sentence(moved.rule).partition(" = ")[2])
    lesson.click("Keep this")
    lesson.says("Kept: groove.depth 4.2 mm.")
    assert own(folder).groove.depth == 4.2
    shows(lesson, own(folder), after="Keep this")
    lesson.photograph("04-kept")

    lesson.press("tails at the back", "ArrowRight")
    lesson.click("Keep this")
    lesson.says("Kept: corner.tails_back 4.")
    lesson.click("Undo")
    lesson.says("Taken back.")
    assert (own(folder).groove.depth, own(folder).corner.tails_back) == (4.2, 3)
    shows(lesson, own(folder), after="Undo")

    lesson.click("Start again")
    lesson.says("Begun again from the example.")
    assert own(folder) == read_box(example_path())
    shows(lesson, read_box(example_path()), after="Start again")
    lesson.click("Undo")
    lesson.says("Taken back.")
    assert own(folder).groove.depth == 4.2
    shows(lesson, own(folder), after="taking the new beginning back")


def test_the_next_lesson_reads_the_kept_box_and_can_be_reloaded(
    lesson: LessonPage, server: Server, folder: Path, opened: BrowserContext
) -> None:
    lesson.press("wall thickness", "ArrowRight", "ArrowRight")
    example = read_box(example_path())
    thick = with_values(example, {"thickness.side": 13.0, "thickness.end": 13.0})
    lesson.shows(corner_view(thick, example), after="thickening the walls")
    lesson.click("Keep this")
    lesson.says("This is your own box, my_box.toml.")
    another = server.copied("04_once_more.ipynb")
    with harness.watched(opened) as watched:
        page = LessonPage(watched)
        page.open(server.url, another)
        page.run_all()
        assert own(folder).thickness.side == 13.0
        page.says("This is your own box, my_box.toml.")
        shows(page, own(folder), after="opening the next lesson")
        width = plan(own(folder)).design.lid.width
        assert width.sentence(own(folder).rule) in page.run_cell("lesson.worked()")
    # Somebody reloads that page and runs everything at once, before JupyterLab has heard from the
    # kernel what there was before.
    with harness.watched(opened) as watched:
        page = LessonPage(watched)
        page.open(server.url, another)
        page.run_all()
        shows(page, own(folder), after="opening it again over its running kernel")
        page.press(DEPTH, "ArrowRight")
        moved = with_values(own(folder), {"groove.depth": 4.1})
        page.shows(corner_view(moved, own(folder)), after="moving a slider of the new page")
        assert watched.errors == []


def test_inches_and_back_change_no_size(lesson: LessonPage, folder: Path) -> None:
    lesson.press(DEPTH, "ArrowRight")
    lesson.click("inches")
    lesson.says("Sizes now in inches.")
    before = read_box(example_path())
    assert own(folder).rule.units == "in"
    assert (own(folder).size, own(folder).groove) == (before.size, before.groove)
    # What the sliders hold survives the change of rule, though it is not kept.
    moved = with_values(own(folder), {"groove.depth": 4.1})
    lesson.shows(corner_view(moved, own(folder)), after="turning to inches")
    length = moved.rule.show(plan(moved).design.lid.length.value)
    assert length.endswith(" in") and "/" in length
    lesson.says(length)
    assert lesson.readout(DEPTH) == moved.rule.exact(4.1)
    lesson.photograph("04-inches")
    lesson.click("millimetres")
    lesson.says("Sizes now in millimetres.")
    assert own(folder).rule.units == "mm"
    moved = with_values(own(folder), {"groove.depth": 4.1})
    lesson.shows(corner_view(moved, own(folder)), after="turning back to millimetres")
    assert (own(folder).size, own(folder).groove) == (before.size, before.groove)


def test_two_boxes_by_name(lesson: LessonPage, folder: Path) -> None:
    lesson.press(DEPTH, "ArrowRight")
    lesson.click("Keep this")
    lesson.says("Kept: groove.depth 4.1 mm.")
    lesson.explorer.locator("select").select_option(label="another box…")
    name = lesson.explorer.get_by_placeholder("letters, digits, - and _")
    name.fill("gift box")
    name.press("Enter")
    lesson.says("can't name a box")
    if not name.is_visible():
        lesson.explorer.locator("select").select_option(label="another box…")
    name.fill("gift-box")
    name.press("Enter")
    lesson.says("Opened gift-box.")
    shows(lesson, read_box(example_path()), after="opening another box")
    lesson.press("tails at the back", "ArrowRight")
    lesson.click("Keep this")
    lesson.says("Kept: corner.tails_back 4.")
    gift = read_box(folder / "my_gift-box.toml")
    assert (gift.corner.tails_back, gift.groove.depth) == (4, 4.0)
    lesson.explorer.locator("select").select_option(label="box")
    lesson.says("Opened box.")
    shows(lesson, own(folder), after="opening the first box again")
