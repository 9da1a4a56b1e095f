"""Lesson 2: what its scenes, its forms and its tables say."""

from __future__ import annotations

import pytest

from tests.boxes import postcard
from tests.explore.showing import both_ends_show
from toolkit.box import Choices
from toolkit.explore import lesson2
from toolkit.explore.made_form import MadeForm
from toolkit.explore.readings_form import ReadingsForm
from toolkit.plan import plan
from toolkit.study import OwnBox


def test_every_slider_shows_something_at_both_ends(choices: Choices) -> None:
    both_ends_show(lesson2.SCENES, choices)


def test_more_twist_than_wood_is_said() -> None:
    warp = lesson2.SCENES[0]
    bad = warp.view(postcard(), {"try.twist": 5.0, "try.bow": 5.0})
    assert {row.code for row in bad.findings} >= {"board-too-warped", "twist-before-layout"}
    good = warp.view(postcard(), {"try.twist": 0.1, "try.bow": 0.2})
    assert all(row.level == "good" for row in good.findings)


def test_crosscutting_first_is_what_saves() -> None:
    cut = lesson2.SCENES[1]
    view = cut.view(postcard())
    # Reckoned by hand: 12 mm of bow × (700/2000)² and 8 mm of twist × 0.35 × 0.5.
    rows = {row[0]: row for row in view.numbers.rows}
    assert rows["bow"][2] == "1.47 mm"
    assert rows["twist"][2] == "1.4 mm"
    whole = cut.view(postcard(), {"try.cut": 2000.0, "try.ripped": 150.0})
    assert whole.findings[0].level == "wont_work"


def test_the_fewest_strokes_are_never_more_than_those_of_an_overlap() -> None:
    planes = lesson2.SCENES[2]
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


@pytest.mark.parametrize("text", ["11.4", "eleven", "-3 mm", "9 m"])
def test_what_cannot_be_made_changes_nothing(text: str) -> None:
    form = MadeForm()
    form.size.value = text
    form.keep.click()
    assert "bench-hint" in form.said.value
    assert OwnBox().load().path is None


def test_own_readings_are_mapped() -> None:
    form = ReadingsForm(lesson2.own)
    for row in form.readings:
        row[2].value = "1.2 mm"
    form.look.click()
    # A ridge 1.2 high across the middle of the board: all of it comes off there.
    assert "A true face takes 1.2 mm off" in form.said.value
    assert "<svg" in form.said.value


@pytest.mark.parametrize("text", ["1.2", "", "x mm"])
def test_a_reading_that_cannot_be_read_is_named(text: str) -> None:
    form = ReadingsForm(lesson2.own)
    form.readings[1][2].value = text
    form.look.click()
    assert "reading 3 from the left, middle" in form.said.value
    assert "bench-hint" in form.said.value


def test_everything_on_paper_can_be_made(choices: Choices, monkeypatch: pytest.MonkeyPatch) -> None:
    made = plan(choices)
    monkeypatch.setattr(lesson2, "own", lambda: made)
    for cell in (
        lesson2.worked,
        lesson2.face_still,
        lesson2.crosscut_still,
        lesson2.planes_still,
        lesson2.order,
        lesson2.rough,
        lesson2.carry,
    ):
        assert repr(cell())


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
    form = ReadingsForm(lesson2.own)
    for row, place in ((0, 1), (2, 3)):
        form.readings[row][place].value = "3.2 mm"
    picture, _, found = form.found()
    assert "3.2 mm off" in picture.sentence
    # 16 less 3.2 less 2 × 0.5 of saw marks: 11.8, and 12 is wanted.
    assert found[0].level == "wont_work"
    assert "11.8 mm would be left" in found[0].sentence


def test_the_planes_in_the_table_are_the_students() -> None:
    planes = lesson2.SCENES[2]

    def strokes(depth: float) -> int:
        rows = {row[0]: row for row in planes.view(postcard(), {"try.depth": depth}).numbers.rows}
        return int(rows["all three planes, one side"][1])

    assert strokes(0.6) < strokes(0.2)


def test_no_length_that_gives_the_walls_is_said_so() -> None:
    thick = postcard().having(thickness__side=26.0)
    rows = {row[0]: row for row in lesson2.SCENES[1].view(thick).numbers.rows}
    assert rows["length of piece"][2] == "none"
