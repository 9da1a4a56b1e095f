"""Warp as a student reads it, against sticks and straightedges laid on the face itself."""

import pytest
from hypothesis import given, strategies as st

from toolkit.measures import Rule
from toolkit.truing import Warp, cut_to, face_of, stick_reading, warp_from_readings

MM = Rule.millimetres()
LENGTH, WIDTH = 700.0, 72.0
bends = st.floats(-4, 4, allow_nan=False)
warps = st.builds(
    Warp, st.just(LENGTH), st.just(WIDTH), bow=bends, cup=bends, twist=bends, crook=bends
)


def height_at(warp, x, y):
    """Height of the face, by what bow, cup and twist mean, apart from the toolkit."""
    u, v = 2 * x / warp.length - 1, 2 * y / warp.width - 1
    return -warp.bow * u**2 - warp.cup * v**2 + warp.twist * u * v / 4


@given(warps, st.floats(0.2, 1), st.floats(0.2, 1), st.floats(0, 1), st.floats(0, 1))
def test_a_piece_has_the_same_warp_wherever_it_is_sawn(warp, long, wide, along, across):
    """Sawn out of the face itself, not by the law of squares."""
    length, width = long * LENGTH, wide * WIDTH
    x0, y0 = along * (LENGTH - length), across * (WIDTH - width)
    points = [
        (x, y, height_at(warp, x0 + x, y0 + y))
        for x in (0, length / 2, length)
        for y in (0, width / 2, width)
    ]
    found = warp_from_readings(points, length=length, width=width)
    piece = cut_to(warp, length=length, width=width)
    assert found.warp.bow == pytest.approx(piece.bow, abs=1e-6)
    assert found.warp.cup == pytest.approx(piece.cup, abs=1e-6)
    assert found.warp.twist == pytest.approx(piece.twist, abs=1e-6)
    assert found.rest == pytest.approx(0.0, abs=1e-6)
    assert piece.crook == pytest.approx(warp.crook * long**2)


@given(warps, st.floats(1.0, 8.0), st.booleans())
def test_winding_sticks_laid_on_the_face(warp, stick_share, middles):
    """Two straight sticks across its ends, sighted from the left: the far one tilts by so much."""
    stick = WIDTH * stick_share
    lean = [(height_at(warp, x, WIDTH) - height_at(warp, x, 0.0)) / WIDTH for x in (0, LENGTH)]
    seen = (lean[1] - lean[0]) * (stick / 2 if middles else stick)
    lined_up = "middles" if middles else "ends"
    shown = stick_reading(warp.twist, stick=stick, width=WIDTH, lined_up=lined_up)
    assert shown == pytest.approx(seen, abs=1e-9)


def test_gaps_are_heights_the_other_way_up():
    face = face_of(Warp(LENGTH, WIDTH, bow=1, cup=-0.4, twist=2))
    heights = list(zip(face.x, face.y, face.height, strict=True))
    gaps = [(x, y, 5 - z) for x, y, z in heights]
    up = warp_from_readings(heights, length=LENGTH, width=WIDTH)
    down = warp_from_readings(gaps, length=LENGTH, width=WIDTH, measured="gaps")
    for name, value in (("bow", 1), ("cup", -0.4), ("twist", 2)):
        assert getattr(up.warp, name) == pytest.approx(value)
        assert getattr(down.warp, name) == pytest.approx(value)


def test_what_three_words_leave_out_is_told_with_its_place():
    face = face_of(Warp(LENGTH, WIDTH, bow=1))
    readings = [list(row) for row in zip(face.x, face.y, face.height, strict=True)]
    readings[-1][2] += 0.8
    found = warp_from_readings([tuple(row) for row in readings], length=LENGTH, width=WIDTH)
    assert found.at == (LENGTH, WIDTH)
    assert 0.3 < found.rest < 0.8
    assert "the furthest is at the right far corner" in found.sentence(MM)


CORNER_GRID = [(x, y, 0.0) for x in (0, 350, 700) for y in (0, 36, 72)]


@pytest.mark.parametrize(
    ("readings", "said"),
    [
        ([], "there are no readings"),
        ([(0, 0, 0), (700, 72, 0)], "there are two readings"),
        ([row for row in CORNER_GRID if row[0] != 350], "cannot tell the bow: read the middle of"),
        ([row for row in CORNER_GRID if row[1] != 36], "cannot tell the cup: read the middle of"),
        ([row for row in CORNER_GRID if row[1] == 36], "lie on one line"),
        ([*CORNER_GRID, (900, 0, 0)], "reading 10 was taken at x 900, y 0 mm, off a board of 700"),
        ([*CORNER_GRID, (9, 9, float("nan"))], "a reading is no length; measure it again"),
    ],
)
def test_readings_that_cannot_tell_the_warp(readings, said):
    with pytest.raises(ValueError, match=said):
        warp_from_readings(readings, length=LENGTH, width=WIDTH)


def test_a_cross_of_readings_cannot_tell_the_twist():
    cross = [(x, 36, 0.0) for x in (0, 350, 700)] + [(350, y, 0.0) for y in (0, 72)]
    with pytest.raises(ValueError, match="cannot tell the twist: read all four corners"):
        warp_from_readings(cross, length=LENGTH, width=WIDTH)


@pytest.mark.parametrize(
    ("call", "said"),
    [
        (lambda: Warp(0, 72), "length was given as 0 mm; give a number above 0"),
        (lambda: Warp(700, float("nan")), "width was given as nan mm"),
        (lambda: Warp(700, 72, twist=float("inf")), "twist was given as inf mm"),
        (
            lambda: cut_to(Warp(700, 72), length=800),
            "a length of 800 mm was asked of a board of 700",
        ),
        (lambda: cut_to(Warp(700, 72), width=0), "width was given as 0 mm; give a number above 0"),
        (
            lambda: stick_reading(1, stick=400, width=64, lined_up="left"),
            "lined_up was given as 'left'; give one of ends, middles",
        ),
    ],
)
def test_refusals(call, said):
    with pytest.raises(ValueError, match=said):
        call()
