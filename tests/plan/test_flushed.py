"""What flushing the joints takes from a box, worked by hand and over all arrangements."""

import pytest

from tests.boxes import (
    first_ears as ears,
    first_inch_postcard as inch_postcard,
    first_lift_off as lift_off,
    first_postcard as postcard,
)
from toolkit.plan import flushed, plan


def _sizes(box, skim):  # type: ignore[no-untyped-def]
    return {row.name: row.value for row in flushed(plan(box), skim=skim).workings}


def test_the_postcard_box_by_hand() -> None:
    sizes = _sizes(postcard(), 0.3)
    assert sizes["lap"] == pytest.approx(3.7)
    assert sizes["wall behind the groove"] == pytest.approx(7.7)
    assert sizes["lid length"] == pytest.approx(167.7)
    assert sizes["rim strip"] == pytest.approx(7.0)


@pytest.mark.parametrize("make", [postcard, inch_postcard, ears, lift_off])
def test_the_inside_and_the_tails_stay(make) -> None:  # type: ignore[no-untyped-def]
    box = flushed(plan(make()), skim=0.25)
    before, after = box.before.design.frame, box.after.design.frame
    assert after.tail_back.value == pytest.approx(before.tail_back.value)
    assert after.inside_length.value == pytest.approx(before.inside_length.value)
    assert after.inside_width.value == pytest.approx(before.inside_width.value)
    assert after.lap_back.value == pytest.approx(before.lap_back.value - 0.25)
    assert after.outside_width.value == pytest.approx(before.outside_width.value - 0.5)


def test_nothing_planed_changes_nothing() -> None:
    box = flushed(plan(postcard()), skim=0.0)
    assert box.after.design.frame.lap_back.value == box.before.design.frame.lap_back.value


def test_findings_speak_again() -> None:
    codes = {row.code for row in flushed(plan(postcard()), skim=1.2).findings}
    assert "lap-thin" in codes
    assert "lap-thin" not in {row.code for row in flushed(plan(postcard()), skim=0.1).findings}


@pytest.mark.parametrize("skim", [-0.1, 12.0, float("nan")])
def test_more_than_there_is_is_refused(skim: float) -> None:
    with pytest.raises(ValueError, match="leaves nothing of a wall"):
        flushed(plan(postcard()), skim=skim)


def test_no_box_no_flushing() -> None:
    with pytest.raises(ValueError, match="no room"):
        flushed(plan(postcard().having({"corner.tails_back": 24})), skim=0.3)


def test_the_box_says_how_much_comes_off() -> None:
    gentle = plan(postcard().having({"customs.flushing": 0.2}))
    assert flushed(gentle).skim == 0.2
    assert flushed(plan(postcard())).skim == 0.3


@pytest.mark.parametrize("make", [postcard, inch_postcard, ears])
def test_planing_the_rim_leaves_groove_and_inside_where_they_were(make) -> None:  # type: ignore[no-untyped-def]
    box = flushed(plan(make()), skim=0.2, rim_planed=0.4)
    before, after = box.before.design.frame, box.after.design.frame
    assert after.wall_height.value == pytest.approx(before.wall_height.value - 0.4)
    assert after.lid_groove.high == pytest.approx(before.lid_groove.high)
    assert after.inside_height.value == pytest.approx(before.inside_height.value)
    cut, left = box.before.design.back.tails, box.after.design.back.tails
    assert [(t.low, t.high) for t in left] == [(t.low, t.high) for t in cut]


def test_the_strip_above_the_lid_is_looked_at_again() -> None:
    box = flushed(plan(postcard()), skim=0.2, rim_planed=0.6)
    sizes = {row.name: row.value for row in box.workings}
    assert sizes["rim strip"] == pytest.approx(6.4)
    assert "rim-planed" in {row.code for row in box.findings}
    thin = flushed(plan(postcard()), skim=0.2, rim_planed=2.5)
    assert "rim-thin" in {row.code for row in thin.findings}
    with pytest.raises(ValueError, match="off the rim leaves nothing"):
        flushed(plan(postcard()), skim=0.2, rim_planed=7.0)


def test_a_box_without_lid_grooves_has_no_rim_and_no_play() -> None:
    lift = {row.name for row in flushed(plan(lift_off()), skim=0.2).workings}
    assert not lift & {"rim strip", "play of the lid", "lid length"}
