"""What flushing the joints takes from a box, worked by hand and over all arrangements."""

from __future__ import annotations

import pytest

from tests.boxes import ears, inch_postcard, lift_off, postcard
from toolkit.plan import plan
from toolkit.plan.flushed import flushed


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
        flushed(plan(postcard().having(corner__tails_back=24)), skim=0.3)
