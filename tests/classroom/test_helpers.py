"""Helpers, and the sliders of the class plan: what they show is what a timetable says."""

import pytest

from tests.boxes import inch_postcard, postcard
from tests.lesson.showing import both_ends_show
from toolkit.classroom import class_plan
from toolkit.classroom.plan_scene import TIME, WOOD, YARD, paces_of
from toolkit.classroom.scheduling import timetable
from toolkit.classroom.steps import Hours, helped
from toolkit.lesson.scene import View
from toolkit.plan import plan


def shown(view: View) -> dict[str, tuple[str, ...]]:
    return {row[0]: row[1:] for row in view.numbers.rows}


def test_a_helper_sits_with_two_slow_students_and_nobody_else() -> None:
    paces = ("slow", "practised", "slow", "novice", "slow")
    assert helped(paces, helpers=0) == paces
    assert helped(paces, helpers=1) == ("novice", "practised", "novice", "novice", "slow")
    assert helped(paces, helpers=2) == ("novice", "practised", "novice", "novice", "novice")
    with pytest.raises(ValueError, match="type 0 or more"):
        helped(paces, helpers=-1)


@pytest.mark.parametrize(("students", "slow"), [(4, 0), (4, 8), (8, 3), (12, 8)])
def test_a_class_has_as_many_as_are_asked_for(students: int, slow: int) -> None:
    paces = paces_of(students, slow=slow)
    assert len(paces) == students
    assert paces.count("slow") == min(slow, students)
    assert paces.count("practised") <= students // 4


def test_every_slider_of_the_class_plan_shows_something_at_both_ends() -> None:
    for box in (postcard(), inch_postcard()):
        both_ends_show(class_plan.SCENES, box)


def test_the_numbers_are_those_of_the_timetable() -> None:
    tried = {"try.students": 6, "try.slow": 2, "try.helpers": 0, "try.hours": 8}
    rows = shown(TIME.view(postcard(), tried))
    paces = paces_of(6, slow=2)
    made = timetable(paces, hours=Hours(minutes=480.0, lunch_at=240.0))
    late = sum(made.over(student) > 0 for student in made.students)
    assert rows["done in time"][0] == f"{6 - late} of 6"
    eased = shown(TIME.view(postcard(), tried | {"try.helpers": 1}))
    assert eased["the slowest over by"] != rows["the slowest over by"]


def test_wood_is_the_rough_parts_and_what_is_lost() -> None:
    bare = {"try.students": 4, "try.spares": 0, "try.stick": 0, "try.waste": 0}
    made = plan(postcard())
    net = sum(
        part.count * part.rough_length.value * part.rough_width.value * part.rough_thickness.value
        for part in made.parts
    )
    volume = 4 * net / 1e9
    said = WOOD.view(postcard(), bare).picture.sentence
    assert f"{volume:.4f} m³" in said
    # 1 board foot is 144 cubic inches.
    assert f"{4 * net / 25.4**3 / 144:.1f} board feet" in said
    lost = WOOD.view(postcard(), bare | {"try.waste": 50}).picture.sentence
    assert f"{2 * volume:.4f} m³" in lost
    spared = shown(WOOD.view(postcard(), bare | {"try.spares": 2}))
    assert spared["of it for spares"][0] == f"{volume / 2:.4f} m³"
    thick = {part.rough_thickness.value for part in made.parts}
    rows = shown(WOOD.view(postcard(), bare))
    assert len(rows) == len(thick) + 1
    assert YARD[0] > YARD[1]


def test_every_cell_can_be_made() -> None:
    for cell in (
        class_plan.worked,
        class_plan.weekend_still,
        class_plan.minutes,
        class_plan.if_late,
        lambda: class_plan.hands(2),
    ):
        assert repr(cell())
    assert "→ 20" in class_plan.worked().text
