"""How far a student is: what they guessed, answered and kept, and nothing of anybody else's."""

import json
from pathlib import Path

from toolkit.study import OwnBox, guess, keep_answer, lessons_folder, so_far


def test_the_lessons_in_order_and_how_far_one_is(folder: Path) -> None:
    before = so_far(lessons_folder())
    assert [lesson.name[:1] for lesson in before.lessons] == list("12345")
    assert all(lesson.question.endswith("?") for lesson in before.lessons)
    assert all(lesson.needs and " here, " in lesson.minutes for lesson in before.lessons)
    assert {lesson.so_far for lesson in before.lessons} == {""}
    assert "example" in before.kept
    guess("lesson4.deeper-groove", "2 mm", what="guess")
    OwnBox().keep({"groove.depth": "5 mm"})
    for said, right in (("1 mm", True), ("168 mm", False), ("168 mm", True)):
        assert keep_answer(f"lesson4.{right}", said, right=right, of=5) == ""
    keep_answer("lesson3.step", "9 mm", right=False, of=7)
    after = so_far(lessons_folder())
    told = [lesson.so_far for lesson in after.lessons]
    assert told == [
        "",
        "",
        "0 of 7 questions answered",
        "guess kept, 1 of 5 questions answered",
        "",
    ]
    assert "my_box.toml" in after.kept
    kept = json.loads((folder / "guesses.json").read_text("utf-8"))["guesses"]["lesson4.True"]
    assert [row["said"] for row in kept["answers"]] == ["1 mm", "168 mm"]


def test_a_page_that_cannot_be_read_is_told_and_hides_no_lesson(folder: Path) -> None:
    (folder / "guesses.json").write_text(
        '{"format": 1, "guesses": {"a": {"said": [], "answers": 3}}}'
    )
    told = so_far(lessons_folder())
    assert "answer that can't be read" in told.notice and "set aside" in told.notice
    assert len(told.lessons) == 5
    (folder / "01_none.ipynb").write_text("[]")
    (lesson,) = so_far(folder).lessons
    assert (lesson.name, lesson.question, lesson.needs) == ("1 · none", "", "")
