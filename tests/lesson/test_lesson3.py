"""Lesson 3's scenes: what their sliders show, what keeping writes, what boxes they put up with."""

import re
from typing import Any

import ipywidgets as widgets
import pytest

from tests.boxes import ears, inch_postcard
from tests.lesson.showing import can_be_made, stands_on_its_marks
from tests.pictures.designs import named
from toolkit.box import Choices, Hand, SawnJoint, gaps, set_out_round_grooves, written
from toolkit.document import as_text
from toolkit.explore import lesson3
from toolkit.explore.bench_forms import feeler_card, readings_of
from toolkit.explore.engine import Explorer
from toolkit.files import read_box
from toolkit.lesson.lesson3_corner import CORNER, ROUND, settled
from toolkit.lesson.lesson3_joint import ARRANGEMENT, LINES, SAW, ways_table
from toolkit.lesson.scene import ImpossibleError, Scene
from toolkit.measures import MeasureError, Rule
from toolkit.plan import plan
from toolkit.study import OwnBox, example_path

BOX = read_box(example_path())
# Boxes whose files leave out, or say in another way, what the sliders move.
BARE = BOX.having(
    {
        "corner.lap": None,
        "corner.slope": None,
        "corner.pin": None,
        "corner.half_pin": None,
        "corner.tails_back": None,
        "corner.tails_front": None,
        "groove.bottom_edge": None,
        "groove.top_edge": None,
    }
)
KINDS = {
    "example": BOX,
    "left out": BARE,
    "tail length": BOX.having({"corner.lap": None, "corner.tail_length": 7.5}),
    "through": BOX.having({"corner.joint": "through", "corner.lap": None}),
    "unequal": BOX.having({"corner.tails_back": ((5.0, 21.0), (27.0, 35.0), (41.0, 59.0))}),
    "ears": ears(),
    "inches": inch_postcard(),
    "lift-off": BOX.having({"lid.kind": "lift-off"}),
    "one tail": named()["one tail"],
}


def words(view: Any) -> str:
    return re.sub(r"\s+", " ", as_text(view.numbers))


def options(scene: Scene, label: str, box: Choices) -> list[Any]:
    control = next(control for control in scene.controls if control.label == label)
    return [value for _, value in control.options(box.rule, control.first(box))]


@pytest.mark.parametrize("scene", lesson3.scenes.values(), ids=lambda scene: scene.name)
@pytest.mark.parametrize("kind", list(KINDS))
def test_every_box_can_be_shown_and_every_slider_stands_on_one_of_its_marks(scene, kind) -> None:
    stands_on_its_marks(scene, KINDS[kind])


@pytest.mark.parametrize("scene", lesson3.scenes.values(), ids=lambda scene: scene.name)
def test_each_slider_moves_the_picture_and_not_the_page(scene) -> None:
    first = scene.view(BOX)
    assert first.picture.drawn.height <= scene.height
    for control in scene.controls:
        start = control.first(BOX)
        shown = set()
        values = options(scene, control.label, BOX)
        for value in (*values[:-1:2], values[-1]):
            try:
                view = scene.view(BOX, dict.fromkeys(control.keys, value))
            except ImpossibleError:
                continue
            assert view.picture.drawn.height == first.picture.drawn.height
            if value != start:
                shown.add(view.picture.svg)
        assert shown - {first.picture.svg}, control.label


def test_no_scene_has_more_than_four_controls_or_two_of_one_name() -> None:
    for scene in lesson3.scenes.values():
        assert len(scene.controls) <= 4
        assert len({control.label for control in scene.controls}) == len(scene.controls)
    assert len({scene.name for scene in lesson3.scenes.values()}) == len(lesson3.scenes.values())


# The corner


def test_one_tail_more_is_too_many_for_the_chisel_and_a_thin_lap_is_told() -> None:
    four = CORNER.view(BOX, {"corner.tails_back": 4})
    # (64 − 2 × 5 + 6) / 4 = 15, less a pin of 6.
    assert "divider step 15 mm" in words(four) and "tail 9 mm" in words(four)
    thin = {row.code for row in CORNER.view(BOX, {"corner.lap": 2.0}).findings}
    assert "lap-thin" in thin
    steep = CORNER.view(BOX, {"corner.slope": 4.0})
    assert "corners stand out 2 mm" in words(steep) and "14.0°" in words(steep)


def test_numbers_of_the_corner_are_those_worked_by_hand() -> None:
    said = words(CORNER.view(BOX))
    for row in (
        "tail length 8 mm 12 side thickness − 4 lap = 8 mm",
        "corners stand out 1.14 mm 8 mm ÷ 7, on each side",
        "pin, narrow face 3.7 mm 6 mm less 1.14 mm on each side",
        "half pin, narrow face 4.9 mm 6 mm less 1.14 mm once",
        "divider step 20 mm (66 mm − 2 × 6 + 6) ÷ 3",
        "long grain glued 582 mm² 6 cheeks × 8.08 mm × 12 mm",
        "socket that a saw reaches 33 %",
    ):
        assert row in said, row


def test_a_through_joint_has_no_lap_to_move() -> None:
    through = KINDS["through"]
    assert CORNER.controls[3].first(through) == 0
    with pytest.raises(ImpossibleError, match="as long as the pin board is thick") as caught:
        CORNER.view(through, {"corner.lap": 3.0})
    assert caught.value.there_is == "No lap."


def test_a_slider_whose_key_is_left_out_stands_where_the_rule_puts_it() -> None:
    made = plan(BARE)
    c = made.design.choices.corner
    assert settled("corner.slope")(BARE) == c.slope == 7
    assert settled("corner.lap")(BARE) == made.design.frame.lap_back.value
    assert settled("corner.tails_back")(BARE) == len(made.design.back.tails)
    assert settled("corner.pin")(BARE) == c.pin
    assert settled("corner.lap")(KINDS["tail length"]) == 4.5


# The joint


def test_a_swelling_panel_locks_one_arrangement_and_opens_the_other() -> None:
    ends, sides = (ARRANGEMENT.view(BOX, {"corner.tails_on": on}) for on in ("ends", "sides"))
    assert "which lock" in words(ends) and "the joint opens" in words(sides)
    assert "joint-opens-when-panel-swells" in {row.code for row in sides.findings}
    assert "lengthwise" in ends.picture.sentence and "crosswise" in sides.picture.sentence


@pytest.mark.parametrize("value", ["half-blind", "through"])
def test_a_joint_can_be_kept_and_read_again(value) -> None:
    control = ARRANGEMENT.controls[1]
    OwnBox().keep(written({control.keys[0]: value}, rule=BOX.rule))
    own = OwnBox().load().choices
    assert own.corner.joint == value
    assert own.corner.lap == (4.0 if value == "half-blind" else None)
    CORNER.view(own)
    # And back again: the lap is then a third of the pin board.
    OwnBox().keep(written({control.keys[0]: "half-blind"}, rule=BOX.rule))
    assert plan(OwnBox().load().choices).design.frame.lap_back.value == 4.0


def test_proud_and_shy_move_the_second_gauge_and_never_the_first() -> None:
    for proud, second in ((-0.2, "11.8 mm"), (0.0, "12 mm"), (0.5, "12.5 mm")):
        view = LINES.view(BOX, {"corner.proud": proud})
        assert f"gauge 2 at {second} from the end" in view.picture.sentence
        assert "gauge 1 at 8 mm from the inside face" in view.picture.sentence


# Round the grooves


def test_a_layout_that_is_looked_at_can_be_kept() -> None:
    found = set_out_round_grooves(BOX)
    explorer = Explorer(ROUND)
    assert explorer._changes() == {}
    explorer._moved(ROUND.controls[2])({"new": 2, "owner": None, "old": 0})
    changes = explorer._changes()
    assert set(changes) == set(found.offers[1].changes)
    OwnBox().keep(changes)
    own = OwnBox().load().choices
    kept, offered = plan(own).design, plan(found.offers[1].choices).design
    assert [tail.low for tail in kept.back.tails] == pytest.approx(
        [tail.low for tail in offered.back.tails], abs=1e-3
    )
    assert len(kept.front.tails) == len(offered.front.tails)


def test_keep_this_keeps_groove_and_layout_together() -> None:
    explorer = Explorer(ROUND)
    explorer._moved(ROUND.controls[0])({"new": 9.0, "owner": None, "old": 7.0})
    explorer._moved(ROUND.controls[2])({"new": 1, "owner": None, "old": 0})
    assert explorer.bar is not None
    explorer.bar._buttons[0].click()
    own = OwnBox().load().choices
    assert own.groove.bottom_edge == own.groove.top_edge == 9.0
    assert plan(own).works and not plan(own).design.holes
    # What was looked at is now the box's own, and there is nothing more to keep.
    assert explorer._changes() == {}


def test_a_groove_without_a_layout_is_told_and_a_hole_is_drawn() -> None:
    for edge in options(ROUND, "groove from the edge", BOX)[::3]:
        at = {"groove.bottom_edge": edge, "groove.top_edge": edge, "try.offer": 1}
        view = ROUND.view(BOX, at)
        found = set_out_round_grooves(
            BOX.having({"groove.bottom_edge": edge, "groove.top_edge": edge})
        )
        codes = {row.code for row in view.findings}
        assert ("no-layout" in codes) == (not found.offers)
        if found.offers:
            assert "hole" not in view.picture.sentence, edge
    five = {"groove.bottom_edge": 12.0, "groove.top_edge": 12.0, "corner.tails_back": 5}
    assert "leaves a hole" in ROUND.view(BOX, five).picture.sentence
    assert "leaves a hole" not in ROUND.view(BOX, five | {"try.offer": 1}).picture.sentence


def test_asking_for_more_layouts_than_there_are_says_so() -> None:
    at = {"groove.bottom_edge": 19.5, "groove.top_edge": 19.5, "try.offer": 3}
    moved = BOX.having({"groove.bottom_edge": 19.5, "groove.top_edge": 19.5})
    assert len(set_out_round_grooves(moved).offers) == 2
    assert "fewer-offers" in {row.code for row in ROUND.view(BOX, at).findings}


# The saw


def test_the_same_hand_in_three_ways() -> None:
    spread = gaps(SawnJoint(8, 12, 7, 3), hand=Hand(), copied=True)
    rows = ways_table(spread, rule=Rule.millimetres()).rows
    # The table that the spread is checked against gives 0.301, 0.552, 5.4 %, 49.7 % set out apart,
    # and 0.229 outside; copying divides the gap inside by the root of two.
    assert rows[0][1:] == ("0.3 mm", "0.55 mm", "5", "50", "0.23 mm")
    assert rows[1][1] == "0.21 mm"
    outside = [float(row[5].split()[0]) for row in rows]
    assert outside[0] > outside[1] > outside[2]


def test_the_task_can_be_done() -> None:
    """90 of 100 corners within 0.1 mm, by staying off the line."""
    enough = [
        off
        for off in options(SAW, "kept off the line by", BOX)
        if float(SAW.view(BOX, {"try.off": off}).numbers.rows[1][3]) >= 90
    ]
    assert enough and 0.1 < min(enough) < 0.4


def test_more_tails_are_more_chances_to_miss() -> None:
    within = [
        float(SAW.view(BOX, {"corner.tails_back": n}).numbers.rows[1][4]) for n in (1, 2, 3, 5)
    ]
    assert within == sorted(within, reverse=True)


def test_the_hand_begins_where_the_box_s_customs_put_it() -> None:
    shaky = BOX.having({"customs.saw_lead": 1.3})
    assert SAW.controls[0].first(shaky) == 1.3
    assert SAW.view(shaky).picture.sentence != SAW.view(BOX).picture.sentence


def test_readings_are_read_as_they_are_typed() -> None:
    assert readings_of("0.1 mm, 0.25 mm, 0") == (0.1, 0.25, 0.0)
    assert readings_of("0.1 mm; 0,15 mm") == (0.1, 0.15)
    with pytest.raises(MeasureError, match="reading"):
        readings_of("0.1 mm, thick")


def _card() -> tuple[widgets.Text, widgets.Button, widgets.HTML]:
    card = feeler_card(lesson3.own)
    (box, check), said = card.children[1].children, card.children[2]
    return box, check, said


def test_the_feeler_card_answers_in_words() -> None:
    box, check, said = _card()
    check.click()
    assert said.value == ""
    box.value = "0.2 mm, 0.3 mm"
    assert "Your middle gap is 0.25 mm where 0.21 mm was foreseen" in said.value
    box.value = "thick"
    assert "bench-hint" in said.value and "thick" in said.value


# The notebook's functions


@pytest.mark.parametrize("kind", list(KINDS))
def test_every_cell_can_be_made_for_every_box(kind) -> None:
    stills = "corner_still front_still joint_still lines_still saw_still"
    tables = "worked slopes dividers gauge_lines transfer glue_up compare carry guess your_turn"
    can_be_made(lesson3, f"{stills} {tables}", KINDS[kind])
