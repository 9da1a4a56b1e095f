"""Lesson 3's questions: worked by hand on the postcard box, and answerable on every box."""

import pytest

from tests.study.telling import as_worked_by_hand
from tests.study.test_questions import BOX
from toolkit.box import gauge_settings, setting_error, walk
from toolkit.measures import Rule
from toolkit.plan import Plan, plan
from toolkit.study import draw, mark
from toolkit.study.questions import FEWEST_SLIPS

OWN = plan(BOX)


def asked(which: Plan = OWN, **more) -> dict:
    return {
        question.id.removeprefix("lesson3."): question for question in draw(which, lesson=3, **more)
    }


# Worked by hand on paper: walls 12 thick and 66 high, lap 4, 1 in 7, half pins and pins 6, three
# tails at the back and two at the front, pins 0.2 proud, cut 176.4 long.
BY_HAND = {
    "tail-length": (8, {"12 mm": "lap off", "4 mm": "is the lap", "16 mm": "shorter"}),
    "overhang": (
        1.14,
        {"2.3 mm": "both corners", "1.7 mm": "whole board", "56 mm": "turned the slope about"},
    ),
    "divider-step": (
        20,
        {
            "24 mm": "two half pins",
            "18 mm": "add that pin",
            "16 mm": "don't take it off",
            "15 mm": "not one more",
        },
    ),
    "tail-width": (14, {"20 mm": "a tail and a pin", "8 mm": "one pin in it"}),
    "divider-error": (0.3, {"0.9 mm": "whole miss", "2.3 mm": "only what is too much"}),
    "narrow-pin": (3.72, {"4.9 mm": "both sides", "8.3 mm": "how a tail grows", "6 mm": "wide"}),
    "narrow-half-pin": (
        4.86,
        {"3.7 mm": "one side only", "3 mm": "not half the width", "6 mm": "wide face"},
    ),
    "bevel": (8.13, {"81.9 deg": "from the baseline", "7 deg": "not 7 degrees", "16.3 deg": "two"}),
    "second-gauge": (
        12.2,
        {"8 mm": "first gauge", "8.2 mm": "Never", "12 mm": "Flush", "11.8 mm": "other way"},
    ),
    "between": (
        152,
        {"164.2 mm": "each end", "160.4 mm": "tails' length", "176.4 mm": "end to end"},
    ),
    "knife-lines": (20, {"10": "two cheeks", "28": "one cheek", "24": "front has its own"}),
    "saw-reach": (33.33, {"66.7 %": "triangle", "50 %": "the most"}),
    "glued": (5, {"2": "two cheeks", "23": "four such", "50": "one square centimetre"}),
}


def test_the_postcard_box_as_worked_by_hand():
    as_worked_by_hand(asked(), BY_HAND)


def test_the_answers_are_those_of_the_plan():
    questions, back = asked(), OWN.design.back
    walked, gauges = walk(back), gauge_settings(OWN.design)
    for name, value in (
        ("tail-length", OWN.design.frame.tail_back.value),
        ("overhang", back.overhang),
        ("divider-step", walked.step),
        ("tail-width", back.tails[0].width),
        ("narrow-pin", back.narrowest_pin),
        ("narrow-half-pin", back.half_pins[0].tip_width),
        ("second-gauge", gauges.board_back.value),
        ("divider-error", setting_error(6.9, pin=6, steps=3)),
    ):
        assert questions[name].is_right(value), name
    assert asked(plan(BOX.having({"thickness.side": 10.0})))["tail-length"].answer == 6


def test_a_prompt_gives_every_number_of_its_working():
    questions = asked()
    for name, numbers in (
        ("tail-length", ("12 mm", "4 mm")),
        ("overhang", ("8 mm", "1 in 7")),
        ("divider-step", ("66 mm", "3 equal", "6 mm")),
        ("tail-width", ("20 mm", "6 mm")),
        ("narrow-pin", ("6 mm", "1.14 mm")),
        ("second-gauge", ("12 mm", "0.2 mm")),
        ("between", ("176.4 mm", "12.2 mm")),
        ("knife-lines", ("3 tails", "2 at each front")),
        ("saw-reach", ("8 mm", "12 mm")),
        ("glued", ("3 tails", "8.08 mm", "12 mm")),
    ):
        for number in numbers:
            assert number in questions[name].prompt, (name, number)


def test_a_half_pin_narrower_than_a_pin_lets_the_last_step_run_off():
    question = asked(plan(BOX.having({"corner.half_pin": 5.0})))["off-edge"]
    assert question.answer == pytest.approx(1)
    for text, hint in (
        ("6 mm", "half-pin mark"),
        ("11 mm", "take it off"),
        ("5 mm", "which is wood"),
    ):
        assert hint in mark(question, text).hint


def test_what_a_box_does_not_have_is_not_asked():
    through = BOX.having({"corner.joint": "through", "corner.lap": None})
    assert not {"tail-length", "saw-reach"} & set(asked(plan(through)))
    assert "tail-length" not in asked(plan(BOX.having({"made.tail_length": 8.0})))
    assert "off-edge" not in asked() and "divider-step" in asked()
    unequal = ((5.0, 21.0), (27.0, 35.0), (41.0, 59.0))
    assert "divider-step" not in asked(plan(BOX.having({"corner.tails_back": unequal})))


def test_glue_is_asked_only_where_the_rounding_does_not_decide():
    for tail in (6.9, 7.0, 7.2, 8.2, 8.3, 8.35):
        question = asked(plan(BOX.having({"corner.lap": 12 - tail}))).get("glued")
        if question is not None:
            assert question.answer == 6 * 12 * tail // 100


@pytest.mark.parametrize("choices", [BOX, BOX.having({"rule": Rule.inches()})])
def test_fresh_questions_are_about_other_boxes(choices):
    own = asked(plan(choices))
    for seed in range(4):
        fresh = asked(plan(choices), seed=seed, vary=True)
        assert len(fresh) >= 10
        assert fresh["between"].prompt != own["between"].prompt
        for question in fresh.values():
            assert len(question.slips) >= FEWEST_SLIPS and question.answer > 0
