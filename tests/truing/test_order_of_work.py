"""The order of work, its tests and their numbers, and what is worth measuring."""

from itertools import permutations

import pytest

from tests.boxes import inch_postcard, postcard
from toolkit.measures import Rule
from toolkit.plan import plan
from toolkit.planes import JACK, SMOOTHER, TRY
from toolkit.truing import (
    ORDERS,
    THICKNESS_FIRST,
    Tolerances,
    check_iron,
    check_scallops,
    clearing,
    order_of_work,
    worth_measuring,
)
from toolkit.truing.order import NEEDS, STEPS, check_order

MM = Rule.millimetres()
PARTS = {part.name: part for part in plan(postcard()).parts}
NAMES = [step.name for step in STEPS]


@pytest.mark.parametrize("order", ORDERS.values(), ids=ORDERS)
def test_orders_in_use_break_nothing(order):
    assert sorted(order) == sorted(NAMES)
    assert [row.code for row in check_order(order)] == ["good-order"]


@pytest.mark.parametrize("need", NEEDS, ids=lambda need: f"{need.first} before {need.then}")
def test_every_need_is_told_when_it_is_turned_round(need):
    order = list(THICKNESS_FIRST)
    order.remove(need.first)
    order.insert(order.index(need.then) + 1, need.first)
    found = [row for row in check_order(order) if need.why in row.message]
    assert [row.code for row in found] == ["step-too-early"]
    assert found[0].level == ("wont_work" if need.must else "care")
    assert "comes after it, but" in found[0].message
    left_out = [name for name in THICKNESS_FIRST if name != need.first]
    found = [row for row in check_order(left_out) if need.why in row.message]
    assert [row.code for row in found] == ["step-left-out"]


def test_a_good_order_is_one_that_meets_every_need():
    """Over all orders of five steps, against the list of needs read plainly."""
    five = ["face", "edge", "thickness", "smooth", "gauge"]
    for order in permutations(five):
        codes = {row.code for row in check_order(order)}
        late = any(
            need.first in order
            and need.then in order
            and order.index(need.first) > order.index(need.then)
            for need in NEEDS
        )
        assert ("step-too-early" in codes) == late


def test_each_step_has_its_test_and_number():
    tasks = {task.step.name: task for task in order_of_work(PARTS["side"]).tasks}
    said = {name: task.sentence(MM) for name, task in tasks.items()}
    assert "twist ≤ 0.3 mm over 176 mm (winding sticks)" in said["face"]
    assert "gap ≤ 0.1 mm over 12 mm (square against the light)" in said["edge"]
    assert "thickness 12 mm ± 0.1 mm" in said["thickness"]
    assert "difference of the walls ≤ 0.2 mm" in said["thickness"]
    assert "width 66 mm ± 0.2 mm" in said["width"]
    assert "length 176.4 mm ± 0.2 mm" in said["length"]
    assert "ridges ≤ 0.015 mm" in said["smooth"]
    assert "rough length ≥ 190 mm (rule)" in said["crosscut"]
    assert "twist ≤ 0.3 mm" in said["gauge"]
    assert "Test:" not in said["clean"]


def test_numbers_go_with_the_part_and_its_limits():
    lid = order_of_work(PARTS["lid"])
    assert "gauge" not in [task.step.name for task in lid.tasks]
    face = next(task for task in lid.tasks if task.step.name == "face")
    assert face.tests[0].limit == pytest.approx(0.3 * 168 * 116 / (176 * 66))
    tight = order_of_work(PARTS["side"], limits=Tolerances(twist=0.1))
    face = next(task for task in tight.tasks if task.step.name == "face")
    assert face.tests[0].limit == pytest.approx(0.1)


@pytest.mark.parametrize(
    ("order", "said"),
    [
        (["face", "sand"], "there is no step 'sand'; name some of clean, crosscut, face"),
        (["face", "edge", "face"], "the step 'face' is named twice"),
    ],
)
def test_orders_that_cannot_be_read(order, said):
    with pytest.raises(ValueError, match=said):
        order_of_work(PARTS["side"], order=order)


def test_thickness_of_the_walls_comes_first():
    rows = worth_measuring(tuple(PARTS.values()))
    assert [row.key for row in rows[:3]] == ["side_thickness", "back_thickness", "front_thickness"]
    assert rows[0].readings == 4
    assert rows[0].expected == 12
    assert (rows[0].needed, rows[0].rule_error) == (0.1, 0.5)
    assert not rows[0].rule_tells
    assert "set the gauge to the board itself" in rows[0].sentence(MM)
    assert {row.part for row in rows[-6:]} == {"bottom", "lid"}


def test_what_is_measured_drops_out():
    rows = worth_measuring(tuple(PARTS.values()), made={"side_thickness", "lid_width"})
    keys = [row.key for row in rows]
    assert "side_thickness" not in keys
    assert "lid_width" not in keys
    assert "back_thickness" in keys


def test_a_better_rule_or_a_looser_limit_may_do():
    rows = worth_measuring(tuple(PARTS.values()), limits=Tolerances(size=0.5), accuracy_class="II")
    widths = [row for row in rows if row.axis == "width"]
    assert widths
    assert all(row.rule_tells for row in widths)
    assert "the rule tells it to 0.5 mm" in widths[0].sentence(MM)
    fine = worth_measuring(tuple(PARTS.values()), accuracy_class="I")
    assert all(row.rule_tells for row in fine if row.axis == "length")
    inches = worth_measuring(plan(inch_postcard()).parts)
    assert "planned 1/2 in" in inches[0].sentence(Rule.inches())


def test_no_rule_tells_what_a_square_tells():
    loose = Tolerances(square=2.0)
    rows = worth_measuring(tuple(PARTS.values()), limits=loose, accuracy_class="I")
    square = [row for row in rows if row.by_square]
    assert [row.key for row in square[:3]] == ["side_end_out", "back_end_out", "front_end_out"]
    assert {row.key for row in square[3:9]} == {
        f"{wall}_{gap}" for wall in ("side", "back", "front") for gap in ("end_lean", "edge_out")
    }
    assert [row.key for row in square[9:]] == ["bottom_end_out", "lid_end_out"]
    assert not any(row.rule_tells for row in square)
    usual = next(row for row in worth_measuring(tuple(PARTS.values())) if row.key == "side_end_out")
    # Two ends on each of two sides; class II over less than a metre: 0.3 + 0.2 mm.
    assert (usual.readings, usual.expected, usual.needed, usual.rule_error) == (4, 0, 0.1, 0.5)
    assert "a rule, 0.5 mm off at worst, cannot tell it: hold a square" in usual.sentence(MM)
    told = worth_measuring(tuple(PARTS.values()), made={"side_end_out", "lid_end_out"})
    assert {row.key for row in rows} - {row.key for row in told} == {"side_end_out", "lid_end_out"}


def test_what_a_maker_says_of_planes():
    assert check_iron(JACK, rule=MM).code == "good-iron"
    found = check_iron(TRY.having(shaving=0.2), rule=MM)
    assert (found.level, found.code) == ("care", "iron-corners-track")
    finest = float(found.remedy.split()[4])
    assert check_iron(TRY.having(shaving=finest * 0.95), rule=MM).code == "good-iron"
    assert check_iron(TRY.having(shaving=finest * 1.05), rule=MM).code == "iron-corners-track"
    shows = check_scallops(clearing(0.16, after=SMOOTHER, width=64, passes=2), rule=MM)
    assert (shows.level, shows.code) == ("care", "scallops-show-through")
    assert "Make 7 passes" in shows.remedy
    clean = clearing(0.16, after=SMOOTHER, width=64, passes=7)
    assert check_scallops(clean, rule=MM).level == "good"
