"""The form for a show of hands: questions in, a box for each call, and what hands come to."""

from collections.abc import Sequence

from toolkit.explore.cards import MOST_HANDS, Asked, HandsForm
from toolkit.results import Table


def told(name: str) -> Asked:
    def table(hands: Sequence[int]) -> Table:
        return Table(name, ("hands",), tuple((str(hand),) for hand in hands), note=f"{sum(hands)}")

    return Asked(name, tuple(f"{letter}  {name}" for letter in "AB"), table)


QUESTIONS = {1: [told("lid < box"), told("groove")], 3: [told("tail")]}


def asked(lesson: int) -> Sequence[Asked]:
    if lesson not in QUESTIONS:
        raise ValueError(f"lesson {lesson} asks nothing")
    return QUESTIONS[lesson]


def calls(form: HandsForm) -> list[str]:
    return [box.description for box in form.counts.children]


def test_a_box_for_every_call_and_nothing_told_before_hands_are_typed() -> None:
    form = HandsForm([1, 3], asked=asked)
    assert calls(form) == ["A  lid < box", "B  lid < box"]
    assert "lid &lt; box" in form.prompt.value
    assert form.said.value == ""
    form.question.value = 1
    assert calls(form) == ["A  groove", "B  groove"]
    form.lesson.value = 3
    assert calls(form) == ["A  tail", "B  tail"] and len(form.question.options) == 1


def test_hands_are_told_in_the_order_of_their_calls() -> None:
    form = HandsForm([1, 3], asked=asked)
    form.question.value = 1
    first, second = form.counts.children
    second.value = 4
    first.value = 3
    assert form.said.value.index(">3<") < form.said.value.index(">4<")
    assert ">7<" in form.said.value and "groove" in form.said.value
    second.value = MOST_HANDS + 1
    assert second.value == MOST_HANDS


def test_hands_are_gone_with_their_question() -> None:
    form = HandsForm([1, 3], asked=asked)
    steps = (
        form.clear.click,
        lambda: setattr(form.question, "value", 1),
        lambda: setattr(form.lesson, "value", 3),
        form.follow,
    )
    for step in steps:
        form.counts.children[0].value = 5
        assert ">5<" in form.said.value
        step()
        assert form.said.value == ""
        assert [box.value for box in form.counts.children] == [0, 0]


def test_a_lesson_that_asks_nothing_says_so() -> None:
    form = HandsForm([1, 2], asked=asked)
    form.lesson.value = 2
    assert "lesson 2 asks nothing" in form.said.value and calls(form) == []
    form.lesson.value = 1
    assert form.said.value == "" and len(calls(form)) == 2
