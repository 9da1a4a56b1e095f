"""The class plan's cells beside its sliders: a guess, a borrowed tool, sums, a show of hands."""

from html import escape
from pathlib import Path

import pytest

from tests.boxes import postcard
from toolkit.classroom import class_plan
from toolkit.classroom.class_plan import GUESS, borrowing, spare_sets
from toolkit.classroom.plan_scene import TIME, usual_class
from toolkit.classroom.scheduling import timetable
from toolkit.classroom.sheets import asked, tally
from toolkit.classroom.steps import Hours, Step
from toolkit.classroom.timetable_shown import borrowed
from toolkit.measures import MeasureError, Rule
from toolkit.plan import plan
from toolkit.study import OwnBox, guess_count, lessons_with_questions, mark


@pytest.fixture(autouse=True)
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The student's folder, empty."""
    monkeypatch.setenv("WORKBOOK_FOLDER", str(tmp_path))
    return tmp_path


def sawing(*, tool: str = "saw") -> tuple[Step, ...]:
    """One step of 30 min with a shared tool, then one of 10 with own tools."""
    first = Step(1, "saw", dict.fromkeys(("practised", "novice", "slow"), 30.0), 1, (), tool, 3,
                 False, 0.0, "", "made up")  # fmt: skip
    then = Step(2, "plane", dict.fromkeys(("practised", "novice", "slow"), 10.0), 1, (1,), "", 0,
                False, 0.0, "", "made up")  # fmt: skip
    return first, then


def test_one_more_saw_is_worth_what_is_waited_for_it() -> None:
    # One saw and three students: they wait 0, 30 and 60 min, and end at 40, 70 and 100.
    hours = Hours(days=1, minutes=80.0, lunch_at=40.0)
    made = timetable(["novice"] * 3, steps=sawing(), tools={"saw": 1}, hours=hours)
    more = borrowed(made)
    assert more is not None and more.key == "saw"
    # With two of them 0, 0 and 30: everybody ends by 70.
    assert more.sentence == ("waits in all 90 min → 30 min; 2 are done earlier, 1 more in time")
    whole = timetable(["novice"] * 3, steps=sawing(), tools={"saw": 3}, hours=hours)
    assert borrowed(whole) is None and whole.most_waited == ""


def test_a_class_that_shares_nothing_borrows_nothing() -> None:
    made = timetable(["slow"] * 3, steps=sawing(tool=""))
    assert made.most_waited == "" and borrowed(made) is None


def test_the_scene_names_the_tool_that_is_waited_for_most() -> None:
    made = usual_class()
    rows = {row[0]: row[1:] for row in TIME.view(postcard()).numbers.rows}
    waits = made.queued
    assert waits[made.most_waited] == max(waits.values()) > 0
    assert rows[f"borrow one {made.most_waited}"][0] == "+ 1"
    assert (
        f"waits in all {sum(waits.values()):.0f} min" in (rows[f"borrow one {made.most_waited}"][1])
    )
    # What the guess is compared with is what the sliders show first.
    assert TIME.view(postcard()).picture.sentence == made.sentence


def test_the_guess_is_of_a_count_and_compared_with_the_timetable() -> None:
    card = class_plan.guess()
    box = card.children[2].children[0]
    keep, said = card.children[2].children[1], card.children[3]
    made = usual_class()
    in_time = sum(not made.over(student) for student in made.students)
    assert "Guess first" in str(class_plan.compare())
    box.value = "a few"
    keep.click()
    assert "is not a count" in said.value and "bench-hint" in said.value
    box.value = f"{in_time + 3}"
    keep.click()
    assert "Kept" in said.value
    assert f"it is {in_time} students in time: 3 too many." in str(class_plan.compare())


@pytest.mark.parametrize(
    ("answer", "right"), [("2", True), ("1", False), ("4", False), ("7", False)]
)
def test_borrowing(answer: str, right: bool) -> None:
    # Ten students by threes is four planes; two are there.
    found = mark(borrowing(Rule.millimetres()), answer)
    assert found.right is right
    assert (found.verdict == "slip") == (answer in ("1", "4"))


@pytest.mark.parametrize(
    ("answer", "said"),
    [("13", "Right"), ("12", "round up"), ("3", "the spares"), ("10", "leaves nothing")],
)
def test_spare_sets(answer: str, said: str) -> None:
    assert said in mark(spare_sets(Rule.millimetres()), answer).sentence


def test_your_turn_marks_itself() -> None:
    _, first, second = class_plan.your_turn().children
    for card, answer in ((first, "2"), (second, "13 sets")):
        box, check = card.children[1].children
        box.value = answer
        check.click()
        assert "bench-right" in card.children[2].value


@pytest.mark.parametrize("units", ["mm", "in"])
@pytest.mark.parametrize("lesson", lessons_with_questions())
def test_hands_typed_are_the_tally(lesson: int, units: str) -> None:
    OwnBox().switch_units(units)  # type: ignore[arg-type]
    form = class_plan.counted(lesson)
    questions = asked(plan(OwnBox().load().choices), lesson=lesson)
    assert len(form.question.options) == len(questions)
    for place, question in enumerate(questions):
        form.question.value = place
        boxes = form.counts.children
        for hands, box in enumerate(boxes, 1):
            box.value = hands
        expected = tally(question, counts=range(1, len(boxes) + 1))
        assert escape(expected.sentence) in form.said.value


def test_hands_follow_the_box_that_is_kept() -> None:
    form = class_plan.counted()
    said = [box.description for box in form.counts.children]
    assert said == ["A  0 mm", "B  1 mm", "C  2 mm"]
    OwnBox().switch_units("in")
    form.follow()
    inches = [box.description.split("  ")[1] for box in form.counts.children]
    assert inches[-1] == "1/16 in" and all(words.endswith(" in") for words in inches)


def test_a_guess_of_a_length_is_none() -> None:
    with pytest.raises(MeasureError):
        guess_count(GUESS, "1 1/2 in", what="guess")
