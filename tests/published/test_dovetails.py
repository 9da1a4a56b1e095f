"""Worked examples of dovetails, computed by hand apart from this code, and what the old books say.

Each tolerance is half the last digit printed. Slopes of Fairham, Noyes, Ross and *Our Workshop*
were read in the books or in excerpts; the rule of 1 in 6 for softwood and 1 in 8 for hardwood is
common practice, no source, from memory, and so are the widths of tails and the 0.2 mm of proud.
"""

import pytest

from tests.boxes import first_ears as ears, first_postcard as postcard
from toolkit.box import (
    Choices,
    Design,
    cheek_length,
    design,
    gauge_settings,
    holds,
    lead_error,
    slope_advice,
    slope_angle,
    socket_reach,
    tail_overhang,
    walk,
)
from toolkit.box.customs import NOYES, Customs
from toolkit.measures import keys_of


def whole_front(choices: Choices | None = None) -> Design:
    """The postcard box, its front up to the groove's floor as in the hand-worked tables."""
    return design((choices or postcard()).having({"panels.under_lid": 0.0}))


@pytest.mark.parametrize(
    ("slope", "angle"),
    [(5, 11.31), (6, 9.46), (7, 8.13), (8, 7.13)],
)
def test_slopes_as_angles(slope: float, angle: float) -> None:
    """Arc tangent, two decimals. At least one printed table has 1 in 8 wrong: it is 7.13."""
    assert slope_angle(slope) == pytest.approx(angle, abs=0.005)


def test_what_the_books_say_side_by_side() -> None:
    said = {(row.who, row.wood, row.limit): row.slope for row in slope_advice()}
    assert said[("Fairham", "any", "usual")] == 8
    assert said[("Fairham", "any", "most flare")] == 6
    assert said[("Ross", "any", "usual")] == 4
    # A triangle of 3 by 5/8: 11.8 degrees, which Noyes rounds to 80 from the baseline.
    assert said[("Noyes", "any", "usual")] == pytest.approx(3 / (5 / 8))
    assert slope_angle(3 / (5 / 8)) == pytest.approx(11.8, abs=0.05)
    assert said[("common practice", "softwood", "usual")] == 6
    assert said[("common practice", "hardwood", "usual")] == 8
    assert ("Our Workshop", "softwood", "less flare") in said
    assert said[("Our Workshop", "softwood", "less flare")] is None


def test_every_authority_is_named_with_whether_it_was_read() -> None:
    for row in slope_advice():
        assert row.source.text
        assert row.who in row.sentence
        memory = row.who == "common practice"
        assert ("from memory" in row.sentence) == memory


def test_overhang_from_1_in_8_to_1_in_6() -> None:
    assert tail_overhang(8, slope=8) == pytest.approx(1.00, abs=0.005)
    assert tail_overhang(8, slope=6) == pytest.approx(1.33, abs=0.005)


def test_divider_walk_of_the_back() -> None:
    """64 wide, half pin 5, pin 6, three tails: exact."""
    back = walk(whole_front().back)
    assert back is not None
    assert back.step == 20
    assert back.forward == (5, 25, 45, 65)
    assert back.past == 6
    assert back.off_edge == 1
    assert back.tails == ((5, 19), (25, 39), (45, 59))


def test_divider_step_of_the_front() -> None:
    front = walk(whole_front().front)
    assert front is not None
    assert front.step == 23.5


def test_tails_and_pins_at_their_two_faces() -> None:
    """Tip = base + 2 Ls/r, narrow pin = pin − 2 Ls/r, narrow half pin = half pin − Ls/r."""
    back = whole_front().back
    assert back.tails[0].tip_width == pytest.approx(16.3, abs=0.05)
    assert back.narrowest_pin == pytest.approx(3.71, abs=0.005)
    assert back.half_pins[0].tip_width == pytest.approx(3.86, abs=0.005)


def test_two_gauge_settings() -> None:
    flush = {"corner.proud": 0.0}
    settings = gauge_settings(whole_front(postcard().having(flush)))
    assert (settings.tail_back.value, settings.board_back.value) == (8, 12)
    assert settings.ear is None
    tip, base = gauge_settings(whole_front(ears().having(flush))).ear or (None, None)
    assert tip is not None
    assert base is not None
    assert (tip.value, base.value) == (4, 12)


@pytest.mark.parametrize(
    ("gauged", "tail", "lap", "end"),
    [(None, 7.4, 4.0, 124.8), (8.0, 8.0, 3.4, 126.0)],
    ids=["before the tails are gauged", "after"],
)
def test_a_side_that_came_out_thin(
    gauged: float | None, tail: float, lap: float, end: float
) -> None:
    """Side 11.4 instead of 12: before gauging the tails follow, afterwards the lap pays. Exact."""
    thin = postcard().having({"made.side_thickness": 11.4, "made.tail_length": gauged})
    d = design(thin)
    assert gauge_settings(d).tail_back.value == pytest.approx(tail)
    assert d.frame.lap_back.value == pytest.approx(lap)
    assert d.frame.back_length.value == pytest.approx(end)


@pytest.mark.parametrize(("lead", "error"), [(0.5, 0.10), (1, 0.21), (2, 0.42)])
def test_a_saw_that_leans(lead: float, error: float) -> None:
    assert lead_error(12, lead=lead) == pytest.approx(error, abs=0.005)


def test_how_much_of_a_socket_a_saw_reaches() -> None:
    """A third of 8 × 12 at 45 degrees; half at 33.7."""
    at_45 = socket_reach(8, thickness=12)
    assert at_45.share == pytest.approx(1 / 3)
    assert at_45.best_angle == pytest.approx(33.7, abs=0.05)
    assert socket_reach(8, thickness=12, saw_angle=at_45.best_angle).share == pytest.approx(0.5)
    assert socket_reach(12, thickness=8).share == pytest.approx(1 / 3)


def test_glue_area_of_both_corners() -> None:
    """Two cheeks a tail: 6 × 12 × 8.08 = 582 mm² and 388 mm²; whole square millimetres."""
    back, front = holds(whole_front())
    assert back.glue_area == pytest.approx(582, abs=0.5)
    assert front.glue_area == pytest.approx(388, abs=0.5)
    assert cheek_length(8, slope=7) == pytest.approx(8.08, abs=0.005)


def test_proud_belongs_to_the_second_setting_only() -> None:
    """0.2 proud by default, from memory; a tail's own length never changes."""
    usual, shy, much = (
        gauge_settings(whole_front(postcard().having({"corner.proud": proud})))
        for proud in (None, -0.2, 0.5)
    )
    assert usual.board_back.value == pytest.approx(12.2)
    assert shy.board_back.value == pytest.approx(11.8)
    assert usual.tail_back == shy.tail_back == much.tail_back
    assert usual.tail_back.value == 8


def test_up_to_four_times_as_wide_as_pins() -> None:
    """Noyes: equal tails and pins are strongest, up to four times for looks."""
    custom = keys_of(Customs)["tail_per_pin_most"]
    kind, source = custom.kind, custom.source
    assert (kind, source) == ("number", f"custom: {NOYES}")
    assert postcard().customs.tail_per_pin_most == 4
