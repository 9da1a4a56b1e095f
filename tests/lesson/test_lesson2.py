"""Lesson 2: what its scenes, its forms and its tables say."""

from dataclasses import fields

import pytest

from tests.boxes import postcard
from tests.lesson.showing import both_ends_show, can_be_made
from toolkit.box import Choices
from toolkit.box.choices import Made
from toolkit.explore import lesson2
from toolkit.explore.bench_forms import MadeForm
from toolkit.explore.engine import followed
from toolkit.explore.readings_form import ReadingsForm
from toolkit.study import OwnBox


def test_every_slider_shows_something_at_both_ends(choices: Choices) -> None:
    both_ends_show(lesson2.scenes.values(), choices)


def test_more_twist_than_wood_is_said() -> None:
    warp = lesson2.scenes["warp"]
    bad = warp.view(postcard(), {"try.twist": 5.0, "try.bow": 5.0})
    assert {row.code for row in bad.findings} >= {"board-too-warped", "twist-before-layout"}
    good = warp.view(postcard(), {"try.twist": 0.1, "try.bow": 0.2})
    assert all(row.level == "good" for row in good.findings)


def test_crosscutting_first_is_what_saves() -> None:
    cut = lesson2.scenes["crosscut"]
    view = cut.view(postcard())
    # Reckoned by hand: 12 mm of bow × (700/2000)² and 8 mm of twist × 0.35 × 0.5.
    rows = {row[0]: row for row in view.numbers.rows}
    assert rows["bow"][2] == "1.47 mm"
    assert rows["twist"][2] == "1.4 mm"
    whole = cut.view(postcard(), {"try.cut": 2000.0, "try.ripped": 150.0})
    assert whole.findings[0].level == "wont_work"


def test_the_fewest_strokes_are_never_more_than_those_of_an_overlap() -> None:
    planes = lesson2.scenes["planes"]
    for overlap in (0, 20, 38, 60, 80):
        rows = {
            row[0]: row for row in planes.view(postcard(), {"try.overlap": overlap}).numbers.rows
        }
        assert int(rows["fewest strokes"][1]) <= int(rows["strokes with this overlap"][1])


def test_what_is_made_becomes_fact_and_can_be_taken_back() -> None:
    form = MadeForm()
    form.which.value, form.size.value = "made.side_thickness", "11.4 mm"
    form.keep.click()
    assert OwnBox().load().choices.made.side_thickness == 11.4
    assert "side thickness − 0.6 mm" in form.said.value
    assert "back, thickness" in form.next.value
    assert "side, thickness" not in form.next.value
    form.undo.click()
    assert OwnBox().load().choices.made.side_thickness is None


def test_a_gap_under_the_square_is_a_fact_too_and_may_be_nothing() -> None:
    form = MadeForm()
    form.which.value, form.size.value = "made.bottom_end_out", "3 mm"
    form.keep.click()
    # Half of it beyond a clearance of 1 mm: the longer corner holds the joint open.
    assert "its longer corner − 1.5 mm" in form.said.value
    assert "holds it open" in form.said.value
    for key in ("side_end_out", "side_end_lean", "side_edge_out"):
        form.which.value, form.size.value = f"made.{key}", "0 mm"
        form.keep.click()
        assert getattr(OwnBox().load().choices.made, key) == 0.0
        assert "within 0.1 mm" in form.said.value
    form.which.value, form.size.value = "made.side_length", "0 mm"
    form.keep.click()
    assert "bench-hint" in form.said.value
    form.which.value, form.size.value = "made.wall_board_thickness", "12.5 mm"
    form.keep.click()
    assert "a rough board of 12.5 mm hardly planes to 12 mm" in form.said.value


def test_everything_that_is_made_can_be_told() -> None:
    keys = {key.removeprefix("made.") for _, key in MadeForm().which.options}
    assert keys == {spec.name for spec in fields(Made)}


@pytest.mark.parametrize("text", ["11.4", "eleven", "-3 mm", "9 m"])
def test_what_cannot_be_made_changes_nothing(text: str) -> None:
    form = MadeForm()
    form.size.value = text
    form.keep.click()
    assert "bench-hint" in form.said.value
    assert OwnBox().load().path is None


def read(**rows: list[str]) -> ReadingsForm:
    """The form with rows of readings typed in, left to right; others are left empty."""
    form = ReadingsForm(lesson2.own)
    for name, texts in rows.items():
        boxes = form.readings[("near", "middle", "far").index(name)]
        for box, text in zip(boxes, texts, strict=True):
            box.value = text
    return form


FLAT = ["0 mm"] * 5
RIDGE = ["1.2 mm"] * 5


def test_own_readings_are_mapped() -> None:
    form = read(near=FLAT, middle=RIDGE, far=FLAT)
    form.look.click()
    # A ridge 1.2 high across the middle of the board: all of it comes off there.
    assert "A true face takes 1.2 mm off" in form.said.value
    assert "<svg" in form.said.value
    assert "cupped 1.2 mm, round across" in form.said.value
    assert form.found()[2][0].level == "good"


def test_gaps_under_a_straightedge_are_heights_turned_over() -> None:
    form = read(near=RIDGE, middle=FLAT, far=RIDGE)
    form.measured.value = "gaps"
    picture, said, found = form.found()
    assert "takes 1.2 mm off where it is highest" in picture.sentence
    # The straightedge touches along the middle, so that the plane goes there first.
    board = next(line for line in picture.drawn.lines if line.pen == "visible").points
    low, high = min(y for _, y in board), max(y for _, y in board)
    hatched = [y for line in picture.drawn.lines if line.pen == "hatch" for _, y in line.points]
    assert low + (high - low) / 5 < min(hatched) < max(hatched) < high - (high - low) / 5
    assert "round across" in said
    assert [row.level for row in found] == ["good"]
    form.measured.value = "heights"
    assert "hollow across" in form.found()[1]
    form.readings[0][0].value = "-0.2 mm"
    assert form.found()
    form.measured.value = "gaps"
    with pytest.raises(ValueError, match="reading 1 from the left, near"):
        form.found()


@pytest.mark.parametrize("text", ["1.2", "x mm", "mm"])
def test_a_reading_that_cannot_be_read_is_named(text: str) -> None:
    form = read(near=FLAT, middle=FLAT, far=FLAT)
    form.readings[1][2].value = text
    form.look.click()
    assert "reading 3 from the left, middle" in form.said.value
    assert "bench-hint" in form.said.value


def test_a_place_that_was_not_read_is_left_out() -> None:
    whole = read(near=FLAT, middle=["1 mm"] * 5, far=["2 mm"] * 5)
    picture, _, found = whole.found()
    assert "nothing has to come off" in picture.sentence
    assert [row.code for row in found] == ["good-thickness"]
    # Taken as 0 mm, the empty box would make a hollow 1 mm deep of a face that is flat.
    some = read(near=FLAT, middle=["1 mm", "1 mm", "", "1 mm", "1 mm"], far=["2 mm"] * 5)
    picture, _, found = some.found()
    assert "nothing has to come off" in picture.sentence
    assert [row.code for row in found] == ["good-thickness"]


def test_too_few_readings_are_warned_of() -> None:
    corners = ["0 mm", "", "", "", "0 mm"]
    few = read(near=corners, far=["0 mm", "", "", "", "2 mm"])
    picture, said, found = few.found()
    assert "A true face takes 1 mm off" in picture.sentence
    assert "Bow, cup and twist stay unknown" in said
    assert "4 of 15 places were read: a hump" in found[-1].message
    crosses = [line for line in picture.drawn.lines if line.pen == "chalk"]
    assert len(crosses) == 2 * 4
    lost = read(near=FLAT, middle=FLAT, far=["0 mm", "0 mm", "0 mm", "0 mm", ""])
    assert "1 of the four corners not" in lost.found()[2][-1].message
    for form, words in ((read(), "no readings"), (read(near=FLAT), "on one line")):
        form.look.click()
        assert words in form.said.value
        assert "bench-hint" in form.said.value


def test_forms_follow_the_rule_of_the_box() -> None:
    made, form = MadeForm(), read(near=FLAT, middle=RIDGE, far=FLAT)
    form.look.click()
    form.length.value = "500 mm"
    own = OwnBox()
    own.keep({"title": "Postcards"})
    followed(own.switch_units("in").choices)
    assert form.thickness.value.endswith(" in")
    assert form.length.value == "500 mm"
    assert "sizes in inches" in form.said.value
    assert "planned 0.472 in" in made.next.value
    followed(own.switch_units("mm").choices)
    assert form.thickness.value == "16 mm"
    assert "planned 12 mm" in made.next.value


def test_everything_on_paper_can_be_made(choices: Choices) -> None:
    cells = "worked face_still crosscut_still planes_still time_still order rough carry"
    can_be_made(lesson2, cells, choices)


def test_a_teacher_can_rearrange_the_order_and_is_told_what_does_not_hold() -> None:
    usual = lesson2.order()
    names = [row[1] for row in usual.table.rows]
    assert names.index("face") < names.index("edge")
    other = [row[1] for row in lesson2.order("ends first").table.rows]
    assert other != names and sorted(other) == sorted(names)
    turned = list(names)
    turned.remove("smooth")
    wrong = lesson2.order(*turned, "smooth")
    assert "smooth" in wrong.table.note
    assert wrong.table.note != usual.table.note


def test_bumps_that_no_smooth_warp_fits_count_in_full() -> None:
    form = read(near=FLAT, middle=FLAT, far=FLAT)
    for row, place in ((0, 1), (2, 3)):
        form.readings[row][place].value = "3.2 mm"
    picture, _, found = form.found()
    assert "3.2 mm off" in picture.sentence
    # 16 less 3.2 less 2 × 0.5 of saw marks: 11.8, and 12 is wanted.
    assert found[0].level == "wont_work"
    assert "11.8 mm would be left" in found[0].sentence


def test_time_is_the_class_s_own_estimate() -> None:
    scene = lesson2.scenes["time"]
    rows = {row[0]: row[1] for row in scene.view(postcard()).numbers.rows}
    slow = scene.view(postcard(), {"try.seconds": 4.0, "try.learner": 12.0})
    told = {row[0]: row[1] for row in slow.numbers.rows}
    strokes = int(rows["strokes"])
    assert told["strokes"] == rows["strokes"]
    assert rows["for a learner"] == f"{strokes * 2 * 8 / 60:.1f} min"
    assert told["nothing but strokes"] == f"{strokes * 4 / 60:.1f} min"
    assert told["for a learner"] == f"{strokes * 4 * 12 / 60:.1f} min"
    # Two sides, a back and a front have eight faces.
    assert told["all 8 faces of the walls"] == f"{strokes * 4 * 12 * 8 / 3600:.1f} h"


def test_the_planes_in_the_table_are_the_students() -> None:
    planes = lesson2.scenes["planes"]

    def strokes(depth: float) -> int:
        rows = {row[0]: row for row in planes.view(postcard(), {"try.depth": depth}).numbers.rows}
        return int(rows["all three planes, one side"][1])

    assert strokes(0.6) < strokes(0.2)


def test_no_length_that_gives_the_walls_is_said_so() -> None:
    thick = postcard().having({"thickness.side": 26.0})
    rows = {row[0]: row for row in lesson2.scenes["crosscut"].view(thick).numbers.rows}
    assert rows["length of piece"][2] == "none"
