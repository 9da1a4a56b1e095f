"""Truing by hand: worked numbers, and what geometry says in closed form.

The bench sums are the workbook's own worked examples, each worked apart from the code; no
handbook prints them. Tolerances are half the last digit given. Closed forms are exact, and hold to
the solver's accuracy.
"""

import numpy as np
import pytest

from tests.truing.strokes_by_hand import planed_by_hand
from toolkit.planes import JACK, SMOOTHER
from toolkit.truing import (
    Warp,
    crosscut_first,
    cut_to,
    face_of,
    least_planing,
    least_strokes,
    least_twist,
    out_of_square,
    stick_reading,
    thickest_board,
    thickness_from,
)
from toolkit.truing.sticks import magnification

SOLVED = 1e-6  # what a linear program is solved to, with room [mm]
SIZE = (700.0, 72.0)
TILTS = [(0.0, 0.0, 0.0), (0.004, -0.03, 12.0), (-0.05, 0.1, -300.0)]

# Twist t, cup c, bow b; deepest removal, and the mean where it has a closed form. With τ = t/4, a
# cup and a twist together cost c + τ + τ²/(4c) while τ ≤ 2c, and t/2 beyond.
FACES = [
    pytest.param(Warp(*SIZE, twist=2.0), 1.0, 0.5, id="twist: half of it, mean a quarter"),
    pytest.param(Warp(*SIZE, twist=-2.0), 1.0, 0.5, id="twist the other way"),
    pytest.param(Warp(*SIZE, cup=0.6), 0.6, 0.4, id="cup, crown up: mean two thirds"),
    pytest.param(Warp(*SIZE, cup=-0.6), 0.6, 0.2, id="cup, hollow up: mean a third"),
    pytest.param(Warp(*SIZE, bow=1.5), 1.5, 1.0, id="bow, crown up"),
    pytest.param(Warp(*SIZE, bow=-1.5), 1.5, 0.5, id="bow, hollow up"),
    pytest.param(Warp(*SIZE, bow=1.5, cup=0.6), 2.1, None, id="bow and cup on one side"),
    pytest.param(Warp(*SIZE, bow=1.5, cup=-0.6), 2.1, None, id="bow and cup on opposite sides"),
    pytest.param(Warp(*SIZE, cup=2.0, twist=8.0), 2 + 2 + 4 / 8, None, id="cup and twist"),
    pytest.param(Warp(*SIZE, cup=1.0, twist=4.0), 1 + 1 + 1 / 4, None, id="cup and as much twist"),
    pytest.param(Warp(*SIZE, cup=1.0, twist=8.0), 1 + 2 + 4 / 4, None, id="the two forms meet"),
    pytest.param(Warp(*SIZE, cup=0.5, twist=8.0), 4.0, None, id="more twist than cup counts for"),
]


@pytest.mark.parametrize("tilt", TILTS)
@pytest.mark.parametrize(("warp", "deepest", "mean"), FACES)
def test_flattest_plane_in_closed_form(warp, deepest, mean, tilt):
    """Any tilt of the board changes nothing. Thickness left: what there was, less the deepest."""
    face = face_of(warp, thickness=16, along=9, across=9)
    lean = tilt[0] * face.x + tilt[1] * face.y + tilt[2]
    found = least_planing(x=face.x, y=face.y, height=face.height + lean)
    assert found.deepest == pytest.approx(deepest, abs=SOLVED)
    if mean is not None:
        assert found.mean == pytest.approx(mean, abs=SOLVED)
    thick = thickest_board(x=face.x, y=face.y, top=face.height + lean, bottom=face.bottom + lean)
    assert thick.upright == pytest.approx(16 - deepest, abs=SOLVED)
    a, b, _ = thick.plane
    assert thick.thickness == pytest.approx((16 - deepest) / np.sqrt(1 + a * a + b * b))


def test_twist_comes_off_two_corners_alike():
    found = least_planing(x=[0, 0, 700, 700], y=[0, 72, 0, 72], height=[0, 0, 0, 2.0])
    assert found.removal == pytest.approx([1, 0, 0, 1], abs=SOLVED)


@pytest.mark.parametrize(
    ("length", "bow", "cup", "twist"), [(700, 1.47, 0.46, 1.34), (190, 0.11, 0.46, 0.36)]
)
def test_warp_left_in_a_shorter_piece(length, bow, cup, twist):
    """2000 × 150 mm with bow 12, cup 2, twist 8, cut to a width of 72; half the last digits."""
    piece = cut_to(Warp(2000, 150, bow=12, cup=2, twist=8), length=length, width=72)
    assert piece.bow == pytest.approx(bow, abs=0.005)
    assert piece.cup == pytest.approx(cup, abs=0.005)
    assert piece.twist == pytest.approx(twist, abs=0.005)


@pytest.mark.parametrize(
    ("length", "width", "bound", "same_side", "opposite"),
    [
        (2000, 150, 18.0, 16.0, 14.6),
        (700, 72, 2.60, 2.27, 2.01),
        (190, 72, 0.75, 0.66, 0.59),
    ],
)
def test_what_flattening_costs_by_the_sum_and_by_the_program(
    length, width, bound, same_side, opposite
):
    """The same board whole and cut, its cup on the side of the bow or against it; no saw marks.

    Half the last digits given.
    """
    close = 0.05 if length == 2000 else 0.005
    for cup, program in ((2, same_side), (-2, opposite)):
        whole = Warp(2000, 150, bow=12, cup=cup, twist=8)
        found = crosscut_first(whole, thickness=25, length=length, width=width, saw_marks=0).piece
        assert found.flattening == pytest.approx(program, abs=close)
        assert 25 - found.bound.value == pytest.approx(bound, abs=close)
        assert found.program > found.bound.value


def test_saw_marks_come_off_both_faces():
    plain = thickness_from(Warp(700, 72, bow=1), thickness=16, saw_marks=0)
    sawn = thickness_from(Warp(700, 72, bow=1), thickness=16, saw_marks=0.5)
    assert plain.program - sawn.program == pytest.approx(1.0)
    assert plain.bound.value - sawn.bound.value == pytest.approx(1.0)


def test_winding_sticks():
    """400 mm sticks on 64 mm: 6.25 times; on 64 mm 0.05 mm can be seen, on a 116 mm panel 0.12."""
    assert magnification(400, width=64) == pytest.approx(6.25)
    assert stick_reading(1.0, stick=400, width=64) == pytest.approx(6.25)
    assert stick_reading(1.0, stick=400, width=64, lined_up="middles") == pytest.approx(3.125)
    assert least_twist(stick=400, width=64, seen=0.3) == pytest.approx(0.05, abs=0.005)
    assert least_twist(stick=300, width=116, seen=0.3) == pytest.approx(0.12, abs=0.005)


@pytest.mark.parametrize(("bed", "share"), [(45, 0.707), (12, 0.208)])
def test_a_low_bed_flattens_the_camber(bed, share):
    """Half the last digits; a low iron wants about 3.4 times the camber of one at 45 degrees."""
    plane = JACK.having(bed=bed)
    assert plane.camber_radius / plane.iron.radius_in_wood == pytest.approx(share, abs=0.0005)
    low = JACK.having(bed=12)
    assert low.iron.radius_in_wood / JACK.iron.radius_in_wood == pytest.approx(3.4, abs=0.05)


def test_shavings_of_jack_and_smoother():
    """Jack 10 in radius, 0.4 mm deep; smoother 6250 mm radius, 0.03 mm deep; half the digits."""
    jack = JACK.having(camber_radius=254, shaving=0.4)
    assert jack.iron.radius_in_wood == pytest.approx(359, abs=0.5)
    assert jack.shaving_width == pytest.approx(33.9, abs=0.05)
    smoother = SMOOTHER.having(camber_radius=6250, shaving=0.03)
    assert smoother.shaving_width == pytest.approx(46, abs=0.5)
    assert smoother.best_step == pytest.approx(27, abs=0.5)
    assert smoother.ridge(27) == pytest.approx(0.010, abs=0.0005)


def test_on_a_wide_board_42_per_cent_of_overlap_is_best_and_a_pass_takes_two_thirds():
    assert JACK.best_overlap == pytest.approx(0.42, abs=0.005)
    assert JACK.net_drop(JACK.best_step) == pytest.approx(2 / 3 * JACK.shaving)


def test_an_iron_narrower_than_its_shaving():
    """Best step: the iron, or √(8·radius·depth/3) if that is less; corners leave Y − w²/(8·R)."""
    for iron in (12.0, 25.0):
        narrow = JACK.having(iron_width=iron)
        eight = 8 * narrow.iron.radius_in_wood
        assert narrow.shaving_width == iron
        assert narrow.best_step == pytest.approx(min(iron, (eight * narrow.shaving / 3) ** 0.5))
        assert narrow.corner_depth == pytest.approx(narrow.shaving - iron**2 / eight)


@pytest.mark.parametrize(
    ("radius", "depth", "remove", "width", "tracks", "passes", "overlap"),
    [
        (254, 0.4, 3.5, 64, 3, 15, 0.37),
        (254, 0.4, 13.0, 72, 4, 46, None),
        (203, 0.3, 3.0, 64, 4, 16, None),
    ],
)
def test_least_strokes(radius, depth, remove, width, tracks, passes, overlap):
    """By the sum over whole numbers of tracks, and stroke by stroke on a surface: 45, 184, 64."""
    plane = JACK.having(camber_radius=radius, shaving=depth)
    found = least_strokes(plane, width=width, remove=remove)
    assert (found.tracks, found.passes) == (tracks, passes)
    assert found.strokes == tracks * passes
    if overlap is not None:
        assert found.overlap == pytest.approx(overlap, abs=0.005)
    planed = planed_by_hand(plane, width=width, remove=remove, tracks=found.tracks)
    assert planed.strokes == tracks * passes
    assert planed.ridge == pytest.approx(found.ridge, abs=1e-3)


def test_an_edge_half_a_degree_out():
    """12 mm, half a degree: 0.10 mm; half the last digit."""
    assert out_of_square(12, angle=0.5) == pytest.approx(0.10, abs=0.005)
