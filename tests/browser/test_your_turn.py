"""Questions that mark themselves, and a guess that is kept until its answer is shown."""

from collections.abc import Callable
from pathlib import Path

import pytest

from tests.browser.conftest import emptied
from tests.browser.harness import Server
from tests.browser.lesson_page import LessonPage
from toolkit.explore import lesson4
from toolkit.study import draw, lesson_files, mark

GUESS = "Both lid grooves are ploughed 1 mm deeper. How much wider must the lid be?"


@pytest.fixture(scope="module")
def lesson(turned_to: Callable[[str], LessonPage], server: Server) -> LessonPage:
    """Lesson 4, run once: no test here moves what another needs."""
    emptied(server.folder)
    page = turned_to(lesson_files()[3].name)
    page.run_all()
    return page


def test_right_answers_slips_and_what_cannot_be_read(lesson: LessonPage, folder: Path) -> None:
    questions = {question.id: question for question in draw(lesson4.own(), lesson=4)}
    question = questions["lesson4.lid-length"]
    card = lesson.card(question.prompt)
    slip = question.slips[0]
    answers = (
        (question.written(question.answer), "right", "bench-right"),
        (question.written(slip.value), "slip", "bench-hint"),
        (f"{question.answer:g}", "unreadable", "bench-hint"),
    )
    for text, verdict, look in answers:
        marked = mark(question, text)
        assert marked.verdict == verdict
        lesson.answer(card, text, button="Check")
        lesson.says(marked.sentence, within=card)
        assert card.locator(f".{look}").count() == 1
        lesson.photograph(f"04-answer-{verdict}", what=card)
    # The postcard box's lid, by hand: 152 + 4 + 12.
    lesson.answer(card, "16.8 cm", button="Check")
    lesson.says("Right.", within=card)


def test_other_sizes_asks_about_another_box(lesson: LessonPage, folder: Path) -> None:
    mine = draw(lesson4.own(), lesson=4)[0].prompt
    lesson.says(mine, within=lesson.page.locator("body"))
    turn = lesson.page.locator(".jp-OutputArea-output").filter(
        has=lesson.page.get_by_role("button", name="Other sizes")
    )
    lesson.click("Other sizes", within=turn)
    lesson.page.get_by_text(mine).wait_for(state="detached")
    assert turn.get_by_role("button", name="Check").count() > 5
    lesson.photograph("04-other-sizes", what=turn)
    lesson.click("My own box", within=turn)
    lesson.says(mine, within=turn)


def test_a_guess_is_kept_and_shown_again(lesson: LessonPage, folder: Path) -> None:
    assert "Guess first" in lesson.run_cell("lesson.compare()")
    card = lesson.card(GUESS)
    lesson.answer(card, "a bit", button="Keep my guess")
    lesson.says("a bit", within=card)
    assert not (folder / "guesses.json").exists()
    lesson.answer(card, "1 mm", button="Keep my guess")
    lesson.says("1 mm", within=card)
    lesson.photograph("04-guess", what=card)
    lesson.click("Undo", within=card)
    lesson.says("taken back", within=card)
    assert "Guess first" in lesson.run_cell("lesson.compare()")
    lesson.answer(card, "1 mm", button="Keep my guess")
    lesson.says("1 mm", within=card)
    told = lesson4.compare().text
    assert told.startswith("You guessed 1 mm and it is 2 mm")
    assert told in lesson.run_cell("lesson.compare()")
    # Once the answer has been seen, a guess is a guess.
    lesson.click("Undo", within=card)
    lesson.says("The answer has been shown", within=card)
