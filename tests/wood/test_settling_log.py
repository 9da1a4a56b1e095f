"""Settling: a log is judged when it allows a judgement, and not before."""

import math
import random

import pytest

from toolkit.wood import settling


def log_of(final, *, gap, constant, days, step=1.0):
    """Readings of wood that goes to ``final`` with this time constant, on a scale of this step."""
    weights = [final + gap * math.exp(-day / constant) for day in days]
    return [(day, round(weight / step) * step) for day, weight in zip(days, weights, strict=True)]


def test_a_bundle_of_sticks_is_foreseen():
    """2.1 kg that will lose 200 g in all, time constant 8 days: by day 12 45 g are still to go."""
    found = settling(log_of(2100, gap=200, constant=8, days=[0, 2, 4, 6, 9, 12]))
    assert found.settled is False
    assert found.final_weight == pytest.approx(2100, rel=0.005)
    until = 8 * math.log(200 / (0.005 * 2100)) - 12
    assert found.days_left == pytest.approx(until, abs=2.5)
    assert "more days" in found.sentence()


def test_the_same_bundle_later_is_settled():
    found = settling(log_of(2100, gap=200, constant=8, days=[0, 3, 6, 9, 13, 18, 26]))
    assert found.settled is True
    assert found.days_left == 0
    assert found.sentence().startswith("Settled:")


def test_wood_that_takes_up_water_is_judged_alike():
    found = settling(log_of(2100, gap=-150, constant=6, days=[0, 2, 4, 6, 9, 12]))
    assert found.final_weight == pytest.approx(2100, rel=0.005)


def test_one_reading_says_nothing():
    found = settling([(0, 500)])
    assert (found.last_change, found.final_weight, found.settled) == (None, None, None)
    assert found.sentence().startswith("Too early to say")


def test_two_readings_far_apart_are_surely_not_settled():
    found = settling([(0, 500), (2, 470)])
    assert found.last_change == pytest.approx(-6)
    assert found.settled is False
    assert found.final_weight is None
    assert found.days_left is None


def test_readings_without_a_bend_give_no_end():
    found = settling([(0, 5000), (2, 4990), (4, 4980), (6, 4970)])
    assert found.final_weight is None
    assert found.days_left is None
    assert found.settled is not True


def test_a_curve_that_happens_to_fit_is_no_surer_than_the_scale():
    """Four readings lie on a perfect curve, but each was rounded: only a fine scale may tell."""
    readings = [(day, 400 + 20 * math.exp(-day / 10)) for day in (0, 2, 4, 6)]
    assert settling(readings, scale_step=1.0).final_weight is None
    assert settling(readings, scale_step=0.001).final_weight == pytest.approx(400, rel=1e-4)


def test_a_coarse_scale_is_blamed():
    found = settling([(0, 300), (4, 300), (8, 300)])
    assert found.settled is None
    assert "coarse" in found.reason


def test_a_fine_scale_settles_the_same_piece():
    found = settling([(0, 300.0), (4, 300.0), (8, 300.0)], scale_step=0.1)
    assert found.settled is True


def test_a_long_wait_makes_up_for_a_coarse_scale():
    assert settling([(0, 300), (30, 300)]).settled is True


def test_promises_hold_for_most_of_many_logs():
    """Two standard errors of 0.5 % are promised: 95 % of the ends, and here nearly all of them.

    Logs are drawn as a class would make them: any wood, a scale of 1 g, a reading now and then.
    """
    draw = random.Random(7)
    ends, verdicts = [], []
    for _ in range(400):
        final, gap = draw.uniform(400, 4000), draw.uniform(-0.02, 0.1)
        constant = draw.uniform(2, 30)
        days = [0]
        for _ in range(draw.randint(3, 9)):
            days.append(days[-1] + draw.randint(1, 6))
        found = settling(log_of(final, gap=final * gap, constant=constant, days=days))
        left = 100 * abs(gap) * math.exp(-days[-1] / constant)
        if found.final_weight is not None:
            ends.append(abs(found.final_weight / final - 1) < 0.005)
        if found.settled is not None:
            verdicts.append(found.settled == (left <= 0.5))
    assert len(ends) > 150
    assert sum(ends) / len(ends) > 0.95
    assert sum(verdicts) / len(verdicts) > 0.95


@pytest.mark.parametrize(
    ("readings", "words"),
    [
        ([], "no readings"),
        ([(0, 500), (0, 490)], "Day 0 follows day 0"),
        ([(3, 500), (1, 490)], "Day 1 follows day 3"),
        ([(0, 500), (2, 0)], "the weight on day 2 was given as 0 g"),
        ([(0, 500), (math.nan, 490)], "Day nan follows day 0"),
    ],
)
def test_a_log_that_cannot_be_one_is_refused(readings, words):
    with pytest.raises(ValueError, match=words):
        settling(readings)


def test_a_scale_must_have_a_step():
    with pytest.raises(ValueError, match="scale_step was given as 0 g"):
        settling([(0, 500), (1, 499)], scale_step=0)
