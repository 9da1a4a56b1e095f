"""What holds a corner, which way it goes together, and the steps at the bench."""

from math import radians, tan

import pytest

from tests.boxes import (
    first_ears as ears,
    first_inch_postcard as inch_postcard,
    first_lift_off as lift_off,
    first_postcard as postcard,
)
from toolkit.box import (
    Choices,
    design,
    glue_up_steps,
    holds,
    joint_direction,
    lead_error,
    slope_angle,
    socket_reach,
    step_table,
    tail_overhang,
    transfer_steps,
)
from toolkit.measures import Rule
from toolkit.plan import plan

MM = Rule.millimetres()
THROUGH = {"corner.joint": "through", "corner.lap": None}
BOXES = [postcard(), ears(), lift_off(), inch_postcard(), postcard().having(THROUGH)]


@pytest.mark.parametrize("angle", [5, 20, 33.7, 45, 60, 80])
@pytest.mark.parametrize(("depth", "run"), [(8, 12), (12, 8), (10, 10)])
def test_a_saw_cuts_the_corner_that_both_lines_leave(
    angle: float, depth: float, run: float
) -> None:
    """Counted square by square: what lies under a straight line from the corner's two lines."""
    told = socket_reach(depth, thickness=run, saw_angle=angle)
    n = 400
    slope = tan(radians(angle))
    base = min(run, depth / slope)
    cut = 0
    for i in range(n):
        x = (i + 0.5) / n * run
        cut += max(0.0, (base - x) * slope) / depth
    assert told.share == pytest.approx(cut / n, abs=2e-3)
    assert told.share <= 0.5 + 1e-9
    assert (told.share > 0.499) == (abs(angle - told.best_angle) < 0.05)


def test_a_through_joint_has_no_socket() -> None:
    assert all(row.socket is None for row in holds(design(postcard().having(THROUGH))))
    assert all(row.socket is not None for row in holds(design(postcard())))


def test_glue_follows_the_tails() -> None:
    two, four = (
        holds(design(postcard().having({"corner.tails_back": count})))[0].glue_area
        for count in (2, 4)
    )
    assert four == pytest.approx(2 * two)
    assert "582 mm² of long grain" in holds(design(postcard()))[0].sentence(MM)


@pytest.mark.parametrize("tails_on", ["ends", "sides"])
@pytest.mark.parametrize("grain", ["along", "across"])
def test_the_way_it_opens_agrees_with_the_finding(tails_on: str, grain: str) -> None:
    box = postcard().having({"corner.tails_on": tails_on, "panels.grain": grain})
    way = joint_direction(design(box))
    codes = {row.code for row in plan(box).findings}
    assert way.opens == ("joint-opens-when-panel-swells" in codes)
    assert way.slides != way.locks
    assert way.tail_boards == tails_on
    assert ("the joint opens" in way.sentence(MM)) == way.opens


def test_a_swelling_panel_is_told_in_its_own_millimetres() -> None:
    d = design(postcard())
    assert joint_direction(d).swelling == pytest.approx(d.bottom.swelling)
    assert "swells 1.47 mm" in joint_direction(d).swollen(MM)


def test_the_tail_boards_go_on_last() -> None:
    for box, pins, tails in ((postcard(), "sides", "ends"), (ears(), "ends", "sides")):
        steps = glue_up_steps(design(box))
        titles = [step.title for step in steps]
        onto = titles.index(f"the {pins} onto the bottom")
        drive = next(i for i, title in enumerate(titles) if title.startswith(f"the {tails} "))
        cramp = titles.index("cramps")
        assert onto < drive < cramp
        along = "along the length" if tails == "ends" else "across the width"
        assert along in steps[cramp].do
        assert f"both {tails}" in steps[cramp].do


def test_transfer_in_its_order() -> None:
    titles = [step.title for step in transfer_steps(design(postcard()))]
    order = ["try the tails", "register", "hold", "knife", "mark the waste", "saw", "chop"]
    assert [title for title in titles if title in order] == order


def test_the_waste_goes_the_way_that_the_joint_lets_it() -> None:
    """Half way from each face between tails always, between pins only where both faces are cut."""
    for joint, sockets, tips in (
        ({}, "from the inside face only", "tails reach the gauge-1 line on the end grain"),
        (THROUGH, "half way from each face", "tails stand 0.2 mm proud outside"),
    ):
        steps = {step.title: step for step in transfer_steps(design(postcard().having(joint)))}
        assert "half way from each face" in steps["clear between the tails"].do
        assert sockets in steps["chop"].do
        assert tips in steps["register"].do and "towards the bench" in steps["register"].do
        assert list(steps).index("clear between the tails") < list(steps).index("register")
    eared = {step.title: step for step in transfer_steps(design(ears()))}
    assert "the ear's underside" in eared["saw the half-pin shoulders"].do


def test_the_bottom_is_coated_before_the_glue_and_bare_at_its_dab() -> None:
    for box, dab in (
        (postcard(), "the back end's bottom groove"),
        (postcard().having({"panels.grain": "across"}), "one side's bottom groove"),
    ):
        steps = {step.title: step for step in glue_up_steps(design(box))}
        assert list(steps)[:2] == ["rehearse dry", "the bottom's first coat"]
        assert f"one dab, in the middle of {dab}" in steps["glue the first joints thinly"].do


@pytest.mark.parametrize("box", BOXES, ids=lambda box: f"{box.corner.tails_on} {box.lid.kind}")
def test_every_step_has_its_test(box: Choices) -> None:
    d = design(box)
    for steps in (transfer_steps(d), glue_up_steps(d)):
        table = step_table(steps, title="Steps")
        assert [row[0] for row in table.rows] == [str(i + 1) for i in range(len(steps))]
        for step in steps:
            assert step.title
            assert step.do.endswith(".")
            assert step.test.endswith(".")
            assert "  " not in step.sentence


def test_sizes_that_are_none_are_refused_in_words() -> None:
    with pytest.raises(ValueError, match="1 in 0 is none"):
        slope_angle(0)
    with pytest.raises(ValueError, match="1 in -7"):
        tail_overhang(8, slope=-7)
    with pytest.raises(ValueError, match="lean by 90"):
        lead_error(12, lead=90)
    with pytest.raises(ValueError, match="give both sizes"):
        socket_reach(0, thickness=12)
    with pytest.raises(ValueError, match="cuts no corner"):
        socket_reach(8, thickness=12, saw_angle=0)
