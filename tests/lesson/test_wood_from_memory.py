"""Lessons, questions and handout say of a wood from memory that its numbers are."""

import pytest

from tests.boxes import postcard
from toolkit.box import fitting_sentence, joint_direction
from toolkit.handout.formulas import formula_blocks
from toolkit.lesson.lesson1 import buying, worked
from toolkit.lesson.lesson1_tree import LOG, SEASON as YEAR, year_of
from toolkit.lesson.lesson4 import SEASON, clearances, limits, months
from toolkit.plan import plan
from toolkit.study import draw, first_guess
from toolkit.wood import species

OAK = "European oak"
MOVES = ("lesson1.lid-movement", "lesson1.bottom-clearance", "lesson4.lid-damp")


def texts(wood):
    """Everything that reckons with how the panels of a box move, by where it stands."""
    box = postcard().having({"wood.lid": wood, "wood.bottom": wood, "wood.rings": 90.0})
    made = plan(box)
    yield "lesson 1, worked", worked(made).text
    yield "lesson 4, limits", limits(made).text
    for place, scene in (("1, year", YEAR), ("1, log", LOG), ("4, season", SEASON)):
        yield f"lesson {place}", str(scene.view(box).numbers.rows)
    yield "the year's picture", year_of(made).sentence(box.rule)
    yield "the log's picture", LOG.still(box).sentence
    yield "lesson 4, months", months(made).table.note
    yield "lesson 4, clearances", clearances(made).table.note
    yield "lesson 4, the meter", fitting_sentence(made.design, moisture=8.0)
    yield "glue-up", joint_direction(made.design).swollen(box.rule)
    left_out = plan(box.having({"panels.lid_across": None}))
    yield "chosen", next(row.why for row in left_out.chosen if row.key == "panels.lid_across")
    formulas = {block.heading: block.html() for block in formula_blocks(made)[1:]}
    yield "handout", formulas["What the lid swells from bench to dampest room"]
    yield "first guess", first_guess(made, lesson=1).asks
    for question in (*draw(made, lesson=1), *draw(made, lesson=4)):
        if question.id in MOVES:
            yield question.id, question.asks


@pytest.mark.parametrize("wood", [OAK, "black cherry"])
def test_it_is_said_wherever_the_movement_is_used(wood):
    found = dict(texts(wood))
    assert len(found) == 17
    words = (species(OAK).caution, "(from memory)", "movement from memory", "is from memory")
    told = {place for place, text in found.items() if any(word in text for word in words)}
    assert told == (set(found) if wood == OAK else set())


def test_what_is_not_known_of_its_weight_is_said():
    def note(wood):
        return buying(plan(postcard().having({"wood.walls": wood}))).table.note

    assert f"Density and hardness of {OAK} are not known here" in note(OAK)
    assert "not known" not in note("black cherry")
    ids = {row.id for row in draw(plan(postcard().having({"wood.walls": OAK})), lesson=1)}
    assert "lesson1.heavy-blank" not in ids


def test_a_european_wood_is_helped_with_european_woods():
    """And an American one with American ones, whose numbers are not from memory."""
    rows = {}
    for wood in ("European beech", "American beech"):
        box = postcard().having({"wood.lid": wood, "wood.bottom": wood, "groove.depth": 4.6})
        rows[wood] = [row for row in SEASON.view(box).numbers.rows if "bottom of" in row[1]]
    assert any("of European cherry" in row[1] for row in rows["European beech"]), rows
    assert all("from memory" in row[2] for row in rows["European beech"])
    assert not any("from memory" in row[2] for row in rows["American beech"])
