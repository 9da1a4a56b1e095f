"""Cup: which way, how far, and that the map loses no wood."""

import math
from itertools import pairwise

import pytest
from hypothesis import assume, given, settings, strategies as st

from toolkit.wood import PithInside, cup, cup_formula, cup_from_strains, movement, strain


def dried(width=116.0, thickness=9.0, ring_radius=80.0, *, rings=0.0, start=12.0, end=6.0, **more):
    return cup(
        width,
        thickness=thickness,
        ring_radius=ring_radius,
        species="black cherry",
        rings=rings,
        moisture_from=start,
        moisture_to=end,
        **more,
    )


def area(outline):
    corners = [*outline, outline[0]]
    return abs(sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in pairwise(corners))) / 2


def test_drying_hollows_the_bark_side():
    board = dried()
    assert board.hollow_side == "bark"
    assert board.bark_hollow > 0 > board.heart_hollow
    assert board.width_change < 0
    assert board.sentence().startswith("The bark side goes hollow by 0.2")
    assert "narrower" in board.sentence()


def test_swelling_hollows_the_heart_side():
    board = dried(start=6, end=12)
    assert board.hollow_side == "heart"
    assert board.heart_hollow > 0 > board.bark_hollow
    assert "wider" in board.sentence()


def test_the_outline_shows_the_hollow():
    """Bark side up: its middle lies lower than its corners by the hollow."""
    board = dried(points=41)
    bark = board.outline_after[50:91]
    corners = (bark[0][1] + bark[-1][1]) / 2
    assert corners - bark[20][1] == pytest.approx(board.bark_hollow, rel=1e-9)
    assert board.outline_before[50] == (58, 4.5)
    assert board.outline_before[90] == (-58, 4.5)


def test_a_leaning_board_is_shown_level():
    """Rift-sawn, it would come out leaning; the middles of its edges are brought to one height."""
    board = dried(rings=30, points=41)
    right, left = board.outline_after[45], board.outline_after[95]
    assert board.outline_before[45] == (58, 0)
    assert right[1] == pytest.approx(left[1], abs=1e-12)
    assert right[0] - left[0] == pytest.approx(board.width_after)


def test_a_quartered_board_stays_flat():
    board = dried(rings=90, ring_radius=150)
    assert board.hollow_side == "neither"
    assert max(abs(board.bark_hollow), abs(board.heart_hollow)) < 0.001
    assert board.sentence().startswith("The faces stay alike")


def test_nothing_happens_without_a_change_of_moisture():
    board = dried(end=12)
    assert board.hollow_side == "neither"
    assert board.width_change == pytest.approx(0, abs=1e-12)
    for before, after in zip(board.outline_before, board.outline_after, strict=True):
        assert after == pytest.approx(before, abs=1e-10)


def test_nearer_the_pith_it_cups_more():
    radii = [60, 80, 120, 250, 1000]
    hollows = [dried(ring_radius=radius).bark_hollow for radius in radii]
    assert hollows == sorted(hollows, reverse=True)


@given(st.floats(20, 200), st.floats(5, 50), st.floats(30, 500), st.floats(0, 90), st.floats(0, 28))
@settings(max_examples=40, deadline=None)
def test_the_map_shrinks_the_area_as_the_two_strains_say(width, thickness, radius, rings, end):
    """Along the ring by one strain and across it by the other: the area by both, exactly.

    Within 1e-4: the outline joins its points with straight lines where the map has curves.
    """
    up, over = radius * math.cos(math.radians(rings)), radius * math.sin(math.radians(rings))
    assume(over > width / 2 + 5 or up > thickness / 2 + 5)
    board = dried(width, thickness, radius, rings=rings, start=14, end=end, points=201)
    both = 1.0
    for direction in (0, 90):
        both *= 1 + strain("black cherry", rings=direction, moisture_from=14, moisture_to=end)
    assert area(board.outline_after) == pytest.approx(width * thickness * both, rel=1e-4)


@given(st.floats(0, 90))
def test_far_from_the_pith_it_moves_as_a_board_of_straight_rings(rings):
    board = dried(ring_radius=1e5, rings=rings)
    straight = movement(116, species="black cherry", rings=rings, moisture_from=12, moisture_to=6)
    assert board.width_change == pytest.approx(straight, rel=0.01)


@given(st.floats(-0.03, 0.03), st.floats(20, 200), st.floats(0.6, 10))
def test_the_formula_is_the_exact_map_for_small_strains(tangential, width, ratio):
    radius = ratio * width
    radial = tangential / 2
    exact = cup_from_strains(
        width, thickness=1e-6, ring_radius=radius, tangential=tangential, radial=radial
    )
    formula = cup_formula(width, ring_radius=radius, tangential=tangential, radial=radial)
    assert exact.bark_hollow == pytest.approx(formula, rel=0.03, abs=1e-5)


@pytest.mark.parametrize(("radius", "rings"), [(4, 0), (4.5, 0), (58, 90), (20, 85), (0.001, 45)])
def test_a_board_with_the_pith_in_it_splits(radius, rings):
    with pytest.raises(PithInside, match="splits"):
        dried(ring_radius=radius, rings=rings)


def test_a_board_with_the_pith_just_below_it_is_answered():
    assert dried(ring_radius=5).hollow_side == "bark"
    assert dried(ring_radius=59, rings=90).width_change < 0


@pytest.mark.parametrize(
    ("numbers", "words"),
    [
        ({"width": 0}, "width was given as 0 mm"),
        ({"thickness": -1}, "thickness was given as -1 mm"),
        ({"ring_radius": math.inf}, "ring_radius was given as inf mm"),
        ({"rings": 100}, "rings was given as 100 degrees"),
        ({"points": 2}, "points was given as 2"),
        ({"end": -2}, "moisture_to was given as -2 %"),
    ],
)
def test_impossible_numbers_are_refused_in_words(numbers, words):
    with pytest.raises(ValueError, match=words):
        dried(**numbers)
