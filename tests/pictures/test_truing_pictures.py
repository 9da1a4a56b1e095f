"""Lesson 2's drawings measured: what is hatched, where the true board lies, how deep it cuts."""

from contextlib import nullcontext

import pytest

from tests.pictures.designs import overlap
from toolkit.measures import Rule
from toolkit.pictures import (
    Picture,
    board_inside,
    clock_picture,
    face_map,
    for_paper,
    shavings_picture,
)
from toolkit.planes import PLANES
from toolkit.truing import (
    SAW_MARKS,
    LeastPlaning,
    Warp,
    bench_time,
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


def _map(warp: Warp, rule: Rule) -> Picture:
    face = face_of(warp)
    return face_map(_planed(warp), along=face.along, across=face.across, rule=rule)


def _apart(picture: Picture) -> None:
    labels = picture.drawn.labels
    for i, one in enumerate(labels):
        assert one.x0 >= 0 and one.x1 <= picture.drawn.width
        assert one.y0 >= 0 and one.y1 <= picture.drawn.height
        assert not any(overlap(one, other) for other in labels[i + 1 :]), one.text


@pytest.mark.parametrize("rule", [MM, INCH])
@pytest.mark.parametrize("warp", WARPS)
def test_the_map_keeps_its_words_apart(warp: Warp, rule: Rule) -> None:
    for edition in (nullcontext, for_paper):
        with edition():
            picture = _map(warp, rule)
        _apart(picture)
        assert not picture.drawn.dropped
    assert _map(warp, rule).drawn.height == _map(WARPS[0], rule).drawn.height


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


def _figures(picture: Picture) -> list[str]:
    return [row.text for row in picture.drawn.labels]


@pytest.mark.parametrize("twist", [0.1, 0.7, 1.3, 2.0, 3.1, 4.2, 5.0])
@pytest.mark.parametrize("bow", [0.0, 1.5, 5.0])
def test_figures_stand_clear_of_the_lines_however_twisted(twist: float, bow: float) -> None:
    for cup in (0.0, 0.5, -2.0):
        picture = _map(Warp(700, 72, bow=bow, cup=cup, twist=twist), MM)
        _apart(picture)
        assert not picture.drawn.dropped
        figures = [row for row in picture.drawn.labels if row.text[0] in "0123456789"]
        thin = [line.points for line in picture.drawn.lines if line.pen in ("thin", "hatch")]
        inside = [
            (figure.text, point)
            for figure in figures
            for points in thin
            for point in points
            if figure.x0 < point[0] < figure.x1 and figure.y0 < point[1] < figure.y1
        ]
        assert not inside


def test_lines_are_smooth_between_readings() -> None:
    # A bow and a cup alone: the lines are ellipses about the middle, to a hair.
    picture = _map(Warp(700, 72, bow=2.0, cup=2.0), MM)
    board = next(line for line in picture.drawn.lines if line.pen == "visible")
    xs, ys = zip(*board.points, strict=True)
    wide, tall = (max(xs) - min(xs)) / 2, (max(ys) - min(ys)) / 2
    middle = min(xs) + wide, min(ys) + tall
    edge = next(line for line in picture.drawn.lines if line.pen == "waste edge")
    # 0.4 of 4 mm is left below the highest: 2u² + 2v² = 0.4.
    for x, y in edge.points:
        radius = ((x - middle[0]) / wide) ** 2 + ((y - middle[1]) / tall) ** 2
        assert radius == pytest.approx(0.2, rel=0.03)


def test_the_kept_face_lies_dotted_behind() -> None:
    def ghosts(picture: Picture) -> int:
        return sum(line.pen == "ghost" for line in picture.drawn.lines)

    face = face_of(WARPS[0])
    moving = _planed(Warp(700, 72, bow=1.0, twist=4.0))
    plain = face_map(moving, along=face.along, across=face.across, rule=MM)
    both = face_map(moving, along=face.along, across=face.across, rule=MM, ghost=_planed(WARPS[0]))
    assert ghosts(plain) == 0 and not any("dotted" in text for text in _figures(plain))
    assert ghosts(both) > 2 and any("dotted: before" in text for text in _figures(both))
    _apart(both)
    whole, piece = Warp(2000, 150, bow=12, twist=8), Warp(700, 72, bow=1.5)
    for ghost, ghost_piece, many in ((None, None, 0), (piece, None, 4), (whole, piece, 8)):
        picture = board_inside(
            whole,
            piece=piece,
            thickness=25,
            wanted=12,
            rule=MM,
            sentence="It is so.",
            ghost=ghost,
            ghost_piece=ghost_piece,
        )
        # A board and the true one in it, along and across.
        assert ghosts(picture) == many
        _apart(picture)


def test_only_what_was_read_has_a_cross() -> None:
    face = face_of(WARPS[0], along=5, across=3)
    planed = least_planing(x=face.x, y=face.y, height=face.height)
    picture = face_map(planed, along=5, across=3, rule=MM, read=[0, 14])
    board = next(line for line in picture.drawn.lines if line.pen == "visible")
    xs, ys = zip(*board.points, strict=True)
    crosses = [line.points for line in picture.drawn.lines if line.pen == "chalk"]
    middles = {(sum(x for x, _ in ends) / 2, sum(y for _, y in ends) / 2) for ends in crosses}
    corners = [(min(xs), min(ys)), (max(xs), max(ys)), (min(xs), max(ys)), (max(xs), min(ys))]
    assert len(crosses) == 4
    assert sum(any(c == pytest.approx(m) for m in middles) for c in corners) == 2


def test_the_clock_goes_round_once_an_hour() -> None:
    one, other = bench_time(45, seconds=2, learner=10), bench_time(45, seconds=4, learner=25)
    assert (one.minutes, other.minutes) == (15, 75)
    hands = [clock_picture(time).drawn.outline("learner").points for time in (one, other)]
    ways = [(end[0] - start[0], end[1] - start[1]) for start, end in hands]
    # A quarter past points to the right, and so does a quarter past an hour, on the ring within.
    assert all(y == pytest.approx(0.0, abs=1e-9) and x > 0 for x, y in ways)
    assert ways[1][0] < ways[0][0]
    both = clock_picture(other, before=one)
    _apart(both)
    assert sum(line.pen == "ghost" for line in both.drawn.lines) == 1
    assert any("75.0 min" in text for text in _figures(both))
    for edition in (nullcontext, for_paper):
        with edition():
            assert not clock_picture(bench_time(600, learner=12), before=one).drawn.dropped
    assert (
        sum(line.pen == "hatch" for line in clock_picture(bench_time(9, learner=1)).drawn.lines)
        == 0
    )


def test_lines_join_places_of_equal_removal() -> None:
    warp = Warp(700, 72, bow=2.0)
    picture = _map(warp, MM)
    levels = [float(row.text) for row in picture.drawn.labels if row.text[0].isdigit()]
    assert {0.5, 1.0, 1.5} <= set(levels)
    inches = [row.text for row in _map(warp, INCH).drawn.labels]
    assert {"0.02", "0.04"} <= set(inches)


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
