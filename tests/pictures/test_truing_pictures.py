"""Lesson 2's drawings measured: what is hatched, where the true board lies, how deep it cuts."""

from __future__ import annotations

import pytest

from toolkit.measures import Rule
from toolkit.pictures import Picture, board_inside, face_map, shavings_picture
from toolkit.truing import (
    PLANES,
    SAW_MARKS,
    LeastPlaning,
    Warp,
    cut_to,
    face_of,
    least_planing,
    least_strokes,
    thickness_from,
)

MM, INCH = Rule.millimetres(), Rule.inches()
WARPS = (
    Warp(700, 72, bow=1.5, cup=0.5, twist=1.3),
    Warp(700, 72, bow=-1.5, cup=-0.5, twist=-1.3),
    Warp(700, 72, cup=0.5),
    Warp(180, 64, twist=3.0),
    Warp(700, 72),
)


def _planed(warp: Warp) -> LeastPlaning:
    face = face_of(warp)
    return least_planing(x=face.x, y=face.y, height=face.height)


def _map(warp: Warp, rule: Rule, *, paper: bool = False) -> Picture:
    face = face_of(warp)
    return face_map(_planed(warp), along=face.along, across=face.across, rule=rule, paper=paper)


def _apart(picture: Picture) -> None:
    labels = picture.drawn.labels
    for i, one in enumerate(labels):
        assert one.x0 >= 0 and one.x1 <= picture.drawn.width
        assert one.y0 >= 0 and one.y1 <= picture.drawn.height
        assert not any(one.meets(other) for other in labels[i + 1 :]), one.text


@pytest.mark.parametrize("rule", [MM, INCH])
@pytest.mark.parametrize("warp", WARPS)
def test_the_map_keeps_its_words_apart(warp: Warp, rule: Rule) -> None:
    for paper in (False, True):
        picture = _map(warp, rule, paper=paper)
        _apart(picture)
        assert picture.drawn.height == _map(WARPS[0], rule).drawn.height


def test_hatching_lies_where_the_most_comes_off() -> None:
    warp = Warp(700, 72, bow=2.0)
    hatched = [line for line in _map(warp, MM).drawn.lines if line.pen == "hatch"]
    xs = [x for line in hatched for x, _ in line.points]
    outline = next(line for line in _map(warp, MM).drawn.lines if line.pen == "visible")
    left, right = min(x for x, _ in outline.points), max(x for x, _ in outline.points)
    middle = (left + right) / 2
    # The first shaving of 0.4 on an arc 2 high reaches √(0.4/2) of the way out.
    assert max(xs) - middle == pytest.approx((0.2**0.5) * (right - left) / 2, rel=0.06)
    assert middle - min(xs) == pytest.approx((0.2**0.5) * (right - left) / 2, rel=0.06)


def test_a_true_face_has_nothing_to_hatch() -> None:
    assert not [line for line in _map(WARPS[-1], MM).drawn.lines if line.pen == "hatch"]


def test_lines_join_places_of_equal_removal() -> None:
    warp = Warp(700, 72, bow=2.0)
    picture = _map(warp, MM)
    levels = [float(row.text) for row in picture.drawn.labels if row.text[0].isdigit()]
    assert {0.5, 1.0, 1.5} <= set(levels)


@pytest.mark.parametrize("rule", [MM, INCH])
def test_the_true_board_is_as_thick_as_reckoned(rule: Rule) -> None:
    whole = Warp(2000, 150, bow=12, cup=2, twist=8)
    piece = cut_to(whole, length=700, width=72)
    picture = board_inside(
        whole, piece=piece, thickness=25, wanted=12, rule=rule, sentence="It is so."
    )
    _apart(picture)
    for name, warp in (("the rough board", whole), ("crosscut first", piece)):
        drawn = picture.drawn.outline(name)
        reckoned = thickness_from(warp, thickness=25)
        # The drawing's grid is coarser than the reckoning's.
        assert drawn.height - 2 * SAW_MARKS == pytest.approx(reckoned.program, abs=0.05)


def test_too_thin_a_board_is_red() -> None:
    for wanted, pen in ((12.0, "wrong"), (5.0, "visible")):
        picture = board_inside(
            Warp(2000, 150, bow=12, cup=2, twist=8),
            thickness=25,
            wanted=wanted,
            rule=MM,
            sentence="It is so.",
        )
        pens = {line.pen for line in picture.drawn.lines}
        assert pen in pens
        assert ({"wrong", "visible"} - {pen}).isdisjoint(pens)


def test_more_warp_than_wood_draws_no_true_board() -> None:
    picture = board_inside(
        Warp(2000, 150, bow=40), thickness=16, wanted=12, rule=MM, sentence="It is so."
    )
    assert not {line.pen for line in picture.drawn.lines} & {"visible"}


@pytest.mark.parametrize("rule", [MM, INCH])
def test_shavings_leave_the_ridges_that_are_reckoned(rule: Rule) -> None:
    rows = [least_strokes(plane, width=64, remove=1.0) for plane in PLANES]
    picture = shavings_picture(rows, rule=rule, sentence="It is so.")
    _apart(picture)
    for strokes in rows:
        assert any(strokes.plane.name in row.text for row in picture.drawn.labels)
        levels = [y for _, y in picture.drawn.outline(strokes.plane.name).points]
        low, high = min(levels), max(levels)
        step = strokes.step / 64 * 350.0
        assert high > low
        assert step > 0
        times = int(
            next(row.text for row in picture.drawn.labels if strokes.plane.name in row.text)
            .split("× ")[1]
            .split("\n")[0]
        )
        scale = 350.0 / 64
        assert (high - low) / scale / times == pytest.approx(strokes.ridge, rel=0.02)
