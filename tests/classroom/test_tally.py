"""A show of hands: what is called out, what it stands for, and what the room believes."""

import pytest

from tests.boxes import ears, inch_postcard, lift_off, postcard
from toolkit.box import Choices
from toolkit.classroom import contents
from toolkit.classroom.sheets import MOST_CALLS, asked, calls, hands_sheet, tally
from toolkit.plan import plan
from toolkit.study import Question, Slip, draw, first_guess, lessons_with_questions

BOXES = {"mm": postcard, "in": inch_postcard, "ears": ears, "lift-off": lift_off}
LESSONS = lessons_with_questions()


@pytest.fixture(params=BOXES)
def choices(request: pytest.FixtureRequest) -> Choices:
    return BOXES[request.param]()


def deeper() -> Question:
    found = first_guess(plan(postcard()), lesson=4)
    assert found is not None
    return found


@pytest.mark.parametrize("lesson", LESSONS)
def test_every_question_has_one_right_call_and_wrong_ones(choices: Choices, lesson: int) -> None:
    for question in asked(plan(choices), lesson=lesson):
        called = calls(question)
        assert [call.right for call in called].count(True) == 1
        assert 2 <= len(called) <= MOST_CALLS
        assert [call.letter for call in called] == list("ABCDE")[: len(called)]
        assert len({call.said for call in called}) == len(called)
        assert [call.value for call in called] == sorted(call.value for call in called)
        for call in called:
            if not call.right:
                assert Slip(call.value, call.stands_for) in question.slips
                assert not question.is_right(call.value)


def test_the_deeper_groove() -> None:
    called = {call.said: call for call in calls(deeper())}
    assert list(called) == ["0 mm", "1 mm", "2 mm"]
    assert called["2 mm"].right
    assert called["1 mm"].stands_for == "That is one groove; the lid sits in two."


def test_what_the_room_holds() -> None:
    found = tally(deeper(), counts=[1, 7, 4])
    assert (found.right, found.all) == (4, 12)
    (held,) = found.holds
    assert held.said == "1 mm"
    assert found.sentence == (
        "4 of 12 right (2 mm). Most of the others, 7, said 1 mm: That is one groove; the lid sits "
        "in two."
    )
    table = found.table(title=found.question.asks)
    assert [row[:4] for row in table.rows] == [
        ("A", "0 mm", "1", "8%"),
        ("B", "1 mm", "7", "58%"),
        ("C", "2 mm", "4", "33%"),
    ]
    assert table.rows[2][4].startswith("Right: ") and table.note == found.sentence


@pytest.mark.parametrize(
    ("counts", "said"),
    [
        ([0, 0, 0], "No hands were counted."),
        ([0, 0, 9], "9 of 9 right (2 mm)."),
        ([1, 2, 9], "9 of 12 right (2 mm). Most of the others, 2, said 1 mm: That is one groove;"),
        ([3, 3, 2], "As many each, 3, said 0 mm: "),
        ([0, 5, 0], "0 of 5 right (2 mm). Most of the others, 5, said 1 mm"),
    ],
)
def test_rooms_that_agree_and_that_are_split(counts: object, said: str) -> None:
    found = tally(deeper(), counts=counts)  # type: ignore[arg-type]
    assert said in found.sentence
    assert (found.sentence == said) == (found.holds == ())


@pytest.mark.parametrize(
    ("most", "start"),
    [(4, "The largest part of the others, 4, said "), (5, "Most of the others, 5, said ")],
)
def test_the_most_hands_are_not_always_most_of_the_hands(most: int, start: str) -> None:
    question = draw(plan(postcard()), lesson=1)[1]
    wrong = [call for call in calls(question) if not call.right]
    assert len(wrong) == 4
    hands = dict(zip((call.letter for call in wrong), (most, 2, 1, 1), strict=True))
    counts = [hands.get(call.letter, 0) for call in calls(question)]
    found = tally(question, counts=counts)
    assert found.holds == (wrong[0],) and start in found.sentence


@pytest.mark.parametrize(
    ("counts", "said"),
    [
        ([1, 2], "read 2 counts; there are 3 calls, A, B, C"),
        ([1, -2, 0], "read -2 hands for B"),
        ([1, 2.5, 0], "read 2.5 hands for B"),
        ([True, 0, 0], "read True hands for A"),
    ],
)
def test_counts_that_are_none(counts: object, said: str) -> None:
    with pytest.raises(ValueError, match=said):
        tally(deeper(), counts=counts)  # type: ignore[arg-type]


@pytest.mark.parametrize("lesson", LESSONS)
def test_a_sheet_has_room_for_every_call(choices: Choices, lesson: int) -> None:
    made = plan(choices)
    sheets = hands_sheet(made, lesson=lesson)
    questions = asked(made, lesson=lesson)
    for number, (sheet, question) in enumerate(zip(sheets, questions, strict=True), 1):
        assert sheet.title == f"{number}. {question.asks}"
        assert "Answer in" not in sheet.title and "Answer with" not in sheet.title
        assert [row[:3] for row in sheet.rows] == [
            (call.letter, call.said, "") for call in calls(question)
        ]
        assert sum(row[3].startswith("Right: ") for row in sheet.rows) == 1
    unit, other = (" in", " mm") if made.choices.rule.units == "in" else (" mm", " in")
    said = [row[1] for sheet in sheets for row in sheet.rows]
    assert any(words.endswith(unit) for words in said)
    assert not any(words.endswith(other) for words in said)


def test_a_box_without_a_lid_in_grooves_is_asked_of_its_bottom() -> None:
    made = plan(lift_off())
    guessed = first_guess(made, lesson=4)
    assert guessed is not None
    assert "bottom" in guessed.asks and "lid" not in guessed.asks
    assert asked(made, lesson=4) == (guessed, *draw(made, lesson=4))


def test_the_class_is_asked_of_its_own_box() -> None:
    _, sections = contents.hands(plan(inch_postcard()))
    assert [row.heading for row in sections] == [f"Lesson {number}" for number in LESSONS]
    text = "".join(part.html() for row in sections for part in row.blocks)
    assert "3/32 in" in text and "That is one groove; the lid sits in two." in text
