"""Board feet and thicknesses against the rules of the National Hardwood Lumber Association.

Surface measure and board feet are whole numbers and exact products in the rule, so nothing here
needs a tolerance beyond that of binary fractions.
"""

import pytest

from toolkit.stock import Board, board_feet, lumber_sizes, tally

INCH, FOOT = 25.4, 304.8
QUARTERS = {size.quarter: size for size in lumber_sizes()}


@pytest.mark.parametrize(
    ("width", "length", "raw", "surface"),
    [(6.25, 8, 4 + 1 / 6, 4), (6.5, 8, 4 + 1 / 3, 4), (8, 12, 8, 8), (10, 13, 10 + 10 / 12, 11)],
)
def test_surface_measure_as_printed(width, length, raw, surface):
    """NHLA rules' own examples, read; width in inches × length in feet / 12."""
    found = board_feet(length * FOOT, width=width * INCH, thickness=INCH)
    assert found.raw == pytest.approx(raw, abs=1e-9)
    assert found.surface == surface
    assert not found.half


def test_thickness_multiplies_the_rounded_surface_measure():
    """American Hardwood Export Council's and NHLA's example, read: 8 board feet, not 8 1/3."""
    found = board_feet(8 * FOOT, width=6.25 * INCH, thickness=2 * INCH)
    assert found.board_feet == pytest.approx(8, abs=1e-9)


def test_exact_halves_alternate():
    """The rule was read, the numbers are worked from it: 6 in × 9 ft is 4 1/2, 4 or 5 in turn."""
    board = Board("half", "black cherry", 9 * FOOT, 6 * INCH, INCH)
    assert {row.board_feet for row in tally([board, board])} == {4, 5}
    assert board_feet(9 * FOOT, width=6 * INCH, thickness=INCH, half_up=False).surface == 4


def test_length_is_cut_to_whole_feet_and_thin_counts_as_an_inch():
    """The rule was read, the numbers are worked from it: 7 3/4 in × 8 1/4 ft × 3/4 in."""
    found = board_feet(8.25 * FOOT, width=7.75 * INCH, thickness=0.75 * INCH)
    assert found.raw == pytest.approx(5 + 1 / 6, abs=1e-9)
    assert found.board_feet == 5


def test_five_quarter():
    """From memory: 8 in × 10 ft × 1 1/4 in is 7 ft² and 8 3/4 board feet."""
    found = board_feet(10 * FOOT, width=8 * INCH, thickness=1.25 * INCH)
    assert (found.surface, found.board_feet) == (7, pytest.approx(8.75, abs=1e-9))


@pytest.mark.parametrize(
    ("name", "rough", "two_sides"),
    [("4/4", 1, 13 / 16), ("5/4", 1.25, 1 + 1 / 16), ("6/4", 1.5, 1 + 5 / 16), ("8/4", 2, 1.75)],
)
def test_quarters_as_printed(name, rough, two_sides):
    """NHLA rules, standard thicknesses, read: rough, and surfaced two sides, in inches."""
    size = QUARTERS[name]
    assert size.source.seen == "read"
    assert size.nominal == pytest.approx(rough * INCH, abs=1e-9)
    assert size.two_sides == pytest.approx(two_sides * INCH, abs=1e-9)


def test_what_is_from_memory_says_so():
    """PS 20, Table 3, and 10/4 of the NHLA rules were not read in a copy."""
    memory = [size for size in lumber_sizes() if size.source.seen == "memory"]
    assert {size.kind for size in memory} == {"hardwood", "softwood"}
    assert QUARTERS["10/4"] in memory
    assert all(size in memory for size in lumber_sizes() if size.kind == "softwood")
    inch = next(s for s in lumber_sizes() if s.kind == "softwood" and s.nominal == INCH)
    assert inch.two_sides == pytest.approx(0.75 * INCH, abs=1e-9)
