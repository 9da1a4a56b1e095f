"""Strokes counted by the sums, against a surface planed stroke by stroke."""

import numpy as np
import pytest
from hypothesis import assume, given, settings, strategies as st

from tests.truing.strokes_by_hand import planed_by_hand
from toolkit.measures import Rule
from toolkit.planes import JACK, PLANES, SMOOTHER, TRY, Plane
from toolkit.truing import (
    bench_time,
    clearing,
    least_strokes,
    planing_job,
    shavings,
    strokes_as_set,
)
from toolkit.truing.strokes import fewest_tracks, strokes_with

MM = Rule.millimetres()
planes = st.builds(
    Plane,
    st.just("plane"),
    camber_radius=st.floats(60, 8000),
    shaving=st.floats(0.02, 0.6),
    iron_width=st.floats(15, 65),
    bed=st.floats(12, 60),
)


@settings(max_examples=60, deadline=None)
@given(planes, st.floats(8, 150), st.floats(0.5, 6), st.integers(0, 3))
def test_any_number_of_tracks_as_the_surface_has_it(plane, width, deep, more):
    """Irons narrower than their shaving are among them; ridges and passes must both agree."""
    tracks = fewest_tracks(plane, width=width) + more
    remove = deep * plane.shaving
    net = plane.net_drop(width / tracks)
    assume(tracks <= 12 and net > plane.shaving / 10)
    found = strokes_with(plane, width=width, remove=remove, tracks=tracks)
    # So fine that places lie on every ridge and in the middle of every track.
    cell = width / tracks / 16
    planed = planed_by_hand(plane, width=width, remove=remove, tracks=tracks, cell=cell)
    assert planed.finished
    assert planed.strokes <= found.strokes
    if 3 * found.step <= plane.shaving_width * (1 + 1e-6):
        return  # one stroke lowers its neighbour's place as well
    assert planed.strokes == found.strokes
    assert planed.ridge == pytest.approx(found.ridge, rel=1e-6)
    if found.passes > 1:
        assert planed.drop_a_pass == pytest.approx(found.net_drop, rel=1e-6)


@pytest.mark.parametrize("width", [8, 16, 24, 28, 33, 36, 50, 64, 120])
def test_no_board_planed_stroke_by_stroke_takes_fewer(width):
    """Not even with tracks so close that the sums promise too many."""
    best = least_strokes(JACK, width=width, remove=4)
    for tracks in range(1, 9):
        planed = planed_by_hand(JACK, width=width, remove=4, tracks=tracks, cell=0.2)
        assert not planed.finished or planed.strokes >= best.strokes


@settings(max_examples=100, deadline=None)
@given(planes, st.floats(8, 150), st.floats(0.5, 30))
def test_no_number_of_tracks_takes_fewer_strokes(plane, width, deep):
    """Every number of tracks up to two hundred, straight from the sum."""
    remove = deep * plane.shaving
    eight = 8 * plane.iron.radius_in_wood
    best = least_strokes(plane, width=width, remove=remove)
    for tracks in range(1, 200):
        step = width / tracks
        if step > plane.iron_width * (1 + 1e-9) or step >= plane.arc_width * (1 - 1e-6):
            continue
        passes = np.ceil(remove / (plane.shaving - step**2 / eight) - 1e-6)
        assert best.strokes <= tracks * passes


def test_twice_the_depth_is_not_twice_the_width():
    deep = JACK.having(shaving=0.8, iron_width=60)
    assert deep.shaving_width == pytest.approx(JACK.shaving_width * 2**0.5)


def test_overlap_aimed_at_comes_to_a_whole_number_of_tracks():
    for overlap in (0.0, 0.1, 0.37, 0.42, 0.6):
        found = strokes_as_set(JACK.having(overlap=100 * overlap), width=64, remove=3.5)
        assert found.overlap >= overlap - 1e-9
        assert found.tracks * found.step == pytest.approx(64)


def test_tracks_that_reach_the_iron_exactly_are_enough():
    narrow = TRY.having(iron_width=32.0)
    assert narrow.corner_depth > 0
    assert fewest_tracks(narrow, width=64) == 2


def test_bare_wood_between_tracks_carries_the_sole_for_ever():
    planed = planed_by_hand(JACK, width=64, remove=3.5, tracks=1)
    assert not planed.finished
    with pytest.raises(ValueError, match=r"1 tracks on 64 mm leave bare wood .* lay 2 or more"):
        strokes_with(JACK, width=64, remove=3.5, tracks=1)


def test_planes_share_a_face_from_coarse_to_fine():
    job = planing_job(3.5, length=190, width=64)
    assert [row.plane for row in job.strokes] == list(PLANES)
    assert sum(row.remove for row in job.strokes) == pytest.approx(3.5)
    for before, after in zip(job.strokes, job.strokes[1:], strict=False):
        assert after.remove == pytest.approx(before.ridge)
        found = clearing(before.ridge, after=after.plane, width=64, passes=after.passes)
        assert not found.shows
        assert clearing(before.ridge, after=after.plane, width=64, passes=found.needed - 1).shows
    assert job.volume == pytest.approx(3.5 * 190 * 64)
    assert job.count == sum(row.strokes for row in job.strokes)
    assert f"{job.count} full strokes" in job.sentence(MM)


@pytest.mark.parametrize(
    ("remove", "names"),
    [
        (13, ["jack plane", "try plane", "smoothing plane"]),
        (0.15, ["try plane", "smoothing plane"]),
        (0.02, ["smoothing plane"]),
    ],
)
def test_a_plane_with_nothing_to_do_stays_on_the_shelf(remove, names):
    job = planing_job(remove, length=190, width=64)
    assert [row.plane.name for row in job.strokes] == names


def test_time_is_an_estimate_beside_the_count():
    time = bench_time(45, seconds=2, learner=8)
    assert (time.practised, time.minutes) == (1.5, 12.0)
    assert time.sentence.startswith("45 strokes. As an estimate about 2 min")
    assert "less than 1 min" in bench_time(3).sentence
    heap = shavings(190 * 64 * 3.5)
    assert heap.loose > heap.solid
    assert "guess" in heap.sentence


@pytest.mark.parametrize(
    ("call", "said"),
    [
        (lambda: least_strokes(JACK, width=0, remove=1), "width was given as 0 mm"),
        (lambda: least_strokes(JACK, width=64, remove=-1), "remove was given as -1 mm"),
        (lambda: clearing(-1, after=SMOOTHER, width=64, passes=1), "ridge was given as -1 mm"),
        (lambda: bench_time(-1), "strokes was given as -1"),
        (lambda: bench_time(1, learner=0.5), "learner was given as 0.5"),
        (lambda: shavings(-1), "volume was given as -1 mm³"),
    ],
)
def test_refusals(call, said):
    with pytest.raises(ValueError, match=said):
        call()
