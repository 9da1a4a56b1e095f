"""Surfaces made by a hand that strays, and what is measured on them."""

import numpy as np
import pytest

from toolkit.measures import Rule
from toolkit.planes import JACK, SMOOTHER, planed


def test_nothing_is_ever_added():
    one, two = (planed(SMOOTHER, scatter=5, depth_scatter=30, passes=n).profile for n in (1, 2))
    assert (one <= 0).all() and (two <= 0).all() and two.mean() < one.mean()


def test_no_stroke_cuts_deeper_than_it_was_set():
    surface = planed(JACK, depth_scatter=20, scatter=3, passes=1)
    deepest = max(row.depth for row in surface.strokes if 0 < row.centre < surface.width)
    assert float(surface.profile.min()) == pytest.approx(-deepest, abs=1e-4)
    assert all(stroke.level == 0 for stroke in surface.strokes)


def test_scattered_tracks_cost_depth():
    """Tracks that leave gaps take less off: the sole rides on what they left."""
    even, loose = (
        np.mean([-planed(SMOOTHER, passes=6, scatter=by, seed=s).profile.mean() for s in range(4)])
        for by in (0.0, 8.0)
    )
    assert loose < 0.9 * even


def test_a_skewed_plane_leaves_tracks_closer_together():
    square, turned = planed(SMOOTHER), planed(SMOOTHER.having(skew=30))
    assert turned.plane.pitch < square.plane.pitch
    assert turned.ridge == pytest.approx(turned.plane.scallops.depth, rel=0.01)


def test_roughness_across_a_part_of_a_track():
    """A patch narrower than one track is taken whole."""
    part = planed(SMOOTHER, width=10, length=2)
    assert part.evaluated().shape == part.profile.shape
    assert 0 < part.ra < SMOOTHER.scallops.ra


def test_a_high_track_of_a_straight_edge_is_a_step_and_no_ridge():
    straight = SMOOTHER.having(camber_radius=np.inf, overlap=0, iron_width=12)
    surface = planed(straight, depth_scatter=30, passes=1)
    assert surface.ridge == 0 < surface.corner_step
    assert "no ridges" in surface.sentence(Rule.millimetres())


def test_heights_cannot_be_changed_by_accident():
    for heights in (planed(SMOOTHER).profile, planed(SMOOTHER).heights[0]):
        with pytest.raises(ValueError, match="read-only"):
            heights[0] = 1.0


@pytest.mark.parametrize(
    ("call", "said"),
    [
        (lambda: planed(SMOOTHER, passes=0), "passes was given as 0"),
        (lambda: planed(SMOOTHER, scatter=-1), "scatter was given as -1"),
        (lambda: planed(SMOOTHER, step=0.001), "choose a step that gives from 4"),
        (lambda: planed(SMOOTHER.having(overlap=95), width=300, step=1, passes=50), "let them"),
    ],
)
def test_refusals(call, said):
    with pytest.raises(ValueError, match=said):
        call()
