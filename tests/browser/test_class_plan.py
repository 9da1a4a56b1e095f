"""The teacher's notebook: hands are typed, and the page says what the room believes."""

from collections.abc import Callable

import pytest

from tests.browser.conftest import emptied
from tests.browser.harness import Server
from tests.browser.lesson_page import LessonPage
from toolkit.classroom import class_plan
from toolkit.classroom.sheets import asked, calls, tally
from toolkit.files import read_box
from toolkit.plan import plan
from toolkit.study import example_path


@pytest.fixture(scope="module")
def page(server: Server, turned_to: Callable[[str], LessonPage]) -> LessonPage:
    """The class plan, run from top to bottom."""
    emptied(server.folder)
    page = turned_to("class_plan.ipynb")
    page.run_all()
    return page


def test_hands_are_counted_question_by_question(page: LessonPage) -> None:
    made = plan(read_box(example_path()))
    form = page.page.locator(".jp-OutputArea-output").filter(
        has=page.page.get_by_role("button", name="Clear the hands")
    )
    page.photograph("class_plan-hands-opened", what=form)
    for lesson, place in ((4, 0), (3, 1), (1, 2)):
        question = asked(made, lesson=lesson)[place]
        form.get_by_label("lesson").select_option(str(lesson))
        page.says(asked(made, lesson=lesson)[0].asks, within=form.locator("p"))
        form.get_by_label("question").select_option(index=place)
        page.says(question.asks, within=form.locator("p"))
        # The boxes come after the words, and what is typed into those before them is lost.
        form.locator("label", has_text=calls(question)[-1].said).wait_for()
        hands = list(range(2, 2 + len(calls(question))))
        boxes = form.locator("input[type=number]")
        for number, many in enumerate(hands):
            boxes.nth(number).fill(str(many))
            boxes.nth(number).press("Enter")
        page.says(tally(question, counts=hands).sentence, within=form)
        page.photograph(f"class_plan-hands-{lesson}-{place + 1}", what=form)
    page.click("Clear the hands", within=form)
    form.locator("table").wait_for(state="detached")
    assert {box.input_value() for box in boxes.all()} == {"0"}


def test_a_guess_of_how_many_is_compared(
    page: LessonPage, server: Server, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("WORKBOOK_FOLDER", str(server.folder))
    card = page.card("How many are done in time?")
    page.answer(card, "3", button="Keep my guess")
    page.says("Kept: 3", within=card)
    page.photograph("class_plan-guess", what=card)
    said = class_plan.compare().text
    assert said.startswith("You guessed 3 and it is ")
    assert said in page.run_cell("lesson.compare()")
