"""Whoever types a printed sum into a calculator gets what is printed behind its sign."""

import re

import pytest

from tests.boxes import ears, first_postcard, inch_postcard, lift_off, postcard
from tests.study.sums import from_latex, untrue
from toolkit.handout.formulas import formula_blocks
from toolkit.lesson import lesson1, lesson2, lesson3, lesson4, lesson5
from toolkit.plan import plan, tables
from toolkit.study import draw, lessons_with_questions
from toolkit.study.answers import first_guess

# With allowances on the marks of its rule.
ROUGH = {"length": 3 / 8, "width": 1 / 4, "thickness": 3 / 16}
INCH = inch_postcard().having({f"allowances.{key}": 25.4 * size for key, size in ROUGH.items()})
BOXES = {
    "mm": postcard(),
    "ears": ears(),
    "lift-off": lift_off(),
    "first": first_postcard(),
    "through": postcard().having({"corner.joint": "through", "corner.lap": None}),
    "in": INCH,
    "in, ears": INCH.having({"corner.tails_on": "sides"}),
    "in, lift-off": INCH.having({"lid.kind": "lift-off"}),
    "in, through": INCH.having({"corner.joint": "through", "corner.lap": None}),
}


@pytest.mark.parametrize(
    "said",
    [
        "32 mm² ÷ (8 × 360 mm) = 0.36 mm",
        "0.5 mm × 400 mm ÷ 64 mm = 3.2 mm",
        "2 × 7 3/8 rough side + 1/2 cut = 15 in",
    ],
)
def test_a_sum_that_does_not_come_out_is_seen(said: str) -> None:
    assert untrue(said)


@pytest.mark.parametrize(
    "said",
    [
        "(32 mm)² ÷ (8 × 360 mm) = 0.36 mm",
        "0.5 mm × 400 mm ÷ 64 mm = 3.13 mm",
        "2 × 7 3/8 rough side + 1/2 cut = 15 1/4 in",
        "arctan(1 ÷ 7) = 8.1°",
        "(4 − 1) mm ÷ 0.2 mm, rounded up = 15 passes",
    ],
)
def test_a_sum_that_comes_out_is_let_pass(said: str) -> None:
    assert untrue(said) == []


@pytest.mark.parametrize("name", BOXES)
def test_workings_of_questions_come_out_as_written(name: str) -> None:
    box = plan(BOXES[name])
    wrong = []
    for lesson in lessons_with_questions():
        asked = [*draw(box, lesson=lesson), first_guess(box, lesson=lesson)]
        if box.choices.rule.units == "mm":
            asked += draw(box, lesson=lesson, seed="sums", vary=True)
        wrong += [f"{row.id}: {said}" for row in asked if row for said in untrue(row.working)]
    assert wrong == []


# Worked by hand: a gap of 0.2 taken twice over 12; 32 squared over 4 × 360; leaves of 9 with a cut
# of 1.5 and each loss of 1 once; the sine of 45° divided by the cosine of 30°.
SLIPS = {
    "lesson2.out-of-square": ("gap twice", 1.91),
    "lesson2.ridge": ("for a diameter", 0.711),
    "lesson1.resawn": ("count each loss twice", 21.5),
    "lesson5.skew": ("divided by the cosine", 54.74),
}


def test_a_slip_comes_to_what_its_words_say() -> None:
    box = plan(postcard())
    asked = {row.id: row for n in lessons_with_questions() for row in draw(box, lesson=n)}
    for name, (words, value) in SLIPS.items():
        (slip,) = (slip for slip in asked[name].slips if words in slip.hint)
        assert slip.value == pytest.approx(value, abs=0.005), name


@pytest.mark.parametrize("name", BOXES)
def test_what_a_lesson_works_by_hand_comes_out_as_written(name: str) -> None:
    box = plan(BOXES[name])
    said = [lesson.worked(box).text for lesson in (lesson1, lesson2, lesson3, lesson4, lesson5)]
    assert [wrong for text in said for wrong in untrue(text)] == []


@pytest.mark.parametrize("name", BOXES)
def test_sums_and_formulas_of_a_handout_come_out_as_written(name: str) -> None:
    box = plan(BOXES[name])
    said = [str(cell) for row in tables.workings(box).rows for cell in row]
    for block in formula_blocks(box):
        said += [from_latex(line) for line in getattr(block, "lines", ())]
    assert [wrong for text in said for wrong in untrue(text)] == []
    assert sum(bool(re.search(r"\d.* = ", text)) for text in said) > 10
