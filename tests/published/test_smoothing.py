"""Plane set-up against published figures and worked numbers.

Where no document is named, the figure was worked separately on paper; its tolerance is half the
last digit written down.
"""

from math import inf, sqrt

import numpy as np
import pytest

from toolkit.planes import JACK, SMOOTHER, Iron, Scallops, camber_radius, skewed
from toolkit.planes.angles import cutting_angle
from toolkit.smoothing import setbacks, shadow_length
from toolkit.smoothing.plane_checks import thickest_shaving
from toolkit.smoothing.raking import shading


def test_cutting_angles_are_sums():
    """Bevel down bed and back bevel; bevel up bed, honed bevel and micro bevel. Exact."""
    assert cutting_angle(45).angle == 45
    assert cutting_angle(45, back_bevel=10).angle == 55
    assert cutting_angle(12, bevel="up", honed_bevel=30).angle == 42
    assert cutting_angle(12, bevel="up", honed_bevel=25, micro_bevel=5).angle == 42
    assert cutting_angle(45, honed_bevel=30, micro_bevel=2).clearance == 13
    assert cutting_angle(12, bevel="up", back_bevel=5).clearance == 7


@pytest.mark.parametrize(("skew", "first", "second"), [(30, 37.8, 40.9), (15, 43.1, 44.0)])
def test_the_quoted_form_of_skew_and_the_derived_one(skew, first, second):
    """sin e = sin p cos s (quoted from a book on wooden planes) and tan e = tan p cos s (derived).

    At 45 degrees; worked separately to 0.1 degree.
    """
    turned = skewed(45, skew=skew)
    assert turned.up_the_iron == pytest.approx(first, abs=0.05)
    assert turned.along_the_travel == pytest.approx(second, abs=0.05)
    assert turned.up_the_iron < turned.along_the_travel < 45


def test_skew_narrows_the_cut():
    """cos 60 is a half: exact."""
    assert skewed(45, skew=60).width_share == pytest.approx(0.5)
    assert Iron(50, skew=60).cut_width == pytest.approx(25)


@pytest.mark.parametrize(
    ("radius", "pitch", "depth"),
    [(3, 0.5, 0.010435), (150, 40, 1.33931), (75, 25, 1.04900)],
)
def test_depth_of_a_scallop(radius, pitch, depth):
    """h = R - sqrt(R² - s²/4), worked separately: half the last digit of each."""
    tolerance = 5e-7 if depth < 1 else 5e-6
    assert Scallops(radius, pitch=pitch).depth == pytest.approx(depth, abs=tolerance)


def test_shallow_scallops_by_the_sum_on_paper():
    """s²/(8R) is within (s/R)²/16 of the circle: the next term of the series."""
    for radius, pitch in ((150, 40), (6250, 27), (359, 20)):
        row = Scallops(radius, pitch=pitch)
        assert row.shallow_depth == pytest.approx(row.depth, rel=(pitch / radius) ** 2 / 16 * 1.01)
        assert row.shallow_depth < row.depth


def test_roughness_of_shallow_scallops():
    """ISO 4287 / ISO 21920-2: Ra = 4h/(9√3), Rq = 2h/(3√5), Rz = h.

    The factors 0.2566 and 0.2981 worked separately: half their last digit.
    """
    row = Scallops(8839, pitch=26.7)
    assert row.ra / row.depth == pytest.approx(0.2566, abs=5e-5)
    assert row.rq / row.depth == pytest.approx(0.2981, abs=5e-5)
    assert row.rz == row.depth


def test_roughness_by_the_definitions():
    """The standards' integrals over one scallop, summed over 20 000 midpoints.

    The closed forms hold for shallow scallops: at s/R = 0.05 the circle differs by under 2e-4.
    """
    row = Scallops(400, pitch=20)
    x = (np.arange(20_000) + 0.5) / 20_000 * row.pitch
    z = row.radius - np.sqrt(row.radius**2 - (x - row.pitch / 2) ** 2)
    z = z - z.mean()
    assert np.abs(z).mean() == pytest.approx(row.ra, rel=5e-4)
    assert np.sqrt((z**2).mean()) == pytest.approx(row.rq, rel=5e-4)
    assert np.ptp(z) == pytest.approx(row.rz, rel=5e-4)


def test_camber_seen_by_the_wood():
    """Projection by the sine of the bed: 0.707 at 45 deg, 0.208 at 12; 3.4 times the camber."""
    steep, low = Iron(50, radius=6250, bed=45), Iron(50, radius=6250, bed=12)
    assert steep.drop_in_wood / steep.drop == pytest.approx(0.707, abs=5e-4)
    assert low.drop_in_wood / low.drop == pytest.approx(0.208, abs=5e-4)
    assert steep.drop_in_wood / low.drop_in_wood == pytest.approx(3.4, abs=0.05)


def test_a_jack():
    """Radius 254 mm (10 in), 45 deg, 0.4 mm: radius in the wood 359, shaving 33.9 wide."""
    iron = Iron(50, radius=254, bed=45)
    assert iron.radius_in_wood == pytest.approx(359, abs=0.5)
    assert iron.shaving_width(0.4) == pytest.approx(33.9, abs=0.05)
    assert iron.corner_depth(0.4) == 0


def test_a_smoother():
    """0.05 mm over 50 mm: R 6250; 0.03 mm shavings 46 wide; step ws/√3 27, ridge 0.010."""
    assert camber_radius(0.05, width=50) == pytest.approx(6250, abs=0.5)
    plane = SMOOTHER.having(overlap=100 * (1 - 1 / sqrt(3)))
    assert plane.shaving_width == pytest.approx(46, abs=0.5)
    assert plane.pitch == pytest.approx(27, abs=0.5)
    assert plane.scallops.depth == pytest.approx(0.010, abs=5e-4)


def test_corners_of_a_narrow_iron():
    """Depth less w²/(8R): a straight edge digs in with its whole depth."""
    assert Iron(50, radius=inf).corner_depth(0.03) == 0.03
    narrow = Iron(20, radius=6250, bed=45)
    assert narrow.corner_depth(0.03) == pytest.approx(0.03 - 400 / (8 * 8838.8), rel=1e-4)
    assert narrow.shaving_width(0.03) == 20


@pytest.mark.parametrize(("lamp", "shadow"), [(45, 0.02), (10, 0.11), (5, 0.23), (2, 0.57)])
def test_shadow_of_a_plane_track(lamp, shadow):
    """A step of 0.02 mm, s/tan(lamp), worked separately to 0.01 mm."""
    assert shadow_length(0.02, lamp_height=lamp) == pytest.approx(shadow, abs=0.005)


def test_steepest_slopes_and_their_shade():
    """4 ridge/pitch: a smoother 0.09 deg, a jack 1.6; the smoother at 5 deg shades by 1.7 %."""
    best = 100 * (1 - 1 / sqrt(3))
    smoother = SMOOTHER.having(overlap=best).scallops
    jack = JACK.having(overlap=best).scallops
    assert smoother.steepest == pytest.approx(0.09, abs=0.005)
    assert jack.steepest == pytest.approx(1.6, abs=0.05)
    assert 100 * shading(smoother.steepest, lamp_height=5) == pytest.approx(1.7, abs=0.05)


def test_where_the_cap_iron_meets_the_wood():
    """Setback × sin(bed): 0.15 mm at 45 deg is 0.11."""
    assert thickest_shaving(0.15, bed=45) == pytest.approx(0.11, abs=0.005)


@pytest.mark.parametrize(
    ("plane", "printed", "inches"),
    [("smoother", "1/32 in", 1 / 32), ("jack", "1/8 in", 1 / 8)],
)
def test_noyes_on_the_cap_iron(plane, printed, inches):
    """Noyes, Handwork in Wood, 1910 (read): 1/32 in for a smoother, 1/8 for a jack. Exact."""
    row = next(r for r in setbacks() if r.plane == plane and "Noyes" in r.source.text)
    assert row.printed == printed
    assert row.least == row.most == pytest.approx(inches * 25.4)
    assert row.source.seen == "read"
