"""How much wood is left: whole or cut, to the line, and what to saw for a part."""

import pytest
from hypothesis import given, settings, strategies as st

from tests.boxes import postcard
from toolkit.measures import Rule
from toolkit.plan import plan
from toolkit.truing import (
    Warp,
    check_thickness,
    check_twist,
    crosscut_first,
    cut_to,
    face_of,
    longest_piece,
    out_of_square,
    safe_thickness,
    thickest_board,
    thickness_from,
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
    """0.3 mm over a wall of 176 × 66, in proportion to length times width."""
    assert check_twist(Warp(176, 66, twist=0.3), rule=MM).level == "good"
    found = check_twist(Warp(176, 66, twist=-0.31), rule=MM)
    assert (found.level, found.code) == ("care", "twist-before-layout")
    assert "left far and right near corners" in found.remedy
    assert check_twist(Warp(176, 132, twist=0.6), rule=MM).level == "good"
    assert check_twist(Warp(88, 66, twist=0.16), rule=MM).level == "care"


def test_a_safe_thickness_follows_from_the_board():
    """A rough side of 190 × 75 out of 2000 × 150, by hand."""
    safe = safe_thickness(PARTS["side"], warp=Warp(2000, 150, bow=12, cup=2, twist=8))
    paper = 12 * (190 / 2000) ** 2 + 2 * (75 / 150) ** 2 + 4 * 190 * 75 / (2000 * 150)
    assert safe.value == pytest.approx(12 + 1 + 0.2 + paper)
    assert safe_thickness(PARTS["side"], warp=Warp(2000, 150)).value == pytest.approx(13.2)


def test_a_board_of_the_safe_thickness_gives_the_part():
    """By the thickest board itself: rough size in, finished thickness and smoothing left."""
    lid = PARTS["lid"]
    safe = safe_thickness(lid, warp=WARPED)
    warp = cut_to(WARPED, length=lid.rough_length.value, width=lid.rough_width.value)
    piece = face_of(warp, thickness=safe.value, along=41, across=21)
    rough = 0.5  # saw marks on each face
    left = thickest_board(
        x=piece.x, y=piece.y, top=piece.height - rough, bottom=piece.bottom + rough
    )
    assert left.upright >= 9 + 2 * 0.1


@pytest.mark.parametrize(
    ("call", "said"),
    [
        (lambda: safe_thickness(PARTS["side"], warp=Warp(150, 150)), "sawn 190 mm long, longer"),
        (lambda: safe_thickness(PARTS["side"], warp=Warp(500, 60)), "sawn 75 mm wide, wider"),
        (lambda: thickness_from(WARPED, thickness=0), "thickness was given as 0 mm"),
        (lambda: thickness_from(WARPED, thickness=9, saw_marks=-1), "saw_marks was given as -1"),
        (lambda: longest_piece(WARPED, thickness=9, wanted=0), "wanted was given as 0 mm"),
        (lambda: crosscut_first(WARPED, thickness=9, length=3000), "was asked of a board of 2000"),
        (lambda: out_of_square(12, angle=60), "angle was given as 60 degrees"),
    ],
)
def test_refusals(call, said):
    with pytest.raises(ValueError, match=said):
        call()
