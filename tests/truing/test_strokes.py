"""Strokes counted by the sums, against a surface planed stroke by stroke."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from toolkit.measures import Rule
from toolkit.truing import (
    JACK,
    PLANES,
    SMOOTHER,
    TRY,
    Plane,
    bench_time,
    clearing,
    fewest_tracks,
    hollow_ridden,
    least_strokes,
    planing_job,
    scatter_cost,
    shavings,
    simulate_strokes,
    stroke_choices,
    strokes_at_overlap,
    strokes_with,
)

MM = Rule.millimetres()
planes = st.builds(
    Plane,
    st.just("plane"),
    camber_radius=st.floats(60, 8000),
    depth=st.floats(0.02, 0.6),
    iron=st.floats(15, 65),
    sole=st.just(300.0),
    bed=st.floats(12, 60),
)


@settings(max_examples=60, deadline=None)
@given(planes, st.floats(8, 150), st.floats(0.5, 6), st.integers(0, 3))
def test_any_number_of_tracks_as_the_surface_has_it(plane, width, deep, more):
    """Irons narrower than their shaving are among them; ridges and passes must both agree."""
    tracks = fewest_tracks(plane, width=width) + more
    remove = deep * plane.depth
    net = plane.net_drop(width / tracks)
    assume(tracks <= 12 and net > plane.depth / 10)
    found = strokes_with(plane, width=width, remove=remove, tracks=tracks)
    # So fine that places lie on every ridge and in the middle of every track.
    cell = width / tracks / 16
    planed = simulate_strokes(plane, width=width, remove=remove, tracks=tracks, cell=cell)
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
        planed = simulate_strokes(JACK, width=width, remove=4, tracks=tracks, cell=0.2)
        assert not planed.finished or planed.strokes >= best.strokes


@settings(max_examples=100, deadline=None)
@given(planes, st.floats(8, 150), st.floats(0.5, 30))
def test_no_number_of_tracks_takes_fewer_strokes(plane, width, deep):
    """Every number of tracks up to two hundred, straight from the sum."""
    remove = deep * plane.depth
    best = least_strokes(plane, width=width, remove=remove)
    for tracks in range(1, 200):
        step = width / tracks
        if step > plane.iron * (1 + 1e-9) or step >= plane.arc_width * (1 - 1e-6):
            continue
        passes = np.ceil(remove / (plane.depth - step**2 / (8 * plane.effective_radius)) - 1e-6)
        assert best.strokes <= tracks * passes


def test_choices_go_from_the_fewest_tracks_up():
    rows = stroke_choices(JACK, width=64, remove=3.5, most=6)
    assert [row.tracks for row in rows] == [2, 3, 4, 5, 6]
    assert [row.strokes for row in rows] == [162, 45, 48, 55, 60]
    assert least_strokes(JACK, width=64, remove=3.5) in rows
    for row in rows:
        assert row.troughs == pytest.approx(row.passes * row.net_drop + row.ridge)


def test_half_the_step_leaves_a_quarter_of_the_ridge():
    assert JACK.ridge(10) == pytest.approx(JACK.ridge(20) / 4)


def test_twice_the_depth_is_not_twice_the_width():
    deep = replace(JACK, depth=0.8, iron=60)
    assert deep.shaving_width == pytest.approx(JACK.shaving_width * 2**0.5)


def test_overlap_aimed_at_comes_to_a_whole_number_of_tracks():
    for overlap in (0.0, 0.1, 0.37, 0.42, 0.6):
        found = strokes_at_overlap(JACK, width=64, remove=3.5, overlap=overlap)
        assert found.overlap >= overlap - 1e-9
        assert found.tracks * found.step == pytest.approx(64)


def test_tracks_that_reach_the_iron_exactly_are_enough():
    narrow = replace(TRY, iron=32.0)
    assert narrow.corners_cut
    assert fewest_tracks(narrow, width=64) == 2


def test_bare_wood_between_tracks_carries_the_sole_for_ever():
    planed = simulate_strokes(JACK, width=64, remove=3.5, tracks=1)
    assert not planed.finished
    with pytest.raises(ValueError, match=r"1 tracks on 64 mm leave bare wood .* lay 2 or more"):
        strokes_with(JACK, width=64, remove=3.5, tracks=1)


def test_scatter_costs_more_the_more_there_is_and_can_be_repeated():
    little, much = (scatter_cost(JACK, width=64, scatter=by, runs=10) for by in (1, 5))
    assert 0 < little.lost < much.lost < 0.5
    assert little.strokes < little.strokes_scattered < much.strokes_scattered
    assert much == scatter_cost(JACK, width=64, scatter=5, runs=10)
    none = scatter_cost(JACK, width=64, scatter=0, runs=1)
    assert none.lost == pytest.approx(0.0)
    assert "less: the ridges that were missed" in much.sentence


def test_strokes_that_run_askew_leave_more_than_strokes_that_only_lie_aside():
    """Followed along the board, a ridge missed anywhere under the sole holds it up."""
    one, many = (
        np.mean(
            [
                simulate_strokes(
                    JACK, width=64, remove=3.5, scatter=3, seed=seed, stations=stations
                ).strokes
                for seed in range(6)
            ]
        )
        for stations in (1, 9)
    )
    assert many > one
    straight = simulate_strokes(JACK, width=64, remove=3.5, stations=9)
    assert straight.strokes == 45
    assert straight.surface.shape[0] == 9
    assert np.ptp(straight.surface, axis=0).max() == pytest.approx(0.0)


def test_a_stroke_beside_the_board_cuts_nothing():
    planed = simulate_strokes(JACK, width=12, remove=0.5, scatter=60, seed=4)
    assert planed.finished
    assert np.isfinite(planed.surface).all()


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


def test_words_of_the_planes():
    assert TRY.sentence.startswith("The try plane takes a shaving 0.1 mm deep")
    assert "corners dig in and leave tracks" in replace(TRY, depth=0.2).sentence
    assert not any(plane.corners_cut for plane in PLANES)


def _over(x, z, at):
    """Height of a straight sole at one place, resting on the wood within its reach."""
    left, right = x <= at, x >= at
    span = x[right][None, :] - x[left][:, None]
    share = np.divide(at - x[left][:, None], span, out=np.zeros_like(span), where=span > 0)
    rest = z[left][:, None] + share * (z[right][None, :] - z[left][:, None])
    return float(rest.max())


def _planed_hollow(length, sole, depth, step=10.0):
    """Plane all but the ends of a straight stick until the iron no longer reaches it. [mm]"""
    x = np.arange(0.0, length + step / 2, step)
    z = np.zeros_like(x)
    while True:
        moved = 0.0
        for k in range(1, len(x) - 1):
            reach = np.abs(x - x[k]) <= sole / 2 + 1e-9
            low = _over(x[reach], z[reach], x[k]) - depth
            moved = max(moved, z[k] - low)
            z[k] = min(z[k], low)
        if moved < 1e-5:
            return -float(z.min())


@pytest.mark.parametrize(("length", "sole"), [(480, 240), (700, 240), (960, 240)])
def test_a_stick_planed_hollow(length, sole):
    """A sole held up at its toe and heel alone: by the formula, and no more than a shaving more.

    Near the ends, where the sole hangs over, the plane rides deeper than the arc.
    """
    found = hollow_ridden(0.05, length=length, sole=sole)
    planed = _planed_hollow(length, sole, 0.05)
    assert found.fair
    assert found.depth - 1e-3 <= planed <= found.depth + 0.05


def test_on_a_short_stick_the_formula_is_a_lower_bound():
    """A try plane on 700 mm: 0.11 to 0.12 when planed, 0.08 by the formula."""
    found = hollow_ridden(0.05, length=700, sole=560)
    planed = _planed_hollow(700, 560, 0.05)
    assert not found.fair
    assert found.depth < planed
    assert planed == pytest.approx(0.115, abs=0.01)


@pytest.mark.parametrize(
    ("call", "said"),
    [
        (lambda: replace(JACK, camber_radius=0), "jack plane: camber_radius was given as 0 mm"),
        (lambda: replace(JACK, camber_radius=20), "cannot be ground to a radius of 20 mm"),
        (lambda: replace(JACK, bed=0), "bed was given as 0 degrees"),
        (lambda: replace(JACK, depth=float("nan")), "depth was given as nan mm"),
        (lambda: least_strokes(JACK, width=0, remove=1), "width was given as 0 mm"),
        (lambda: least_strokes(JACK, width=64, remove=-1), "remove was given as -1 mm"),
        (
            lambda: strokes_at_overlap(JACK, width=64, remove=1, overlap=1),
            "overlap was given as 1; give a share from 0 to 0.95",
        ),
        (lambda: simulate_strokes(JACK, width=64, remove=1, scatter=-1), "scatter was given as -1"),
        (lambda: simulate_strokes(JACK, width=64, remove=1, tracks=0), "tracks was given as 0"),
        (lambda: scatter_cost(JACK, width=64, scatter=1, runs=0), "runs was given as 0"),
        (lambda: planing_job(1, length=190, width=64, planes=()), "there are no planes"),
        (lambda: clearing(-1, after=SMOOTHER, width=64, passes=1), "ridge was given as -1 mm"),
        (lambda: clearing(1, after=SMOOTHER, width=64, passes=-1), "passes was given as -1"),
        (lambda: bench_time(-1), "strokes was given as -1"),
        (lambda: bench_time(1, learner=0.5), "learner was given as 0.5; give 1 or more"),
        (lambda: shavings(1, looseness=0.5), "looseness was given as 0.5"),
        (lambda: shavings(-1), "volume was given as -1 mm³"),
        (lambda: hollow_ridden(0.1, length=700, sole=240, mouth=1), "mouth was given as 1"),
    ],
)
def test_refusals(call, said):
    with pytest.raises(ValueError, match=said):
        call()
