"""The log's end, the cup of a board and its year: what is drawn is what the results say."""

import re
from contextlib import nullcontext
from itertools import pairwise
from math import atan2, cos, dist, hypot, pi, radians, remainder, sin

import numpy as np
import pytest
from hypothesis import given, settings, strategies as st

from tests.boxes import inch_postcard, postcard
from tests.pictures.test_layout_of_labels import _faults
from toolkit.box import Panel
from toolkit.measures import Rule
from toolkit.pictures import Picture, Sawn, Year, for_paper, log_end, year_picture
from toolkit.pictures.kit.sheet import MOST_LABELS
from toolkit.pictures.tree.ends import WarpedSection, within
from toolkit.plan import plan
from toolkit.wood import Climate, cup_from_strains, place, places, strain

MM, INCH = Rule.millimetres(), Rule.inches()


def _sawn(
    width: float = 116.0,
    thickness: float = 9.0,
    far: float = 80.0,
    rings: float = 0.0,
    start: float = 14.0,
    end: float = 8.0,
    species: str = "black cherry",
) -> Sawn:
    return Sawn.of(
        width,
        thickness=thickness,
        ring_radius=far,
        rings=rings,
        species=species,
        moisture_from=start,
        moisture_to=end,
    )


STATES = {
    "flat near the bark": _sawn(far=130.0),
    "flat": _sawn(),
    "flat near the pith": _sawn(far=12.0),
    "rift": _sawn(far=90.0, rings=45.0),
    "steep": _sawn(far=70.0, rings=75.0),
    "quarter": _sawn(far=90.0, rings=90.0),
    "swells": _sawn(start=8.0, end=14.0),
    "does not move": _sawn(start=9.0, end=9.0),
    "green beech": _sawn(225.0, 25.0, 60.0, 0.0, 30.0, 6.0, "american beech"),
    "thick": _sawn(225.0, 50.0, 40.0, 0.0, 30.0, 6.0, "american beech"),
    "square": _sawn(40.0, 40.0, 60.0, 45.0, 28.0, 8.0),
    "narrow": _sawn(20.0, 9.0, 30.0, 30.0),
    "huge": _sawn(400.0, 60.0, 500.0),
}
SPLITS = _sawn(far=3.0)


def _times(picture: Picture) -> int:
    found = [re.search(r"warp × (\d+)$", label.text) for label in picture.drawn.labels]
    return int(next(match[1] for match in found if match))


@pytest.mark.parametrize("name", list(STATES))
def test_the_dried_end_is_the_result_as_many_times_as_is_said(name: str) -> None:
    board = STATES[name]
    picture = log_end(board, rule=MM)
    times, cup = _times(picture), board.cup
    assert cup is not None
    wanted = [
        (x + times * (u - x), y + times * (v - y))
        for (x, y), (u, v) in zip(cup.outline_before, cup.outline_after, strict=True)
    ]
    drawn = picture.drawn.outline("after").points
    assert np.allclose(drawn, wanted, atol=1e-9)


@pytest.mark.parametrize("name", list(STATES))
def test_the_board_lies_in_the_log_where_it_was_sawn(name: str) -> None:
    board = STATES[name]
    drawn = log_end(board, rule=MM).drawn
    outline = drawn.outline("board in the log")
    left, right, low, high = outline.bounds
    assert (outline.width, outline.height) == pytest.approx((board.width, board.thickness))
    x, y = (left + right) / 2, (low + high) / 2
    assert hypot(x, y) == pytest.approx(board.ring_radius)
    assert atan2(x, y) == pytest.approx(radians(board.rings), abs=1e-9)
    wood = drawn.outline("sapwood").width / 2
    assert max(hypot(a, b) for a, b in outline.points) < wood


@pytest.mark.parametrize("name", list(STATES))
def test_it_says_which_face_goes_hollow_and_lays_a_straightedge_there(name: str) -> None:
    board = STATES[name]
    picture = log_end(board, rule=MM)
    cup = board.cup
    assert cup is not None
    said = [label.text for label in picture.drawn.labels if "hollow" in label.text]
    depth = max(cup.bark_hollow, cup.heart_hollow)
    if cup.hollow_side == "neither":
        assert not said
        assert not picture.drawn.named("straightedge")
    else:
        assert said == [f"{cup.hollow_side} side {MM.exact(depth, unit=False)} hollow"]
        (a, b) = picture.drawn.outline("straightedge").points
        half = board.thickness / 2 * (1 if cup.hollow_side == "bark" else -1)
        moved = dict(zip(cup.outline_before, picture.drawn.outline("after").points, strict=True))
        assert a == pytest.approx(moved[-board.width / 2, half])
        assert b == pytest.approx(moved[board.width / 2, half])
    assert cup.sentence(show=MM.exact) in picture.sentence


def test_the_page_shows_the_section_at_one_scale_before_and_after() -> None:
    board = STATES["flat"]
    drawn = log_end(board, rule=MM).drawn
    sections = [line for line in drawn.lines if line.pen == "visible"]
    log, before, after = sections
    (x0, y0), (x1, _), (_, y2) = before.points[0], before.points[1], before.points[2]
    assert (x1 - x0) / (y2 - y0) == pytest.approx(board.width / board.thickness)
    scale = (x1 - x0) / board.width
    outline = drawn.outline("after").points
    wide = max(x for x, _ in after.points) - min(x for x, _ in after.points)
    assert wide / scale == pytest.approx(max(x for x, _ in outline) - min(x for x, _ in outline))
    in_log = max(x for x, _ in log.points) - min(x for x, _ in log.points)
    assert in_log / drawn.scale == pytest.approx(board.width)


def test_a_board_with_the_pith_in_it_is_shown_split_and_no_shape_is_made_up() -> None:
    for edition in (nullcontext, for_paper):
        with edition():
            picture = log_end(SPLITS, rule=MM)
        assert SPLITS.cup is None
        assert not picture.drawn.named("after")
        assert any("no cup can be foretold" in label.text for label in picture.drawn.labels)
        assert any(line.pen == "wrong" for line in picture.drawn.lines)
        assert "split" in picture.sentence
        assert _faults(picture.drawn) == []


@pytest.mark.parametrize("rule", [MM, INCH], ids=["mm", "inch"])
@pytest.mark.parametrize("paper", [False, True])
@pytest.mark.parametrize("name", list(STATES))
def test_words_about_a_log_keep_apart_and_off_lines(name: str, paper: bool, rule: Rule) -> None:
    for ghost in (None, STATES["flat"], SPLITS):
        with for_paper() if paper else nullcontext():
            drawn = log_end(STATES[name], rule=rule, ghost=ghost).drawn
        assert _faults(drawn) == []
        assert len(drawn.labels) <= MOST_LABELS
        assert not [text for text in drawn.dropped if "side" not in text and text != "pith"]


def test_the_kept_state_stays_behind_at_the_same_exaggeration() -> None:
    ghost = STATES["flat"]
    picture = log_end(_sawn(far=40.0), rule=MM, ghost=ghost)
    assert ghost.cup is not None
    wanted = WarpedSection(ghost.cup, times=_times(picture)).outline
    assert np.allclose(picture.drawn.outline("ghost after").points, wanted)
    assert picture.drawn.outline("ghost board in the log").bounds[2] == pytest.approx(75.5)


def test_the_log_holds_still_while_the_board_moves_in_it() -> None:
    sizes = {
        log_end(_sawn(far=far), rule=MM).drawn.outline("sapwood").width
        for far in range(10, 131, 10)
    }
    assert len(sizes) == 1


@settings(max_examples=40, deadline=None)
@given(
    rings=st.floats(0, 90),
    far=st.floats(40, 200),
    u=st.floats(-0.48, 0.48),
    v=st.floats(-0.45, 0.45),
)
def test_rings_inside_the_section_go_where_the_exact_map_takes_them(
    rings: float, far: float, u: float, v: float
) -> None:
    width, thickness, tangential, radial = 60.0, 14.0, -0.03, -0.016
    over, up = far * sin(radians(rings)), far * cos(radians(rings))
    if over < width / 2 + 5 and up < thickness / 2 + 5:
        return
    cup = cup_from_strains(
        width,
        thickness=thickness,
        ring_radius=far,
        tangential=tangential,
        radial=radial,
        rings=rings,
        points=81,
    )

    def moved(x: float, y: float) -> tuple[float, float]:
        middle = atan2(up, over)
        turn = remainder(atan2(y + up, x + over) - middle, 2 * pi)
        turn = turn * (1 + tangential) / (1 + radial) + middle
        return (
            hypot(x + over, y + up) * (1 + radial) * cos(turn),
            hypot(x + over, y + up) * (1 + radial) * sin(turn),
        )

    def level(x: float, y: float) -> tuple[float, float]:
        (x0, y0), (x1, y1), (cx, cy) = moved(-width / 2, 0), moved(width / 2, 0), moved(0, 0)
        lean = -atan2(y1 - y0, x1 - x0)
        a, b = moved(x, y)
        a, b = a - cx, b - cy
        return a * cos(lean) - b * sin(lean), a * sin(lean) + b * cos(lean)

    point = u * width, v * thickness
    (found,) = WarpedSection(cup, times=1).points([point])
    # The blend between the edges is no map of wood. Drawn eight times as large at 1.6 pt to a
    # millimetre it must be off by less than a thin line is wide, 0.6 pt.
    assert dist(found, level(*point)) < 0.6 / (8 * 1.6)


@settings(max_examples=60, deadline=None)
@given(x=st.floats(-200, 200), y=st.floats(-200, 0), radius=st.floats(2.5, 300))
def test_the_rings_of_a_section_are_all_that_lies_in_it(x: float, y: float, radius: float) -> None:
    section = [(-58.0, -6.0), (58.0, -6.0), (58.0, 6.0), (-58.0, 6.0)]
    points = [point for arc in within(section, pith=(x, y)).lines(radius) for point in arc]
    for a, b in points:
        assert abs(a) <= 58 + 1e-9
        assert abs(b) <= 6 + 1e-9
        assert hypot(a - x, b - y) == pytest.approx(radius, abs=0.35)
    for i in range(720):
        turn = 2 * pi * i / 720
        at = x + radius * cos(turn), y + radius * sin(turn)
        if abs(at[0]) < 57.5 and abs(at[1]) < 5.5:
            assert min(dist(at, point) for point in points) < 2.0


def test_the_heartwood_of_a_section_is_what_a_disc_covers_of_it() -> None:
    section = [(-58.0, -6.0), (58.0, -6.0), (58.0, 6.0), (-58.0, 6.0)]
    for pith, radius in (((0.0, -80.0), 83.0), ((-90.0, 0.0), 110.0), ((0.0, -20.0), 300.0)):
        ((shape,), _) = within(section, pith=pith).filled(0.0, radius)
        area = sum(a[0] * b[1] - b[0] * a[1] for a, b in pairwise([*shape, shape[0]])) / 2
        grid = [
            (-58 + 0.5 * (i + 0.5), -6 + 0.5 * (k + 0.5)) for i in range(232) for k in range(24)
        ]
        inside = sum(dist(point, pith) < radius for point in grid) * 0.25
        assert abs(area) == pytest.approx(inside, rel=0.02)


WARMTH = (20, 20, 20, 19, 20, 21, 22, 22, 20, 19, 20, 20)
DAMP = (30, 32, 36, 42, 50, 60, 68, 70, 62, 52, 42, 34)
ROOM = Climate.from_readings(list(zip(WARMTH, DAMP, strict=True)), name="the workshop")


def _lid(**changes: object) -> Panel:
    lid = plan(postcard().having(changes)).design.lid
    assert isinstance(lid, Panel)
    return lid


def _year(lid: Panel, where: Climate = ROOM, made_in: int = 3, **more: float) -> Year:
    made = {"moisture_from": where.moisture[made_in], **more}
    return Year.of_panel(lid, place=where, species="black cherry", rings=0.0, **made)


def _inch_lid() -> Panel:
    lid = plan(inch_postcard()).design.lid
    assert isinstance(lid, Panel)
    return lid


YEARS = {
    "room": _year(_lid()),
    "boston": _year(_lid(), place("boston")),
    "inch": _year(_inch_lid()),
    "tight": _year(_lid(**{"panels.lid_across": 0.5}), made_in=0),
    "loose": _year(_lid(**{"groove.depth": 2.0}), made_in=7),
    "across": _year(_lid(**{"panels.grain": "across"})),
    "made wetter": _year(_lid(), place("phoenix"), 11, moisture_from=14.0),
    "no grooves": Year.of(
        225.0, place=ROOM, species="red oak", rings=0.0, moisture_from=ROOM.moisture[5]
    ),
    "still": Year.of(
        100.0,
        place=Climate("a cave", (9.0,) * 12, "own readings", "measured", ""),
        species="teak",
        rings=90.0,
        moisture_from=9.0,
    ),
}


def _level(picture: Picture) -> tuple[float, float]:
    """Page height of width 0, and px to a millimetre, from the figures on the upright rule."""
    marks = [
        (float(label.text), (label.y0 + label.y1) / 2)
        for label in picture.drawn.labels
        if re.fullmatch(r"[\d.]+", label.text) and label.x1 < 100
    ]
    (a, low), (b, high) = min(marks), max(marks)
    scale = (high - low) / (b - a)
    return low - a * scale, scale


@pytest.mark.parametrize("name", [name for name in YEARS if name != "inch"])
def test_the_panels_edge_stands_at_its_width_on_the_rule(name: str) -> None:
    year = YEARS[name]
    picture = year_picture(year, rule=MM)
    assert picture.drawn.outline("width by month").points == tuple(enumerate(year.widths))
    zero, scale = _level(picture)
    edges = [line.points for line in picture.drawn.lines if line.pen == "visible"]
    edge = next(points for points in edges if len(points) == 14)[1:-1]
    # Figures are centred by the height of their digits, good to about a pixel.
    for (_, y), width in zip(edge, year.widths, strict=True):
        assert y == pytest.approx(zero + scale * width, abs=1.5)


@pytest.mark.parametrize("name", list(YEARS))
def test_red_is_where_the_panel_presses_or_leaves_and_only_there(name: str) -> None:
    year = YEARS[name]
    picture = year_picture(year, rule=MM)
    for word, wrong, limit in (
        ("presses", year.presses, year.widest),
        ("leaves", year.leaves, year.narrowest),
    ):
        shapes = picture.drawn.named(word)
        assert bool(shapes) == wrong
        if shapes:
            assert limit is not None
            _, _, low, high = shapes[0].bounds
            far = max(year.widths) if word == "presses" else min(year.widths)
            assert (low, high) == pytest.approx(sorted((limit, far)))
    assert ("Not right" in picture.sentence) == (year.presses or year.leaves)
    assert any(line.pen.startswith("wrong") for line in picture.drawn.lines) == (
        year.presses or year.leaves
    )


def test_each_state_of_the_year_is_among_the_examples() -> None:
    assert YEARS["tight"].presses
    assert not YEARS["tight"].leaves
    assert YEARS["loose"].leaves
    assert not YEARS["room"].presses
    assert not YEARS["room"].leaves


@pytest.mark.parametrize("changes", [{}, {"panels.grain": "across"}, {"groove.depth": 3.0}])
def test_the_grooves_limits_agree_with_the_grip_that_the_box_reckons(
    changes: dict[str, object],
) -> None:
    lid = _lid(**changes)
    dry = lid.moving - lid.shrinking
    assert dry - lid.narrowest == pytest.approx(lid.worst_grip)
    assert lid.widest - lid.narrowest == pytest.approx(lid.reach)


def test_provisional_figures_are_called_so_in_picture_and_sentence() -> None:
    for where in places():
        picture = year_picture(_year(_lid(), where), rule=MM)
        assert "provisional" in picture.sentence
        assert any("provisional" in label.text for label in picture.drawn.labels)
    own = year_picture(YEARS["room"], rule=MM)
    assert "provisional" not in own.sentence + " ".join(label.text for label in own.drawn.labels)


def test_made_as_wet_as_a_month_it_has_its_made_width_in_that_month() -> None:
    year = YEARS["room"]
    assert year.near == 3
    assert year.widths[year.near] == pytest.approx(year.made)
    change = strain(
        "black cherry", rings=0.0, moisture_from=ROOM.moisture[3], moisture_to=ROOM.moisture[7]
    )
    assert year.widths[7] == pytest.approx(year.made * (1 + change))


@pytest.mark.parametrize("rule", [MM, INCH], ids=["mm", "inch"])
@pytest.mark.parametrize("paper", [False, True])
@pytest.mark.parametrize("name", list(YEARS))
def test_words_about_a_year_keep_apart_and_off_lines(name: str, paper: bool, rule: Rule) -> None:
    for ghost in (None, YEARS["boston"]):
        with for_paper() if paper else nullcontext():
            drawn = year_picture(YEARS[name], rule=rule, ghost=ghost).drawn
        assert _faults(drawn) == []
        words = [label for label in drawn.labels if len(label.text) > 1]
        assert len(words) <= MOST_LABELS
        assert not [text for text in drawn.dropped if "made at" not in text]
