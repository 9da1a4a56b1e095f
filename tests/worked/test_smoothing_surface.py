"""The height field measured, against the closed forms of what made it."""

from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings, strategies as st

from toolkit.planes import JACK, SMOOTHER, Plane, Scallops, planed

WITHIN = 0.01  # asked of the field: one percent


def _agrees(plane: Plane, **patch: float) -> None:
    surface = planed(plane, **patch)
    closed = Scallops(plane.iron.radius_in_wood, pitch=plane.pitch)
    assert surface.ridge == pytest.approx(closed.depth, rel=WITHIN)
    assert surface.ra == pytest.approx(closed.ra, rel=WITHIN)
    part = surface.evaluated()
    assert np.std(part, dtype=np.float64) == pytest.approx(closed.rq, rel=WITHIN)
    # Rz is read off the cells themselves: a crest between two of them is missed by up to 2 step/s,
    # and a sole that rides on such cells lies lower than its neighbour by as much.
    missed = 2 * surface.step / plane.pitch
    assert surface.rz == pytest.approx(closed.rz, rel=missed + 0.001)


@pytest.mark.parametrize("plane", [SMOOTHER, JACK])
def test_ridge_and_roughness_of_a_common_plane(plane: Plane) -> None:
    _agrees(plane)


@settings(max_examples=60, deadline=None)
@given(
    drop=st.floats(0.02, 1.5),
    share=st.floats(0.1, 0.9),
    bed=st.sampled_from([12.0, 45.0, 50.0]),
    overlap=st.floats(30, 85),
)
def test_ridge_and_roughness_of_any_plane(
    drop: float, share: float, bed: float, overlap: float
) -> None:
    """Irons whose corners stay clear; shavings a share of what their camber allows."""
    iron = Plane(bed=bed, bevel="up", honed_bevel=25, setback=None).iron
    plane = Plane(
        bed=bed,
        bevel="up",
        honed_bevel=25,
        setback=None,
        camber_radius=iron.width**2 / (8 * drop) + drop / 2,
        overlap=overlap,
    )
    plane = plane.having(shaving=share * plane.iron.drop_in_wood)
    _agrees(plane, length=2, step=min(0.1, plane.pitch / 60))


def test_a_pass_takes_the_shaving_less_the_ridge() -> None:
    """Each pass rides on the ridges of the last: it lowers them by depth less ridge. Exact."""
    plane = JACK
    tops = [float(planed(plane, passes=n, length=1).heights.max()) for n in (1, 2, 3)]
    net = plane.shaving - plane.scallops.shallow_depth
    # A crest between two cells is missed by up to 2 step/s of the ridge.
    slack = plane.scallops.depth * 0.2 / plane.pitch
    assert tops == pytest.approx([-net, -2 * net, -3 * net], abs=3 * slack)


def test_more_overlap_makes_lower_ridges_by_the_square() -> None:
    """Half the step, a quarter of the ridge: within a percent of the cells' reading."""
    wide = planed(SMOOTHER.having(overlap=40))
    close = planed(SMOOTHER.having(overlap=70))
    assert wide.ridge / close.ridge == pytest.approx(4, rel=0.02)


def test_a_straight_edge_leaves_steps_and_a_cambered_one_ridges() -> None:
    hand = {"scatter": 2.0, "depth_scatter": 25.0, "seed": 3}
    straight = planed(SMOOTHER.having(camber_radius=np.inf, overlap=30), **hand)
    cambered = planed(SMOOTHER, **hand)
    assert straight.ridge == 0 and straight.corner_step > 0.001
    assert cambered.corner_step == 0 and cambered.ridge > 0.005


def test_the_step_measured_is_the_difference_of_two_tracks() -> None:
    """Two strokes of a straight edge, set a known depth apart, side by side."""
    surface = planed(
        SMOOTHER.having(camber_radius=np.inf, overlap=0, iron_width=30),
        depth_scatter=30,
        passes=1,
    )
    depths = [s.depth for s in surface.last_pass if -15 < s.centre < surface.width + 15]
    steps = [abs(a - b) for a, b in pairwise(depths)]
    assert surface.corner_step == pytest.approx(max(steps), abs=2e-6)
