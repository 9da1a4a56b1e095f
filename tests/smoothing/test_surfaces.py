"""Surfaces made by a hand: scatter, wander, one plane after another."""

import numpy as np
import pytest

from toolkit.measures import Rule
from toolkit.smoothing import Plane, grain_map, planed

SMOOTHER, JACK = Plane.smoother(), Plane.jack()


def test_nothing_is_ever_added():
    surface = planed(SMOOTHER, scatter=5, depth_scatter=30, wander=2, passes=3)
    before = surface.heights.copy()
    after = planed(SMOOTHER, scatter=5, depth_scatter=30, wander=2, over=surface)
    assert (surface.heights <= 0).all()
    assert (after.heights <= before + 1e-9).all()
    assert (surface.heights == before).all()


def test_without_wander_all_rows_are_alike():
    assert np.ptp(planed(SMOOTHER, scatter=4).heights, axis=0).max() == 0
    assert np.ptp(planed(SMOOTHER, wander=1).heights, axis=0).max() > 0.001


def test_no_stroke_cuts_deeper_than_it_was_set():
    surface = planed(JACK, depth_scatter=20, scatter=3, passes=1)
    deepest = max(row.depth for row in surface.strokes if 0 < row.centre < surface.width)
    assert float(surface.heights.min()) == pytest.approx(-deepest, abs=1e-4)
    assert all(stroke.level == 0 for stroke in surface.strokes)


def test_a_smoother_rides_over_a_jacks_scallops_at_first():
    jack = planed(JACK)
    once = planed(SMOOTHER, over=jack, passes=1)
    assert 0.5 * jack.ridge < once.ridge < jack.ridge
    # Some dozens of passes later its own, much lower ridges are all there is.
    done = planed(SMOOTHER, over=jack, passes=12)
    assert done.ridge == pytest.approx(SMOOTHER.scallops.depth, rel=0.02)


def test_what_tore_is_torn_until_it_is_planed_away():
    deep = JACK.having(setback=None)
    torn = planed(deep, grain=grain_map("straight", slope=-6))
    still = planed(SMOOTHER, over=torn, passes=1)
    assert 0 < still.torn_share <= torn.torn_share
    assert planed(JACK, over=torn, passes=1).torn_share < torn.torn_share
    assert planed(JACK, over=torn, passes=4).torn_share == 0


def test_scattered_tracks_cost_depth():
    """Tracks that leave gaps take less off: the sole rides on what they left."""
    even = np.mean([planed(SMOOTHER, passes=6, seed=s).taken_off for s in range(4)])
    loose = np.mean([planed(SMOOTHER, passes=6, scatter=8, seed=s).taken_off for s in range(4)])
    assert loose < 0.9 * even


def test_a_skewed_plane_leaves_tracks_closer_together():
    square, turned = planed(SMOOTHER), planed(SMOOTHER.having(skew=30))
    assert turned.plane.pitch < square.plane.pitch
    assert turned.ridge == pytest.approx(turned.plane.scallops.depth, rel=0.01)


def test_roughness_across_a_part_of_a_track():
    """A patch narrower than one track is taken whole."""
    part = planed(SMOOTHER, width=10, length=2)
    assert part.evaluated().shape == part.heights.shape
    assert 0 < part.ra < SMOOTHER.scallops.ra


def test_ridges_are_measured_between_torn_places():
    rough = SMOOTHER.having(setback=None)
    torn = planed(rough, grain=grain_map("straight", slope=-10))
    assert torn.torn_share > 5
    assert torn.ridge == pytest.approx(rough.scallops.depth, rel=0.05)
    assert torn.corner_step == 0


def test_a_high_track_of_a_straight_edge_is_a_step_and_no_ridge():
    straight = SMOOTHER.having(camber_radius=np.inf, overlap=0, iron_width=12)
    surface = planed(straight, depth_scatter=30, passes=1)
    assert surface.ridge == 0 < surface.corner_step
    assert "no ridges" in surface.sentence(Rule.millimetres())


def test_the_sentence_says_what_was_measured():
    surface = planed(SMOOTHER)
    words = surface.sentence(Rule.millimetres())
    assert "10 strokes 26.7 mm apart" in words and "ridges of 0.01 mm" in words
    assert "in)" not in words and "0.0004 in" in surface.sentence(Rule.inches())


def test_heights_cannot_be_changed_by_accident():
    with pytest.raises(ValueError, match="read-only"):
        planed(SMOOTHER).heights[0, 0] = 1.0


def test_a_picture_size_patch_is_quick():
    """Asked for: 30 ms. Three times that, for a busy machine."""
    from time import process_time

    def once() -> float:
        start = process_time()
        planed(SMOOTHER, scatter=2, depth_scatter=10, wander=0.5)
        return process_time() - start

    assert min(once() for _ in range(5)) < 3 * 0.03
