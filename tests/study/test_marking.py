"""Answers are marked as a rule is read, and every usual slip has its own hint."""

import pytest
from hypothesis import assume, given, strategies as st

from toolkit.measures import Rule
from toolkit.study import Question, Slip, mark

MM, INCH = Rule.millimetres(), Rule.inches()
RULES = st.sampled_from([MM, INCH])
FINENESSES = st.sampled_from(["joints", "sizes", "rough"])


def lid(rule=MM, **more) -> Question:
    given_ = {
        "id": "lid",
        "asks": "How long is the lid?",
        "answer": 168.0,
        "working": "lid length = 152 + 4 + 12 = 168 mm",
        "rule": rule,
        "slips": (
            Slip(156.0, "add the front's thickness"),
            Slip(160.0, "that is one groove"),
            Slip(167.8, "hidden by the right answer"),
        ),
        "nudge": "Follow the lid.",
    }
    return Question(**(given_ | more))


@pytest.mark.parametrize(
    "text",
    [
        "168 mm",
        "168mm",
        "16.8 cm",
        "168,0 mm",
        "168.25 mm",
        "167.75 mm",
        " 168  mm ",
        '6 39/64"',
        "6-39/64 in",
    ],
)
def test_right_answers_show_the_working(text):
    marked = mark(lid(), text)
    assert marked.right and marked.verdict == "right"
    assert marked.hint == lid().working
    assert marked.sentence.startswith("Right. ")


@pytest.mark.parametrize("text", ["6 5/8 in", '6 5/8"', "6⅝ in", "6 39/64 in", "168 mm"])
def test_shop_fractions_are_read_to_half_a_32nd(text):
    assert mark(lid(INCH), text).right


@pytest.mark.parametrize("text", ["6 19/32 in", "6 21/32 in"])
def test_the_32nds_on_either_side_are_not_right(text):
    assert not mark(lid(INCH), text).right


@pytest.mark.parametrize(
    ("text", "hint"),
    [
        ("156 mm", "add the front's thickness"),
        ("156.2 mm", "add the front's thickness"),
        ("16 cm", "that is one groove"),
    ],
)
def test_a_known_slip_is_answered_with_its_own_hint(text, hint):
    marked = mark(lid(), text)
    assert (marked.verdict, marked.hint) == ("slip", hint)
    assert not marked.right


def test_a_slip_beside_the_right_answer_is_never_held_against_it():
    assert mark(lid(), "167.8 mm").right


def test_of_two_slips_the_nearer_speaks():
    question = lid(slips=(Slip(156.0, "one"), Slip(156.3, "other")))
    assert mark(question, "156.2 mm").hint == "other"
    assert mark(question, "156.1 mm").hint == "one"


@pytest.mark.parametrize(
    ("text", "hint"),
    [
        ("168.5 mm", "0.5 mm too long: go over the sum again."),
        ("167 mm", "1 mm too short: go over the sum again."),
        ("170 mm", "2 mm too long: go over the sum again."),
    ],
)
def test_a_near_miss_is_told_which_way_and_how_far(text, hint):
    marked = mark(lid(), text)
    assert (marked.verdict, marked.hint) == ("near", hint)


def test_a_far_miss_is_told_which_way_and_where_to_begin():
    marked = mark(lid(), "200 mm")
    assert marked.verdict == "far"
    assert marked.hint == "Too long by more than 2 mm. Follow the lid."
    assert "168" not in marked.hint


@pytest.mark.parametrize(
    ("text", "hint"),
    [("168", '168 what? Type "168 mm".'), ("168,5", '168,5 what? Type "168,5 mm".')],
)
def test_a_bare_number_is_met_kindly(text, hint):
    marked = mark(lid(), text)
    assert (marked.verdict, marked.hint) == ("unreadable", hint)


def test_a_bare_number_is_offered_the_student_s_own_unit():
    assert mark(lid(INCH), "6.5").hint == '6.5 what? Type "6.5 in".'
    assert mark(lid(INCH), "6 5/8").hint == '6 5/8 what? Type "6 5/8 in".'
    assert mark(lid(MM), "6 5/8").hint == '6 5/8 what? Type "6 5/8 in".'


@pytest.mark.parametrize("text", ["", "abc", "168 kg", "168 mm 4", "1/0 in", "-5 mm", "9" * 80])
def test_what_cannot_be_read_gets_the_door_s_own_words(text):
    marked = mark(lid(), text)
    assert marked.verdict == "unreadable"
    assert marked.hint.startswith("your answer: ") and "type" in marked.hint
    assert marked.sentence.startswith("That can't be read yet.")


@pytest.mark.parametrize(
    ("text", "word"),
    [
        ("168 in", "millimetres, not in inches"),
        ("6.614 mm", "inches, not in millimetres"),
        ("168 cm", "Ten times too much"),
        ("16.8 mm", "Ten times too little"),
    ],
)
def test_the_right_number_with_the_wrong_unit(text, word):
    marked = mark(lid(), text)
    assert marked.verdict == "slip" and word in marked.hint


def count(**more) -> Question:
    return lid(
        **(
            {
                "kind": "count",
                "answer": 16.0,
                "slips": (Slip(24.0, "width"),),
                "senses": ("too many", "too few"),
            }
            | more
        )
    )


@pytest.mark.parametrize(
    ("text", "verdict", "hint"),
    [
        ("16", "right", lid().working),
        ("16 passes", "right", lid().working),
        ("24", "slip", "width"),
        ("15", "near", "1 too few: go over the sum again."),
        ("99", "far", "Too many by more than 4. Follow the lid."),
        (
            "sixteen",
            "unreadable",
            'your answer: "sixteen" is not a count: type a whole number such as "16"',
        ),
    ],
)
def test_counts(text, verdict, hint):
    marked = mark(count(), text)
    assert (marked.verdict, marked.hint) == (verdict, hint)


@pytest.mark.parametrize("text", ["16.5", "16 1/2", "-16", "1e3", "16 mm 2"])
def test_a_count_is_one_whole_number(text):
    assert mark(count(), text).verdict == "unreadable"


def test_angles_and_percentages():
    bevel = lid(kind="deg", answer=8.13, slips=(Slip(7.0, "that is the 7 of 1 in 7"),))
    assert mark(bevel, "8 deg").right
    assert mark(bevel, "8.1°").right
    assert mark(bevel, "7 deg").hint == "that is the 7 of 1 in 7"
    assert mark(bevel, "8.1").hint == '8.1 what? Type "8.1 deg".'
    damp = lid(kind="%", answer=9.3, slips=())
    assert mark(damp, "9.5 %").right
    assert not mark(damp, "10 %").right
    assert mark(damp, "9.3").hint == '9.3 what? Type "9.3 %".'


def test_what_the_cut_list_prints_is_right_even_when_it_rounds_down():
    question = lid(answer=115.9, direction="down", slips=(Slip(115.5, "never said"),))
    assert mark(question, question.rule.show(115.9, fineness="sizes", direction="down")).right
    assert not mark(lid(answer=115.9, slips=()), "115.5 mm").right


@given(st.floats(0.2, 900), RULES, FINENESSES)
def test_what_the_rule_shows_is_always_right(answer, rule, fineness):
    shown = rule.show(answer, fineness=fineness)
    for direction in ("nearest", "up", "down"):
        question = lid(rule, answer=answer, fineness=fineness, direction=direction, slips=())
        assert mark(question, shown).right


@given(st.floats(5, 900), RULES, FINENESSES, st.sampled_from([-1, 1]))
def test_half_a_mark_either_way_and_no_more(answer, rule, fineness, side):
    question = lid(rule, answer=answer, fineness=fineness, slips=())
    step = rule.mark(fineness)
    assert question.is_right(answer + side * 0.49 * step)
    assert question.is_right(answer + side * 0.5 * step)
    assert not question.is_right(answer + side * 0.51 * step)
    assume(answer > 2 * step)
    assert mark(question, f"{answer + side * 0.49 * step:.9f} mm").right
    assert not mark(question, f"{answer + side * 0.51 * step:.9f} mm").right


@given(st.text(max_size=40))
def test_no_text_breaks_the_marking(text):
    for question in (lid(), count(), lid(kind="deg", answer=8.0), lid(kind="%", answer=9.0)):
        assert mark(question, text).sentence
