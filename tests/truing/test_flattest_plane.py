"""The flattest plane and the thickest board, against a search that knows no linear program."""

import numpy as np
import pytest
from hypothesis import given, settings, strategies as st
from scipy.optimize import linprog

from tests.truing.planes_by_hand import least_deep, most_thick
from toolkit.measures import Rule
from toolkit.truing import (
    Warp,
    _program,
    between_readings,
    face_of,
    least_planing,
    longest_piece,
    thickest_board,
)

MM, INCH = Rule.millimetres(), Rule.inches()
GRID_X, GRID_Y = (
    grid.ravel() for grid in np.meshgrid([0.0, 350.0, 700.0], [0.0, 36.0, 72.0], indexing="ij")
)
NINE = st.lists(st.floats(-3, 3, allow_nan=False), min_size=9, max_size=9).map(np.array)


@settings(max_examples=60, deadline=None)
@given(NINE)
def test_no_plane_that_could_be_flattest_is_flatter(height):
    found = least_planing(x=GRID_X, y=GRID_Y, height=height)
    assert found.deepest == pytest.approx(least_deep(GRID_X, GRID_Y, height), abs=1e-6)
    assert found.removal.min() == pytest.approx(0.0, abs=1e-12)
    a, b, c = found.plane
    plane = a * GRID_X + b * GRID_Y + c
    assert np.allclose(height - plane, found.removal, atol=1e-9)


@settings(max_examples=15, deadline=None)
@given(NINE, NINE)
def test_no_two_planes_that_could_be_furthest_apart_are_further(top, bottom):
    top, bottom = top + 12, bottom
    found = thickest_board(x=GRID_X, y=GRID_Y, top=top, bottom=bottom)
    assert found.upright == pytest.approx(most_thick(GRID_X, GRID_Y, top, bottom), abs=1e-6)
    a, b, c = found.plane
    plane = a * GRID_X + b * GRID_Y + c
    assert (top - plane >= -1e-9).all()
    assert (plane - found.upright - bottom >= -1e-9).all()
    assert found.thickness == pytest.approx(found.upright / np.sqrt(1 + a * a + b * b))


def _by_linprog(x, y, height):
    """The same program, written out plainly for scipy's own door to linear programs."""
    ones, nothing = np.ones_like(x), np.zeros_like(x)
    rows = np.vstack((np.column_stack((x, y, ones, nothing)), -np.column_stack((x, y, ones, ones))))
    done = linprog([0, 0, 0, 1], A_ub=rows, b_ub=np.r_[height, -height], bounds=(None, None))
    return done.fun


@pytest.mark.parametrize("shape", [(5, 3), (13, 5), (41, 21)])
@pytest.mark.parametrize("seed", range(4))
def test_large_faces_as_a_plain_linear_program_has_them(shape, seed):
    """Large faces are solved for a few readings first; the answer must be that for all."""
    face = face_of(Warp(700, 72, bow=1.5, cup=-0.5, twist=2), along=shape[0], across=shape[1])
    rough = np.random.default_rng(seed).normal(0, 0.2, len(face.x))
    height = face.height + rough
    found = least_planing(x=face.x, y=face.y, height=height)
    assert found.deepest == pytest.approx(_by_linprog(face.x, face.y, height), abs=1e-5)


@pytest.mark.parametrize("seed", range(6))
def test_wavy_faces_whose_first_few_readings_mislead(seed):
    """Smooth waves: the lowest readings lie in one dip, and others decide."""
    chance = np.random.default_rng(seed)
    face = face_of(Warp(700, 72), along=41, across=21)
    u, v = face.x / 700, face.y / 72
    waves = [(i, j, *chance.normal(size=2)) for i in range(4) for j in range(4)]
    height = sum(size * np.sin(3 * i * u + 2 * j * v + turn) for i, j, size, turn in waves)
    found = least_planing(x=face.x, y=face.y, height=height)
    assert found.deepest == pytest.approx(_by_linprog(face.x, face.y, height), abs=1e-5)
    thick = thickest_board(x=face.x, y=face.y, top=height + 40, bottom=height)
    assert thick.upright == pytest.approx(40 - found.deepest, abs=1e-5)


def test_of_planes_equally_deep_the_one_that_takes_least():
    """Three readings on one edge fix the depth; the fourth leaves the plane free to lean."""
    found = least_planing(x=[0, 350, 700, 350], y=[0, 0, 0, 72], height=[0.0, 1.0, 0.0, 0.5])
    assert found.deepest == pytest.approx(1.0, abs=1e-9)
    assert found.removal == pytest.approx([0.0, 1.0, 0.0, 0.0], abs=1e-9)


@settings(max_examples=40, deadline=None)
@given(NINE, st.floats(-0.2, 0.2), st.floats(-0.2, 0.2), st.floats(-500, 500))
def test_a_tilt_of_the_whole_board_changes_nothing(height, along, across, up):
    tilt = along * GRID_X + across * GRID_Y + up
    level = least_planing(x=GRID_X, y=GRID_Y, height=height)
    tilted = least_planing(x=GRID_X, y=GRID_Y, height=height + tilt)
    assert tilted.deepest == pytest.approx(level.deepest, abs=1e-6)
    thick = thickest_board(x=GRID_X, y=GRID_Y, top=height + 12, bottom=height)
    leaning = thickest_board(x=GRID_X, y=GRID_Y, top=height + 12 + tilt, bottom=height + tilt)
    assert leaning.upright == pytest.approx(thick.upright, abs=1e-6)
    # Parallel faces lose to planing what the flattest plane takes, no more and no less.
    assert thick.upright == pytest.approx(12 - level.deepest, abs=1e-6)


def test_the_plane_that_takes_least_is_not_the_one_that_leaves_most():
    """One face is twisted, the other rough in its own way: truing one by itself costs wood."""
    face = face_of(Warp(700, 72, twist=2), along=5, across=3)
    chance, lost = np.random.default_rng(1), []
    for _ in range(8):
        bottom = chance.normal(-16, 0.4, len(face.x))
        least = least_planing(x=face.x, y=face.y, height=face.height)
        thick = thickest_board(x=face.x, y=face.y, top=face.height, bottom=bottom)
        a, b, c = least.plane
        floor = (bottom - a * face.x - b * face.y).max()
        lost.append(thick.thickness - (c - floor) / np.sqrt(1 + a * a + b * b))
    # A steeper plane of the same upright thickness is a thousandth thinner, no more.
    assert min(lost) > -0.001
    assert max(lost) > 0.1


def test_of_boards_equally_thick_the_one_that_leans_least():
    """Twisted one way above and the other way below: many planes leave the same."""
    above, under = face_of(Warp(700, 72, twist=2)), face_of(Warp(700, 72, twist=-1))
    thick = thickest_board(x=above.x, y=above.y, top=above.height + 16, bottom=under.height)
    assert thick.upright == pytest.approx(15.25, abs=1e-6)
    assert thick.plane[:2] == pytest.approx((0.0, 0.0), abs=1e-6)


@pytest.fixture
def no_symmetry(monkeypatch):
    """Every face goes through the program, also those that are the same turned half round."""

    def off():
        monkeypatch.setattr(_program._Frame, "turns_alike", lambda self, *heights: False)

    return off


def _bent(seed):
    chance = np.random.default_rng(seed)
    sizes = chance.uniform(-5, 5, 3) * chance.integers(0, 2, 3)
    return Warp(chance.uniform(100, 2500), chance.uniform(40, 300), *sizes)


@pytest.mark.parametrize("seed", range(12))
@pytest.mark.parametrize("tilt", [0.0, 0.01])
def test_a_face_the_same_turned_half_round_needs_no_program(seed, tilt, no_symmetry):
    face = face_of(_bent(seed), thickness=30)
    top, bottom = face.height + tilt * face.x, face.bottom + tilt * face.x
    places = {"x": face.x, "y": face.y}

    def planes():
        board = thickest_board(**places, top=top, bottom=bottom)
        return least_planing(**places, height=top), board

    quick, board = planes()
    no_symmetry()
    slow, program = planes()
    assert quick.deepest == pytest.approx(slow.deepest, abs=1e-6)
    assert quick.mean == pytest.approx(slow.mean, abs=1e-5)
    assert board.upright == pytest.approx(program.upright, abs=1e-6)
    assert board.thickness == pytest.approx(program.thickness, abs=1e-6)


@pytest.mark.parametrize("seed", range(8))
def test_the_longest_piece_is_the_same_by_the_program(seed, no_symmetry):
    warp = _bent(seed)
    asked = {"thickness": 16.0, "wanted": 12.0, "width": warp.width * 0.8}
    quick = longest_piece(warp, **asked)
    no_symmetry()
    assert quick == longest_piece(warp, **asked)


def test_what_was_not_read_lies_between_what_was():
    grid = np.arange(15.0).reshape(5, 3)
    gaps = grid.copy()
    gaps[2, 1] = np.nan
    # On a slope the mean of the four neighbours is the slope.
    assert between_readings(gaps) == pytest.approx(grid)
    gaps[0, 0] = gaps[1, 0] = np.nan
    filled = between_readings(gaps)
    assert filled[~np.isnan(gaps)] == pytest.approx(grid[~np.isnan(gaps)])
    # The two in the corner by hand: 2a = 1 + b and 3b = 4 + 6 + a.
    assert filled[0, 0] == pytest.approx(13 / 5)
    assert filled[1, 0] == pytest.approx(21 / 5)
    assert between_readings(grid) == pytest.approx(grid)


def test_three_readings_lie_on_a_plane():
    assert least_planing(x=[0, 700, 0], y=[0, 0, 72], height=[1, 5, 2]).deepest == pytest.approx(0)


def test_the_mean_is_that_of_the_face_and_not_of_the_readings():
    """An arc covers two thirds of its box; readings at its edges stand for less of the face."""
    face = face_of(Warp(700, 72, cup=0.6))
    found = least_planing(x=face.x, y=face.y, height=face.height)
    assert found.mean == pytest.approx(0.4, abs=1e-9)
    order = np.random.default_rng(3).permutation(len(face.x))
    shuffled = least_planing(x=face.x[order], y=face.y[order], height=face.height[order])
    assert shuffled.mean == pytest.approx(0.4, abs=1e-9)


def test_uneven_rows_are_weighed_by_trapezia_and_scattered_readings_alike():
    x, y = (grid.ravel() for grid in np.meshgrid([0.0, 100.0, 700.0], [0.0, 72.0], indexing="ij"))
    height = np.where(x == 100, 1.0, 0.0)
    assert least_planing(x=x, y=y, height=height).mean == pytest.approx(0.5)
    scattered = least_planing(
        x=[0, 700, 5, 690, 350], y=[0, 3, 70, 72, 36], height=[0.0, 0.0, 0.0, 0.0, 1.0]
    )
    assert scattered.mean == pytest.approx(scattered.removal.mean())


@pytest.mark.parametrize(
    ("warp", "words"),
    [
        (Warp(700, 72, twist=2), "the left near corner and the right far corner"),
        (Warp(700, 72, bow=2), "right across the middle"),
        (Warp(700, 72, bow=-2), "both ends"),
        (Warp(700, 72, cup=1), "all along the middle"),
        (Warp(700, 72, cup=-1), "both edges"),
        (Warp(700, 72, bow=-1, cup=-1), "all four corners"),
        (Warp(700, 72, bow=1, cup=1), "the middle,"),
    ],
)
def test_the_sentence_names_where_most_comes_off(warp, words):
    face = face_of(warp, thickness=16)
    found = least_planing(x=face.x, y=face.y, height=face.height)
    assert words in found.sentence(MM)


SQUARE = {"x": [0, 0, 700, 700], "y": [0, 72, 0, 72]}


@pytest.mark.parametrize(
    ("readings", "said"),
    [
        ({"x": [], "y": [], "height": []}, "there are no readings: a plane needs three"),
        ({"x": [0], "y": [0], "height": [0]}, "there is one reading: a plane needs three"),
        ({"x": [0, 1], "y": [0, 1], "height": [0, 0]}, "there are two readings: a plane needs"),
        ({"x": [0, 350, 700], "y": [36, 36, 36], "height": [0, 1, 0]}, "lie on one line, from x 0"),
        ({"x": [0, 350, 700], "y": [0, 36, 72], "height": [0, 1, 0]}, "read along both edges"),
        ({"x": [5, 5, 5], "y": [2, 2, 2], "height": [0, 1, 0]}, "lie on one line"),
        ({**SQUARE, "height": [0, 0, float("nan"), 0]}, "a reading is no length; measure it"),
        ({"x": [0, float("nan"), 2], "y": [0, 1, 0], "height": [0, 0, 0]}, "is no length"),
        ({**SQUARE, "height": [0, 0, 0]}, "4 of x, 4 of y, 3 of height; give one of each"),
    ],
)
def test_readings_that_say_nothing_get_a_sentence(readings, said):
    with pytest.raises(ValueError, match=said):
        least_planing(**readings)
    top = readings["height"]
    if "3 of height" in said:
        said = "4 of x, 4 of y, 3 of top, 3 of bottom"
    with pytest.raises(ValueError, match=said.replace("height", "top")):
        thickest_board(x=readings["x"], y=readings["y"], top=top, bottom=top)


def test_more_warp_than_wood_is_said():
    with pytest.raises(ValueError, match="more warp than wood for two true faces"):
        thickest_board(**SQUARE, top=[2, 2, 2, 8], bottom=[0, 0, 0, 6])
