"""Random boxes that the workbook would let a student build, built as solids.

The solids know the plan's plain data and the choices; they share no geometry with the workbook.
"""

import pytest

from tests.oracle.designs import ARRANGEMENTS, Arrangement
from tests.oracle.survey import survey

each_arrangement = pytest.mark.parametrize("arrangement", ARRANGEMENTS, ids=str)


@each_arrangement
def test_boards_fit_without_overlap_or_gap(arrangement: Arrangement) -> None:
    assert survey()[arrangement].standing == []


@each_arrangement
def test_parts_move_as_they_should_and_no_other_way(arrangement: Arrangement) -> None:
    verdict = survey()[arrangement]
    assert verdict.moved > 0
    assert verdict.moving == []


@each_arrangement
def test_daylight_is_where_the_findings_say(arrangement: Arrangement) -> None:
    assert survey()[arrangement].daylight == []


@each_arrangement
def test_a_cure_closes_its_hole_in_a_box_that_can_be_built(arrangement: Arrangement) -> None:
    verdict = survey()[arrangement]
    print(f"{arrangement}: {dict(verdict.cured)}")
    assert verdict.cures == []
    assert sum(verdict.cured.values()) > 0


@each_arrangement
def test_boxes_are_not_all_of_a_kind(arrangement: Arrangement) -> None:
    """Random boxes prove little if hardly any can be built, or if none has a fault to find."""
    verdict = survey()[arrangement]
    print(f"{arrangement}: {verdict.share:.0%} of {verdict.drawn} can be built")
    assert 0.15 < verdict.share < 0.85
    assert 0 < verdict.holed < verdict.built
    assert len(verdict.refused) >= 4
