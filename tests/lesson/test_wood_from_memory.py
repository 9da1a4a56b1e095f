"""Lessons, questions and handout say of a wood from memory that its numbers are."""

import pytest

from tests.boxes import postcard
from toolkit.handout.formulas import formula_blocks
from toolkit.lesson.lesson1 import buying, worked
from toolkit.lesson.lesson1_tree import LOG, SEASON as YEAR, year_of
from toolkit.lesson.lesson4 import SEASON, limits
from toolkit.plan import plan
from toolkit.study import draw
from toolkit.wood import species

OAK = "European oak"


def texts(wood):
    """Everything that reckons with how the panels of a box move, by where it stands."""
    box = postcard().having({"wood.lid": wood, "wood.bottom": wood, "wood.rings": 90.0})
    made = plan(box)
    yield "lesson 1, worked", worked(made).text
    yield "lesson 4, limits", limits(made).text
    for place, scene in (("1, year", YEAR), ("1, log", LOG), ("4, season", SEASON)):
        yield f"lesson {place}", str(scene.view(box).numbers.rows)
    yield "the year's picture", year_of(made).sentence(box.rule)
    formulas = {block.heading: block.html() for block in formula_blocks(made)[1:]}
    yield "handout", formulas["What the lid swells from bench to dampest room"]
    for question in draw(made, lesson=1):
        if question.id in ("lesson1.lid-movement", "lesson1.bottom-clearance"):
            yield question.id, question.asks


@pytest.mark.parametrize("wood", [OAK, "black cherry"])
def test_it_is_said_wherever_the_movement_is_used(wood):
    found = dict(texts(wood))
    assert len(found) == 9
    words = (species(OAK).caution, "(from memory)", "movement from memory)")
    told = {place for place, text in found.items() if any(word in text for word in words)}
    assert told == (set(found) if wood == OAK else set())


def test_what_is_not_known_of_its_weight_is_said():
    def note(wood):
        return buying(plan(postcard().having({"wood.walls": wood}))).table.note

    assert f"Density and hardness of {OAK} are not known here" in note(OAK)
    assert "not known" not in note("black cherry")
    ids = {row.id for row in draw(plan(postcard().having({"wood.walls": OAK})), lesson=1)}
    assert "lesson1.heavy-blank" not in ids
