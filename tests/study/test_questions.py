"""Questions on the student's own box, with slips that are sums of the same box gone wrong."""

import tomllib
from itertools import product
from pathlib import Path

import pytest

from tests.study.telling import as_worked_by_hand, told_apart
from toolkit.box import Choices
from toolkit.files import box_from_text, read_box
from toolkit.measures import Rule
from toolkit.plan import Plan, plan
from toolkit.study import draw, example_path, lessons_with_questions, mark
from toolkit.study.asking import Asking
from toolkit.study.questions import FEWEST_SLIPS, NoQuestionsError

BOX = read_box(example_path())
OWN = plan(BOX)


def asked(which: Plan = OWN, **more) -> dict:
    return {question.id: question for question in draw(which, lesson=4, **more)}


def variants() -> list[Choices]:
    """The postcard box in every arrangement."""
    boxes = []
    for on, joint, lid, rule in product(
        ("ends", "sides"),
        ("half-blind", "through"),
        ("sliding", "lift-off"),
        (Rule.millimetres(), Rule.inches()),
    ):
        lap = BOX.corner.lap if joint == "half-blind" else None
        boxes.append(
            BOX.having(
                {
                    "corner.tails_on": on,
                    "corner.joint": joint,
                    "corner.lap": lap,
                    "lid.kind": lid,
                    "rule": rule,
                }
            )
        )
    return boxes


# Worked by hand on paper: 152 x 110 x 38 inside, walls 12, grooves 6 x 4, edges 8, 0.6 under the
# lid.
BY_HAND = {
    "lesson4.wall-height": (
        66,
        {"60 mm": "one groove", "38 mm": "only the space inside", "62 mm": "their width"},
    ),
    "lesson4.front-height": (
        51.4,
        {"52 mm": "take the clearance off", "57 mm": "lid's thickness", "58 mm": "roof"},
    ),
    "lesson4.lid-fence": (52, {"8 mm": "from the top edge", "58 mm": "far side"}),
    "lesson4.behind-groove": (8, {"4 mm": "the groove itself", "6 mm": "Take its depth"}),
    "lesson4.passes": (16, {"24": "for the width", "32": "both grooves"}),
    "lesson4.lid-length": (
        168,
        {
            "156 mm": "add the front's thickness",
            "160 mm": "two grooves",
            "164 mm": "It goes into the back groove",
            "176 mm": "whole box",
        },
    ),
    "lesson4.lid-width": (
        116,
        {
            "112 mm": "one groove; the lid sits in two",
            "118 mm": "Take the clearance off",
            "134 mm": "whole box",
        },
    ),
    "lesson4.bottom-length": (
        159,
        {
            "155 mm": "one groove; the bottom sits in two",
            "160 mm": "Take the clearance off",
            "168 mm": "sliding lid",
        },
    ),
    "lesson4.lid-rebate": (3.3, {"3 mm": "sticks", "5.7 mm": "tongue", "5 mm": "how wide"}),
    "lesson4.tail-change": (
        128,
        {"126 mm": "They do change", "127 mm": "one tail longer", "124 mm": "The other way"},
    ),
    # Three tails of 14 with pins of 6 between half pins of 6, and a groove from 8 to 14.
    "lesson4.way-up": (
        6,
        {"12 mm": "its upper side", "2 mm": "way down", "8 mm": "above and below together"},
    ),
    # From the lip outwards it falls 3.3 in 12; inside the groove another 4 / 12 of that.
    "lesson4.lid-thin-edge": (
        4.6,
        {"5.7 mm": "at the lip", "4.9 mm": "over the whole bevel", "3.3 mm": "takes off"},
    ),
    # Cherry, flat-sawn, 116 wide: 0.01269 of it from the bench to the damp room is 1.47.
    "lesson4.lid-damp": (
        0.265,
        {"0.53 mm": "both sides together", "1 mm": "on the bench", "1.73 mm": "dry winter"},
    ),
    "lesson4.cards": (95, {"165": "edge to edge", "72": "took the lid off"}),
}


def test_the_postcard_box_as_worked_by_hand():
    as_worked_by_hand(asked(), BY_HAND, near=1e-9)


def test_the_answers_are_those_of_the_plan():
    questions = asked()
    for name, size in (
        ("lid-length", OWN.part("lid").length),
        ("lid-width", OWN.part("lid").width),
        ("bottom-length", OWN.part("bottom").length),
        ("wall-height", OWN.part("side").width),
        ("front-height", OWN.part("front").width),
    ):
        assert questions[f"lesson4.{name}"].answer == size.value
        assert questions[f"lesson4.{name}"].working.endswith(BOX.rule.exact(size.value))


FLAT = BOX.having(
    {
        "panels.lid_profile": "flat",
        "panels.bottom_profile": "flat",
        "thickness.lid": 5.7,
        "thickness.bottom": 5.8,
    }
)


# The fewest questions that a lesson has on any box.
FEWEST = {1: 9, 2: 9, 3: 10, 4: 11, 5: 7}


@pytest.mark.parametrize("lesson", FEWEST)
@pytest.mark.parametrize("choices", [*variants(), FLAT])
def test_every_arrangement_is_asked_about_with_slips_that_can_be_told(choices, lesson):
    questions = draw(plan(choices), lesson=lesson)
    assert len(questions) >= FEWEST[lesson]
    told_apart(questions)
    ways = {
        "count": ("Answer with a number.",),
        "%": ("to the nearest 0.5 %.", "Answer in percent"),
        "deg": ("to the nearest 0.5 deg.", "Answer in degrees"),
        "length": ("Answer in millimetres" if choices.rule.units == "mm" else "Answer in inches",),
    }
    for question in questions:
        assert question.id.startswith(f"lesson{lesson}.")
        assert any(way in question.prompt for way in ways[question.kind]), question
        assert question.nudge and question.senses[0] != question.senses[1]
        assert choices.rule.units == "mm" or " mm" not in question.prompt


def test_two_different_sums_of_the_same_prompt_numbers():
    """A student who sees only the prompt can get there: the numbers are in it."""
    questions = asked()
    for name, numbers in (
        ("lid-length", ("152 mm", "4 mm", "12 mm")),
        ("lid-width", ("110 mm", "134 mm", "4 mm", "2 mm")),
        ("bottom-length", ("152 mm", "4 mm", "1 mm")),
        ("wall-height", ("8 mm", "6 mm", "38 mm")),
        ("front-height", ("52 mm", "0.6 mm", "66 mm", "9 mm")),
        ("passes", ("4 mm", "0.25 mm")),
        ("cards", ("38 mm", "0.4 mm")),
    ):
        for number in numbers:
            assert number in questions[f"lesson4.{name}"].prompt, (name, number)


def test_inches_are_asked_and_answered_in_fractions():
    inches = (
        'rule = {units = "in"}\n'
        'size = {inside_length = "6 in", inside_width = "4 5/16 in", inside_height = "1 1/2 in"}\n'
        'thickness = {side = "1/2 in", end = "1/2 in", bottom = "5/16 in", lid = "3/8 in"}\n'
        'corner = {lap = "5/32 in"}\n'
        'groove = {width = "1/4 in", depth = "5/32 in", bottom_edge = "11/32 in", '
        'top_edge = "11/32 in"}\n'
        'panels = {across = "5/64 in"}\n'
    )
    questions = asked(plan(box_from_text(inches)))
    # The inch build of the postcard box closes exactly in its own units.
    for name, text in (
        ("lid-length", "6 21/32 in"),
        ("lid-width", "4 35/64 in"),
        ("wall-height", '2 11/16"'),
        ("lid-fence", "2 3/32 in"),
        ("behind-groove", "11/32 in"),
    ):
        assert mark(questions[f"lesson4.{name}"], text).right, name
    assert mark(questions["lesson4.lid-length"], "6 5/32 in").verdict == "slip"
    assert questions["lesson4.passes"].answer == 16
    assert questions["lesson4.cards"].answer == 96
    assert "to the nearest 1/32 in." in questions["lesson4.lid-length"].prompt


def test_own_numbers_are_used_and_not_the_example_s():
    other = plan(BOX.having({"size.inside_length": 200.0, "groove.depth": 5.0}))
    assert asked(other)["lesson4.lid-length"].answer == 217.0
    assert "200 mm" in asked(other)["lesson4.lid-length"].prompt


def test_what_is_made_is_not_asked():
    made = asked(plan(BOX.having({"made.lid_length": 167.0, "made.tail_length": 8.0})))
    assert "lesson4.lid-length" not in made and "lesson4.tail-change" not in made
    assert "lesson4.lid-width" in made


def test_a_tail_change_on_the_sides_moves_only_the_back_lap_under_a_sliding_lid():
    sides = plan(BOX.having({"corner.tails_on": "sides"}))
    question = asked(sides)["lesson4.tail-change"]
    assert question.answer == sides.design.frame.side_length.value + 1
    assert "ear" in mark(question, f"{question.answer + 1} mm").hint
    lift_off = plan(BOX.having({"corner.tails_on": "sides", "lid.kind": "lift-off"}))
    question = asked(lift_off)["lesson4.tail-change"]
    assert question.answer == lift_off.design.frame.side_length.value + 2


def test_a_lift_off_lid_takes_its_depth_from_the_cards():
    question = asked(plan(BOX.having({"lid.kind": "lift-off"})))["lesson4.cards"]
    assert question.answer == 85  # (38 − 4) / 0.4
    assert "how far the lid reaches" in mark(question, "95").hint


def test_rounding_noise_makes_no_pass_and_loses_no_card():
    # A metric box read back from inches of nine decimals.
    noisy = asked(
        plan(BOX.having({"groove.depth": 4.000000001, "size.inside_height": 37.999999999}))
    )
    assert noisy["lesson4.passes"].answer == 16
    assert noisy["lesson4.cards"].answer == 95


def test_without_vary_a_seed_changes_nothing():
    assert draw(OWN, lesson=4, seed=3) == draw(OWN, lesson=4)


def test_the_same_seed_and_box_give_a_class_the_same_questions():
    once = draw(plan(BOX), lesson=4, seed="saturday", vary=True)
    assert once == draw(plan(BOX), lesson=4, seed="saturday", vary=True)
    assert once != draw(plan(BOX), lesson=4, seed="sunday", vary=True)
    other = plan(BOX.having({"size.inside_length": 153.0}))
    assert once != draw(other, lesson=4, seed="saturday", vary=True)


def test_without_a_seed_each_drawing_is_another():
    drawn = {draw(OWN, lesson=4, vary=True)[0].prompt for _ in range(8)}
    assert len(drawn) > 1


@pytest.mark.parametrize("lesson", [1, 4])
@pytest.mark.parametrize("choices", [*variants(), FLAT])
def test_fresh_questions_are_about_other_boxes_that_work(choices, lesson):
    own = {question.id: question for question in draw(plan(choices), lesson=lesson)}
    sizes = ("lesson4.lid-length", "lesson4.bottom-length", "lesson4.wall-height")
    for seed in range(4):
        for question in draw(plan(choices), lesson=lesson, seed=seed, vary=True):
            assert len(question.slips) >= FEWEST_SLIPS
            assert question.answer > 0
            for slip in question.slips:
                assert not question.is_right(slip.value)
            if question.id in sizes:
                assert question.prompt != own[question.id].prompt


def test_the_other_boxes_have_nothing_that_wont_work():
    from random import Random

    from toolkit.study.questions import other_boxes

    found = list(other_boxes(plan(BOX.having({"made.tail_length": 8.0})), Random(1)))
    assert len(found) > 20
    for other in found:
        assert other.works
        assert other.choices.made == Choices.__dataclass_fields__["made"].default
    thick = {other.choices.thickness.side for other in found}
    depths = {other.choices.groove.depth for other in found}
    assert len(thick) > 2 and len(depths) > 2


def test_a_box_without_a_space_inside_is_refused_with_its_finding():
    hopeless = plan(BOX.having({"size.inside_length": None, "size.outside_length": 20.0}))
    for vary in (False, True):
        with pytest.raises(NoQuestionsError, match="nothing is left inside"):
            draw(hopeless, lesson=4, vary=vary)


def test_a_lesson_without_questions_names_those_with():
    assert 4 in lessons_with_questions()
    with pytest.raises(NoQuestionsError, match="lesson 99 has no questions; ask for lesson"):
        draw(OWN, lesson=99)


def test_each_word_of_the_tables_is_said_of_some_box(monkeypatch):
    """No question and no slip is left in a table that no box asks for."""
    asked, question = set(), Asking.question

    def listening(self, id, answer, slips, **more):
        asked.update((id, slip) for slip in slips)
        return question(self, id, answer, slips, **more)

    monkeypatch.setattr(Asking, "question", listening)
    # Dividers run off the edge only where half pins are narrower than pins.
    for choices in (*variants(), BOX.having({"corner.half_pin": 5.0})):
        for lesson in lessons_with_questions():
            draw(plan(choices), lesson=lesson)
    written = set()
    for path in sorted((Path(__file__).parents[2] / "toolkit" / "study").glob("*.toml")):
        for lesson, table in tomllib.loads(path.read_text(encoding="utf-8")).items():
            written |= {
                (f"{lesson}.{name}", slip) for name in table for slip in table[name]["slips"]
            }
    assert len(written) > 250
    assert written == asked
