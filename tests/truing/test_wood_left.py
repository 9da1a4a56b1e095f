"""How much wood is left: whole or cut, to the line, and what to saw for a part."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.boxes import postcard
from toolkit.measures import Rule
from toolkit.plan import plan
from toolkit.truing import (
    Allowances,
    Warp,
    angle_of_edge,
    check_gauge_line,
    check_thickness,
    check_twist,
    check_walls,
    crosscut_first,
    cut_to,
    face_of,
    longest_piece,
    out_of_square,
    rough_size,
    thickest_board,
    thickness_from,
    to_gauge_line,
)

MM = Rule.millimetres()
WARPED = Warp(2000, 150, bow=12, cup=2, twist=8)
PARTS = {part.name: part for part in plan(postcard()).parts}
bends = st.floats(-4, 4, allow_nan=False)


@settings(max_examples=40, deadline=None)
@given(st.builds(Warp, st.just(700.0), st.just(72.0), bow=bends, cup=bends, twist=bends))
def test_the_sum_on_paper_is_safe(warp):
    """The program never leaves less than the sum promises, nor more than the worst bend allows."""
    found = thickness_from(warp, thickness=30)
    assert found.bound.value <= found.program + 1e-6
    worst = max(abs(warp.bow), abs(warp.cup), abs(warp.twist) / 2)
    assert found.program <= 30 - 2 * found.saw_marks - worst + 1e-6


def test_the_program_for_even_thickness_is_the_thickest_board():
    face = face_of(Warp(700, 72, bow=1.5, cup=-0.4, twist=2), thickness=16, along=41, across=21)
    thick = thickest_board(x=face.x, y=face.y, top=face.height, bottom=face.bottom)
    found = thickness_from(Warp(700, 72, bow=1.5, cup=-0.4, twist=2), thickness=16, saw_marks=0)
    assert found.program == pytest.approx(thick.upright, abs=1e-6)


def test_sawing_first_saves_what_the_two_differ_by():
    found = crosscut_first(WARPED, thickness=25, length=700, width=72)
    assert found.saved == pytest.approx(found.piece.program - found.whole.program)
    assert found.saved > 13
    assert "Sawing first saves 13.7" in found.sentence(MM)


def test_more_warp_than_wood_is_a_sentence():
    found = crosscut_first(WARPED, thickness=16, length=700)
    assert found.whole.program <= 0
    assert "nothing is left" in found.whole.sentence(MM)
    assert "the sum on paper promises nothing" in thickness_from(
        Warp(2000, 150, bow=12, cup=-2, twist=8), thickness=16
    ).sentence(MM)


@pytest.mark.parametrize("wanted", [12.0, 13.0, 14.0])
def test_the_longest_piece_just_gives_the_thickness(wanted):
    length = longest_piece(WARPED, thickness=16, wanted=wanted, width=72)
    for off, enough in ((0.0, True), (2.0, False)):
        piece = cut_to(WARPED, length=length + off, width=72)
        assert (thickness_from(piece, thickness=16).program >= wanted - 1e-6) == enough


def test_no_piece_or_the_whole_board():
    assert longest_piece(WARPED, thickness=16, wanted=15.5) == 0.0
    assert longest_piece(Warp(700, 72, bow=0.5), thickness=16, wanted=12) == 700


@pytest.mark.parametrize(
    ("wanted", "level", "code", "remedy"),
    [
        (11.0, "good", "good-thickness", ""),
        (12.0, "care", "board-barely-thick", "both high corners alike"),
        (12.6, "wont_work", "board-too-warped", "or shorter first, or choose another"),
        (14.9, "wont_work", "board-too-warped", "choose a thicker board"),
    ],
)
def test_what_a_maker_says_of_the_thickness(wanted, level, code, remedy):
    board = thickness_from(Warp(700, 72, bow=1.5, cup=0.5, twist=3), thickness=16)
    found = check_thickness(board, wanted=wanted, rule=MM)
    assert (found.level, found.code) == (level, code)
    assert remedy in found.remedy
    if "shorter" in remedy:
        length = float(found.remedy.split()[3])
        piece = cut_to(board.warp, length=length)
        assert (
            check_thickness(thickness_from(piece, thickness=16), wanted=wanted, rule=MM).level
            != "wont_work"
        )


def test_twist_before_layout():
    """0.3 mm over a wall of 176 × 64, in proportion to length times width."""
    assert check_twist(Warp(176, 64, twist=0.3), rule=MM).level == "good"
    found = check_twist(Warp(176, 64, twist=-0.31), rule=MM)
    assert (found.level, found.code) == ("care", "twist-before-layout")
    assert "left far and right near corners" in found.remedy
    assert check_twist(Warp(176, 128, twist=0.6), rule=MM).level == "good"
    assert check_twist(Warp(88, 64, twist=0.16), rule=MM).level == "care"


def test_walls_uneven():
    alike = {"side 1": 12.0, "side 2": 12.2, "back": 12.1}
    assert check_walls(alike, rule=MM).code == "good-walls"
    found = check_walls({**alike, "front": 11.9}, rule=MM)
    assert (found.level, found.code) == ("care", "walls-uneven")
    assert "side 2 is 12.2 mm and front 11.9 mm thick, 0.3 mm apart" in found.message
    for bad, said in (({}, "no wall was measured"), ({"back": float("nan")}, "back was measured")):
        with pytest.raises(ValueError, match=said):
            check_walls(bad, rule=MM)


@pytest.mark.parametrize(
    ("readings", "said"),
    [
        ([(0, 12.2), (93, 12.5), (186, 12.8)], "start at the right end"),
        ([(186, 12.2), (93, 12.5), (0, 12.8)], "start at the left end"),
        ([(0, 12.2), (93, 12.6), (186, 12.2)], "plane the middle first"),
        ([(0, 12.6), (93, 12.2), (186, 12.6)], "plane the ends first"),
        ([(0, 12.5), (186, 12.5)], "Plane 0.5 mm off all along."),
        ([(0, 12.0), (186, 12.0)], "leave it"),
        ([(0, 12.3), (100, 11.9)], "At 100 mm from the left end it is 0.1 mm below 12 mm already"),
    ],
)
def test_how_much_is_left_and_from_which_end(readings, said):
    found = to_gauge_line(readings, line=12)
    assert said in found.sentence(MM)
    finding = check_gauge_line(found, rule=MM)
    assert (finding.level == "care") == found.undersize


def test_taper_and_what_is_left():
    found = to_gauge_line([(186, 12.8), (0, 12.2), (93, 12.6)], line=12)
    assert found.places == (0, 93, 186)
    assert found.left == pytest.approx((0.2, 0.6, 0.8))
    assert found.taper == pytest.approx(0.6)
    assert found.most == pytest.approx(0.8)
    assert found.spread == pytest.approx(0.6)


@given(st.floats(1, 50), st.floats(0, 20))
def test_gap_and_angle_of_an_edge_are_one_thing(thickness, angle):
    gap = out_of_square(thickness, angle=angle)
    assert angle_of_edge(gap, thickness=thickness) == pytest.approx(angle, abs=1e-9)


def test_rough_sizes_follow_from_the_board():
    side = rough_size(PARTS["side"], warp=Warp(2000, 150, bow=12, cup=2, twist=8, crook=20))
    assert side.length.value == pytest.approx(176 + 2 * 2 + 2 * 1)
    crook = 20 * (182 / 2000) ** 2
    assert side.width.value == pytest.approx(64 + 4 + 2 + crook)
    paper = 12 * (182 / 2000) ** 2 + 2 * (side.width.value / 150) ** 2
    paper += 4 * 182 * side.width.value / (2000 * 150)
    assert side.thickness.value == pytest.approx(12 + 1 + 0.2 + paper)
    assert 12 + 1 + 0.2 < side.least_thickness < side.thickness.value
    assert side.fits(side.thickness.value)
    assert not side.fits(side.thickness.value - 0.1)
    straight = rough_size(PARTS["side"], warp=Warp(2000, 150))
    assert straight.thickness.value == pytest.approx(13.2)
    assert straight.width.value == pytest.approx(70)
    assert "saw 185 × 75 × " in side.sentence(MM)


def test_a_board_of_the_rough_thickness_gives_the_part():
    """By the thickest board itself: rough size in, finished thickness and smoothing left."""
    found = rough_size(PARTS["lid"], warp=WARPED)
    piece = face_of(found.warp, thickness=found.thickness.value, along=41, across=21)
    rough = 0.5  # saw marks on each face
    left = thickest_board(
        x=piece.x, y=piece.y, top=piece.height - rough, bottom=piece.bottom + rough
    )
    assert left.upright >= 9 + 2 * 0.1
    least = face_of(found.warp, thickness=found.least_thickness, along=41, across=21)
    barely = thickest_board(
        x=least.x, y=least.y, top=least.height - rough, bottom=least.bottom + rough
    )
    assert barely.upright == pytest.approx(9 + 2 * 0.1, abs=1e-6)


def test_a_low_front_is_sawn_as_high_as_the_walls():
    front = rough_size(PARTS["front"], warp=WARPED, width=64)
    assert front.width.value == pytest.approx(70)
    other = rough_size(PARTS["front"], warp=WARPED, allowances=Allowances(saw=0, edge=0))
    assert other.width.value == pytest.approx(PARTS["front"].width.value)


@pytest.mark.parametrize(
    ("call", "said"),
    [
        (lambda: rough_size(PARTS["side"], warp=Warp(150, 150)), "side: it is sawn 182 mm long"),
        (lambda: rough_size(PARTS["side"], warp=Warp(500, 60)), "side: it is sawn 70 mm wide"),
        (lambda: Allowances(saw=-1), "saw was given as -1 mm; give 0 or more"),
        (lambda: thickness_from(WARPED, thickness=0), "thickness was given as 0 mm"),
        (lambda: thickness_from(WARPED, thickness=9, saw_marks=-1), "saw_marks was given as -1"),
        (lambda: longest_piece(WARPED, thickness=9, wanted=0), "wanted was given as 0 mm"),
        (lambda: crosscut_first(WARPED, thickness=9, length=3000), "was asked of a board of 2000"),
        (lambda: to_gauge_line([(0, 12)], line=12), "one place cannot tell a taper"),
        (lambda: to_gauge_line([(5, 12), (5, 13)], line=12), "one place cannot tell a taper"),
        (lambda: to_gauge_line([(0, 12), (9, float("nan"))], line=12), "size of reading 2"),
        (lambda: to_gauge_line([(0, 12), (9, 0)], line=12), "the size read at 9 mm is 0 mm"),
        (lambda: out_of_square(12, angle=60), "angle was given as 60 degrees"),
        (lambda: angle_of_edge(-1, thickness=12), "gap was given as -1 mm"),
    ],
)
def test_refusals(call, said):
    with pytest.raises(ValueError, match=said):
        call()


def test_readings_spread_over_a_real_piece_agree_with_its_warp():
    """The thickness is none of the grid's making: finer readings change it by a hundredth."""
    coarse, fine = (
        thickness_from(Warp(2000, 150, bow=12, cup=-2, twist=8), thickness=25, grid=grid)
        for grid in ((41, 21), (121, 61))
    )
    assert np.isclose(coarse.program, fine.program, atol=0.01)
