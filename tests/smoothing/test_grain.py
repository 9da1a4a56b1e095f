"""Reading the grain, maps of it, and where a stroke against it tears."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from toolkit.smoothing import (
    PATTERNS,
    Plane,
    grain_map,
    opposite,
    planed,
    strength_kept,
    where_to_start,
)

ROUGH = Plane.smoother().having(shaving=0.08, setback=None)


@pytest.mark.parametrize("side", ["face", "edge", "rim"])
def test_plane_the_way_the_lines_climb(side):
    assert where_to_start(side, rise=1, run=40).start == "left end"
    assert where_to_start(side, rise=-1, run=40).start == "right end"
    assert where_to_start(side, rise=0).start == "either end"
    assert "1 in 40" in where_to_start(side, rise=1, run=40).sentence()


@given(st.floats(-0.5, 0.5))
def test_turned_over_it_is_planed_from_the_other_end(slope):
    reading = where_to_start("face", rise=slope, run=1)
    other = {"left end": "right end", "right end": "left end", "either end": "either end"}
    assert opposite(reading).start == other[reading.start]
    assert opposite(opposite(reading)).start == reading.start


def test_end_grain_and_rims_have_their_own_care():
    end = where_to_start("end grain")
    assert end.start == "both edges" and "spelching" in end.sentence()
    assert opposite(end) == end
    assert "corner" in where_to_start("rim", rise=1).care


def test_the_advice_agrees_with_the_strokes():
    """The map's fibres climb to the far end as the reading's do to the right: one way is clean."""
    for slope in (-8.0, 8.0):
        grain = grain_map("straight", slope=slope, width=20, length=20)
        start = where_to_start("face", rise=slope, run=100).start
        direction = 1 if start == "left end" else -1
        clean = planed(ROUGH, width=20, length=20, grain=grain, direction=direction)
        torn = planed(ROUGH, width=20, length=20, grain=grain, direction=-direction)
        assert clean.torn_share == 0 < torn.torn_share


def test_it_tears_only_where_fibres_dive_ahead():
    for pattern in PATTERNS:
        grain = grain_map(pattern, slope=-8)
        surface = planed(ROUGH, grain=grain, direction=1)
        assert surface.torn.any(), pattern
        # A splinter runs ahead of where it began, by a few millimetres at most.
        rows, columns = np.nonzero(surface.torn)
        behind = [
            grain[max(r - 40, 0) : r + 1, max(c - 10, 0) : c + 11].min()
            for r, c in zip(rows[::50], columns[::50], strict=True)
        ]
        assert max(behind) < -1, pattern


@pytest.mark.parametrize(
    "helped",
    [{"setback": 0.2}, {"back_bevel": 15}, {"shaving": 0.03}],
)
def test_what_helps_against_tearing(helped):
    grain = grain_map("curly", slope=10)
    before = planed(ROUGH, grain=grain)
    after = planed(ROUGH.having(**helped), grain=grain)
    smooth = planed(ROUGH.having(**helped))
    worst = float((smooth.heights - after.heights).max())
    assert 0 < worst < float((planed(ROUGH).heights - before.heights).max())


def test_the_same_seed_tears_the_same():
    grain = grain_map("knot", slope=12)
    one, same = planed(ROUGH, grain=grain, seed=4), planed(ROUGH, grain=grain, seed=4)
    assert (one.heights == same.heights).all() and (one.torn == same.torn).all()
    assert (one.torn != planed(ROUGH, grain=grain, seed=5).torn).any()


def test_torn_places_lie_below_the_rest():
    grain = grain_map("curly", slope=10)
    torn, whole = planed(ROUGH, grain=grain), planed(ROUGH)
    deeper = torn.heights < whole.heights
    assert (deeper == torn.torn).all()


def test_strength_of_sloping_grain():
    """Wood Handbook GTR-190 Table 5-12 (from memory): its own rows, and nothing beyond them."""
    assert strength_kept(0) == (100, 100)
    assert strength_kept(1 / 20) == pytest.approx((93, 90))
    assert strength_kept(-1 / 5) == pytest.approx((55, 36))
    with pytest.raises(ValueError, match="1 in 5"):
        strength_kept(0.21)


@pytest.mark.parametrize(
    ("make", "words"),
    [
        (lambda: where_to_start("top"), "face, edge, rim, end grain"),
        (lambda: where_to_start("face", run=0), "run was given as 0"),
        (lambda: grain_map("wavy"), "straight, interlocked, curly, knot"),
        (lambda: grain_map("curly", slope=40), "slope of the grain was given as 40"),
        (lambda: grain_map("curly", step=0.001), "cells"),
        (lambda: planed(ROUGH, grain=np.zeros((3, 3))), "3 by 3 cells and the patch 400 by 600"),
        (lambda: planed(ROUGH, direction=0), "direction was given as 0"),
        (lambda: planed(ROUGH, passes=0), "passes was given as 0"),
        (lambda: planed(ROUGH, scatter=-1), "scatter was given as -1"),
        (lambda: planed(ROUGH.having(overlap=95), width=300, step=1, passes=50), "strokes"),
    ],
)
def test_refusals_say_what_would_do(make, words):
    with pytest.raises(ValueError, match=r"give|make it|choose|let them") as caught:
        make()
    assert words in str(caught.value)
